import { INCH } from '../length.ts';
import type { Panel } from '../panel/panel.ts';
import { type ChosenScrew, chooseScrew } from './choose.ts';
import { evenHeights } from './evenheights.ts';
import { type Gauge, screwDiameter } from './gauge.ts';
import { isClear, jointStretches, nearHeight, stretchesAt } from './meet.ts';
import { DISTANCES, FROM_END, type JointToScrew } from './row.ts';
import { heightsText } from './where.ts';

/** Widest step of the screws, and their least distance in height from those that cross the stile, mm; common practice. */
const STEP = 16 * INCH;
const APART = INCH;

/** Kept free of them to either side of a latch's middle, for its screws and its case, mm: 2 in, common practice, no source. */
const LATCH = 2 * INCH;

/**
 * Screws through each end stave into its stile, driven before weaving: evenly up the stave, the foot like the head, as
 * far as the other screws of the stile let them.
 */
export function endStaves(panel: Panel, others: readonly JointToScrew[]): JointToScrew {
  const { staves, stile, clear, spec, display } = panel;
  const fits = ([6, 5, 4] as Gauge[]).filter((gauge) => DISTANCES.edge * screwDiameter(gauge) <= staves.depth / 2);
  const screw: ChosenScrew = chooseScrew({
    gauges: fits.length > 0 ? fits : [4],
    through: staves.width,
    room: stile.width - 3,
    unit: display.unit,
  });
  const drive = { fastener: screw, along: 'x', outward: true } as const;
  const xs = [clear.left + staves.width, clear.left + clear.width - staves.width];
  const inset = Math.min(FROM_END, clear.height / 4);
  const [foot, head] = [clear.bottom, clear.bottom + clear.height];
  const taken = others.flatMap((joint) => jointStretches(joint, panel));
  const crossing = others.flatMap(({ along, driven, places }) =>
    along === 'y' ? [] : (driven ?? places).map(({ y }) => y),
  );
  const latch = panel.details.use === 'gate' ? panel.details.latch - panel.details.clear.ground : undefined;
  const ys = evenHeights({
    from: foot + inset,
    to: head - inset,
    out: inset / 2,
    in: 1.5 * inset,
    step: STEP,
    mark: Math.max(display.mark, display.unit === 'in' ? INCH / 8 : 1),
    free: (y) => {
      if (latch !== undefined && Math.abs(latch - y) < LATCH - 1e-9) return false;
      if (crossing.some((at) => Math.abs(at - y) < APART - 1e-9)) return false;
      const there = nearHeight(taken, y, APART);
      return xs.every((x) => isClear(stretchesAt(drive, { x, y, z: 0 }, panel), there));
    },
  });
  return {
    joint: 'end stave to stile',
    screw,
    places: xs.flatMap((x) => ys.map((y) => ({ x, y, z: 0 }))),
    along: 'x',
    outward: true,
    into: spec.wood.stile.wood,
    edge: staves.depth / 2,
    end: Math.min(...ys) - foot,
    where: `up each end stave, through the middle of its inner edge (the narrow face that looks along the panel) into the stile; ${heightsText(ys, display)}`,
    remark: 'drive them before weaving, heads flush: the slats pass in front and behind, not over them',
  };
}
