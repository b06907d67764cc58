import { INCH } from '../length.ts';
import type { Panel } from '../panel/panel.ts';
import { spread } from '../uses/place.ts';
import { type ChosenScrew, chooseScrew } from './choose.ts';
import { corners } from './corner.ts';
import { type Gauge, screwDiameter } from './gauge.ts';
import { choosePin } from './pin.ts';
import { DISTANCES, type JointToScrew } from './row.ts';
import { clearOfTaken } from './takenheights.ts';
import { heightsText, lengthsText } from './where.ts';

/** Steps of screws and pins and their distance from ends, mm; common practice, no source. */
const STEP = { stave: 16 * INCH, pins: 8 * INCH } as const;
const FROM_END = 3 * INCH;

/** Joints that every panel has: corners, end staves, cover strips and stops. */
export function frameJoints(panel: Panel): JointToScrew[] {
  return [corners(panel), endStaves(panel), ...coverStrips(panel), ...stopStrips(panel)];
}

/** Screws through each end stave into its stile, driven before weaving, clear of what else crosses the stile. */
function endStaves(panel: Panel): JointToScrew {
  const { staves, stile, clear, spec, display } = panel;
  const fits = ([6, 5, 4] as Gauge[]).filter((gauge) => DISTANCES.edge * screwDiameter(gauge) <= staves.depth / 2);
  const screw: ChosenScrew = chooseScrew({
    gauges: fits.length > 0 ? fits : [4],
    through: staves.width,
    room: stile.width - 3,
    unit: display.unit,
  });
  const inset = Math.min(FROM_END, clear.height / 4);
  const [foot, head] = [clear.bottom, clear.bottom + clear.height];
  const ys = clearOfTaken(spread(foot + inset, head - inset, STEP.stave), panel, [foot + inset / 2, head - inset / 2]);
  const xs = [clear.left + staves.width, clear.left + clear.width - staves.width];
  return {
    joint: 'end stave to stile',
    screw,
    places: xs.flatMap((x) => ys.map((y) => ({ x, y, z: 0 }))),
    along: 'x',
    into: spec.wood.stile.wood,
    edge: staves.depth / 2,
    end: Math.min(...ys) - foot,
    where: `up each end stave, in the middle of its face; ${heightsText(ys, display)}`,
    remark: 'drive them before weaving; heads flush, slats pass over them',
  };
}

function coverStrips({ cover, clear, staves, courses, outside, rail, spec, display }: Panel): JointToScrew[] {
  if (cover.height <= 0) return [];
  const z = staves.depth / 2 + courses.thickness + cover.thickness / 2;
  const y = outside.height - rail.height - cover.height;
  const xs = spread(clear.left + INCH, clear.left + clear.width - INCH, STEP.pins);
  return [
    {
      joint: 'cover strip to top rail',
      pin: choosePin(Math.min(cover.height, INCH), display.unit),
      places: [z, -z].flatMap((at) => xs.map((x) => ({ x, y, z: at }))),
      along: 'y',
      into: spec.wood.rail.wood,
      edge: cover.thickness / 2,
      end: INCH,
      where: `along each strip, from its left end: ${lengthsText(
        xs.map((x) => x - clear.left),
        display,
      )}`,
      remark: `${cover.height > INCH ? 'slant the pins up into the rail from its lower edge; ' : ''}glue the strip as well; never pin it to a slat`,
    },
  ];
}

function stopStrips({ spec, clear, courses, stile, display }: Panel): JointToScrew[] {
  if (spec.endStop === undefined) return [];
  const thickness = stile.depth / 2 - spec.endStop - courses.thickness / 2;
  if (thickness <= 0) return [];
  const z = stile.depth / 2 - thickness / 2;
  const inset = Math.min(FROM_END, clear.height / 4);
  const ys = spread(clear.bottom + inset, clear.bottom + clear.height - inset, STEP.pins);
  const width = INCH / 2;
  const xs = [clear.left + width, clear.left + clear.width - width];
  return [
    {
      joint: 'stop strip to stile',
      pin: choosePin(width, display.unit),
      places: xs.flatMap((x) => [z, -z].flatMap((at) => ys.map((y) => ({ x, y, z: at })))),
      along: 'x',
      into: spec.wood.stile.wood,
      edge: thickness / 2,
      end: inset,
      where: `up each strip; ${heightsText(ys, display)}`,
    },
  ];
}
