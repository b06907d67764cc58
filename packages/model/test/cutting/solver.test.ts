import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { planCuts, planCutsQuick } from '../../src/index.ts';
import { board, part, saw, screens, shopJobs, yard } from './jobs.ts';
import { leastCost, lengthWays } from './judge.ts';
import { sawUp } from './walker.ts';

const seed = { seed: 20261124, numRuns: 12 };

describe('planCuts against the general solver on every pattern there is', () => {
  test('planCuts crosscutting sticks from boards of two lengths costs what the complete model costs', async () => {
    const job = fc.array(
      fc.record({ length: fc.integer({ min: 14, max: 60 }), count: fc.integer({ min: 1, max: 6 }) }),
      { minLength: 1, maxLength: 4 },
    );
    await fc.assert(
      fc.asyncProperty(job, async (list) => {
        const parts = list.map(({ length, count }, i) => part(`P${i}`, [1.5, 3.5, length], count));
        const input = {
          parts,
          stock: [board([1.5, 3.5, 96], 6), board([1.5, 3.5, 144], 8.7)],
          offcuts: [],
          saw: saw(),
        };
        const plan = await planCuts(input);
        sawUp(plan, input);
        // Eighths of an inch: every piece takes its length and one blade, every board gives one blade more.
        const sizes = list.map(({ length }) => length * 8 + 1);
        const ways = [96, 144].map((l) =>
          lengthWays(
            sizes,
            list.map((p) => p.count),
            l * 8 + 1,
          ),
        );
        const least = await leastCost(
          list.map((p) => p.count),
          [
            { cost: 600, ways: ways[0] ?? [] },
            { cost: 870, ways: ways[1] ?? [] },
          ],
        );
        expect(plan.status).toBe('optimal');
        expect(Math.round(plan.cost * 100)).toBe(least);
        expect(Math.round(planCutsQuick(input).bound * 100)).toBeLessThanOrEqual(least);
      }),
      seed,
    );
  });

  test('planCuts ripping full-length sticks costs what the complete model of all guillotine sections costs', async () => {
    const job = fc.array(
      fc.record({
        t: fc.integer({ min: 2, max: 6 }),
        w: fc.integer({ min: 4, max: 13 }),
        count: fc.integer({ min: 1, max: 8 }),
      }),
      { minLength: 1, maxLength: 3 },
    );
    await fc.assert(
      fc.asyncProperty(job, async (list) => {
        const parts = list.map(({ t, w, count }, i) => part(`P${i}`, [t / 4, w / 4, 96], count));
        const input = { parts, stock: [board([1.5, 3.5, 96], 6)], offcuts: [], saw: saw({ ripKerf: 1 / 4 }) };
        const plan = await planCuts(input);
        if (plan.status === 'impossible') {
          expect(list.some(({ t, w }) => Math.min(t, w) > 6 || Math.max(t, w) > 14)).toBe(true);
          return;
        }
        sawUp(plan, input);
        // Quarters of an inch: a section of 14 x 6, a blade of 1, a cut at every quarter.
        const ways = sections(14, 6, list);
        const least = await leastCost(
          list.map((p) => p.count),
          [{ cost: 600, ways }],
        );
        expect(Math.round(plan.cost * 100)).toBe(least);
      }),
      seed,
    );
  });
});

/** Every count of sticks that guillotine cuts at whole places can make of a section; blade 1. */
function sections(width: number, height: number, sticks: readonly { t: number; w: number }[]): number[][] {
  const memo = new Map<string, number[][]>();
  const solve = (w: number, h: number): number[][] => {
    if (w <= 0 || h <= 0) return [sticks.map(() => 0)];
    const key = `${w} ${h}`;
    const known = memo.get(key);
    if (known) return known;
    const all = new Map<string, number[]>();
    const add = (counts: number[]): void => {
      all.set(counts.join(), counts);
    };
    add(sticks.map(() => 0));
    sticks.forEach((s, i) => {
      if ((s.t === w && s.w === h) || (s.t === h && s.w === w)) add(sticks.map((_, j) => (i === j ? 1 : 0)));
    });
    const join = (a: number[][], b: number[][]): void => {
      for (const x of a) for (const y of b) add(x.map((n, i) => n + (y[i] ?? 0)));
    };
    for (let c = 1; c < w; c++) join(solve(c, h), solve(w - c - 1, h));
    for (let c = 1; c < h; c++) join(solve(w, c), solve(w, h - c - 1));
    const list = [...all.values()];
    const best = list.filter((a) => !list.some((b) => b !== a && b.every((n, i) => n >= (a[i] ?? 0))));
    memo.set(key, best);
    return best;
  };
  return solve(width, height);
}

