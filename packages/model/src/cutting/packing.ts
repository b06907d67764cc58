import { roundUp } from './bound.ts';
import { chances } from './chance.ts';
import {
  bestFit,
  costOfFillings,
  type Filling,
  fewestBoards,
  type Lengthwise,
  longestFirst,
  onlyBoard,
  worthsBySize,
} from './fillings.ts';
import {
  copyOfMix,
  type FillMix,
  fillMix,
  levelsOf,
  missingOf,
  mixFillings,
  narrowed,
  openShare,
  restoreMix,
  settleFilling,
  worthsOf,
} from './fillmix.ts';
import { correct, fillUp, isMade, keepBest, type Search } from './fillup.ts';
import { fullest } from './fullest.ts';
import { regroup } from './regroup.ts';

/** A lengthwise job with the least that any plan for it costs, and a plan where one is known. */
export interface Packing {
  readonly job: Lengthwise;
  /** No plan costs less. */
  readonly bound: number;
  /** Fillings that make every piece; `undefined` where none are known. */
  readonly plan: readonly Filling[] | undefined;
  /** The mixture of fillings; `undefined` where the bound needed none. */
  readonly mix: FillMix | undefined;
}

/** Work of one search in table cells and entries of the program, roughly. */
const WORK = 6e8;

/** What each turn of the search counts besides its own work, so that few pieces are not gone over without end. */
const TURN = 4e7;

/** Corrected plans before a mixture is made, and between two dives. */
const [SOON, BETWEEN] = [
  { rounds: 20, work: 2e7 },
  { rounds: 50, work: 3e7 },
];

/** Rounds of column generation of the whole job, and after boards were settled. */
const [ROUNDS, MORE] = [2000, 60];

/** Items and boards' room that may be left over, as a part of one board, from which boards are regrouped before a mixture is made. */
const [MANY, TIGHT] = [120, 20];

/** Orders in which boards are filled to the full before a mixture is made, and how far sizes are shifted for them. */
const [ORDERS, SHIFT] = [16, 0.6];

/** The least that any plan for a lengthwise job costs. Counting and simple plans come first, and often settle it. */
export function boundPacking(job: Lengthwise): Packing {
  const only = onlyBoard(job);
  const bound = only === undefined ? 0 : fewestBoards(job, only.top) * only.cost;
  // Each step has a budget of its own.
  const search = searchFrom({ job, bound, plan: undefined }, worthsBySize(job), Number.MAX_SAFE_INTEGER);
  const known = only === undefined ? [] : packSimply(search, only);
  const plan = search.best;
  if (search.cost <= bound) return { job, bound, plan, mix: undefined };
  const mix = fillMix(job, unlike(known));
  const [mixed] = mixUntil(mix, { job, plan }, WORK / 2);
  return { job, bound: Math.max(bound, mixed), plan, mix };
}

/** Simple plans, the quickest first, until one costs no more than the bound; tells the fillings of all. */
function packSimply(search: Search, { top, cost }: Lengthwise['boards'][number]): Filling[] {
  const { job, bound, chance } = search;
  const known = bestFit(job, top);
  keepBest(search, known);
  for (let n = 0; n < ORDERS && search.cost > bound; n++) {
    const order = longestFirst(job.items, n === 0 ? undefined : () => 1 + SHIFT * chance());
    const full = fullest(job, top, { order, most: search.cost / cost });
    if (full === undefined) continue;
    keepBest(search, full);
    known.push(...full);
  }
  const room = job.at[top] as number;
  const spare = job.items.reduce((left, { size, need }) => left - size * need, (room * bound) / cost);
  // Elsewhere a mixture takes less time.
  if (job.items.length <= MANY && spare > room / TIGHT) return known;
  correct(search, [], SOON);
  const work = Math.min(6e7, 3 * job.items.length ** 3);
  regroup(search, fullest(job, top), work);
  regroup(search, search.best, work);
  return known;
}

function unlike(fillings: readonly Filling[]): Filling[] {
  return [...new Map(fillings.map((f) => [`${f.board}|${f.items.join()}|${f.counts.join()}`, f])).values()];
}

/**
 * The cheapest fillings that the work allowed finds: boards regrouped, dives that settle the mixture board by
 * board and mix anew, and corrected plans for what its whole boards leave, in turns. What was left of the mixing is done first.
 */
