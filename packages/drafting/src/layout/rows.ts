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
  /** Where along the side part of what it spans is left out of the view, paper mm: its line carries a zigzag there. */
  readonly broken?: number;
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

const lengthOf = (size: Size): number => Math.abs(size.to - size.from);

/**
 * The row of each size, 0 nearest the outline. A size stands outside every size that lies within its span, so that no
 * extension line need cross a dimension line (ISO 129-1), and outside or inside, but never in one row with, a size that
 * it overlaps in part. Sizes that together span another stay in one row, where the reader can add them up. Rows that stay
 * empty close up.
 */
export function rowsOf(sizes: readonly Size[]): number[] {
  const runs = runsOf(sizes);
  const loose = [...sizes.keys()].filter((i) => !runs.some((run) => run.includes(i))).map((i) => [i]);
  // Two runs that would each stand outside the other cannot stay whole: then every size finds its own row.
  const rows =
    stack(sizes, [...runs, ...loose]) ??
    stack(
      sizes,
      [...sizes.keys()].map((i) => [i]),
    ) ??
    [];
  const used = [...new Set(rows)].sort((a, b) => a - b);
  return rows.map((row) => used.indexOf(row));
}

/** Rows of groups of sizes, each group in one row; undefined when two groups would each have to be outside the other. */
function stack(sizes: readonly Size[], groups: readonly (readonly number[])[]): number[] | undefined {
  const longest = (group: readonly number[]): number => Math.max(...group.map((i) => lengthOf(sizes[i] as Size)));
  const under = (a: readonly number[], b: readonly number[]): boolean =>
    a.some((i) => b.some((j) => lies(sizes, i, j)));
  const rows: number[] = sizes.map(() => -1);
  const waiting = groups.toSorted((a, b) => longest(a) - longest(b));
  while (waiting.length > 0) {
    const next = waiting.findIndex((group) => waiting.every((other) => other === group || !under(other, group)));
    const [group] = next < 0 ? [] : waiting.splice(next, 1);
    if (!group) return undefined;
    let row = Math.max(...group.map((i) => sizes[i]?.level ?? 0));
    sizes.forEach((_, i) => {
      if ((rows[i] as number) >= row && under([i], group)) row = (rows[i] as number) + 1;
    });
    const clashes = (): boolean =>
      sizes.some((other, j) => rows[j] === row && group.some((i) => share(sizes[i] as Size, other)));
    while (clashes()) row++;
    for (const i of group) rows[i] = row;
  }
  return rows;
}

/** Whether size `i` lies within the span of size `j`; of two with the same span, the total is the outer, else the later. */
function lies(sizes: readonly Size[], i: number, j: number): boolean {
  const [a, b] = [sizes[i] as Size, sizes[j] as Size];
  const [a0, a1] = span(a);
  const [b0, b1] = span(b);
  if (i === j || a0 < b0 - SAME || a1 > b1 + SAME) return false;
  if (lengthOf(b) - lengthOf(a) > SAME) return true;
  const rank = Number(a.total ?? false) - Number(b.total ?? false);
  return Math.abs(a0 - b0) <= SAME && Math.abs(a1 - b1) <= SAME && (rank || i - j) < 0;
}

/** For each size, the fewest others that lead end to end along all of it; each size belongs to one run at most. */
function runsOf(sizes: readonly Size[]): number[][] {
  const taken = new Set<number>();
  const order = [...sizes.keys()].sort((i, j) => lengthOf(sizes[j] as Size) - lengthOf(sizes[i] as Size));
  const lead = (at: number, end: number, most: number): number[] | undefined => {
    if (Math.abs(at - end) <= SAME) return [];
    for (const i of order) {
      const link = sizes[i] as Size;
      const [from, to] = span(link);
      if (
        taken.has(i) ||
        Math.abs(from - at) > SAME ||
        to > end + SAME ||
        to - from <= SAME ||
        to - from >= most - SAME
      )
        continue;
      const rest = lead(to, end, most);
      if (rest) return [i, ...rest];
    }
    return undefined;
  };
  return order.flatMap((t) => {
    const [start, end] = span(sizes[t] as Size);
    const run = lead(start, end, end - start) ?? [];
    for (const i of run) taken.add(i);
    return run.length > 1 ? [run] : [];
  });
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
