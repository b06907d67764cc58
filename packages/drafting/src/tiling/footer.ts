import { fitText, textWidth, wrapText } from '../lettering.ts';
import { type Box, type Drawing, type Mark, type Point, write } from '../mark.ts';
import type { Extent } from '../scale.ts';
import { CHECK_LENGTH, CHECK_ROOM, checkBar } from './checkbar.ts';
import { joiningMap, type Place, pageLabel } from './join.ts';

const text = 2.5;
const large = 5;
const leading = 3.8;
/** Room at the foot of a full-size page, mm. */
export const FOOTER = 36;
/** Room at the right side of a full-size page, mm: for the upright check bar. */
export const SIDE: number = CHECK_ROOM + 2;

/** Room at the very foot for the number of the page in its file, mm. */
const NUMBER = 5;

/** What a full-size page says of itself. */
export interface Footer {
  readonly drawing: Drawing;
  readonly here: Place;
  readonly rows: number;
  readonly columns: number;
  /** Where ink may stand on the page. */
  readonly inside: Box;
  /** Paper mm drawn for a real millimetre, along `u` and `v`. */
  readonly factor: { readonly u: number; readonly v: number };
  /** Where the footer begins, how far its text may go, and the zero of the upright bar. */
  readonly at: FooterPlace;
  /** The printer's correction in words; absent when there is none. */
  readonly corrected?: string;
  /** Whether the page carries no mark of the drawing, so that nobody looks for one. */
  readonly bare?: boolean;
}

/** Where things of a footer stand on the page, mm. */
export interface FooterPlace {
  readonly top: number;
  readonly to: number;
  readonly bar: Point;
}

/** Width of a footer's text that is wide enough, mm. */
const WIDE = 110;

/**
 * The footer at the foot of the page and the upright bar at its side, `alone` close to the drawing that the page holds
 * whole: `drawn` mm each way. On a roll the bar stands beside the text where there is room for it.
 */
export function footerPlace(
  inside: Box,
  { drawn, alone, factor }: { readonly drawn: Extent; readonly alone: boolean; readonly factor: Footer['factor'] },
): FooterPlace {
  const [foot, side] = [inside.v1 - FOOTER, inside.u1 - 7];
  const long = CHECK_LENGTH * factor.v;
  if (!alone) return { top: foot, to: inside.u1, bar: [side, foot - 1] };
  const text = textStart(inside, factor) + WIDE;
  const under = inside.v0 + drawn.height;
  if (text + 2 * SIDE < inside.u1 && under + long + NUMBER + 4 < inside.v1)
    return { top: under, to: text, bar: [text + SIDE, under + long + 2] };
  const top = Math.min(foot, Math.max(under, inside.v0 + long + 6));
  return { top, to: inside.u1, bar: [Math.min(side, inside.u0 + drawn.width + 7), top - 1] };
}

/** Where the text of a footer begins, beside its level bar. */
function textStart({ u0 }: Box, factor: Footer['factor']): number {
  return u0 + 3 + CHECK_LENGTH * factor.u + 9;
}

/** Check bars both ways, how to print, which page this is, and how the pages join. */
export function footer({
  drawing,
  here,
  rows,
  columns,
  inside,
  factor,
  at: { top, to, bar },
  corrected,
  bare = false,
}: Footer): Mark[] {
  const u = inside.u0 + 3;
  const upright = checkBar({ at: bar, along: 'v', factor: factor.v });
  const level = checkBar({ at: [u, top + 12], along: 'u', factor: factor.u });
  const beside = textStart(inside, factor);
  const width = to - beside - 1;
  const count = rows * columns;
  const page = count === 1 ? 'one page' : `page ${here.row * columns + here.column + 1} of ${count}`;
  const head = pageLabel(here);
  const after = textWidth(head, large, 'semibold') + 4;
  const words = [
    'Print at actual size, 100 %; measure both bars.',
    'If one is off, mark the figures by tape, or reprint with paper.printed.',
    ...(bare ? ['No mark falls on this page.'] : []),
    ...(corrected === undefined ? [] : [corrected]),
    ...(count === 1 ? [] : ['Cut on the dashes; lay on the page before, cross on cross.']),
  ];
  const lines = wrapText(words.join(' '), width, text);
  const title = titleLines(drawing.title, width, Math.max(1, LINES - lines.length));
  const marks: Mark[] = [
    ...upright,
    ...level,
    write('title', head, [beside, top + 1.5 + large], { height: large }),
    write('note', page, [beside + after, top + 1.5 + large], { height: text }),
    ...title.map((line, i) => write('title', line, [beside, top + FIRST + i * leading], { height: text })),
    ...lines.map((line, i) =>
      write('note', line, [beside, top + FIRST + (title.length + i) * leading], { height: text }),
    ),
  ];
  if (count > 1) {
    // Pages in one column are mapped in the strip at the side, which is as tall as they are many.
    const room =
      columns === 1
        ? { u0: inside.u1 - SIDE + 2, v0: inside.v0 + 1, u1: inside.u1, v1: top - 6 - CHECK_LENGTH * factor.v }
        : { u0: u, v0: top + 21, u1: u + CHECK_LENGTH, v1: inside.v1 - NUMBER };
    marks.push(...joiningMap(here, rows, columns, room));
  }
  return marks;
}

/** From the top of the footer to the baseline of the line under the page's name, mm. */
const FIRST = 11.3;

/** Lines of title and text that the footer has room for. */
const LINES = 7;

/** The title whole, in as many lines as there are for it; only what is longer still ends in an ellipsis. */
function titleLines(title: string, width: number, most: number): string[] {
  const all = wrapText(title, width, text, 'semibold');
  if (all.length <= most) return all;
  return [...all.slice(0, most - 1), fitText(all.slice(most - 1).join(' '), width, text, 'semibold')];
}
