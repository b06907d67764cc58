import { moved } from '../ink.ts';
import { textWidth } from '../lettering.ts';
import type { Anchor, Box, Drawing, Mark } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { line, rectangle } from '../path.ts';
import type { Weight } from '../pen.ts';
import { balanced } from './balance.ts';
import { held, lines } from './lines.ts';
import { ASCENT, DESCENT, LINE_STEP, TEXT } from './style.ts';
import { TooLarge } from './toolarge.ts';

/** A small picture in a table: ready ink and its box, any origin, paper mm. */
export interface Picture {
  readonly marks: readonly Mark[];
  readonly bounds: Box;
}

/** What a table holds in one place: a text, which wraps, or a picture. */
export type Cell = string | Picture;

/** One column of a table. */
export interface TableColumn {
  readonly title: string;
  /** Left unless given; numbers stand right. */
  readonly align?: 'left' | 'right' | 'centre';
  /** Widest the text may run before it wraps, mm. */
  readonly width?: number;
}

/** What `table` and `tablePages` need to know. */
export interface TableOptions {
  readonly name: string;
  readonly title: string;
  readonly alt: string;
  readonly columns: readonly TableColumn[];
  readonly rows: readonly (readonly Cell[])[];
  /** A last row set off by a heavier line, for sums. */
  readonly foot?: readonly Cell[];
  /** Widest the whole table may be, mm; as wide as it asks unless given. */
  readonly width?: number;
  /** Columns that have to be narrowed share the width so that rows come out low; else by what they ask for. */
  readonly balance?: boolean;
}

/** Clear space in a cell beside and above its content, mm. */
const PAD_U = 1.6;
const PAD_V = 1.1;

/** A schedule: header, ruled rows of wrapped text and pictures, measured columns. Its upper left corner is at the origin. */
export function table(options: TableOptions): Drawing {
  const widths = columnWidths(options);
  return drawn(options, widths, options.rows, options.foot);
}

/**
 * The schedule cut between rows into drawings no taller than `height` mm, each with the header; the title says which page it
 * is. `TooLarge` when a single row is taller.
 */
export function tablePages(options: TableOptions & { readonly height: number }): Drawing[] {
  const { name, title, columns, rows, foot, height } = options;
  const widths = columnWidths(options);
  const tall = (row: readonly Cell[], weight: Weight = 'regular'): number => rowHeight(row, widths, weight);
  const head = tall(
    columns.map((column) => column.title),
    'semibold',
  );
  const pages: (readonly Cell[])[][] = [[]];
  let used = head;
  rows.forEach((row, i) => {
    const needs = tall(row) + (i === rows.length - 1 && foot ? tall(foot, 'semibold') : 0);
    if (head + needs > height)
      throw new TooLarge(
        `row ${i + 1} of ${title}`,
        `${Math.ceil(head + needs)} mm high, room for ${Math.floor(height)} mm`,
      );
    if (used + needs > height) {
      pages.push([]);
      used = head;
    }
    pages.at(-1)?.push(row);
    used += tall(row);
  });
  return pages.map((page, i) => {
    const last = i === pages.length - 1;
    const drawing = drawn(options, widths, page, last ? foot : undefined);
    const of = `${title} (${i + 1} of ${pages.length})`;
    return pages.length === 1 ? drawing : { ...drawing, name: `${name}-${i + 1}`, title: of };
  });
}

const isText = (cell: Cell): cell is string => typeof cell === 'string';

/** Width of each column with its padding: what it asks for, narrowed towards its longest word where the table is too wide. */
function columnWidths({ columns, rows, foot, width = Infinity, title, balance = false }: TableOptions): number[] {
  const all = [...rows, ...(foot ? [foot] : [])];
  const asked = columns.map((column, c) => {
    const cells = all.map((row) => row[c] ?? '');
    const texts = cells.filter(isText);
    const pictures = cells.map((cell) => (isText(cell) ? 0 : cell.bounds.u1 - cell.bounds.u0));
    const bold = [column.title, ...(foot ? [foot[c] ?? ''].filter(isText) : [])];
    const wide = (pieces: readonly string[], weight: Weight): number =>
      Math.max(
        0,
        ...pieces.map((piece) => Math.max(...piece.split('\n').map((part) => textWidth(held(part), TEXT, weight)))),
      );
    const words = (pieces: readonly string[]): string[] => pieces.flatMap((piece) => held(piece).split(/[ \n]+/));
    const least = Math.max(wide(words(texts), 'regular'), wide(words(bold), 'semibold'), ...pictures);
    const most = Math.max(wide(texts, 'regular'), wide(bold, 'semibold'), ...pictures);
    return { least, most: Math.max(least, Math.min(most, column.width ?? Infinity)) };
  });
  const room = width - columns.length * 2 * PAD_U;
  const least = asked.reduce((sum, one) => sum + one.least, 0);
  const most = asked.reduce((sum, one) => sum + one.most, 0);
  if (least > room + 1e-6)
    throw new TooLarge(title, `${Math.ceil(least + width - room)} mm wide, room for ${Math.floor(width)} mm`);
  if (balance && most > room) {
    const weights: Weight[] = [
      'semibold',
      ...rows.map((): Weight => 'regular'),
      ...(foot ? ['semibold' as const] : []),
    ];
    const texts = (c: number): string[] =>
      [columns.map(({ title: head }) => head), ...all].map((row) => {
        const cell = row[c] ?? '';
        return isText(cell) ? cell : '';
      });
    return balanced(
      asked.map((one, c) => ({ ...one, texts: texts(c), weights })),
      room,
    ).map((one) => one + 2 * PAD_U);
  }
  const share = most > room ? (room - least) / (most - least) : 1;
  // A hundredth to spare, so that a text as wide as its column does not wrap for rounding.
  return asked.map((one) => one.least + (one.most - one.least) * share + 2 * PAD_U + (most > room ? 0 : 0.01));
}

