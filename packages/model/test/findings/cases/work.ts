import type { CutPlan } from '../../../src/cutting/plan.ts';
import type { Subject } from '../../../src/findings/rule.ts';
import { sideFixings } from '../../../src/index.ts';
import { first, lastHolding, type RuleCase, subjectOf } from './case.ts';

const base = subjectOf();
const windy = (speed: number, own: object = {}) =>
  subjectOf(
    { size: { width: 200, height: 100 }, screen: { above: 2000, ...own } },
    { site: { wind: { speed, exposure: 'D' } } },
  );
const holds = (speed: number) => {
  const { pull, resistance = 0 } = sideFixings(first(windy(speed)));
  return pull <= resistance;
};

export const fasteningCases: readonly RuleCase[] = [
  {
    code: 'fixing-pull',
    trips: windy(119),
    passes: windy(30),
    limit: windy(lastHolding(30, 119, holds)),
    atLimit: false,
  },
  {
    code: 'fixing-not-reckoned',
    trips: windy(40, { into: 'masonry' }),
    passes: windy(40),
    limit: subjectOf({ screen: { into: 'masonry' } }),
    atLimit: false,
  },
  {
    code: 'wind-not-given',
    trips: base,
    passes: subjectOf({}, { site: { where: 'indoors' } }),
    limit: windy(1),
    atLimit: false,
  },
  {
    // A No. 4 screw is 0.112 in across: 2.5 diameters are 0.28 in, half of 0.56 in.
    code: 'screw-edge',
    trips: base,
    // Without cover strips, whose pins stand near the edges of thin ones.
    passes: subjectOf({ stave: { depth: '3/4' }, top: { cover: 0 } }),
    limit: subjectOf({ stave: { depth: 0.56 }, top: { cover: 0 } }),
    atLimit: false,
  },
  {
    // A No. 8 screw is 0.164 in across: five diameters are 0.82 in; a 1 1/2 in stile lets it stand just there.
    code: 'screw-end',
    trips: subjectOf({ stile: { width: '3/4' } }),
    passes: subjectOf({ stile: { width: 2.5 } }),
    limit: base,
    atLimit: false,
  },
  {
    // The longest No. 4 is 1 1/2 in; six diameters are 0.672 in, so a stave of 0.828 in leaves just that.
    code: 'screw-reach',
    trips: subjectOf({ screen: { mounting: 'blocks', standoff: 6 } }),
    passes: base,
    limit: subjectOf({ stave: { width: 0.828 } }),
    atLimit: false,
  },
];

const plan = (own: Partial<CutPlan>): Subject => ({
  ...base,
  plan: {
    status: 'optimal',
    boards: [],
    cost: 100,
    costIs: 'price',
    bound: 100,
    boundKind: 'linear',
    gap: 0,
    shares: { parts: 0.6, dust: 0.2, kept: 0.1, waste: 0.1 },
    fences: [],
    rips: 0,
    crosscuts: 0,
    shopping: [],
    leftovers: [],
    ...own,
  },
});
const board = (price?: number) => ({ thickness: 1.5, width: 3.5, length: 96, ...(price !== undefined && { price }) });
const blocks = { screen: { mounting: 'blocks' } };

export const cuttingCases: readonly RuleCase[] = [
  {
    code: 'thin-rips',
    trips: base,
    passes: subjectOf({ slat: { thickness: '7/16' }, top: { cover: 0 } }),
    limit: subjectOf({ slat: { thickness: '3/8' }, top: { cover: 0 } }),
    atLimit: false,
  },
  {
    code: 'small-parts',
    trips: subjectOf(blocks),
    passes: base,
    limit: subjectOf(blocks, { saw: { shortest: 3 } }),
    atLimit: false,
  },
  {
    code: 'plan-impossible',
    trips: plan({
      status: 'impossible',
      refusal: { reason: 'length', part: 'A', text: 'No board is long enough for A.', proven: true },
    }),
    passes: plan({}),
    limit: base,
    atLimit: false,
  },
  {
    code: 'plan-not-proven',
    trips: plan({ status: 'within', gap: 0.015 }),
    passes: plan({}),
    limit: plan({ status: 'within', gap: 0 }),
    atLimit: false,
  },
  {
    code: 'no-prices',
    trips: base,
    passes: subjectOf({}, { stock: [board(10)] }),
    limit: subjectOf({}, { stock: [board(10), board()] }),
    atLimit: true,
  },
  {
    code: 'board-named-otherwise',
    trips: subjectOf({}, { stock: [{ ...board(10), name: 'ash 35 x 100' }] }),
    passes: subjectOf({}, { stock: [{ ...board(10), name: 'cedar 2x4' }] }),
    limit: subjectOf({}, { stock: [{ ...board(10), name: '2x4' }] }),
    atLimit: false,
  },
];
