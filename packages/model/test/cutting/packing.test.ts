import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chances } from '../../src/cutting/chance.ts';
import { fewestBoards } from '../../src/cutting/fillings.ts';
import { type CuttingInput, checkPlan, planCuts, planCutsQuick, type Stock } from '../../src/index.ts';
import { leastBins } from './arcflow.ts';
import { board, part, saw } from './jobs.ts';
import { leastCost, lengthWays } from './judge.ts';
import { lengthwiseOf, packing, packingSets, triplet } from './packings.ts';
import { sawUp } from './walker.ts';

describe('planCuts on one-dimensional sets made by their published recipes', () => {
  test.each([1, 2, 3])('uniform: 120 of 20 to 100 in 150, instance %i, needs no more than is proven', async (n) => {
    const chance = chances(1000 + n);
    const bins = { room: 150, sizes: Array.from({ length: 120 }, () => 20 + Math.floor(chance() * 81)) };
    const plan = await planCuts(packing(bins));
    sawUp(plan, packing(bins));
    expect(plan.status).toBe('optimal');
    expect(plan.cost).toBe(await leastBins(bins));
  });

  test.each([1, 2, 3])('triplets: 30 in 1000, instance %i, of which every bin can be filled: ten bins', async (n) => {
    const chance = chances(2000 + n);
    const input = packing({ room: 1000, sizes: Array.from({ length: 10 }, () => triplet(chance)).flat() });
    expect(planCutsQuick(input).bound).toBeLessThanOrEqual(10);
    const plan = await planCuts(input);
    sawUp(plan, input);
    expect(plan.cost).toBe(10);
  });

  test.each(packingSets.map((set) => [set.name, set] as const))(
    '%s: the own core packs small instances of every class, and no bound is above what is proven',
    async (_, set) => {
      const small = set.make(0.01).filter(({ sizes }) => sizes.length <= 120);
      const plans = small.map((bins) => ({ bins, plan: planCutsQuick(packing(bins)) }));
      for (const { bins, plan } of plans) expect(checkPlan(plan, packing(bins))).toEqual([]);
      for (const { bins, plan } of plans) {
        // In larger ones the solver takes minutes: there the size of all pieces must do.
        const solvable = bins.room <= 120 && bins.sizes.length <= 50;
        const material = Math.ceil(bins.sizes.reduce((a, b) => a + b) / bins.room);
        const least = (solvable && (await leastBins(bins))) || material;
        expect(plan.cost).toBeGreaterThanOrEqual(least);
        // Every bin of theirs can be filled.
        if (set.name === 'triplets') expect(plan.cost).toBe(least);
        if (solvable || set.name === 'triplets') expect(plan.bound).toBeLessThanOrEqual(least);
      }
      const proven = plans.filter(({ plan }) => plan.status === 'optimal').length;
      expect(proven / plans.length).toBeGreaterThan(0.9);
    },
  );
});

/** A small job of pieces in eighths of an inch, of boards of two lengths, some of which are not many or cost nothing. */
const small = fc.record({
  list: fc.array(fc.record({ length: fc.integer({ min: 100, max: 500 }), count: fc.integer({ min: 1, max: 5 }) }), {
    minLength: 1,
    maxLength: 4,
  }),
  few: fc.integer({ min: 0, max: 3 }),
  rack: fc.integer({ min: 0, max: 2 }),
});

type Small = typeof small extends fc.Arbitrary<infer T> ? T : never;

function jobOf({ list, few, rack }: Small): CuttingInput {
  const parts = list.map(({ length, count }, i) => part(`P${i}`, [1.5, 3.5, length / 8], count));
  const short = board([1.5, 3.5, 64], 3, { count: few });
  const stock: Stock[] = [board([1.5, 3.5, 96], 6), ...(few > 0 ? [short] : [])];
  const offcut = board([1.5, 3.5, 63], 0, { count: rack });
  return { parts, stock, offcuts: rack > 0 ? [offcut] : [], saw: saw() };
}

describe('boards that are only crosscut', () => {
  test('cost what the complete model costs, with few boards of one length and a rack too', async () => {
    await fc.assert(
      fc.asyncProperty(small, async (of) => {
        const job = jobOf(of);
        const plan = await planCuts(job);
        sawUp(plan, job);
        const quick = planCutsQuick(job);
        expect(checkPlan(quick, job)).toEqual([]);
        const need = of.list.map(({ count }) => count);
        const sizes = of.list.map(({ length }) => length + 1);
        const least = await leastCost(need, [
          { cost: 600, ways: lengthWays(sizes, need, 96 * 8 + 1) },
          { cost: 300, ways: lengthWays(sizes, need, 64 * 8 + 1), most: of.few },
          { cost: 0, ways: lengthWays(sizes, need, 63 * 8 + 1), most: of.rack },
        ]);
        expect([Math.round(plan.cost * 100), plan.status]).toEqual([least, 'optimal']);
        expect(Math.round(quick.bound * 100)).toBeLessThanOrEqual(least);
        expect(Math.round(quick.cost * 100)).toBeGreaterThanOrEqual(least);
      }),
      { seed: 20261126, numRuns: 25 },
    );
  });

  test('fewestBoards counts no more than are needed, and as many for pieces over half a board', async () => {
    const bins = fc.array(fc.integer({ min: 1, max: 30 }), { minLength: 1, maxLength: 12 });
    await fc.assert(
      fc.asyncProperty(bins, async (sizes) => {
        const job = lengthwiseOf({ room: 30, sizes });
        const counted = fewestBoards(job, job.boards[0]?.top as number);
        expect(counted).toBeLessThanOrEqual((await leastBins({ room: 30, sizes })) as number);
        expect(counted).toBeGreaterThanOrEqual(sizes.filter((s) => s > 15).length);
        expect(counted).toBeGreaterThanOrEqual(Math.ceil(sizes.reduce((a, b) => a + b) / 30));
      }),
      { seed: 20261126, numRuns: 40 },
    );
  });
});
