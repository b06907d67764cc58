import { type Panel, panelBall, weaveDepth, windLoad } from '../../../src/index.ts';
import { LEAST_GRIP } from '../../../src/weave/limits.ts';
import { change, changeBend, first, lastHolding, type RuleCase, subjectOf } from './case.ts';

const base = subjectOf();
const half = first(base).outside.depth / 2;
const thickness = first(base).courses.thickness;
// 1 + t/(2 (d + t)) with t = 3/16 and d = 1/2 in: 1 + 0.1875/1.375.
const pushed = 1 + 0.1875 / 1.375;
const withRoom = (allowance: number) =>
  change(base, (panel) => ({ ...panel, courses: { ...panel.courses, allowance } }));

const windy = (speed: number) => subjectOf({ stave: { count: 3 } }, { site: { wind: { speed, exposure: 'D' } } });
// By hand: w p²/12 on a slat, 6 M/(h t²) of it, beside the weave's own stress.
const windUse = (panel: Panel) => {
  const { outside, staves, courses, spec, rows } = panel;
  const { site } = panel;
  const load = windLoad({ width: outside.width, height: outside.height, speed: site.wind?.speed ?? 0, exposure: 'D' });
  const line = (load.velocityPressure * 0.85 * load.forceCoefficient * courses.height) / 1e6;
  const stress = (6 * line * staves.pitch ** 2) / 12 / (courses.height * courses.thickness ** 2);
  return Math.max(...rows.map(({ bend }) => bend.use)) + stress / spec.wood.slat.wood.strength;
};

export const weaveCases: readonly RuleCase[] = [
  {
    code: 'slat-strength',
    trips: subjectOf({ slat: { thickness: '5/16' }, stave: { count: 5 } }),
    passes: base,
    limit: changeBend(base, () => ({ use: 0.55 })),
    atLimit: false,
  },
  {
    code: 'slat-strength-weaving',
    trips: changeBend(base, () => ({ use: 0.7 })),
    passes: base,
    limit: changeBend(base, () => ({ use: 0.75 / pushed - 1e-12 })),
    atLimit: false,
  },
  {
    code: 'slat-in-wind',
    trips: windy(119),
    passes: windy(30),
    limit: windy(lastHolding(30, 119, (speed) => windUse(first(windy(speed))) <= 0.75)),
    atLimit: false,
  },
  {
    code: 'row-not-gripped',
    trips: subjectOf({ stave: { count: 2 } }),
    passes: base,
    limit: subjectOf({ stave: { count: 3 } }),
    atLimit: false,
  },
  {
    code: 'loose-layers',
    trips: subjectOf({ weave: { rows: ['+++++', '+-+-+'] }, stave: { count: 5 } }),
    passes: base,
    limit: subjectOf({ weave: { rows: ['++++-', '-++++'] }, stave: { count: 5 } }),
    atLimit: false,
  },
  {
    code: 'little-grip',
    trips: subjectOf({ size: { width: 96, height: 52 }, stave: { count: 4 }, slat: { thickness: '3/16' } }),
    passes: base,
    limit: changeBend(base, () => ({ staveForces: [0, LEAST_GRIP * first(base).courses.height, 0] })),
    atLimit: false,
  },
  {
    code: 'ball-passes',
    trips: withRoom(200),
    passes: base,
    limit: withRoom(lastHolding(0, 200, (room) => panelBall(first(withRoom(room))) < 101.6)),
    atLimit: false,
  },
];

const flat = (z: number) => changeBend(base, () => ({ endOffsets: [z, z] }));

export const endCases: readonly RuleCase[] = [
  {
    code: 'stave-not-woven',
    trips: subjectOf({ weave: { rows: ['++-++--', '+--+-++', '-+-+-+-'] }, stave: { count: 7 } }),
    passes: base,
    // One row that differs is enough to weave a stave in.
    limit: subjectOf({ weave: { rows: ['+-+-+', '+-+-+', '-+-+-'] }, stave: { count: 5 } }),
    atLimit: false,
  },
  {
    code: 'ends-flying',
    trips: subjectOf({ weave: { rows: ['++-+--', '--+-++'] }, stave: { count: 6 } }),
    passes: base,
    limit: changeBend(base, () => ({ endOffsets: [half - thickness / 2, 0] })),
    atLimit: false,
  },
  {
    code: 'slats-in-wall',
    trips: flat(-half),
    passes: subjectOf({ weave: { rows: ['++-+--', '--+-++'] }, stave: { count: 6 }, screen: { mounting: 'posts' } }),
    limit: flat(thickness / 2 - half),
    atLimit: false,
  },
  {
    code: 'weave-proud',
    trips: change(base, (panel) => ({ ...panel, outside: { ...panel.outside, depth: 20 } })),
    passes: base,
    limit: change(base, (panel) => ({ ...panel, outside: { ...panel.outside, depth: weaveDepth(panel) } })),
    atLimit: false,
  },
];
