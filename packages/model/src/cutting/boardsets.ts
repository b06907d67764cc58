import type { Highs } from 'highs';
import { type Mixture, mixture, type Rest } from './bound.ts';
import { flowBelow } from './flow.ts';
import type { BoardRoom, Nested } from './nested.ts';
import { price } from './pricing.ts';
import { type Solved, type SolverWork, searchFlow } from './solver.ts';

/** A board with a price, and how many of it a plan may buy. */
interface Priced {
  readonly room: number;
  readonly board: number;
  readonly cost: number;
  readonly most: number;
}

/** What is to be cut, and its best mixture. */
interface Whole {
  readonly nested: Nested;
  readonly rest: Rest;
  readonly mix: Mixture;
}

/** Counts, one per priced board. */
type BoardSet = readonly number[];

/** What every set of boards that can make the pieces fulfils: its values for the counts add up to 1 or more. */
interface Cut {
  readonly values: readonly number[];
}

/** The solver's iterations for one set, at most; a set left open then is passed over and its cost bounds the plan. */
const ONE_SET = 8000;

/** Choices of one set, at most; the solver is not asked about one with more. */
const MOST_CHOICES = 2500;

/** Steps in the search for the next set, at most. */
const STEPS = 400_000;

const TIGHT = 1 - 1e-6;

/**
 * The cheapest plan, by sets of boards, cheapest first. Boards are few and dear and patterns many, so the
 * boards alone are chosen, and each set is tried: can it make every piece if patterns may be mixed in fractions? If not,
 * worths that prove it rule out all sets worth too little (Benders, Numerische Mathematik 4, 1962). Can it in whole
 * patterns? The solver tells in little time, since what it may buy is settled; if not, every set within it is ruled out.
 * The first set that can is the cheapest, since all cheaper ones are ruled out. `most` is the most a plan may cost.
 */
export function searchSets(highs: Highs, { nested, rest, mix }: Whole, most: number, work: SolverWork): Solved {
  const step = nested.problem.costStep;
  const boards = pricedBoards(nested, rest, most);
  const cuts: Cut[] = [];
  const refused: BoardSet[] = [];
  const first = cutBy(nested, rest, boards, mix.worth);
  if (first) cuts.push(first);
  let known = mix.known;
  let open = Number.POSITIVE_INFINITY;
  let spent = 0;
  for (let from = 0; ; ) {
    const set = cheapestSet(boards, { cuts, refused, from, most, step });
    if (set === 'given up' || work.stopped() || spent > work.iterations) {
      return { tallied: undefined, bound: Math.min(open, from), infeasible: false, iterations: spent };
    }
    if (set === undefined) {
      const infeasible = open === Number.POSITIVE_INFINITY;
      return { tallied: undefined, bound: Math.min(open, most + step), infeasible, iterations: spent };
    }
    from = costOfSet(boards, set);
    work.told(Math.min(open, from));
    const within: Rest = { need: rest.need, left: leftOf(nested, rest, boards, set) };
    const mixed = mixture(nested, within, { cost: () => 0, known, rounds: 60 });
    known = mixed.known;
    const cut = cutBy(nested, rest, boards, mixed.worth);
    if (cut && worthOfSet(cut, set) < TIGHT) {
      cuts.push(cut);
      continue;
    }
    const flow = flowBelow(nested, within, mixture(nested, within, { known, rounds: 60 }), {
      below: from,
      most: MOST_CHOICES,
    });
    if (!flow.complete) {
      open = Math.min(open, from);
      refused.push(set);
      continue;
    }
    const tried = searchFlow(highs, flow, new Map(), { ...work, iterations: ONE_SET, told: () => undefined });
    spent += tried.iterations;
    if (tried.tallied) return { ...tried, bound: Math.min(open, from), infeasible: false, iterations: spent };
    if (!tried.infeasible) open = Math.min(open, from);
    refused.push(set);
  }
}

/** The boards that cost something; free ones are at hand for every set. */
function pricedBoards(nested: Nested, rest: Rest, most: number): Priced[] {
  return nested.rooms.flatMap(({ boards }, room) =>
    boards.flatMap(({ cost }, board) => {
      const top = Math.min(rest.left[room]?.[board] as number, Math.floor(most / cost));
      return cost > 0 && top > 0 ? [{ room, board, cost, most: top }] : [];
    }),
  );
}

