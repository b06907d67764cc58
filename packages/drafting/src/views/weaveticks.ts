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
  /** Whether the panels are too many for boxes of their own, each then wanting a copy of the chart. */
  readonly copies: boolean;
  /** Names over them; empty for one panel alone. */
  readonly names: readonly string[];
  /** Room of the columns together, and over the weave, mm. */
  readonly width: number;
  readonly over: number;
}

/** Room of one column, mm: a box as wide as a row is tall. */
const COLUMN = 6;

/** Most columns, and longest name over one, mm. */
const MOST = 8;
const LONGEST = 34;

/** Room over the weave for stave numbers and which end is which, mm. */
const OVER = 11;

/** The columns for some panels; of a panel made several times one for each. */
export function ticksOf(serves: readonly Panel[]): Ticks {
  const all = serves.flatMap(({ name, count }) =>
    count === 1 ? [name] : Array.from({ length: count }, (_, i) => `${name}, no. ${i + 1}`),
  );
  if (all.length === 1 || all.length > MOST)
    return { boxes: 1, copies: all.length > 1, names: [], width: COLUMN, over: OVER };
  const names = all.map((name) => fitText(name, LONGEST, TEXT));
  const long = Math.max(...names.map((name) => textWidth(name, TEXT)));
  return { boxes: names.length, copies: false, names, width: names.length * COLUMN, over: Math.max(OVER, long + 3) };
}

/** The boxes of one course. */
export function tickBoxes({ boxes }: Ticks, top: number, foot: number): Mark[] {
  return Array.from({ length: boxes }, (_, i) => {
    const u0 = i * COLUMN + 1;
    return stroke('table', rectangle({ u0, v0: top, u1: u0 + foot - top, v1: foot }));
  });
}

/** Names over the columns, reading upwards. */
export function tickHeads({ names }: Ticks, over: number): Mark[] {
  return names.map((name, i) =>
    write('note', name, [i * COLUMN + 1 + 1.8 + TEXT / 2, over - 1.5], { height: TEXT, angle: 90 }),
  );
}
