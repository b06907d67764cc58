import { roundUp } from './bound.ts';
import { costOfFillings, type Filling, type Lengthwise } from './fillings.ts';
import { type FillMix, takeFilling, topOf } from './fillmix.ts';
import { knapsack } from './knapsack.ts';

/** A search for cheap fillings under way. */
export interface Search {
  readonly job: Lengthwise;
  /** Worths at which no board is worth more than it costs. */
  readonly worths: Float64Array;
  readonly chance: () => number;
  readonly bound: number;
  best: readonly Filling[] | undefined;
  cost: number;
  /** Work left. */
  work: number;
}

/** What is still open. */
type Open = Pick<FillMix, 'need' | 'left'>;

/** Keeps a plan that is cheaper than the best so far. */
export function keepBest(search: Search, plan: readonly Filling[]): void {
  const cost = costOfFillings(search.job, plan);
  if (cost >= search.cost) return;
  search.best = plan;
  search.cost = cost;
}

/** Whether nothing is needed any more. */
export function isMade({ need }: Pick<FillMix, 'need'>): boolean {
  return need.every((n) => n <= 0);
}

/** Board by board by most worth for its cost, without a piece too many; given up where it must cost `most` or more. */
export function fillUp(
  search: Search,
  open: Open,
  worths: Float64Array,
  most: number,
): { readonly fillings: readonly Filling[]; readonly done: boolean } {
  const { job } = search;
  const endless = job.boards.every((board) => board.most === Number.POSITIVE_INFINITY);
  const now = { need: open.need.slice(), left: open.left.slice() };
  const fillings: Filling[] = [];
  let cost = 0;
  while (!isMade(now)) {
    // No pieces can be made for less than they are worth, but by boards at hand for less.
    const more = endless ? now.need.reduce((sum, n, j) => sum + n * (search.worths[j] as number), 0) : 0;
    if (cost + roundUp(more, job.step) >= most) return { fillings, done: false };
    const filled = knapsack(job.items, topOf(job), worths, now.need);
    search.work -= filled.work;
    const rate = (b: number): number => {
      const { top, cost: asked } = job.boards[b] as Lengthwise['boards'][number];
      return (now.left[b] as number) < 1 ? 0 : (filled.worth[top] as number) / (asked + FREE);
    };
    const board = [...job.boards.keys()].reduce((best, b) => (rate(b) > rate(best) ? b : best), 0);
    if (rate(board) === 0) return { fillings, done: false };
    const found = filled.read(job.boards[board]?.top as number);
    const times = found.items.reduce(
      (least, j, x) => Math.min(least, Math.floor((now.need[j] as number) / (found.counts[x] as number))),
      now.left[board] as number,
    );
    const filling = { board, ...found, times };
    takeFilling(now, filling);
    fillings.push(filling);
    cost += costOfFillings(job, [filling]);
  }
  return { fillings, done: cost < most };
}

/** Stands in for the cost of a free offcut in a ratio. */
const FREE = 1e-3;

/**
 * Sequential value correction: plans one after the other, each with the worth of a piece moved towards what it truly cost in
 * the one before. After Mukhacheva and others, as told by Belov and Scheithauer, Operations Research Spektrum 29 (2007).
 * They start where boards are settled.
 */
export function correct(search: Search, settled: readonly Filling[], most: { rounds: number; work: number }): void {
  const { job, chance } = search;
  const need = Float64Array.from(job.items, (item) => item.need);
  const open = { need, left: Float64Array.from(job.boards, (board) => board.most) };
  for (const filling of settled) takeFilling(open, filling);
  const cost = costOfFillings(job, settled);
  let worths: Float64Array = search.worths.slice();
  const end = search.work - most.work;
  for (let round = 0; round < most.rounds && search.cost > search.bound && search.work > end; round++) {
    const { fillings, done } = fillUp(search, open, worths, search.cost - cost);
    if (done) keepBest(search, [...settled, ...fillings]);
    worths = corrected(search, fillings, worths, chance);
  }
}

function corrected(
  { job, worths: least }: Search,
  fillings: readonly Filling[],
  worths: Float64Array,
  chance: () => number,
): Float64Array {
  const paid = new Float64Array(worths.length);
  const made = new Float64Array(worths.length);
  for (const filling of fillings) {
    const { items, counts, times } = filling;
    const sum = items.reduce((s, j, x) => s + (counts[x] as number) * (worths[j] as number), 0);
    const dear = costOfFillings(job, [filling]) / times / sum;
    items.forEach((j, x) => {
      const n = times * (counts[x] as number);
      made[j] = (made[j] as number) + n;
      paid[j] = (paid[j] as number) + n * dear * (worths[j] as number);
    });
  }
  // What a plan that was given up did not come to is worth more next time.
  return worths.map((w, j) => {
    if ((made[j] as number) === 0) return 1.1 * w;
    const even = 0.5 * w + (0.5 * (paid[j] as number)) / (made[j] as number);
    return Math.max(0.5 * (least[j] as number), even) * (1 + 0.02 * (chance() - 0.5));
  });
}
