import { moved } from '../ink.ts';
import { ASCENT, DESCENT, LINE_STEP, TEXT, TEXT_LARGE } from '../layout/style.ts';
import type { Picture } from '../layout/table.ts';
import { textWidth } from '../lettering.ts';
import type { Mark, Point } from '../mark.ts';
import { write } from '../mark.ts';

/** Ink that stays together, from v = 0 down; `above` is space left out at the top of a page. */
export interface CutBlock {
  readonly marks: Mark[];
  readonly height: number;
  readonly above: number;
  readonly thinned?: boolean;
  /** Set on the block that a pattern begins with. */
  readonly head?: boolean;
  /** Set where another may stand beside it, mm. */
  readonly wide?: number;
}

/** Between two blocks abreast, mm. */
const GUTTER = 10;

/** Blocks set abreast as far as they have room, in their order. */
export function abreast(blocks: readonly CutBlock[], width: number): CutBlock[] {
  const rows: { block: CutBlock; used: number }[] = [];
  for (const block of blocks) {
    const [row, wide] = [rows.at(-1), block.wide ?? width];
    const left = row === undefined ? 0 : row.used + GUTTER;
    if (row === undefined || left + wide > width) {
      rows.push({ block, used: wide });
      continue;
    }
    const marks = [...row.block.marks, ...moved(block.marks, { du: left, dv: 0 })];
    const thinned = row.block.thinned === true || block.thinned === true;
    row.block = { ...row.block, marks, thinned, height: Math.max(row.block.height, block.height) };
    row.used = left + wide;
  }
  return rows.map(({ block }) => block);
}

/** Width up to which a title has its note beside it, mm: two pictures then stand abreast on the narrowest column. */
const ABREAST = 86;

/** A picture or table under its title; `note` is said after it in plain letters, or under it where that is too wide. */
export function titled(text: string, { marks, bounds: { u0, v0, u1, v1 } }: Picture, note = ''): CutBlock {
  const base = ASCENT * TEXT_LARGE;
  const head = textWidth(text, TEXT_LARGE, 'semibold');
  const said = note === '' ? 0 : textWidth(note, TEXT);
  const isUnder = head + 2 + said > ABREAST && said > 0;
  const noteAt: Point = isUnder ? [0, base + LINE_STEP * TEXT + 1] : [head + 2, base];
  const top = noteAt[1] + DESCENT * TEXT_LARGE + 2;
  return {
    marks: [
      write('title', text, [0, base], { height: TEXT_LARGE }),
      ...(note === '' ? [] : [write('note', note, noteAt, { height: TEXT })]),
      ...moved([...marks], { du: -u0, dv: top - v0 }),
    ],
    height: top + v1 - v0,
    above: 6,
    wide: Math.max(u1 - u0, head, said > 0 ? noteAt[0] + said : 0),
  };
}

/** A large sign with small words under it, in the column left of a bar. */
export function rowName(big: string, small: string, v0: number, height: number): Mark[] {
  const v = v0 + height / 2;
  return [
    write('title', big, [0, v - 0.4], { height: TEXT_LARGE }),
    write('note', small, [0, v + 0.8 + ASCENT * TEXT], { height: TEXT }),
  ];
}

/** `length 1`, `lengths 1 and 2`, `lengths 1, 2 and 3`. */
export function lengthsText(numbers: readonly number[]): string {
  if (numbers.length < 2) return `length\u00a0${numbers.join('')}`;
  return `lengths ${numbers.slice(0, -1).join(', ')} and\u00a0${numbers.at(-1)}`;
}
