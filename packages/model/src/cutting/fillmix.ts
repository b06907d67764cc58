import type { Filling, Lengthwise } from './fillings.ts';
import type { Column } from './inverse.ts';
import { type Knapsack, knapsack } from './knapsack.ts';
import { copyOf, objective, optimise, restore, type Simplex, settleColumn, simplex } from './simplex.ts';

/** A mixture of fillings, in fractions of boards, that makes the pieces still needed at the least cost. */
export interface FillMix {
  readonly job: Lengthwise;
  readonly lp: Simplex;
  /** Filling of each column; `undefined` for stand-ins and for pieces too many. */
  readonly fillings: (Filling | undefined)[];
  /** Row of each item; -1 for those that were made before. */
  readonly itemRows: readonly number[];
  /** Row of each board that there is not as much of as wanted; -1 for the others. */
  readonly boardRows: readonly number[];
  /** Costs in the program are in units of it. */
  readonly scale: number;
  /** Pieces still needed of each item, and boards still to be had. */
  readonly need: Float64Array;
  readonly left: Float64Array;
}

/** Cost of a piece that no board is made for, in costs of the dearest board: more than any where boards are endless. */
const [STAND_IN, MISSING] = [1.5, 1000];

/** A mixture of what is still needed of a job, all unless told, from the fillings known; the first levels are stand-ins. */
export function fillMix(job: Lengthwise, known: readonly Filling[], open?: Pick<FillMix, 'need' | 'left'>): FillMix {
  const { items, boards } = job;
  const need = open?.need.slice() ?? Float64Array.from(items, (item) => item.need);
  const left = open?.left.slice() ?? Float64Array.from(boards, ({ most }) => most);
  const side: number[] = [];
  const itemRows = Array.from(need, (n) => (n > 0 ? side.push(n) - 1 : -1));
  const pieces = side.length;
  const boardRows = Array.from(left, (n) => (n < Number.POSITIVE_INFINITY ? side.push(n) - 1 : -1));
  const scale = boards.reduce((most, { cost }) => Math.max(most, cost), 0) || 1;
  const missing = boards.some(({ most }) => most === Number.POSITIVE_INFINITY) ? STAND_IN : MISSING;
  const start = side.map((_, i): Column => ({ cost: i < pieces ? missing : 0, rows: [i], values: [1] }));
  const lp = simplex(start, side);
  for (let i = 0; i < pieces; i++) lp.columns.push({ cost: 0, rows: [i], values: [-1] });
  const mix: FillMix = { job, lp, fillings: lp.columns.map(() => undefined), itemRows, boardRows, scale, need, left };
  for (const filling of known) addFilling(mix, filling);
  return mix;
}

/** The mixture of what is still needed without the rows of what is made; its levels are stand-ins again. */
export function narrowed(mix: FillMix): FillMix {
  const { job, need, fillings } = mix;
  const known = fillings.filter((filling) => filling?.items.every((j) => (need[j] as number) > 0));
  return fillMix(job, known as Filling[], mix);
}

/** Share of the rows whose items are still needed. */
export function openShare({ need, itemRows }: FillMix): number {
  const [open, rows] = [need.filter((n) => n > 0).length, itemRows.filter((row) => row >= 0).length];
  return rows === 0 ? 1 : open / rows;
}

/** The same mixture, to be worked on apart. */
export function copyOfMix(mix: FillMix): FillMix {
  const { lp, fillings, need, left } = mix;
  return { ...mix, lp: copyOf(lp), fillings: [...fillings], need: need.slice(), left: left.slice() };
}

function columnOf({ itemRows, boardRows, scale, job }: FillMix, { board, items, counts }: Filling): Column {
  const cost = (job.boards[board]?.cost as number) / scale;
  const rows: number[] = [];
  const values: number[] = [];
  const put = (row: number, value: number): void => {
    if (row < 0) return;
    rows.push(row);
    values.push(value);
  };
  items.forEach((j, x) => {
    put(itemRows[j] as number, counts[x] as number);
  });
  put(boardRows[board] as number, 1);
  return { cost, rows, values };
}

function addFilling(mix: FillMix, filling: Filling): void {
  mix.lp.columns.push(columnOf(mix, filling));
  mix.fillings.push(filling);
}

/** Worth of one piece of each item. */
export function worthsOf({ lp, itemRows, scale }: FillMix): Float64Array {
  return Float64Array.from(itemRows, (row) => (row < 0 ? 0 : scale * Math.max(0, lp.prices[row] as number)));
}

