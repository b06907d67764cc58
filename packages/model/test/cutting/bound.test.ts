import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type CuttingInput,
  checkPlan,
  type Grade,
  type Part,
  planCuts,
  planCutsQuick,
  type Saw,
  type Stock,
} from '../../src/index.ts';
import { board, part, saw } from './jobs.ts';
import { sawUp } from './walker.ts';

const IN = 25.4;

/** A part in mm. */
function piece(
  letter: string,
  [t, w, l]: readonly [number, number, number],
  count: number,
  grade: Grade = 'clear',
): Part {
  return part(letter, [t / IN, w / IN, l / IN], count, { grade });
}

/** A board in mm. */
function plank([t, w, l]: readonly [number, number, number], amount: number, more: Partial<Stock> = {}): Stock {
  return board([t / IN, w / IN, l / IN], amount, { grade: 'clear', ...more });
}

function sawIn(mm: Partial<Record<keyof Saw, number>>): Saw {
  return saw(Object.fromEntries(Object.entries(mm).map(([k, v]) => [k, v / IN])));
}

type Row = readonly [thickness: number, width: number, length: number, count: number];

function parts(rows: readonly Row[]): Part[] {
  return rows.map(([t, w, l, n], i) => piece(String.fromCharCode(65 + i), [t, w, l], n));
}

/** A gate, a divider and a deck guard: sections with more ways to rip them than can be listed. */
const jobs: Record<'gate' | 'divider' | 'guard', CuttingInput> = {
  gate: {
    parts: parts([
      [4.7625, 15.875, 736.6, 2],
      [4.7625, 41.275, 738.1875, 38],
      [12.7, 19.05, 1447.8, 4],
      [38.1, 63.5, 1412.875, 2],
      [38.1, 63.5, 863.6, 2],
    ]),
    stock: [
      board([1.5, 5.5, 96], 31, { grade: 'clear' }),
      board([1.5, 5.5, 144], 46.5, { grade: 'clear' }),
      board([1.5, 5.5, 96], 17.6),
      board([1.5, 3.5, 96], 19.8, { grade: 'clear' }),
    ],
    offcuts: [],
    saw: saw({
      ripKerf: 3 / 32,
      crossKerf: 3 / 32,
      trimHead: 1 / 4,
      trimTail: 1 / 4,
      shortestRip: 12,
      narrowestRip: 1 / 2,
    }),
  },
  divider: {
    parts: parts([
      [4, 44, 1115, 36],
      [4, 44, 1114, 38],
      [8.5, 12.7, 1560, 8],
      [14, 18, 1587, 16],
      [45, 45, 1560, 4],
      [45, 45, 1200, 4],
      [45, 60, 780, 4],
    ]),
    stock: [
      plank([52, 155, 2400], 78, { surface: 'rough' }),
      plank([52, 105, 2400], 52, { surface: 'rough' }),
      plank([27, 155, 2000], 33, { surface: 'rough' }),
    ],
    offcuts: [],
    saw: sawIn({
      ripKerf: 2.8,
      crossKerf: 2.8,
      planing: 0.5,
      trimHead: 15,
      trimTail: 15,
      shortestRip: 300,
      narrowestRip: 12,
    }),
  },
  guard: {
    parts: parts([
      [4.5, 41, 1361, 47],
      [4.5, 41, 1113, 24],
      [4.5, 41, 886, 24],
      [18.5, 23, 902, 19],
      [28, 120, 1448, 2],
      [28, 120, 1198, 1],
      [45, 45, 1448, 4],
      [45, 45, 973, 2],
      [45, 45, 875, 8],
    ]),
    stock: [
      plank([50, 100, 3000], 19.5, { surface: 'rough' }),
      plank([50, 100, 4200], 27.3, { surface: 'rough' }),
      plank([50, 150, 3600], 35.1, { surface: 'rough' }),
    ],
    offcuts: [],
    saw: sawIn({
      ripKerf: 2.6,
      crossKerf: 3,
      planing: 0.5,
      trimHead: 10,
      trimTail: 10,
      shortestRip: 300,
      narrowestRip: 15,
    }),
  },
};

describe('the linear bound where not every way of ripping is listed', () => {
  // Gaps as measured, with a little room: 0.194, 0.132 and 0.19.
  test.each([
    ['gate', 0.2],
    ['divider', 0.14],
    ['guard', 0.2],
  ] as const)('planCutsQuick bounds the %s linearly, at most %d under its cost', (name, gap) => {
    const plan = planCutsQuick(jobs[name]);
    sawUp(plan, jobs[name]);
    expect(checkPlan(plan, jobs[name])).toEqual([]);
    expect(plan.boundKind).toBe('linear');
    expect(plan.gap).toBeLessThanOrEqual(gap);
  });

  test('planCuts with the solver makes the divider no dearer than the own core, and bounds it no higher than it costs', async () => {
    const quick = planCutsQuick(jobs.divider);
    const plan = await planCuts({ ...jobs.divider, limits: { effort: 1 } });
    sawUp(plan, jobs.divider);
    expect(checkPlan(plan, jobs.divider)).toEqual([]);
    expect(plan.cost).toBeLessThanOrEqual(quick.cost);
    expect(plan.bound).toBeLessThanOrEqual(plan.cost);
    expect(quick.bound).toBeLessThanOrEqual(plan.cost);
  });
});

