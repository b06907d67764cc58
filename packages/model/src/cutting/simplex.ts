import { type Column, exchange, imageOf } from './inverse.ts';

/**
 * A revised simplex in plain numbers for some hundred rows and columns that arrive bit by bit: minimise the cost of
 * columns taken at least 0 times so that every row adds up to its right side. The first columns are the start basis,
 * one per row, each a unit column.
 */
export interface Simplex {
  readonly columns: Column[];
  /** Column in each row's place, and how much of it is taken. */
  readonly basis: Int32Array;
  readonly level: Float64Array;
  readonly inverse: Float64Array;
  readonly side: Float64Array;
  /** Price of each row. */
  readonly prices: Float64Array;
  pivots: number;
  /** Entries gone through by the pivots so far, roughly. */
  work: number;
}

const TINY = 1e-9;
const REBUILD = 60;

/** A program whose start basis is the given unit columns, one per row in order; right sides are not negative. */
export function simplex(start: readonly Column[], side: readonly number[]): Simplex {
  const m = side.length;
  const inverse = new Float64Array(m * m);
  // A grain of unevenness on each right side breaks ties, so that the walk cannot go in circles.
  const uneven = Float64Array.from(side, (b, i) => b + 1e-7 * (1 + ((i * 7919) % 101) / 101));
  const level = new Float64Array(m);
  for (let i = 0; i < m; i++) {
    const unit = start[i]?.values[0] as number;
    inverse[i * m + i] = 1 / unit;
    level[i] = (uneven[i] as number) / unit;
  }
  const basis = Int32Array.from({ length: m }, (_, i) => i);
  const prices = new Float64Array(m);
  const made: Simplex = { columns: [...start], basis, level, inverse, side: uneven, prices, pivots: 0, work: 0 };
  setPrices(made);
  return made;
}

/** The same program at the same point, to be worked on apart. */
export function copyOf(lp: Simplex): Simplex {
  const [basis, level, inverse] = [lp.basis.slice(), lp.level.slice(), lp.inverse.slice()];
  return { ...lp, columns: [...lp.columns], basis, level, inverse, side: lp.side.slice(), prices: lp.prices.slice() };
}

/** Cost of one more unit of a column at the present prices. */
function reducedCost(lp: Simplex, column: Column): number {
  let cost = column.cost;
  for (let k = 0; k < column.rows.length; k++) {
    cost -= (column.values[k] as number) * (lp.prices[column.rows[k] as number] as number);
  }
  return cost;
}

/** Pivots until no known column lowers the cost, or `most` pivots are made. */
export function optimise(lp: Simplex, most = 5000): void {
  for (let n = 0; n < most; n++) {
    let entering = -1;
    let least = -TINY;
    for (let j = 0; j < lp.columns.length; j++) {
      const cost = reducedCost(lp, lp.columns[j] as Column);
      if (cost < least) {
        least = cost;
        entering = j;
      }
    }
    if (entering < 0 || !enter(lp, entering)) break;
  }
  // Pivots leave grains in the prices: a price of nothing must be nothing.
  setPrices(lp);
}

/** Cost of the present levels. */
export function objective(lp: Simplex): number {
  return lp.level.reduce((sum, x, i) => sum + x * (lp.columns[lp.basis[i] as number] as Column).cost, 0);
}

/** Levels of the columns in the basis. */
export function levels(lp: Simplex): { column: number; level: number }[] {
  return Array.from(lp.basis, (column, i) => ({ column, level: lp.level[i] as number }));
}

/** Takes `times` a column off the right sides, none of which goes below 0; levels may: `restore` mends them. */
export function settleColumn(lp: Simplex, { rows, values }: Column, times: number): void {
  const m = lp.side.length;
  rows.forEach((r, k) => {
    const less = Math.min(lp.side[r] as number, times * (values[k] as number));
    lp.side[r] = (lp.side[r] as number) - less;
    for (let i = 0; i < m; i++) lp.level[i] = (lp.level[i] as number) - less * (lp.inverse[i * m + r] as number);
  });
}

