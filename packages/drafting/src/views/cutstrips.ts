import type { Marks } from '@wattlewright/model';
import { moved } from '../ink.ts';
import { ASCENT, DESCENT, LINE_STEP, TEXT } from '../layout/style.ts';
import type { Mark } from '../mark.ts';
import { write } from '../mark.ts';
import { cutBar } from './cutbar.ts';
import { type CutBlock, lengthsText, rowName } from './cutblock.ts';
import { sectionText } from './cutsize.ts';
import type { RippedLength, Strip } from './cutstages.ts';

/** Column of names left of the bars, mm. */
export const NAMES = 30;

/** Height of the bar of a strip, and least height of a board's, mm. */
export const BAR = 6.5;

/** What the rows of strips need to know. */
export interface StripInk {
  readonly display: Marks;
  /** Room on a page, paper mm. */
  readonly width: number;
  readonly height: number;
  /** Paper over real length along the boards. */
  readonly along: number;
}

/** Room that names under a short bar may use beside its own, mm. */
const LEAST_WIDE = 40;

/** Between two rows, mm. */
const BETWEEN_ROWS = 2.2;

/**
 * The strips of lengths that are ripped alike, a row for each sort: how many, their section, and how one is crosscut. One
 * block, or one for each row where all are taller than a page.
 */
export function stripBlocks(ripped: RippedLength, numbers: readonly number[], ink: StripInk): CutBlock[] {
  const { display, along, height, width } = ink;
  const wide = Math.min(width, NAMES + Math.max(ripped.length * along, LEAST_WIDE));
  const head = `Strips from ${numbers.length > 1 ? 'each of ' : ''}${lengthsText(numbers)}`;
  const heading = write('note', head, [0, ASCENT * TEXT], { height: TEXT });
  const rows = sortsOf(ripped).map(({ strip, count }, i): CutBlock => {
    const v0 = i === 0 ? LINE_STEP * TEXT + 1 : 0;
    const at = (x: number): number => NAMES + x * along;
    const bar = cutBar({ cuts: strip.cuts, at, v0, height: BAR, display, across: [NAMES, wide] });
    const name = rowName(`${count} ×`, sectionText(strip.box.width, strip.box.height, display), v0, BAR);
    return {
      marks: [...bar.marks, ...name, ...(i === 0 ? [heading] : [])],
      height: Math.max(bar.v1, v0 + BAR / 2 + 0.8 + (ASCENT + DESCENT) * TEXT),
      above: i === 0 ? 4 : BETWEEN_ROWS,
      thinned: bar.thinned,
      wide,
    };
  });
  const [first] = rows;
  const all = rows.reduce((sum, row) => sum + row.height + BETWEEN_ROWS, -BETWEEN_ROWS);
  if (first === undefined || all > height / 2) return rows.map(({ wide: _, ...row }) => row);
  let v = 0;
  const marks = rows.flatMap((row): Mark[] => {
    const at = v;
    v += row.height + BETWEEN_ROWS;
    return moved(row.marks, { du: 0, dv: at });
  });
  return [{ ...first, marks, height: all, thinned: rows.some(({ thinned }) => thinned === true) }];
}

/** Strips that are alike in section and crosscuts, with how many; without waste. */
function sortsOf({ strips }: RippedLength): { readonly strip: Strip; readonly count: number }[] {
  const sorts = new Map<string, { strip: Strip; count: number }>();
  for (const strip of strips) {
    if (strip.letters.length === 0 && !strip.cuts.stretches.some(({ kind }) => kind === 'keep')) continue;
    const sides = [strip.box.width, strip.box.height].sort((a, b) => a - b);
    const key = JSON.stringify([sides.map((side) => Math.round(side * 1e4)), strip.cuts]);
    const sort = sorts.get(key) ?? { strip, count: 0 };
    sort.count += 1;
    sorts.set(key, sort);
  }
  return [...sorts.values()];
}