/** How long a mixture is worked on. */
export interface Mixing {
  readonly rounds: number;
  /** Asked each round with what is proven by then and the cost of the mixture. */
  readonly enough: (bound: number, cost: number) => boolean;
  /** Hears of work done. */
  readonly worked: (work: number) => void;
}

/**
 * Column generation after Gilmore and Gomory (Operations Research 9, 1961), each board filled by a knapsack that makes no
 * piece beyond the need. Returns what no plan for the pieces still needed costs less than.
 */
export function mixFillings(mix: FillMix, { rounds, enough, worked }: Mixing): number {
  const { job, lp, need } = mix;
  const top = topOf(job);
  let bound = 0;
  for (let round = 0; round < rounds; round++) {
    const before = lp.work;
    optimise(lp);
    const worths = worthsOf(mix);
    const filled = knapsack(job.items, top, worths, need);
    worked(filled.work + lp.work - before);
    bound = Math.max(bound, boundBy(mix, worths, filled));
    const cost = objective(lp) * mix.scale;
    if (cost - bound < 1e-7 * Math.max(1, bound) || enough(bound, cost) || !addBest(mix, filled)) break;
  }
  return bound;
}

/** The longest board's place. */
export function topOf({ boards }: Lengthwise): number {
  return boards.reduce((most, { top }) => Math.max(most, top), 0);
}

/** The bound that worths give: scaled so that no board without limit is worth more than it costs. */
function boundBy({ job, need, left }: FillMix, worths: Float64Array, { worth }: Knapsack): number {
  const endless = job.boards.filter(({ most }) => most === Number.POSITIVE_INFINITY);
  const scale = endless.reduce((s, { top, cost }) => Math.min(s, cost / Math.max(cost, worth[top] as number)), 1);
  const whole = worths.reduce((sum, w, j) => sum + w * (need[j] as number), 0);
  return job.boards.reduce((sum, { top, cost, most }, b) => {
    if (most === Number.POSITIVE_INFINITY) return sum;
    return sum - (left[b] as number) * Math.max(0, scale * (worth[top] as number) - cost);
  }, scale * whole);
}

/** Adds the best filling of every board that is worth more than is asked for it; false where none is. */
function addBest(mix: FillMix, filled: Knapsack): boolean {
  const { job, lp, boardRows, left, scale, fillings } = mix;
  const before = fillings.length;
  job.boards.forEach(({ top, cost }, board) => {
    if ((left[board] as number) < 1) return;
    const row = boardRows[board] as number;
    const asked = cost - (row < 0 ? 0 : scale * (lp.prices[row] as number));
    if ((filled.worth[top] as number) > asked + 1e-8 * scale) addFilling(mix, { board, ...filled.read(top), times: 1 });
  });
  return fillings.length > before;
}

/** Fillings at a level of some use, with their levels. */
export function levelsOf({ lp, fillings }: FillMix): { filling: Filling; level: number }[] {
  return Array.from(lp.basis, (column, i) => ({ filling: fillings[column], level: lp.level[i] as number })).filter(
    (taken): taken is { filling: Filling; level: number } => taken.filling !== undefined && taken.level > 1e-5,
  );
}

/** Pieces that the boards there are cannot make, in the mixture. */
export function missingOf({ lp, itemRows }: FillMix): number {
  const pieces = itemRows.filter((row) => row >= 0).length;
  return lp.basis.reduce((sum, j, i) => (j < pieces ? sum + Math.max(0, (lp.level[i] as number) - 1e-4) : sum), 0);
}

/** Settles boards: what they make is needed no more. */
export function settleFilling(mix: FillMix, filling: Filling): void {
  takeFilling(mix, filling);
  settleColumn(mix.lp, columnOf(mix, filling), filling.times);
}

/** Takes what boards make off what is needed, and the boards off those left. */
export function takeFilling(open: Pick<FillMix, 'need' | 'left'>, { board, items, counts, times }: Filling): void {
  items.forEach((j, x) => {
    open.need[j] = Math.max(0, (open.need[j] as number) - times * (counts[x] as number));
  });
  open.left[board] = (open.left[board] as number) - times;
}

/** Brings the levels back to right after boards were settled; false where that does not come about. */
export function restoreMix(mix: FillMix): boolean {
  return restore(mix.lp);
}
