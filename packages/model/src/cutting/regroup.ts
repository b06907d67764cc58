import { cover } from './cover.ts';
import { bestFit, type Filling, type Lengthwise, onlyBoard } from './fillings.ts';
import { keepBest, type Search } from './fillup.ts';
import type { StickItem } from './sticks.ts';
import { waysToFill } from './ways.ts';

/** Times that all boards are gone through once, before some of them are searched. */
const SWEEPS = 2;

/** Pieces on the boards that are searched, at most and at least: more have more ways to fit, but take longer. */
const [MOST, LEAST] = [110, 12];

/** Most work of one search. */
const TRY = 1e5;

/**
 * From the boards of a plan, those that are least full and others by chance: fewer boards that hold just their pieces; over
 * and over, from the boards that came of it, until the work is done. For boards of one length that there is no end of.
 */
export function regroup(search: Search, start: readonly Filling[] | undefined, work: number): void {
  const { job, bound, chance } = search;
  const only = onlyBoard(job);
  if (only === undefined || start === undefined) return;
  const end = search.work - work;
  const room = job.at[only.top] as number;
  const fewest = Math.round(bound / only.cost);
  let boards = start.flatMap((filling) => Array.from({ length: filling.times }, () => ({ ...filling, times: 1 })));
  let [sweeps, limit] = [SWEEPS, MOST];
  while (search.cost > bound && search.work > end && limit >= LEAST) {
    const excess = boards.length - fewest;
    const [taken, others] = pick({ job, room, chance }, boards, { excess, most: sweeps > 0 ? Infinity : limit });
    const need = piecesOf(job, taken);
    const pieces = need.reduce((sum, n) => sum + n, 0);
    const count = taken.length - excess;
    const slack = need.reduce((sum, n, j) => sum - n * (job.items[j] as StickItem).size, count * room);
    const listed = waysToFill(job.items, need, { room, slack });
    search.work -= listed.work + EACH * job.items.length;
    if (!listed.whole) {
      [sweeps, limit] = [0, (sweeps > 0 ? pieces : Math.min(limit, pieces)) / 2];
      continue;
    }
    const covered = cover(need, listed.ways, { slack, count, work: sweeps > 0 ? 0 : TRY, chance });
    search.work -= covered.work;
    const made = covered.ways.map(({ items, counts }): Filling => ({ board: 0, items, counts, times: 1 }));
    const next = [...others, ...made, ...bestFit(without(job, need, made), only.top)];
    if (unevenness(job, next) >= unevenness(job, boards)) boards = next;
    keepBest(search, boards);
    if (sweeps > 0) sweeps--;
    else limit = covered.work < TRY ? Math.min(1.1 * limit, MOST) : 0.9 * Math.min(limit, pieces);
  }
}

/** Work of each try besides its search, per item. */
const EACH = 100;

/** How unevenly boards are filled: the more so, the sooner one is empty. */
function unevenness(job: Lengthwise, boards: readonly Filling[]): number {
  return boards.reduce((sum, board) => sum + sizeOf(job, board) ** 2, 0);
}

/** The job of what boards do not make of what is needed. */
function without(job: Lengthwise, need: Float64Array, made: readonly Filling[]): Lengthwise {
  const done = piecesOf(job, made);
  const items = job.items.map((item, j) => ({ ...item, need: (need[j] as number) - (done[j] as number) }));
  return { ...job, items };
}

interface Picking {
  readonly job: Lengthwise;
  readonly room: number;
  readonly chance: () => number;
}

/**
 * The boards that are least full, so many that their waste makes up the boards in excess, with others up to so many pieces;
 * and the rest.
 */
function pick(
  { job, room, chance }: Picking,
  boards: readonly Filling[],
  { excess, most }: { readonly excess: number; readonly most: number },
): [taken: Filling[], others: Filling[]] {
  const emptiest = boards
    .map((filling) => ({ filling, waste: room - sizeOf(job, filling), by: chance() }))
    .sort((a, b) => b.waste - a.waste);
  let [waste, pieces] = [0, 0];
  const least = emptiest.findIndex((board) => {
    waste += board.waste;
    pieces += countOf(board.filling);
    return waste >= excess * room;
  });
  const others = emptiest.splice(least + 1).sort((a, b) => a.waste - b.waste || a.by - b.by);
  const beyond = others.findIndex(({ filling }) => {
    pieces += countOf(filling);
    return pieces > most;
  });
  const split = beyond < 0 ? others.length : beyond;
  const taken = [...emptiest, ...others.splice(0, split)];
  return [taken.map(({ filling }) => filling), others.map(({ filling }) => filling)];
}

function countOf({ counts }: Filling): number {
  return counts.reduce((sum, n) => sum + n, 0);
}

function sizeOf({ items }: Lengthwise, { items: held, counts }: Filling): number {
  return held.reduce((sum, j, x) => sum + (counts[x] as number) * (items[j] as StickItem).size, 0);
}

/** Pieces of each item on some boards. */
function piecesOf(job: Lengthwise, boards: readonly Filling[]): Float64Array {
  const pieces = new Float64Array(job.items.length);
  for (const { items, counts, times } of boards) {
    items.forEach((j, x) => {
      pieces[j] = (pieces[j] as number) + times * (counts[x] as number);
    });
  }
  return pieces;
}
