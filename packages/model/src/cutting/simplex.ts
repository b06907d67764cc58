/** A column of a linear program: its cost and its entries by row. */
export interface Column {
  readonly cost: number;
  readonly rows: readonly number[];
  readonly values: readonly number[];
}

/**
 * A revised simplex in plain numbers for a few dozen rows and columns that arrive bit by bit: minimise the cost of
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
  const made: Simplex = {
    columns: [...start],
    basis,
    level,
    inverse,
    side: uneven,
    prices: new Float64Array(m),
    pivots: 0,
  };
  setPrices(made);
  return made;
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
    if (entering < 0 || !pivot(lp, entering)) return;
  }
}

/** Cost of the present levels. */
export function objective(lp: Simplex): number {
  return lp.level.reduce((sum, x, i) => sum + x * (lp.columns[lp.basis[i] as number] as Column).cost, 0);
}

/** Levels of the columns in the basis. */
export function levels(lp: Simplex): { column: number; level: number }[] {
  return Array.from(lp.basis, (column, i) => ({ column, level: lp.level[i] as number }));
}

function pivot(lp: Simplex, entering: number): boolean {
  const m = lp.side.length;
  const step = image(lp, lp.columns[entering] as Column);
  let row = -1;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < m; i++) {
    if ((step[i] as number) > 1e-8) {
      const ratio = (lp.level[i] as number) / (step[i] as number);
      if (ratio < least) {
        least = ratio;
        row = i;
      }
    }
  }
  if (row < 0) return false;
  lp.basis[row] = entering;
  lp.pivots++;
  if (lp.pivots % REBUILD === 0 && rebuild(lp)) return true;
  const { inverse, level } = lp;
  const by = step[row] as number;
  for (let k = 0; k < m; k++) inverse[row * m + k] = (inverse[row * m + k] as number) / by;
  level[row] = least;
  for (let i = 0; i < m; i++) {
    const factor = step[i] as number;
    if (i === row || factor === 0) continue;
    for (let k = 0; k < m; k++) {
      inverse[i * m + k] = (inverse[i * m + k] as number) - factor * (inverse[row * m + k] as number);
    }
    level[i] = Math.max(0, (level[i] as number) - factor * least);
  }
  setPrices(lp);
  return true;
}

function image(lp: Simplex, column: Column): Float64Array {
  const m = lp.side.length;
  const out = new Float64Array(m);
  for (let k = 0; k < column.rows.length; k++) {
    const r = column.rows[k] as number;
    const v = column.values[k] as number;
    for (let i = 0; i < m; i++) out[i] = (out[i] as number) + v * (lp.inverse[i * m + r] as number);
  }
  return out;
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

/** Works the inverse out anew by Gauss and Jordan, so that rounding does not pile up; false if the basis is singular. */
function rebuild(lp: Simplex): boolean {
  const m = lp.side.length;
  const w = 2 * m;
  const table = new Float64Array(m * w);
  for (let i = 0; i < m; i++) {
    const c = lp.columns[lp.basis[i] as number] as Column;
    for (let k = 0; k < c.rows.length; k++) table[(c.rows[k] as number) * w + i] = c.values[k] as number;
    table[i * w + m + i] = 1;
  }
  for (let col = 0; col < m; col++) {
    let best = col;
    for (let r = col + 1; r < m; r++) {
      if (Math.abs(table[r * w + col] as number) > Math.abs(table[best * w + col] as number)) best = r;
    }
    const head = table[best * w + col] as number;
    if (Math.abs(head) < 1e-11) return false;
    for (let k = col; k < w; k++) {
      const swap = table[col * w + k] as number;
      table[col * w + k] = (table[best * w + k] as number) / head;
      if (best !== col) table[best * w + k] = swap;
    }
    for (let r = 0; r < m; r++) {
      const f = table[r * w + col] as number;
      if (r === col || f === 0) continue;
      for (let k = col; k < w; k++)
        table[r * w + k] = (table[r * w + k] as number) - f * (table[col * w + k] as number);
    }
  }
  for (let i = 0; i < m; i++) {
    let x = 0;
    for (let k = 0; k < m; k++) {
      const v = table[i * w + m + k] as number;
      lp.inverse[i * m + k] = v;
      x += v * (lp.side[k] as number);
    }
    lp.level[i] = Math.max(0, x);
  }
  setPrices(lp);
  return true;
}
