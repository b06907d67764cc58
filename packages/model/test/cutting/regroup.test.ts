import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chances } from '../../src/cutting/chance.ts';
import { cover } from '../../src/cutting/cover.ts';
import { bestFit, costOfFillings, type Filling, type Lengthwise, worthsBySize } from '../../src/cutting/fillings.ts';
import type { Search } from '../../src/cutting/fillup.ts';
import { fullest } from '../../src/cutting/fullest.ts';
import { regroup } from '../../src/cutting/regroup.ts';
import { addSize, eachSum, emptySums } from '../../src/cutting/sums.ts';
import { waysToFill } from '../../src/cutting/ways.ts';
import { leastBins } from './arcflow.ts';
import { lengthwiseOf, triplet } from './packings.ts';

/** Few pieces in bins of 60. */
const few = fc.array(fc.integer({ min: 4, max: 50 }), { minLength: 1, maxLength: 12 });
const ROOM = 60;

const needOf = (job: Lengthwise): Float64Array => Float64Array.from(job.items, ({ need }) => need);

/** Pieces of each item that boards make, in all. */
function made(job: Lengthwise, fillings: readonly Filling[]): number[] {
  const sum = job.items.map(() => 0);
  for (const { items, counts, times } of fillings)
    items.forEach((j, x) => {
      sum[j] = (sum[j] as number) + times * (counts[x] as number);
    });
  return sum;
}

/** What a board holds. */
function held(job: Lengthwise, { items, counts }: Pick<Filling, 'items' | 'counts'>): number {
  return items.reduce((sum, j, x) => sum + (counts[x] as number) * (job.items[j]?.size as number), 0);
}

describe('sums in bits', () => {
  test('are those that a set of numbers gives', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 90 }), { maxLength: 8 }),
        fc.integer({ min: 1, max: 200 }),
        (sizes, last) => {
          const sums = emptySums(last);
          sums[0] = 1;
          const all = new Set([0]);
          for (const size of sizes) {
            const fresh = [...all].map((sum) => sum + size).filter((sum) => sum <= last && !all.has(sum));
            const told: number[] = [];
            const grown = addSize(sums, size, last, (sum) => told.push(sum));
            expect(told.sort((a, b) => a - b)).toEqual([...new Set(fresh)].sort((a, b) => a - b));
            expect(grown).toBe(fresh.length > 0);
            for (const sum of fresh) all.add(sum);
          }
          const listed: number[] = [];
          eachSum(sums, (sum) => listed.push(sum));
          expect(listed).toEqual([...all].sort((a, b) => a - b));
        },
      ),
      { seed: 20261126, numRuns: 300 },
    );
  });
});

describe('boards of one length', () => {
  test('filled to the full make each piece once, the first as full as any can be', () => {
    fc.assert(
      fc.property(few, (sizes) => {
        const job = lengthwiseOf({ room: ROOM, sizes });
        const top = job.boards[0]?.top as number;
        const boards = fullest(job, top) as Filling[];
        expect(made(job, boards)).toEqual([...needOf(job)]);
        const room = job.at[top] as number;
        for (const board of boards) expect(held(job, board)).toBeLessThanOrEqual(room);
        // Every sum of pieces, one by one.
        const sums = new Set([0]);
        for (const size of sizes) for (const sum of [...sums]) sums.add(sum + size);
        const most = Math.max(...[...sums].filter((sum) => sum <= ROOM));
        const unit = (job.items[0]?.size as number) / Math.max(...sizes);
        expect(held(job, boards[0] as Filling) / unit).toBe(most);
        expect(
          fullest(job, top, { most: costOfFillings(job, boards) / (job.boards[0]?.cost as number) }),
        ).toBeUndefined();
      }),
      { seed: 20261126, numRuns: 200 },
    );
  });

  test('are filled in all ways that waste no more than is told', () => {
    fc.assert(
      fc.property(few, fc.integer({ min: 0, max: 12 }), (sizes, slack) => {
        const job = lengthwiseOf({ room: ROOM, sizes });
        const unit = (job.items[0]?.size as number) / Math.max(...sizes);
        const { ways, whole } = waysToFill(job.items, needOf(job), { room: ROOM * unit, slack: slack * unit });
        expect(whole).toBe(true);
        // Every choice of counts, one by one.
        const all = job.items.reduce<number[][]>(
          (lists, { need }) => lists.flatMap((list) => Array.from({ length: need + 1 }, (_, n) => [...list, n])),
          [[]],
        );
        const size = (list: readonly number[]): number =>
          list.reduce((sum, n, j) => sum + n * (job.items[j]?.size as number), 0);
        const wanted = all.filter((list) => size(list) <= ROOM * unit && size(list) >= (ROOM - slack) * unit);
        const listed = ways.map(({ items, counts }) => job.items.map((_, j) => counts[items.indexOf(j)] ?? 0));
        const text = (lists: number[][]): string[] => lists.map((list) => list.join()).sort();
        expect(text(listed)).toEqual(text(wanted));
      }),
      { seed: 20261126, numRuns: 150 },
    );
  });

  test('are covered where the solver proves that so few do, and never where it proves more', async () => {
    let found = 0;
    await fc.assert(
      fc.asyncProperty(few, async (sizes) => {
        const bins = { room: ROOM, sizes };
        const job = lengthwiseOf(bins);
        const room = job.at[job.boards[0]?.top as number] as number;
        const least = (await leastBins(bins)) as number;
        const need = needOf(job);
        for (const count of [least - 1, least]) {
          const slack = job.items.reduce((left, { size, need: n }) => left - n * size, count * room);
          if (slack < 0) continue;
          const { ways } = waysToFill(job.items, need, { room, slack });
          const covered = cover(need, ways, { count, slack, work: 1e7, chance: chances(1) });
          expect(covered.all).toBe(count === least);
          if (!covered.all) continue;
          found++;
          const boards = covered.ways.map(({ items, counts }) => ({ board: 0, items, counts, times: 1 }));
          expect(made(job, boards)).toEqual([...need]);
          expect(boards.length).toBeLessThanOrEqual(count);
        }
      }),
      { seed: 20261126, numRuns: 40 },
    );
    expect(found).toBeGreaterThan(30);
  });

  test.each([20, 40, 83])(
    '%i triplets are regrouped from best fit until every bin is full, which is the optimum by their recipe',
    (n) => {
      const chance = chances(3000 + n);
      const job = lengthwiseOf({ room: 1000, sizes: Array.from({ length: n }, () => triplet(chance)).flat() });
      const { top, cost } = job.boards[0] as Lengthwise['boards'][number];
      const best = bestFit(job, top);
      const work = 1e9;
      const before = costOfFillings(job, best);
      expect(before).toBeGreaterThan(n * cost);
      const search: Search = { job, worths: worthsBySize(job), chance, bound: n * cost, best, cost: before, work };
      regroup(search, best, work);
      expect(search.cost).toBe(n * cost);
      const plan = search.best as Filling[];
      expect(made(job, plan)).toEqual([...needOf(job)]);
      for (const board of plan) expect(held(job, board)).toBe(job.at[top]);
    },
  );
});
