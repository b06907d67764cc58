import { moved } from '../ink.ts';
import { ASCENT, DESCENT, TEXT_LARGE } from '../layout/style.ts';
import type { Mark } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { line } from '../path.ts';
import type { CutBlock } from './cutblock.ts';

/** Room on a page, paper mm, and the columns that it is parted into. */
export interface CutRoom {
  readonly width: number;
  readonly height: number;
  readonly columns: number;
}

/** Between two columns of patterns, mm. */
const BETWEEN_COLUMNS = 12;

/** Least width of a column, mm: that of an upright A4 sheet, on which bars and tables still read well. */
const NARROWEST = 183;

/** Width of one of some columns. */
export function columnWidth({ width, columns }: Omit<CutRoom, 'height'>): number {
  return (width - (columns - 1) * BETWEEN_COLUMNS) / columns;
}

/** How many columns a page may have, the fewest first. */
export function columnChoices(width: number): number[] {
  const most = Math.max(1, Math.floor((width + BETWEEN_COLUMNS) / (NARROWEST + BETWEEN_COLUMNS)));
  return Array.from({ length: most }, (_, i) => i + 1);
}

/** Pages of patterns, and how many patterns run over from one page to the next. */
export interface CutPages {
  readonly pages: readonly { readonly marks: readonly Mark[]; readonly height: number }[];
  readonly broken: number;
}

/** A place in the flow: the column counted over all pages, and how far down in it, mm. */
interface Place {
  readonly column: number;
  readonly v: number;
}

/** A block in its place. */
interface Laid {
  readonly place: Place;
  readonly block: CutBlock;
}

/** One way to lay a pattern's blocks. */
interface Way {
  readonly laid: readonly Laid[];
  readonly end: Place;
  readonly columns: number;
  readonly pages: number;
}

/**
 * Fills pages from the top, column after column, below the notes on the first. A pattern that fits one page stays on one;
 * where it runs on, its number is repeated.
 */
export function cutPages(boards: readonly (readonly CutBlock[])[], notes: CutBlock, room: CutRoom): CutPages {
  const { columns, height } = room;
  const top = (column: number): number => (column < columns ? notes.height : 0);
  const pageOf = (column: number): number => Math.floor(column / columns);
  const flow = { height, top, pageOf };
  const laid: Laid[] = [];
  let [at, broken]: [Place, number] = [{ column: 0, v: top(0) }, 0];
  boards.forEach((blocks, b) => {
    const starts = [at.column + 1, (pageOf(at.column) + 1) * columns].map((column) => ({ column, v: top(column) }));
    const [here, beside, over] = [at, ...starts].map((start) => laidFrom(start, blocks, b + 1, flow)) as [
      Way,
      Way,
      Way,
    ];
    const whole = [here, beside].find((way) => way.columns === 1);
    const one = whole ?? [here, beside, over].find((way) => way.pages === 1);
    // A pattern longer than a page begins where half a column is left for it.
    const way = one ?? (at.v === top(at.column) || height - at.v > height / 2 ? here : over);
    broken += way.pages - 1;
    laid.push(...way.laid);
    at = way.end;
  });
  const pages: { marks: Mark[]; height: number }[] = [{ marks: [...notes.marks], height: notes.height }];
  for (const { place, block } of laid) {
    const { column, v } = place;
    while (pages.length <= pageOf(column)) pages.push({ marks: [], height: 0 });
    const page = pages[pageOf(column)] as { marks: Mark[]; height: number };
    const du = (column % columns) * (columnWidth(room) + BETWEEN_COLUMNS);
    if (block.head === true && v > top(column) + block.above) {
      const mid = v - block.above / 2;
      page.marks.push(stroke('grid', line([du, mid], [du + 60, mid])));
    }
    page.marks.push(...moved(block.marks, { du, dv: v }));
    page.height = Math.max(page.height, v + block.height);
  }
  return { pages, broken };
}

/** A pattern's blocks from a place on, over as many columns as they take. */
function laidFrom(
  start: Place,
  blocks: readonly CutBlock[],
  number: number,
  flow: {
    readonly height: number;
    readonly top: (column: number) => number;
    readonly pageOf: (column: number) => number;
  },
): Way {
  const { height, top, pageOf } = flow;
  const laid: Laid[] = [];
  let { column, v } = start;
  const put = (block: CutBlock): void => {
    if (v > 0) v += block.above;
    laid.push({ place: { column, v }, block });
    v += block.height;
  };
  blocks.forEach((block, i) => {
    const next = blocks[1];
    // A head never stands alone at the foot of a column.
    const wants = block.above + block.height + (i === 0 && next ? next.above + next.height : 0);
    if (v > top(column) && v + wants > height) {
      column += 1;
      v = top(column);
      if (i > 0) put(continued(number));
    }
    put(block);
  });
  const used = [...new Set(laid.map(({ place }) => place.column))];
  return { laid, end: { column, v }, columns: used.length, pages: new Set(used.map(pageOf)).size };
}

function continued(number: number): CutBlock {
  const text = `Pattern ${number}, continued`;
  return {
    marks: [write('title', text, [0, ASCENT * TEXT_LARGE], { height: TEXT_LARGE })],
    height: (ASCENT + DESCENT) * TEXT_LARGE,
    above: 4,
  };
}
