/** A column of a linear program: its cost and its entries by row. */
export interface Column {
  readonly cost: number;
  readonly rows: readonly number[];
  readonly values: readonly number[];
}

/** What a column is in terms of the basis. */
export function imageOf(
  inverse: Float64Array,
  m: number,
  { rows, values }: Pick<Column, 'rows' | 'values'>,
): Float64Array {
  const out = new Float64Array(m);
  for (let k = 0; k < rows.length; k++) {
    const r = rows[k] as number;
    const v = values[k] as number;
    for (let i = 0; i < m; i++) out[i] = (out[i] as number) + v * (inverse[i * m + r] as number);
  }
  // Rounding leaves grains where there is nothing.
  for (let i = 0; i < m; i++) if (Math.abs(out[i] as number) < 1e-12) out[i] = 0;
  return out;
}

/** The inverse with a column, whose image is `step`, in a row's place. Most of a row is 0: only the rest is gone through. Tells the work. */
export function exchange(inverse: Float64Array, m: number, row: number, step: Float64Array): number {
  const base = row * m;
  const by = step[row] as number;
  const filled = new Int32Array(m);
  let n = 0;
  for (let k = 0; k < m; k++) {
    if (inverse[base + k] === 0) continue;
    inverse[base + k] = (inverse[base + k] as number) / by;
    filled[n++] = k;
  }
  let work = 2 * m;
  for (let i = 0; i < m; i++) {
    const factor = step[i] as number;
    if (i === row || factor === 0) continue;
    work += n;
    const to = i * m;
    for (let x = 0; x < n; x++) {
      const k = filled[x] as number;
      inverse[to + k] = (inverse[to + k] as number) - factor * (inverse[base + k] as number);
    }
  }
  return work;
}
