import type { Panel } from '@wattlewright/model';
import { TEXT } from '../layout/style.ts';
import { fitText, textWidth } from '../lettering.ts';
import type { Mark } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { rectangle } from '../path.ts';

/** Columns of boxes beside a weave chart, one for each panel woven by it. */
export interface Ticks {
  /** Boxes in a row. */
  readonly boxes: number;
  /** How many panels are tallied in one wide box, being too many for boxes of their own; 0 for none. */
  readonly tally: number;
  /** Names over them; empty for one panel alone. */
  readonly names: readonly string[];
  /** Room of the columns together, and over the weave, mm. */
  readonly width: number;
  readonly over: number;
}

/** Room of one column, mm: a box as wide as a row is tall. */
const COLUMN = 6;

/** Most columns, and longest name over one, mm. */
const MOST = 12;
const LONGEST = 34;

/** Room of a box to tally in, mm. */
const TALLY = 30;

/** Room over the weave for stave numbers and which end is which, mm. */
const OVER = 11;

/** The columns for some panels; of a panel made several times one for each. */
export function ticksOf(serves: readonly Panel[]): Ticks {
  const all = serves.flatMap(({ name, count }) =>
    count === 1 ? [name] : Array.from({ length: count }, (_, i) => `${name}, no. ${i + 1}`),
  );
  if (all.length === 1) return { boxes: 1, tally: 0, names: [], width: COLUMN, over: OVER };
  if (all.length > MOST) return { boxes: 1, tally: all.length, names: [], width: TALLY, over: OVER };
  const names = all.map((name) => fitText(name, LONGEST, TEXT));
  const long = Math.max(...names.map((name) => textWidth(name, TEXT)));
  return { boxes: names.length, tally: 0, names, width: names.length * COLUMN, over: Math.max(OVER, long + 3) };
}

/** The boxes of one course. */
export function tickBoxes({ boxes, tally }: Ticks, top: number, foot: number): Mark[] {
  return Array.from({ length: boxes }, (_, i) => {
    const u0 = i * COLUMN + 1;
    const wide = tally > 0 ? TALLY - 2 : COLUMN - 2.4;
    return stroke('table', rectangle({ u0, v0: top, u1: u0 + wide, v1: foot }));
  });
}

/** Names over the columns, reading upwards. */
export function tickHeads({ names }: Ticks, over: number): Mark[] {
  return names.map((name, i) =>
    write('note', name, [i * COLUMN + 1 + 1.8 + TEXT / 2, over - 1.5], { height: TEXT, angle: 90 }),
  );
}
