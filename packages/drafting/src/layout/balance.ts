import type { Weight } from '../pen.ts';
import { lines } from './lines.ts';

/** One column to be set: the width of its longest word and of its longest text, mm, and its texts row by row. */
export interface BalanceColumn {
  readonly least: number;
  readonly most: number;
  readonly texts: readonly string[];
  readonly weights: readonly Weight[];
}

/** Widths are tried by this much and by some times it, mm. */
const STEP = 2;
const TIMES = [1, 2, 4, 8, 16, 32];

/**
 * Widths of columns that share `room` mm so that the rows come out low together: from the longest words on, each time the
 * column is widened that takes most lines off the table for the room it wants. What is left over is shared by need.
 */
export function balanced(columns: readonly BalanceColumn[], room: number): number[] {
  const known = columns.map(() => new Map<number, number[]>());
  const countsAt = (c: number, width: number): number[] => {
    const found = known[c]?.get(width);
    if (found !== undefined) return found;
    const { texts, weights } = columns[c] as BalanceColumn;
    const counts = texts.map((text, r) =>
      text === '' ? 1 : lines(text, width + 1e-6, { weight: weights[r] ?? 'regular' }).length,
    );
    known[c]?.set(width, counts);
    return counts;
  };
  const widths = columns.map(({ least }) => least);
  const rows = columns[0]?.texts.length ?? 0;
  const tall = (at: readonly number[]): number => {
    let sum = 0;
    for (let r = 0; r < rows; r++) sum += Math.max(...at.map((width, c) => countsAt(c, width)[r] ?? 1));
    return sum;
  };
  // Beside the lines of rows, each cell's own count a little, so that columns of equal need are widened in turn.
  const cost = (at: readonly number[]): number =>
    tall(at) + 0.02 * at.reduce((sum, width, c) => sum + countsAt(c, width).reduce((a, b) => a + b, 0), 0);
  for (let left = room - sum(widths); left > 1e-9; left = room - sum(widths)) {
    const now = cost(widths);
    let best: { c: number; width: number; gain: number } | undefined;
    columns.forEach(({ most }, c) => {
      const width = widths[c] as number;
      for (const times of TIMES) {
        const wider = Math.min(width + times * STEP, most, width + left);
        if (wider <= width + 1e-9) break;
        const gain = (now - cost(widths.with(c, wider))) / (wider - width);
        if (gain > (best?.gain ?? 1e-9) + 1e-12) best = { c, width: wider, gain };
      }
    });
    if (best === undefined) break;
    widths[best.c] = best.width;
  }
  const left = room - sum(widths);
  const need = columns.map(({ most }, c) => Math.max(0, most - (widths[c] as number)));
  const share = sum(need) > 0 ? Math.min(1, left / sum(need)) : 0;
  return widths.map((width, c) => width + (need[c] as number) * share);
}

function sum(sizes: readonly number[]): number {
  return sizes.reduce((a, b) => a + b, 0);
}
