import { fitText, textWidth, wrapText } from '../lettering.ts';
import { type Box, type Drawing, type Mark, write } from '../mark.ts';
import { CHECK_LENGTH, CHECK_ROOM, checkBar } from './checkbar.ts';
import { joiningMap, type Place, pageLabel } from './join.ts';

const text = 2.5;
const large = 5;
const leading = 4.2;
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
  /** The printer's correction in words; absent when there is none. */
  readonly corrected?: string;
}

/** Check bars both ways, how to print, which page this is, and how the pages join. */
export function footer({ drawing, here, rows, columns, inside, factor, corrected }: Footer): Mark[] {
  const top = inside.v1 - FOOTER;
  const u = inside.u0 + 3;
  const upright = checkBar({ at: [inside.u1 - 7, top - 1], along: 'v', factor: factor.v });
  const level = checkBar({ at: [u, top + 12], along: 'u', factor: factor.u });
  const beside = u + CHECK_LENGTH * factor.u + 9;
  const width = inside.u1 - beside - 1;
  const count = rows * columns;
  const page = count === 1 ? 'one page' : `page ${here.row * columns + here.column + 1} of ${count}`;
  const lines = [
    'Print at actual size, 100 %; then measure both bars.',
    'If a bar is off, write its percent into the job; print again.',
    ...(corrected === undefined ? [] : [corrected]),
    ...(count === 1 ? [] : ['Cut on the dashes; lay on the page before, cross on cross.']),
  ].flatMap((line) => wrapText(line, width, text));
  const head = pageLabel(here);
  const after = textWidth(head, large, 'semibold') + 4;
  const title = fitText(drawing.title, width - after - textWidth(`, ${page}`, text), text);
  const marks: Mark[] = [
    ...upright,
    ...level,
    write('title', head, [beside, top + 2 + large], { height: large }),
    write('note', `${title}, ${page}`, [beside + after, top + 2 + large], { height: text }),
    ...lines.map((line, i) => write('note', line, [beside, top + 11.5 + i * leading], { height: text })),
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