function linesOf(text: string, width: number, weight: Weight): string[] {
  return lines(text, width - 2 * PAD_U + 1e-6, { weight });
}

function rowHeight(row: readonly Cell[], widths: readonly number[], weight: Weight): number {
  const inner = row.map((cell, c) =>
    isText(cell)
      ? (ASCENT + DESCENT + (linesOf(cell, widths[c] as number, weight).length - 1) * LINE_STEP) * TEXT
      : cell.bounds.v1 - cell.bounds.v0,
  );
  return Math.max(...inner) + 2 * PAD_V;
}

function drawn(
  { name, title, alt, columns }: TableOptions,
  widths: readonly number[],
  rows: readonly (readonly Cell[])[],
  foot: readonly Cell[] | undefined,
): Drawing {
  const marks: Mark[] = [];
  const rules: Mark[] = [];
  const total = widths.reduce((sum, w) => sum + w, 0);
  const header = columns.map((column) => column.title);
  let v = 0;
  const put = (row: readonly Cell[], weight: Weight): void => {
    const height = rowHeight(row, widths, weight);
    marks.push(...rowInk(row, { columns, widths, v, height, weight }));
    v += height;
  };
  put(header, 'semibold');
  const under = v;
  rows.forEach((row, i) => {
    if (i > 0) rules.push(stroke('grid', line([0, v], [total, v])));
    put(row, 'regular');
  });
  if (foot) {
    rules.push(stroke('table', line([0, v], [total, v])));
    put(foot, 'semibold');
  }
  let u = 0;
  for (const w of widths.slice(0, -1)) {
    u += w;
    rules.push(stroke('grid', line([u, 0], [u, v])));
  }
  rules.push(
    stroke('table', line([0, under], [total, under])),
    stroke('table', rectangle({ u0: 0, v0: 0, u1: total, v1: v })),
  );
  return {
    name,
    title,
    scale: 0,
    scaleText: '',
    marks: [...rules, ...marks],
    bounds: { u0: 0, v0: 0, u1: total, v1: v },
    alt,
  };
}

/** The content of one row: text from the top, or in the middle beside a picture; pictures in the middle. */
function rowInk(
  row: readonly Cell[],
  at: {
    columns: readonly TableColumn[];
    widths: readonly number[];
    v: number;
    height: number;
    weight: Weight;
  },
): Mark[] {
  const { columns, widths, v, height, weight } = at;
  const beside = row.some((cell) => !isText(cell));
  let u = 0;
  return columns.flatMap((column, c): Mark[] => {
    const [cell, width] = [row[c] ?? '', widths[c] as number];
    const left = u;
    u += width;
    if (!isText(cell)) {
      const { u0, v0, u1, v1 } = cell.bounds;
      return moved(cell.marks, { du: left + (width - u1 + u0) / 2 - u0, dv: v + (height - v1 + v0) / 2 - v0 });
    }
    const { align = 'left' } = column;
    const place = { left: left + PAD_U, right: left + width - PAD_U, centre: left + width / 2 }[align];
    const anchor = ({ left: 'start', right: 'end', centre: 'middle' } as const)[align] satisfies Anchor;
    const wrapped = linesOf(cell, width, weight);
    const tall = (ASCENT + DESCENT + (wrapped.length - 1) * LINE_STEP) * TEXT;
    const top = v + (beside ? (height - tall) / 2 : PAD_V);
    return wrapped.map((text, i) =>
      write(weight === 'semibold' ? 'title' : 'note', text, [place, top + (ASCENT + i * LINE_STEP) * TEXT], {
        height: TEXT,
        anchor,
      }),
    );
  });
}
