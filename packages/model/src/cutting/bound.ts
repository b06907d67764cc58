import type { Column } from './inverse.ts';
import { type BoardRoom, canMake, type Nested } from './nested.ts';
import { type BoardPattern, price, readBoard, yieldOf } from './pricing.ts';
import { levels, objective, optimise, type Simplex, simplex } from './simplex.ts';

/** Pieces still to be cut and boards still to be had. */
export interface Rest {
  /** Per demand. */
  readonly need: readonly number[];
  /** Per room, per board of it. */
  readonly left: readonly (readonly number[])[];
}

/** A mixture of board patterns, in fractions of boards, that makes every piece at the least cost. */
export interface Mixture {
  readonly taken: readonly { readonly pattern: BoardPattern; readonly level: number }[];
  /** Patterns known, for the next mixture to start from. */
  readonly known: readonly BoardPattern[];
  /** Worth of one piece of each demand. */
  readonly worth: Float64Array;
  /** No plan of the family for this rest costs less. */
  readonly bound: number;
  /** Pieces that the boards there are cannot make, in the mixture; 0 unless some stock is limited. */
  readonly short: number;
}

export interface MixtureOptions {
  /** Cost of a board; absent: what it costs. */
  readonly cost?: (room: BoardRoom, board: number) => number;
  readonly known?: readonly BoardPattern[];
  readonly rounds?: number;
}

/** Cost of a piece that no board is left for, in costs of the dearest board. */
const MISSING = 1000;

/** All of a problem's pieces and boards. */
export function wholeRest(nested: Nested): Rest {
  return {
    need: nested.problem.demands.map((d) => d.need),
    left: nested.rooms.map((room) => room.boards.map((b) => b.most)),
  };
}

/**
 * Column generation after Gilmore and Gomory (Operations Research 9, 1961 and 11, 1963): a small linear program over
 * the patterns known so far sets the worth of each piece, the tables find the board pattern of most worth, until none
 * is worth more than its board. Any such worths give a valid bound, so the search may stop early.
 */
export function mixture(nested: Nested, rest: Rest, options: MixtureOptions = {}): Mixture {
  const costOf = options.cost ?? ((room: BoardRoom, b: number) => room.boards[b]?.cost as number);
  const n = rest.need.length;
  const limited = new Map<string, number>();
  const side = [...rest.need];
  rest.left.forEach((boards, r) => {
    boards.forEach((left, b) => {
      if (left > 0 && left < Number.POSITIVE_INFINITY) limited.set(`${r}|${b}`, side.push(left) - 1);
    });
  });
  const scale =
    nested.rooms.reduce((s, room) => room.boards.reduce((t, _, b) => Math.max(t, costOf(room, b)), s), 0) || 1;
  // A stand-in for each demand, dearer than any board that makes it: it stays only where boards run out.
  const endless = (d: number): boolean =>
    nested.rooms.some((room, r) =>
      room.boards.some((_, b) => rest.left[r]?.[b] === Number.POSITIVE_INFINITY && canMake(nested, room, b, d)),
    );
  const standIn = (d: number): number => (endless(d) ? 1.5 : MISSING);
  const start: Column[] = side.map((_, i) => ({ cost: i < n ? standIn(i) : 0, rows: [i], values: [1] }));
  const lp = simplex(start, side);
  const patterns: (BoardPattern | null)[] = start.map(() => null);
  for (let i = 0; i < n; i++) {
    lp.columns.push({ cost: 0, rows: [i], values: [-1] });
    patterns.push(null);
  }
  const add = (pattern: BoardPattern): void => {
    const room = nested.rooms[pattern.room] as BoardRoom;
    lp.columns.push(
      columnOf(pattern, n, costOf(room, pattern.board) / scale, limited.get(`${pattern.room}|${pattern.board}`)),
    );
    patterns.push(pattern);
  };
  for (const pattern of options.known ?? []) if ((rest.left[pattern.room]?.[pattern.board] ?? 0) > 0) add(pattern);
  const worth = new Float64Array(n);
  const best = new Float64Array(n);
  let bound = Number.NEGATIVE_INFINITY;
  for (let round = 0; round < (options.rounds ?? 400); round++) {
    optimise(lp);
    for (let i = 0; i < n; i++) worth[i] = Math.max(0, lp.prices[i] as number);
    price(nested, worth);
    const found = boundAt(nested, rest, worth, (room, b) => costOf(room, b) / scale);
    if (found > bound) {
      bound = found;
      best.set(worth);
    }
    if (objective(lp) - bound < 1e-7 * Math.max(1, bound)) break;
    const before = lp.columns.length;
    nested.rooms.forEach((room, r) => {
      room.boards.forEach((_, b) => {
        if ((rest.left[r]?.[b] ?? 0) <= 0) return;
        const row = limited.get(`${r}|${b}`);
        const asked = costOf(room, b) / scale - (row === undefined ? 0 : (lp.prices[row] as number));
        if ((room.worth[room.top[b] as number] as number) > asked + 1e-8) add(readBoard(nested, r, b));
      });
    });
    if (lp.columns.length === before) break;
  }
  price(nested, best);
  return finish({ lp, patterns, n, worth: best, bound: bound * scale, scale });
}

function columnOf(pattern: BoardPattern, demands: number, cost: number, limit: number | undefined): Column {
  const rows: number[] = [];
  const values: number[] = [];
  yieldOf(pattern, demands).forEach((count, d) => {
    if (count > 0) {
      rows.push(d);
      values.push(count);
    }
  });
  if (limit !== undefined) {
    rows.push(limit);
    values.push(1);
  }
  return { cost, rows, values };
}

/** The bound that any worths give: scaled so that no board without limit is worth more than it costs. */
export function boundAt(
  nested: Nested,
  rest: Rest,
  worth: Float64Array,
  costOf: (room: BoardRoom, board: number) => number,
): number {
  let scale = 1;
  const each = (visit: (left: number, worth: number, cost: number) => void): void => {
    nested.rooms.forEach((room, r) => {
      room.boards.forEach((_, b) => {
        visit(rest.left[r]?.[b] ?? 0, room.worth[room.top[b] as number] as number, costOf(room, b));
      });
    });
  };
  each((left, value, cost) => {
    if (left === Number.POSITIVE_INFINITY && value > cost) scale = Math.min(scale, cost / value);
  });
  let bound = scale * rest.need.reduce((sum, need, d) => sum + need * (worth[d] as number), 0);
  each((left, value, cost) => {
    if (left < Number.POSITIVE_INFINITY) bound -= left * Math.max(0, scale * value - cost);
  });
  return bound;
}

function finish(of: {
  lp: Simplex;
  patterns: (BoardPattern | null)[];
  n: number;
  worth: Float64Array;
  bound: number;
  scale: number;
}): Mixture {
  const taken: { pattern: BoardPattern; level: number }[] = [];
  let short = 0;
  for (const { column, level } of levels(of.lp)) {
    const pattern = of.patterns[column];
    if (pattern && level > 1e-5) taken.push({ pattern, level });
    else if (column < of.n && level > 1e-4) short += level;
  }
  taken.sort((a, b) => b.level - a.level || of.patterns.indexOf(a.pattern) - of.patterns.indexOf(b.pattern));
  const worth = of.worth.map((w) => w * of.scale);
  return { taken, known: of.patterns.filter((p) => p !== null), worth, bound: of.bound, short };
}

/** A bound brought up to the next cost that can be had at all; costs are whole multiples of `step`. */
export function roundUp(bound: number, step: number): number {
  return Math.max(0, Math.ceil((bound - 1e-6 * Math.max(1, bound * 1e-3)) / step) * step);
}
