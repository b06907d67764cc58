import { INCH } from '../length.ts';
import type { Panel } from '../panel/panel.ts';
import { spread } from '../uses/place.ts';
import { type ChosenScrew, chooseScrew } from './choose.ts';
import { type Gauge, screwDiameter } from './gauge.ts';
import { choosePin } from './pin.ts';
import { DISTANCES, type JointToScrew } from './row.ts';

/** Wood kept under the head of a screw in a thick piece, mm; steps of fixings and their distance from ends; practice. */
const KEEP = 1.5 * INCH;
const STEP = { stave: 16 * INCH, pins: 8 * INCH } as const;
const FROM_END = 3 * INCH;

/** Joints that every panel has: corners, end staves, cover strips and stops. */
export function frameJoints(panel: Panel): JointToScrew[] {
  return [corners(panel), endStaves(panel), ...coverStrips(panel), ...stopStrips(panel)];
}

/** Where the two screws of a corner stand: from the rail's end, and off mid-depth to either side, mm. */
export interface CornerPlaces {
  readonly outer: number;
  readonly inner: number;
  readonly off: number;
}

/** Places for two screws of a diameter in a stile's end, set apart along the rail as far as the stile lets them. */
export function cornerPlaces({ rail, stile }: Pick<Panel, 'rail' | 'stile'>, diameter: number): CornerPlaces {
  const edge = DISTANCES.edge * diameter;
  const inner = Math.max(stile.width / 2, stile.width - Math.max(edge, stile.width / 4));
  const outer = Math.min(inner, Math.max(stile.width / 2, DISTANCES.end * diameter));
  const depth = Math.min(rail.depth, stile.depth);
  return { outer, inner, off: Math.max(0, depth / 2 - Math.max(edge, depth / 4)) };
}

/** Screw down through a rail into a stile's end. */
export function cornerScrew({ rail, stile, display }: Panel): ChosenScrew {
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
function corners(panel: Panel): JointToScrew {
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
    remark: 'end grain: screws here are not reckoned on to pull; glue the joint too',
  };
}

/** Screws through each end stave into its stile, driven before weaving. */
function endStaves({ staves, stile, clear, spec, display }: Panel): JointToScrew {
  const fits = ([6, 5, 4] as Gauge[]).filter((gauge) => DISTANCES.edge * screwDiameter(gauge) <= staves.depth / 2);
  const screw: ChosenScrew = chooseScrew({
    gauges: fits.length > 0 ? fits : [4],
    through: staves.width,
    room: stile.width - 3,
    unit: display.unit,
  });
  const inset = Math.min(FROM_END, clear.height / 4);
  const ys = spread(clear.bottom + inset, clear.bottom + clear.height - inset, STEP.stave);
  const xs = [clear.left + staves.width, clear.left + clear.width - staves.width];
  return {
    joint: 'end stave to stile',
    screw,
    places: xs.flatMap((x) => ys.map((y) => ({ x, y, z: 0 }))),
    along: 'x',
    into: spec.wood.stile.wood,
    edge: staves.depth / 2,
    end: inset,
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
    },
  ];
}
