import type { Mark } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { line } from '../path.ts';
import { lines } from './lines.ts';
import { ASCENT, DESCENT, LINE_STEP, TEXT } from './style.ts';

/** One figure of running text: what it is and its value, or a name over those that follow, which has no value. */
export type FigureRow = readonly [what: string, value: string];

/** Share of the width that the names of figures take, and the room between them and the values, mm. */
const NAMES = 0.42;
const BETWEEN = 3;

/** A line of figures laid out: its ink with the top at v = 0, and its height, mm. */
export interface FigureLine {
  readonly marks: readonly Mark[];
  readonly height: number;
  /** Whether it is a name over what follows. */
  readonly heads: boolean;
}

/** Figures as a short table between `from` and `to`: names, values beside them, and a hair line under each. */
export function figureLines(rows: readonly FigureRow[], from: number, to: number): FigureLine[] {
  const names = (to - from) * NAMES;
  const values = from + names + BETWEEN;
  return rows.map(([what, value]) => {
    const heads = value === '';
    const left = lines(what, heads ? to - from : names, { weight: heads ? 'semibold' : 'regular' });
    const right = heads ? [] : lines(value, to - values);
    const tall = Math.max(left.length, right.length);
    const height = (tall - 1) * LINE_STEP * TEXT + (ASCENT + DESCENT) * TEXT + ROOM;
    const at = (k: number) => ROOM / 2 + ASCENT * TEXT + k * LINE_STEP * TEXT;
    return {
      marks: [
        ...left.map((text, k) => write(heads ? 'title' : 'note', text, [from, at(k)], { height: TEXT })),
        ...right.map((text, k) => write('note', text, [values, at(k)], { height: TEXT })),
        ...(heads ? [] : [stroke('grid', line([from, height], [to, height]))]),
      ],
      height,
      heads,
    };
  });
}

/** Over and under the words of a line, together, mm. */
const ROOM = 1.6;
