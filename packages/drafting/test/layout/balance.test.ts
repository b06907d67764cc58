import { describe, expect, it } from 'vitest';
import { balanced } from '../../src/layout/balance.ts';
import { lines } from '../../src/layout/lines.ts';
import { TEXT } from '../../src/layout/style.ts';
import { textWidth } from '../../src/lettering.ts';

const column = (...texts: string[]) => ({
  least: Math.max(...texts.flatMap((text) => text.split(' ')).map((word) => textWidth(word, TEXT))),
  most: Math.max(...texts.map((text) => textWidth(text, TEXT))),
  texts,
  weights: texts.map(() => 'regular' as const),
});

const words = (n: number): string => Array.from({ length: n }, () => 'word').join(' ');

describe('balanced', () => {
  const tall = (columns: readonly ReturnType<typeof column>[], widths: readonly number[]): number =>
    (columns[0]?.texts ?? []).reduce(
      (sum, _, r) =>
        sum + Math.max(...columns.map(({ texts }, c) => lines(texts[r] ?? '', widths[c] as number).length)),
      0,
    );

  // One long text beside many middling ones: by need alone the long one would take nearly all the room.
  const columns = [column(words(40), words(1), words(1), words(1)), column(words(12), words(12), words(12), words(12))];

  it('makes rows lower than widths shared by need', () => {
    const room = 120;
    const [least, most] = [columns.map((c) => c.least), columns.map((c) => c.most)];
    const sum = (sizes: readonly number[]): number => sizes.reduce((a, b) => a + b, 0);
    const share = (room - sum(least)) / (sum(most) - sum(least));
    const byNeed = columns.map((c) => c.least + (c.most - c.least) * share);
    expect(tall(columns, balanced(columns, room))).toBeLessThan(tall(columns, byNeed));
  });

  it('uses the room it has and leaves no word broken', () => {
    for (const room of [30, 60, 120, 240]) {
      const widths = balanced(columns, room);
      expect(widths.reduce((a, b) => a + b, 0)).toBeCloseTo(room, 6);
      widths.forEach((width, c) => {
        expect(width).toBeGreaterThanOrEqual((columns[c]?.least ?? 0) - 1e-9);
      });
    }
  });
});
