import { ceilToMark, floorToMark } from '../length.ts';
import type { Panel } from '../panel/panel.ts';
import { type ChosenScrew, chooseScrew } from './choose.ts';
import { DISTANCES, type JointToScrew, KEEP } from './row.ts';
import { lengthsText } from './where.ts';

/** Where the two screws of a corner stand: from the rail's end, and off mid-depth to either side, mm. */
export interface CornerPlaces {
  readonly outer: number;
  readonly inner: number;
  readonly off: number;
}

/**
 * Places for two screws of a diameter in a stile's end, set apart along the rail as far as the stile lets them, on the
 * job's marks, so that every drawing prints them alike.
 */
export function cornerPlaces(
  { rail, stile, display }: Pick<Panel, 'rail' | 'stile' | 'display'>,
  diameter: number,
): CornerPlaces {
  const { mark } = display;
  const edge = DISTANCES.edge * diameter;
  const farthest = floorToMark(stile.width - Math.max(edge, stile.width / 4), mark);
  const inner = Math.max(stile.width / 2, farthest);
  const outer = Math.min(inner, Math.max(stile.width / 2, ceilToMark(DISTANCES.end * diameter, mark)));
  const depth = Math.min(rail.depth, stile.depth);
  return { outer, inner, off: Math.max(0, depth / 2 - ceilToMark(Math.max(edge, depth / 4), mark)) };
}

/** Screw down through a rail into a stile's end. */
export function cornerScrew({ rail, stile, display }: Pick<Panel, 'rail' | 'stile' | 'display'>): ChosenScrew {
  return chooseScrew({
    gauges: [8, 10, 6],
    through: rail.height,
    keep: KEEP,
    room: stile.length / 3,
    unit: display.unit,
  });
}

/**
 * Two screws down through each rail into a stile's end, one on either side of mid-depth and set apart along the rail. The
 * top rail is the bottom rail turned in its plane, so that both are one part.
 */
export function corners(panel: Panel): JointToScrew {
  const { rail, stile, outside, spec, display } = panel;
  const screw = cornerScrew(panel);
  const { outer, inner, off } = cornerPlaces(panel, screw.diameter);
  const places = [
    { y: 0, z: off },
    { y: outside.height, z: -off },
  ].flatMap(({ y, z }) => [
    { x: outer, y, z },
    { x: inner, y, z: -z },
    { x: outside.width - outer, y, z: -z },
    { x: outside.width - inner, y, z },
  ]);
  const face = lengthsText([rail.depth / 2 - off], display);
  return {
    joint: 'rail to stile',
    screw,
    places,
    along: 'y',
    grain: 'end',
    into: spec.wood.stile.wood,
    edge: Math.min(outer, stile.width - inner, Math.min(rail.depth, stile.depth) / 2 - off),
    end: outer,
    where: `from each end of the rail: ${lengthsText([outer, inner], display)}; one ${face} from the front face, one ${face} from the back`,
    remark: 'don’t count on end-grain screws: glue the joint too',
  };
}
