import { moved } from '../ink.ts';
import type { Mark } from '../mark.ts';

/** One line of a block, laid out: its ink with the top of the line at v = 0, and what it needs above and in itself. */
export interface Line {
  readonly marks: readonly Mark[];
  readonly height: number;
  /** Space above the line, left out at the top of a column. */
  readonly above: number;
  /** Whether the next line must stay in the same column. */
  readonly keep: boolean;
  /** Whether a step starts here. */
  readonly starts?: boolean;
  /** What is said again over this line where it stands at the top of a column, such as the title of the step that goes on. */
  readonly again?: readonly Line[];
}

/** A column as it is filled. */
export interface Column {
  readonly marks: readonly Mark[];
  readonly height: number;
  /** How many lines it holds. */
  readonly lines: number;
}

/** Shares of a column that may be left empty to keep a step whole: all that it takes, or less where that saves a page. */
const LOST = [1, 0.5, 0.3, 0.15, 0] as const;

/** What columns are filled by. */
export interface Fill {
  /** Height of a column, mm. */
  readonly height: number;
  /** Share of a column that may be left empty to keep a step whole; 0 where steps are not kept together. */
  readonly lost: number;
}

/** Columns filled so that as many steps stay whole as cost no page of `columns`; with the share that was left empty for it. */
export function wholeSteps(
  all: readonly Line[],
  { height, columns }: { readonly height: number; readonly columns: number },
): { readonly full: Column[]; readonly lost: number } {
  const ways = LOST.map((lost) => ({ full: columnsOf(all, { height, lost }), lost }));
  const pages = ({ full }: { readonly full: readonly Column[] }): number => Math.ceil(full.length / columns);
  return ways.reduce((best, other) => (pages(other) < pages(best) ? other : best));
}

/**
 * Fills columns from the top; a run of lines that must stay together moves on together, if it fits one column at all, and
 * so does a whole step that leaves no more of a column empty than it may.
 */
export function columnsOf(all: readonly Line[], { height, lost }: Fill): Column[] {
  const columns: Column[] = [];
  let marks: Mark[] = [];
  let [used, count] = [0, 0];
  const turn = (): void => {
    columns.push({ marks, height: used, lines: count });
    [marks, used, count] = [[], 0, 0];
  };
  const put = ({ marks: ink, above, height: own }: Line): void => {
    const gap = used === 0 ? 0 : above;
    marks.push(...moved(ink, { du: 0, dv: used + gap }));
    used += gap + own;
  };
  for (let i = 0; i < all.length; ) {
    let end = i + 1;
    while (end < all.length && (all[end - 1] as Line).keep) end++;
    const run = all.slice(i, end);
    const needs = heightOf(run);
    const whole = lost > 0 && run[0]?.starts ? heightOf(all.slice(i, stepEnd(all, i))) : needs;
    const fits = (wanted: number): boolean => used + wanted <= height || wanted > height;
    const moves = !fits(needs) || (!fits(whole) && height - used <= lost * height);
    if (used > 0 && moves) turn();
    for (const one of run) {
      if (used > 0 && used + one.above + one.height > height) turn();
      // Not where the column would then hold nothing else.
      if (used === 0 && heightOf(one.again ?? []) + one.above + one.height <= height) (one.again ?? []).forEach(put);
      put(one);
      count += 1;
    }
    i = end;
  }
  if (marks.length > 0) turn();
  return columns;
}

/** The same columns, those of the last page as short as they all can be. */
export function balanced(
  full: readonly Column[],
  all: readonly Line[],
  { height, columns, lost }: Fill & { readonly columns: number },
): readonly Column[] {
  const before = full.slice(0, Math.max(0, Math.ceil(full.length / columns) - 1) * columns);
  const last = all.slice(before.reduce((sum, column) => sum + column.lines, 0));
  // Nothing lower than its longest run of lines that stay together.
  let [low, high] = [Math.max(0, ...runsOf(last).map((run) => heightOf([...(run[0]?.again ?? []), ...run]))), height];
  if (low >= high || columns < 2) return full;
  for (let turn = 0; turn < 20; turn++) {
    const middle = (low + high) / 2;
    if (columnsOf(last, { height: middle, lost }).length <= columns) high = middle;
    else low = middle;
  }
  return [...before, ...columnsOf(last, { height: high, lost })];
}

/** Lines in runs that must stay in one column. */
function runsOf(all: readonly Line[]): Line[][] {
  const runs: Line[][] = [];
  for (const [i, one] of all.entries())
    if (i > 0 && (all[i - 1] as Line).keep) (runs.at(-1) as Line[]).push(one);
    else runs.push([one]);
  return runs;
}

function heightOf(run: readonly Line[]): number {
  return run.reduce((sum, one) => sum + one.above + one.height, 0);
}

/** Where the step that starts at `from` ends. */
function stepEnd(all: readonly Line[], from: number): number {
  const next = all.findIndex((one, i) => i > from && one.starts);
  return next < 0 ? all.length : next;
}
