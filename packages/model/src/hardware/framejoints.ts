import { fineMarks, formatLength, INCH } from '../length.ts';
import { STOP_WIDTH, stopThickness } from '../panel/cover.ts';
import type { Panel } from '../panel/panel.ts';
import { spread } from '../uses/place.ts';
import { evenHeights } from './evenheights.ts';
import { isClear, jointStretches, nearHeight, stretchesAt } from './meet.ts';
import { choosePin, PIN_REACH, PIN_STRIP } from './pin.ts';
import { FROM_END, type GluedJoint, type JointToScrew } from './row.ts';
import { heightsText, lengthsText } from './where.ts';

/** Step of pins, mm; common practice, no source. */
const STEP = 8 * INCH;

/** Cover strips pinned up into the top rail; none where they are glued alone. */
export function coverStrips({ cover, clear, outside, rail, spec, display }: Panel): JointToScrew[] {
  if (cover.height <= 0) return [];
  const pin = choosePin({ through: cover.height, thickness: cover.thickness }, display.unit);
  if (!pin) return [];
  const z = cover.face + cover.thickness / 2;
  const left = clear.left + (clear.width - cover.length) / 2;
  const y = outside.height - rail.height - cover.height;
  const end = display.unit === 'in' ? INCH : 25;
  const xs = spread(left + end, left + cover.length - end, STEP);
  return [
    {
      joint: 'cover strip to top rail',
      pin,
      places: [z, -z].flatMap((at) => xs.map((x) => ({ x, y, z: at }))),
      along: 'y',
      outward: true,
      into: spec.wood.rail.wood,
      edge: cover.thickness / 2,
      end,
      where: `plumb up the middle of each strip’s lower edge into the rail; from its left end: ${lengthsText(
        xs.map((x) => x - left),
        display,
      )}`,
      remark: 'drill right through the strip and on into the rail; glue it as well; never pin it to a slat',
    },
  ];
}

/** Stop strips pinned to the stiles, clear of what crosses them; none where they are glued alone. */
export function stopStrips(panel: Panel, others: readonly JointToScrew[]): JointToScrew[] {
  const { spec, clear, stile, display } = panel;
  const thickness = stopThickness(panel);
  const pin = choosePin({ through: STOP_WIDTH, thickness }, display.unit);
  if (!pin) return [];
  const z = stile.depth / 2 - thickness / 2;
  const inset = Math.min(FROM_END, clear.height / 4);
  const xs = [clear.left + STOP_WIDTH, clear.left + clear.width - STOP_WIDTH];
  const taken = others.flatMap((joint) => jointStretches(joint, panel));
  const drive = { fastener: pin, along: 'x', outward: true } as const;
  const ys = evenHeights({
    from: clear.bottom + inset,
    to: clear.bottom + clear.height - inset,
    out: inset / 2,
    in: 1.5 * inset,
    step: STEP,
    mark: Math.max(display.mark, display.unit === 'in' ? INCH / 8 : 1),
    free: (y) => {
      const there = nearHeight(taken, y, INCH);
      return xs.every((x) => [z, -z].every((at) => isClear(stretchesAt(drive, { x, y, z: at }, panel), there)));
    },
  });
  return [
    {
      joint: 'stop strip to stile',
      pin,
      places: xs.flatMap((x) => [z, -z].flatMap((at) => ys.map((y) => ({ x, y, z: at })))),
      along: 'x',
      outward: true,
      into: spec.wood.stile.wood,
      edge: thickness / 2,
      end: inset,
      where: `through the middle of the strip’s inner edge, ${fineText(thickness / 2, display)} from the face of the frame, level into the stile; ${heightsText(ys, display)}`,
      remark: 'drill through the strip and on into the stile, before weaving',
    },
  ];
}

/** A size to the finest mark, with its unit. */
function fineText(size: number, display: Panel['display']): string {
  return formatLength(size, fineMarks(display), { named: true });
}

/** Whether the ends of a panel's cover strips are glued to its stiles: where no pin holds them. */
export function hasGluedEnds(panel: Panel): boolean {
  return gluedStrips(panel).some(({ joint }) => joint === 'cover strip to top rail');
}

/** Strips of a panel that no pin fits, and why: they are glued alone. */
export function gluedStrips(panel: Panel): GluedJoint[] {
  const { cover, display } = panel;
  const { unit } = display;
  const why = (thickness: number) =>
    `no pins: ${
      thickness < PIN_STRIP[unit] - 1e-9
        ? `less than ${lengthsText([PIN_STRIP[unit]], display)} of the strip lies on the wood`
        : `none is sold long enough to reach ${lengthsText([PIN_REACH[unit]], display)} beyond the strip`
    }`;
  const stop = stopThickness(panel);
  return [
    ...(cover.height > 0 && !choosePin({ through: cover.height, thickness: cover.thickness }, unit)
      ? [
          {
            joint: 'cover strip to top rail' as const,
            where: 'along its upper edge to the rail, and its ends to the stiles; never to a slat',
            why: why(cover.thickness),
          },
        ]
      : []),
    ...(stop > 0 && !choosePin({ through: STOP_WIDTH, thickness: stop }, unit)
      ? [{ joint: 'stop strip to stile' as const, where: 'all along the stile; never to a slat', why: why(stop) }]
      : []),
  ];
}
