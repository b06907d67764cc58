import { ceilToMark, floorToMark } from '../length.ts';
import type { Panel } from '../panel/panel.ts';
import { type ChosenScrew, chooseScrew } from './choose.ts';
import { type Gauge, headDiameter } from './gauge.ts';
import { WOOD_BETWEEN } from './meet.ts';
import { plugFor } from './plug.ts';
import { DISTANCES, type JointToScrew, KEEP } from './row.ts';
import { lengthsText } from './where.ts';

/** Where the two screws of a corner stand: from the rail's end, and off mid-depth to either side, mm. */
interface CornerPlaces {
  readonly outer: number;
  readonly inner: number;
  readonly off: number;
}

/**
 * Places for two screws of a diameter in a stile's end, set apart along the rail as far as the stile lets them, on the
 * job's marks, so that every drawing prints them alike.
 */
function cornerPlaces(
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

type Frame = Pick<Panel, 'rail' | 'stile' | 'display'>;

/**
 * Screw down through a rail into a stile's end: of the stoutest gauge whose pair finds room there, its heads and plugs
 * clear of one another; where none does, the thinnest.
 */
export function cornerScrew({ rail, stile, display }: Frame): ChosenScrew {
  const choose = (gauges: readonly Gauge[]) =>
    chooseScrew({ gauges, through: rail.height, keep: KEEP, room: stile.length / 3, unit: display.unit });
  const tries = [choose([8, 10, 6]), choose([6])];
  return tries.find((screw) => pairFits({ rail, stile, display }, screw)) ?? choose([6]);
}

/** Whether the two screws of a corner stand clear of one another, with their heads or the plugs over them. */
function pairFits(frame: Frame, screw: ChosenScrew): boolean {
  const { outer, inner, off } = cornerPlaces(frame, screw.diameter);
  const head = screw.counterbore > 0 ? plugFor(screw, frame.display).diameter : headDiameter(screw.gauge);
  const room = screw.counterbore > 0 ? head + WOOD_BETWEEN : Math.max(head, screw.diameter + WOOD_BETWEEN);
  return Math.hypot(inner - outer, 2 * off) >= room - 1e-6;
}

/**
 * Two screws down through each rail into a stile's end, one on either side of mid-depth and set apart along the rail. The
 * top rail is the bottom rail turned in its plane, so that both are one part.
 */
export function corners(panel: Panel): JointToScrew {
  const { rail, stile, outside, spec } = panel;
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
  return {
    joint: 'rail to stile',
    screw,
    places,
    along: 'y',
    grain: 'end',
    into: spec.wood.stile.wood,
    edge: Math.min(outer, stile.width - inner, Math.min(rail.depth, stile.depth) / 2 - off),
    end: outer,
    where: whereText(panel, { outer, inner, off }),
    remark: 'don’t count on end-grain screws: glue the joint too',
  };
}

/** Where the two screws of each corner are marked, and which of them stands in front. */
function whereText({ rail, display }: Frame, { outer, inner, off }: CornerPlaces): string {
  const [near, far, face] = [outer, inner, rail.depth / 2 - off].map((size) => lengthsText([size], display));
  const faces = `one ${face} from the front face, one ${face} from the back`;
  if (outer === inner) return `${near} from each end of the rail, side by side: ${faces}`;
  return (
    `${near} and ${far} from each end of the rail, ${faces}: in front the one at ${near} at the bottom left and ` +
    `top right corners, the one at ${far} at the bottom right and top left`
  );
}