/** What worths of pieces demand of a set; `undefined` where they demand nothing. */
function cutBy(nested: Nested, rest: Rest, boards: readonly Priced[], worth: Float64Array): Cut | undefined {
  price(nested, worth);
  const valueAt = (r: number, b: number): number => {
    const room = nested.rooms[r] as BoardRoom;
    return room.worth[room.top[b] as number] as number;
  };
  let least = rest.need.reduce((sum, need, d) => sum + need * (worth[d] as number), 0);
  nested.rooms.forEach((room, r) => {
    room.boards.forEach(({ cost }, b) => {
      if (cost === 0) least -= (rest.left[r]?.[b] as number) * valueAt(r, b);
    });
  });
  // Grains of worth are below what pricing tells apart.
  if (!(least > 1e-3)) return undefined;
  return { values: boards.map(({ room, board }) => valueAt(room, board) / least) };
}

function worthOfSet({ values }: Cut, set: BoardSet): number {
  return values.reduce((sum, value, i) => sum + value * (set[i] as number), 0);
}

function costOfSet(boards: readonly Priced[], set: BoardSet): number {
  return boards.reduce((sum, { cost }, i) => sum + cost * (set[i] as number), 0);
}

/** How many of each board there are when a set is bought. */
function leftOf(nested: Nested, rest: Rest, boards: readonly Priced[], set: BoardSet): number[][] {
  const left = nested.rooms.map((room, r) =>
    room.boards.map((b, i) => (b.cost > 0 ? 0 : (rest.left[r]?.[i] as number))),
  );
  boards.forEach(({ room, board }, i) => {
    (left[room] as number[])[board] = set[i] as number;
  });
  return left;
}

interface Sought {
  readonly cuts: readonly Cut[];
  /** Sets that are ruled out with all sets within them. */
  readonly refused: readonly BoardSet[];
  /** No set costs less. */
  readonly from: number;
  readonly most: number;
  readonly step: number;
}

/** The cheapest set that fulfils all cuts and is not ruled out. It costs little more than `from` as a rule: looked for there first. */
function cheapestSet(boards: readonly Priced[], sought: Sought): BoardSet | 'given up' | undefined {
  const { from, most, step } = sought;
  for (let over = 4 * step; ; over *= 4) {
    const found = setWithin(boards, { ...sought, most: Math.min(most, from + over) });
    if (found !== undefined || from + over >= most) return found;
  }
}

/** Branch and bound over counts, board by board. */
function setWithin(
  boards: readonly Priced[],
  { cuts, refused, from, most, step }: Sought,
): BoardSet | 'given up' | undefined {
  const n = boards.length;
  // Per cut and board: the most that 1 of cost still buys of it, with this board and those after it.
  const yields = cuts.map(({ values }) => {
    const best = new Float64Array(n + 1);
    for (let i = n - 1; i >= 0; i--) {
      best[i] = Math.max(best[i + 1] as number, (values[i] as number) / (boards[i] as Priced).cost);
    }
    return best;
  });
  const counts = new Array<number>(n).fill(0);
  // Per board, what those before it are worth by each cut.
  const have = Array.from({ length: n + 1 }, () => new Float64Array(cuts.length));
  let found: number[] | undefined;
  let limit = most;
  let steps = 0;
  const search = (i: number, cost: number): boolean => {
    if (++steps > STEPS) return false;
    const now = have[i] as Float64Array;
    const room = limit + 1e-6 - cost;
    for (let k = 0; k < yields.length; k++) {
      const lack = TIGHT - (now[k] as number);
      if (lack > 0 && lack > room * (yields[k]?.[i] as number)) return true;
    }
    if (i === n) {
      if (refused.some((set) => counts.every((count, b) => count <= (set[b] as number)))) return true;
      found = [...counts];
      limit = cost - step;
      return true;
    }
    const { cost: each, most: top } = boards[i] as Priced;
    const next = have[i + 1] as Float64Array;
    for (let count = Math.min(top, Math.floor((limit - cost) / each + 1e-9)); count >= 0; count--) {
      counts[i] = count;
      for (let k = 0; k < cuts.length; k++) next[k] = (now[k] as number) + count * (cuts[k]?.values[i] as number);
      if (!search(i + 1, cost + count * each)) return false;
      if (limit < from) break;
    }
    counts[i] = 0;
    return true;
  };
  const whole = search(0, 0);
  return whole ? found : 'given up';
}
