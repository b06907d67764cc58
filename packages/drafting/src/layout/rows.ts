import type { Chain } from '../mark.ts';

/** One size to be stated along a side. */
export interface Size {
  /** Where it starts and ends, in paper mm along the side: `u` above and below, `v` left and right, in either order. */
  readonly from: number;
  readonly to: number;
  /** The printed text, such as `44 1⁄2`. */
  readonly text: string;
  /** The printed size read back as real mm, so that chains can be added up. */
  readonly value: number;
  /** The row nearest the outline that it may stand in, counted from 0; 0 unless given. */
  readonly level?: number;
  /** Lettered larger, as an overall size. */
  readonly total?: boolean;
  /** The part it measures. */
  readonly of?: string;
}

/** Positions on paper nearer than this, mm, are one position. */
export const SAME = 0.01;

/** The ends of a size, lower first. */
export function span({ from, to }: Size): readonly [number, number] {
  return from < to ? [from, to] : [to, from];
}

function share(a: Size, b: Size): boolean {
  const [a0, a1] = span(a);
  const [b0, b1] = span(b);
  return a0 < b1 - SAME && b0 < a1 - SAME;
}

/**
 * The row of each size, 0 nearest the outline. Shorter sizes stand nearer, and a size stands outside every shorter one
 * that it overlaps, so that extension lines do not cross dimension lines (ISO 129-1). Rows that stay empty close up.
 */
export function rowsOf(sizes: readonly Size[]): number[] {
  const length = (size: Size): number => Math.abs(size.to - size.from);
  const order = [...sizes.keys()].sort((i, j) => {
    const [a, b] = [sizes[i] as Size, sizes[j] as Size];
    const difference = length(a) - length(b);
    return Math.abs(difference) > SAME ? difference : Number(a.total ?? false) - Number(b.total ?? false) || i - j;
  });
  const rows: number[] = sizes.map(() => -1);
  for (const i of order) {
    const size = sizes[i] as Size;
    const under = sizes.flatMap((other, j) => ((rows[j] ?? -1) >= 0 && share(size, other) ? [rows[j] as number] : []));
    rows[i] = Math.max(size.level ?? 0, ...under.map((row) => row + 1));
  }
  const used = [...new Set(rows)].sort((a, b) => a - b);
  return rows.map((row) => used.indexOf(row));
}

/** Every run of neighbouring sizes in one row that together span a size in a row further out. */
export function chainsOf(sizes: readonly Size[], rows: readonly number[], side: string): Chain[] {
  const chains: Chain[] = [];
  sizes.forEach((total, t) => {
    const [start, end] = span(total);
    for (let row = 0; row < (rows[t] as number); row++) {
      const links = sizes.filter((_, i) => rows[i] === row).sort((a, b) => span(a)[0] - span(b)[0]);
      const run = runFrom(links, start, end);
      if (run.length < 2) continue;
      const parts = run.map((link) => link.value);
      const chain = { what: `${side}: ${run.map((link) => link.text).join(' + ')}`, parts, total: total.value };
      chains.push(addsUp(chain) ? chain : { ...chain, saidSo: true });
    }
  });
  return chains;
}

/** The sizes that lead end to end from `start` to exactly `end`; empty when they do not get there. */
function runFrom(links: readonly Size[], start: number, end: number): Size[] {
  const run: Size[] = [];
  let at = start;
  for (const link of links) {
    if (Math.abs(span(link)[0] - at) > SAME) continue;
    run.push(link);
    at = span(link)[1];
    if (Math.abs(at - end) <= SAME) return run;
  }
  return [];
}

/** Whether the printed sizes make the printed total, to the thousandth of a millimetre. */
export function addsUp({ parts, total }: Chain): boolean {
  return Math.abs(parts.reduce((sum, part) => sum + part, 0) - total) < 0.001;
}