export function searchPacking(packing: Packing, work: number = WORK, stopped: () => boolean = () => false): Packing {
  const { job, plan } = packing;
  if (packing.mix === undefined || missingOf(packing.mix) > 0) return packing;
  const mix = copyOfMix(packing.mix);
  const [mixed, spent] = mixUntil(mix, packing, work);
  const bound = Math.max(packing.bound, mixed);
  const search = searchFrom({ job, bound, plan }, worthsOf(mix), work - spent);
  const only = onlyBoard(job);
  for (let turn = 0; search.cost > bound && search.work > turn * TURN && !stopped(); turn++) {
    const start = only && turn % 2 === 0 ? fullest(job, only.top) : search.best;
    regroup(search, start, Math.min(3e7, 2 * (turn + 1) * job.items.length ** 3));
    if (search.cost <= bound) break;
    dive(search, mix, turn);
    // Where correcting has not helped twice it seldom does.
    if (turn < 2 || turn % 3 === 0) correct(search, wholeOf(mix, turn % 3), BETWEEN);
  }
  return { job, bound, plan: search.best, mix };
}

/** Mixes until that says no more, or the work is done: what is proven, and the work. */
function mixUntil(mix: FillMix, { job, plan }: Pick<Packing, 'job' | 'plan'>, work: number): [number, number] {
  const cost = plan === undefined ? Number.POSITIVE_INFINITY : costOfFillings(job, plan);
  let spent = 0;
  const worked = (more: number): void => {
    spent += more;
  };
  const enough = (proven: number, mixed: number): boolean =>
    missingOf(mix) === 0 && (spent > work || roundUp(proven, job.step) >= Math.min(cost, roundUp(mixed, job.step)));
  const proven = mixFillings(mix, { rounds: ROUNDS, enough, worked });
  return [roundUp(proven, job.step), spent];
}

function searchFrom({ job, bound, plan }: Omit<Packing, 'mix'>, worths: Float64Array, work: number): Search {
  const cost = plan === undefined ? Number.POSITIVE_INFINITY : costOfFillings(job, plan);
  return { job, worths, chance: chances(5), bound, best: plan, cost, work };
}

/** The whole boards of a mixture, `fewer` of each. */
function wholeOf(mix: FillMix, fewer = 0): Filling[] {
  return levelsOf(mix).flatMap(({ filling, level }) => {
    const times = Math.floor(level + 1e-4) - fewer;
    return times < 1 ? [] : [{ ...filling, times }];
  });
}

/** Share of a mixture's items still needed below which the others are dropped from it. */
const NARROW = 0.75;

/** Settles whole boards of the mixture, or else the one nearest to a whole, and mixes anew, until all is made. */
function dive(search: Search, whole: FillMix, turn: number): void {
  const { job, chance } = search;
  let mix = copyOfMix(whole);
  const settled: Filling[] = [];
  const settle = (filling: Filling): void => {
    settled.push(filling);
    settleFilling(mix, filling);
  };
  const worked = (work: number): void => {
    search.work -= work;
  };
  for (;;) {
    const settling = wholeOf(mix);
    for (const filling of settling) settle(filling);
    if (settling.length === 0) {
      // Later dives leave more to chance.
      const next = nearest(mix, turn === 0 ? () => 0 : () => 0.15 * chance());
      if (next === undefined) break;
      settle(next);
    }
    if (isMade(mix)) break;
    if (openShare(mix) < NARROW || !restoreMix(mix)) mix = narrowed(mix);
    const cost = costOfFillings(job, settled);
    const enough = (proven: number): boolean => cost + roundUp(proven, job.step) >= search.cost;
    if (enough(mixFillings(mix, { rounds: MORE, enough, worked })) || search.work <= 0) break;
  }
  const end = fillUp(search, mix, search.worths, search.cost - costOfFillings(job, settled));
  if (end.done) keepBest(search, [...settled, ...end.fillings]);
}

/** One board by the filling whose level is highest, cut to what is still needed. */
function nearest(mix: FillMix, chance: () => number): Filling | undefined {
  const { need, left } = mix;
  let next: Filling | undefined;
  let highest = Number.NEGATIVE_INFINITY;
  for (const { filling, level } of levelsOf(mix)) {
    const score = level + chance();
    if ((left[filling.board] as number) < 1 || score <= highest) continue;
    highest = score;
    next = filling;
  }
  return next && { ...next, counts: next.counts.map((n, x) => Math.min(n, need[next.items[x] as number] as number)) };
}