/** Dual pivots until no level is below 0; false where `most` are not enough. Prices must be the best for the columns known. */
export function restore(lp: Simplex, most = 500): boolean {
  const m = lp.side.length;
  for (let n = 0; n < most; n++) {
    let row = -1;
    let lowest = -TINY;
    for (let i = 0; i < m; i++) {
      if ((lp.level[i] as number) < lowest) {
        lowest = lp.level[i] as number;
        row = i;
      }
    }
    if (row < 0) return true;
    const entering = dualEntering(lp, row);
    if (entering < 0) return false;
    pivot(lp, entering, row, imageOf(lp.inverse, lp.side.length, lp.columns[entering] as Column));
  }
  return false;
}

/** The column that takes the place of a row whose level is below 0: of those that keep all prices right the steepest. */
function dualEntering(lp: Simplex, row: number): number {
  const base = row * lp.side.length;
  let entering = -1;
  let least = Number.POSITIVE_INFINITY;
  let steepest = 0;
  for (let j = 0; j < lp.columns.length; j++) {
    const column = lp.columns[j] as Column;
    let slope = 0;
    for (let k = 0; k < column.rows.length; k++) {
      slope -= (column.values[k] as number) * (lp.inverse[base + (column.rows[k] as number)] as number);
    }
    if (slope < TINY) continue;
    const ratio = Math.max(0, reducedCost(lp, column)) / slope;
    if (ratio > least + TINY || (ratio > least - TINY && slope <= steepest)) continue;
    least = Math.min(least, ratio);
    steepest = slope;
    entering = j;
  }
  return entering;
}

/** Brings a column into the basis; false where nothing bounds it. */
function enter(lp: Simplex, entering: number): boolean {
  const step = imageOf(lp.inverse, lp.side.length, lp.columns[entering] as Column);
  let row = -1;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < step.length; i++) {
    if ((step[i] as number) > 1e-8) {
      const ratio = Math.max(0, lp.level[i] as number) / (step[i] as number);
      if (ratio < least) {
        least = ratio;
        row = i;
      }
    }
  }
  if (row < 0) return false;
  pivot(lp, entering, row, step);
  return true;
}

/** Puts a column, whose image is `step`, in a row's place. */
function pivot(lp: Simplex, entering: number, row: number, step: Float64Array): void {
  const { inverse, level, prices } = lp;
  const m = level.length;
  const rise = reducedCost(lp, lp.columns[entering] as Column);
  lp.basis[row] = entering;
  lp.pivots++;
  if (lp.pivots % Math.max(REBUILD, m) === 0 && rebuild(lp)) return;
  lp.work += exchange(inverse, m, row, step);
  const by = (level[row] as number) / (step[row] as number);
  for (let i = 0; i < m; i++) level[i] = (level[i] as number) - (step[i] as number) * by;
  level[row] = by;
  for (let k = 0; k < m; k++) prices[k] = (prices[k] as number) + rise * (inverse[row * m + k] as number);
}

function setPrices(lp: Simplex): void {
  const m = lp.side.length;
  lp.prices.fill(0);
  for (let i = 0; i < m; i++) {
    const cost = (lp.columns[lp.basis[i] as number] as Column).cost;
    if (cost === 0) continue;
    for (let k = 0; k < m; k++) lp.prices[k] = (lp.prices[k] as number) + cost * (lp.inverse[i * m + k] as number);
  }
}

/** Works the inverse out anew, so that rounding does not pile up; false if the basis is singular. Unit columns come first. */
function rebuild(lp: Simplex): boolean {
  const { side, columns } = lp;
  const m = side.length;
  const inverse = new Float64Array(m * m);
  for (let r = 0; r < m; r++) inverse[r * m + r] = 1;
  const basis = new Int32Array(m).fill(-1);
  const units = [...lp.basis].filter((j) => columns[j]?.rows.length === 1);
  for (const j of [...units, ...[...lp.basis].filter((j) => columns[j]?.rows.length !== 1)]) {
    const step = imageOf(inverse, m, columns[j] as Column);
    let row = -1;
    for (let i = 0; i < m; i++) {
      if (basis[i] === -1 && (row < 0 || Math.abs(step[i] as number) > Math.abs(step[row] as number))) row = i;
    }
    if (row < 0 || Math.abs(step[row] as number) < TINY) return false;
    exchange(inverse, m, row, step);
    basis[row] = j;
  }
  lp.basis.set(basis);
  lp.inverse.set(inverse);
  for (let i = 0; i < m; i++) {
    let x = 0;
    for (let k = 0; k < m; k++) x += (inverse[i * m + k] as number) * (side[k] as number);
    lp.level[i] = x;
  }
  setPrices(lp);
  return true;
}
