import { roundUp } from './bound.ts';
import { chances } from './chance.ts';
import {
  bestFit,
  costOfFillings,
  type Filling,
  fewestBoards,
  fullest,
  type Lengthwise,
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

/** The least that any plan for a lengthwise job costs. Counting and simple plans come first, and often settle it. */
export function boundPacking(job: Lengthwise): Packing {
  let bound = 0;
  let plan: readonly Filling[] | undefined;
  const known: Filling[] = [];
  const only = onlyBoard(job);
  if (only !== undefined) {
    bound = fewestBoards(job, only.top) * only.cost;
    plan = bestFit(job, only.top);
    known.push(...plan);
    if (costOfFillings(job, plan) <= bound) return { job, bound, plan, mix: undefined };
    const full = fullest(job, only.top, plan.length);
    if (full !== undefined) {
      plan = full;
      known.push(...full);
    }
    const search = searchFrom({ job, bound, plan }, worthsBySize(job), SOON.work);
    correct(search, [], SOON);
    plan = search.best;
    if (search.cost <= bound) return { job, bound, plan, mix: undefined };
  }
  const mix = fillMix(job, unlike(known));
  const [mixed] = mixUntil(mix, { job, plan }, WORK / 2);
  return { job, bound: Math.max(bound, mixed), plan, mix };
}

function unlike(fillings: readonly Filling[]): Filling[] {
  return [...new Map(fillings.map((f) => [`${f.board}|${f.items.join()}|${f.counts.join()}`, f])).values()];
}

/**
 * The cheapest fillings that the work allowed finds: dives, that settle the mixture board by board and mix anew, and
 * corrected plans for what its whole boards leave, in turns. What was left of the mixing is done first.
 */
export function searchPacking(packing: Packing, work: number = WORK, stopped: () => boolean = () => false): Packing {
  const { job, plan } = packing;
  if (packing.mix === undefined || missingOf(packing.mix) > 0) return packing;
  const mix = copyOfMix(packing.mix);
  const [mixed, spent] = mixUntil(mix, packing, work);
  const bound = Math.max(packing.bound, mixed);
  const search = searchFrom({ job, bound, plan }, worthsOf(mix), work - spent);
  for (let turn = 0; search.cost > bound && search.work > turn * TURN && !stopped(); turn++) {
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