/** Tenths of a millimetre, so that sizes have no common step. */
const tenths = (from: number, to: number): fc.Arbitrary<number> =>
  fc.integer({ min: from * 10, max: to * 10 }).map((n) => n / 10);

const stock = [plank([51, 153.7, 2403], 70), plank([38.3, 89.1, 2397], 31), plank([51, 153.7, 3611], 104)];
const rules = { ripKerf: 2.7, crossKerf: 3.1, planing: 0.4, shortestRip: 150, narrowestRip: 14 };

describe('the linear bound over arbitrary jobs of odd sizes', () => {
  test('planCutsQuick bounds no plan above what its boards cost when sawn by hand into strips and cross pieces', () => {
    const way = fc.record({
      b: fc.integer({ min: 0, max: 2 }),
      at: tenths(400, 900),
      strip: tenths(21, 40),
      slat: tenths(3, 9),
    });
    fc.assert(
      fc.property(fc.array(way, { minLength: 1, maxLength: 2 }), (boards) => {
        const made: Part[] = [];
        let cost = 0;
        boards.forEach(({ b, at, strip, slat }, i) => {
          const from = stock[b] as Stock;
          cost += from.price?.amount ?? 0;
          const [K, W, T] = [rules.ripKerf + 2 * rules.planing, from.width, from.thickness];
          // One crosscut; of the head a strip and the rest whole; of the tail slats off the width while it may be ripped.
          const tail = from.length - at - rules.crossKerf;
          made.push(piece(`a${i}`, [T, strip, at], 1), piece(`b${i}`, [T, W - strip - K, at], 1));
          const slats = Math.floor((W - rules.narrowestRip) / (slat + K));
          made.push(piece(`c${i}`, [slat, T, tail], slats));
        });
        const input = { parts: made, stock, offcuts: [], saw: sawIn(rules) };
        const plan = planCutsQuick(input);
        expect(plan.refusal).toBeUndefined();
        sawUp(plan, input);
        expect(checkPlan(plan, input)).toEqual([]);
        expect(plan.boundKind).toBe('linear');
        expect(plan.bound).toBeLessThanOrEqual(cost + 1e-6);
      }),
      { seed: 20261124, numRuns: 60 },
    );
  });

  test('planCutsQuick bounds no plan above what planCuts finds with more effort', async () => {
    const list = fc.array(
      fc.record({ t: tenths(4, 20), w: tenths(20, 48), l: tenths(350, 1100), n: fc.integer({ min: 1, max: 9 }) }),
      {
        minLength: 2,
        maxLength: 5,
      },
    );
    await fc.assert(
      fc.asyncProperty(list, async (rows) => {
        const input = {
          parts: parts(rows.map(({ t, w, l, n }) => [t, w, l, n])),
          stock,
          offcuts: [],
          saw: sawIn(rules),
        };
        const [quick, plan] = [planCutsQuick(input), await planCuts({ ...input, limits: { effort: 1 } })];
        sawUp(plan, input);
        expect(checkPlan(plan, input)).toEqual([]);
        expect(quick.boundKind).not.toBe('material');
        expect(quick.bound).toBeLessThanOrEqual(plan.cost);
      }),
      { seed: 20261124, numRuns: 8 },
    );
  });
});

describe('the linear bound where not every length is listed', () => {
  test('planCutsQuick bounds eighteen odd lengths linearly, above the wood alone and no higher than their cost', () => {
    const rows = Array.from({ length: 18 }, (_, k): Row => [9.3, 38.1, 197.05 + 0.05 * ((k * k * 7919) % 9973), 9]);
    const input = {
      parts: parts(rows).map((p, i) => ({ ...p, letter: `P${i}` })),
      stock: [plank([38.1, 89.3, 3603.3], 31)],
      offcuts: [],
      saw: sawIn(rules),
    };
    const plan = planCutsQuick(input);
    sawUp(plan, input);
    const wood = rows.reduce((sum, [t, w, l, n]) => sum + t * w * l * n, 0) / (38.1 * 89.3 * 3603.3);
    expect(plan.boundKind).toBe('linear');
    expect(plan.bound).toBeGreaterThan(31 * Math.ceil(wood) - 1e-9);
    expect(plan.bound).toBeLessThanOrEqual(plan.cost);
  });
});