describe('planCuts on shop jobs', () => {
  test('planCuts proves one screen of 60 x 48 at 42.10', async () => {
    const job = shopJobs.A();
    const plan = await planCuts(job);
    sawUp(plan, job);
    expect([plan.cost, plan.bound, plan.status]).toEqual([42.1, 42.1, 'optimal']);
  });

  test('planCutsQuick bounds twelve screens at 282.40 and a hundred at 3963.40, and saws both', () => {
    const [b, c] = [shopJobs.B(), shopJobs.C()];
    const [twelve, hundred] = [planCutsQuick(b), planCutsQuick(c)];
    sawUp(twelve, b);
    sawUp(hundred, c);
    expect([twelve.bound, hundred.bound]).toEqual([282.4, 3963.4]);
    expect(twelve.gap).toBeLessThan(0.06);
    expect(hundred.gap).toBeLessThan(0.015);
  });

  test('planCuts stopped before the solver starts gives the own plan; told of its progress', async () => {
    const job = { parts: screens([[44, 40, 1]]), stock: yard(), offcuts: [], saw: saw() };
    const heard: number[] = [];
    const plan = await planCuts({ ...job, signal: { aborted: true }, onProgress: (p) => heard.push(p.cost) });
    expect(plan).toEqual(planCutsQuick(job));
    expect(heard).toEqual([plan.cost]);
  });

  test('planCuts asked to stop in the middle ends there with the best plan so far', async () => {
    const job = { parts: screens([[44, 40, 1]]), stock: yard(), offcuts: [], saw: saw() };
    const readsUntil = async (last: number) => {
      let reads = 0;
      const signal = {
        get aborted() {
          return ++reads > last;
        },
      };
      return { plan: await planCuts({ ...job, signal }), reads };
    };
    const whole = await readsUntil(Number.POSITIVE_INFINITY);
    expect(whole.reads).toBeGreaterThan(20);
    const half = Math.floor(whole.reads / 2);
    const { plan, reads } = await readsUntil(half);
    sawUp(plan, job);
    expect(reads - half).toBeLessThan(8);
    expect(plan.cost).toBeLessThanOrEqual(planCutsQuick(job).cost);
    expect(plan.cost).toBeGreaterThanOrEqual(whole.plan.cost);
  });

  test('planCuts with more effort never costs more', async () => {
    const job = { parts: screens([[44, 40, 1]]), stock: yard(), offcuts: [], saw: saw() };
    const costs = [planCutsQuick(job).cost];
    for (const effort of [1, 2]) costs.push((await planCuts({ ...job, limits: { effort } })).cost);
    expect(costs).toEqual([...costs].sort((a, b) => b - a));
  });

  test('planCutsQuick without prices uses the least wood and says so', () => {
    const job = {
      parts: [part('A', [1.5, 3.5, 45], 5)],
      stock: [96, 144].map((l) => {
        const { price: _, ...free } = board([1.5, 3.5, l], 0);
        return free;
      }),
      offcuts: [],
      saw: saw(),
    };
    const plan = planCutsQuick(job);
    sawUp(plan, job);
    // 2 pieces of a 96, 3 of a 144: 240 in of board, 1 1/2 x 3 1/2.
    expect([plan.costIs, plan.cost]).toEqual([
      'wood',
      Math.round(96 * 5.25 * 16387.064) + Math.round(144 * 5.25 * 16387.064),
    ]);
  });

  test('planCutsQuick prices by foot, metre and board foot', () => {
    const priced = (per: 'foot' | 'metre' | 'board foot'): number =>
      planCutsQuick({
        parts: [part('A', [1.5, 3.5, 90], 1)],
        stock: [board([1.5, 3.5, 96], 0, { price: { amount: 2, per } })],
        offcuts: [],
        saw: saw(),
      }).cost;
    // 8 ft x 2; 2.4384 m x 2; 1.5 x 3.5 x 96 / 144 = 3.5 board feet x 2
    expect([priced('foot'), priced('metre'), priced('board foot')]).toEqual([16, 4.88, 7]);
  });
});
