import { describe, expect, test } from 'vitest';
import { chooseSlatHeight, planWithFreeHeight, slatHeights, withKerf } from '../../src/index.ts';
import { board, part, saw } from './jobs.ts';

const IN = 25.4;
const stock = [board([1.5, 3.5, 96], 100, { grade: 'clear' })];
const range = { from: 1.375 * IN, to: 1.75 * IN, step: IN / 16, cover: 33.75 * IN, gap: 0, stock, saw: saw() };

describe('slatHeights and the choice among them', () => {
  test('slatHeights holds the ends, the even division (3 1/2 - 1/8) / 2 = 1 11/16 and 33 3/4 / n, all on the grid', () => {
    const heights = slatHeights(range).map(({ height, courses }) => [Math.round((height / IN) * 16) / 16, courses]);
    // 33.75 / 20 = 1.6875 and / 21 = 1.607 (1 9/16), / 22 = 1.534 (1 1/2), / 23 = 1.467 (1 7/16), / 24 = 1.406 (1 3/8)
    expect(heights).toEqual([
      [1.375, 25],
      [1.4375, 24],
      [1.5, 23],
      [1.5625, 22],
      [1.6875, 20],
      [1.75, 20],
    ]);
  });

  test('slatHeights throws on a range that is none', () => {
    expect(() => slatHeights({ ...range, from: 50, to: 40 })).toThrow('slat height from 50 to 40');
  });

  test('chooseSlatHeight takes 20 courses of 1 11/16 from 2 boards where 1 1/2 takes 3', () => {
    const chosen = chooseSlatHeight({
      heights: slatHeights(range),
      partsAt: ({ height, courses }) => [part('A', [3 / 16, height / IN, 96], courses, { grade: 'clear' })],
      plain: 2,
      stock,
      offcuts: [],
      saw: saw(),
    });
    expect(chosen.candidates[chosen.chosen]).toMatchObject({ courses: 20, plan: { cost: 200, status: 'optimal' } });
    expect(chosen.saved).toBe(100);
    expect(chosen.plan.cost).toBe(200);
  });

  test('planWithFreeHeight does not plan a height that cannot be cheaper, but for the plain one', () => {
    const at = (height: number, count: number) => ({
      height,
      courses: count,
      parts: [part('A', [1.5, height, 96], count)],
    });
    const three = [at(3.5, 9), at(1.625, 9), at(3.5, 8)];
    const free = planWithFreeHeight({ candidates: three, stock, offcuts: [], saw: saw() });
    expect([free.chosen, free.candidates.map(({ plan }) => plan?.cost)]).toEqual([1, [undefined, 500, undefined]]);
    const plain = planWithFreeHeight({ candidates: three, plain: 0, stock, offcuts: [], saw: saw() });
    expect([plain.candidates.map(({ plan }) => plan?.cost), plain.saved]).toEqual([[900, 500, undefined], 400]);
  });

  test('planWithFreeHeight passes over heights that no board can yield', () => {
    const at = (height: number) => ({ height, courses: 1, parts: [part('A', [1.5, height, 40], 1)] });
    const plan = planWithFreeHeight({ candidates: [at(9), at(3)], stock, offcuts: [], saw: saw() });
    expect([plan.chosen, plan.candidates[0]?.plan?.status]).toEqual([1, 'impossible']);
    expect(planWithFreeHeight({ candidates: [at(9)], stock, offcuts: [], saw: saw() }).chosen).toBe(-1);
  });

  test('withKerf: strips of 3/16 from 3 1/2 are 11 with a 1/8 blade, 14 with 1/16', () => {
    const job = { parts: [part('A', [3 / 16, 1.5, 96], 14)], stock, offcuts: [], saw: saw() };
    expect([withKerf(job, IN / 8).cost, withKerf(job, IN / 16).cost]).toEqual([200, 100]);
  });
});
