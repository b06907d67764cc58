import { expect, test } from 'vitest';
import { hangsTogether } from '../../src/weave/hang.ts';
import type { Side } from '../../src/weave/pattern.ts';

/** Rows of a chart, 1 the course in front. */
const chart = (text: string): Side[][] => text.split(' ').map((row) => Array.from(row, (c) => (c === '1' ? 1 : -1)));

// Chart; loose; staves tied; courses that come off loose and tied; courses that are gripped.
test.each([
  ['1010 0101 1010 0101', true, true, [], [], [1, 2, 3, 4]],
  ['110011 011001 001100 100110', true, true, [], [], [1, 2, 3, 4]],
  ['10000 00100 00001 01000 00010', true, true, [], [], [2, 4, 5]],
  ['1010 1111 0101 1010', false, false, [2], [2], [1, 3, 4]],
  ['1011 0111 0010 0001', false, true, [3, 4], [], [1, 3]],
  ['11110 11100 11000 10000', false, true, [1, 2, 3, 4], [], []],
  ['1100 1100 0011 0011', true, true, [], [], []],
])('hangsTogether(%s) loose %s, with tied staves %s', (text, loose, tied, offLoose, offTied, gripped) => {
  const cloth = hangsTogether(chart(text), { stavesTied: false });
  const panel = hangsTogether(chart(text), { stavesTied: true });
  expect([cloth.holds, panel.holds]).toEqual([loose, tied]);
  expect([cloth.looseCourses, panel.looseCourses]).toEqual([offLoose, offTied]);
  expect(panel.gripped.flatMap((grips, course) => (grips ? [course + 1] : []))).toEqual(gripped);
});

// All 4096 charts of 3 x 4, each split in every way: a split lifts off when each crossing has its strand in front.
const everyChart = Array.from({ length: 4096 }, (_, bits) =>
  Array.from({ length: 3 }, (_, c) => Array.from({ length: 4 }, (_, j): Side => ((bits >> (4 * c + j)) & 1 ? 1 : -1))),
);

function comesApart(rows: readonly (readonly Side[])[], tied: boolean): boolean {
  // Strands as bits: courses 0 to 2, staves 3 to 6.
  for (let lifted = 1; lifted < 127; lifted++) {
    const staves = lifted >> 3;
    if (tied && staves !== 0 && staves !== 15) continue;
    const has = (strand: number) => ((lifted >> strand) & 1) === 1;
    const free = rows.every((row, c) =>
      row.every((side, j) => has(c) === has(3 + j) || (side === 1 ? has(c) : has(3 + j))),
    );
    if (free) return true;
  }
  return false;
}

test('hangsTogether() agrees with trying every splitting of every weave of 3 courses and 4 staves', () => {
  let holding = 0;
  for (const rows of everyChart) {
    const { holds } = hangsTogether(rows, { stavesTied: false });
    expect(holds).toBe(!comesApart(rows, false));
    expect(hangsTogether(rows, { stavesTied: true }).holds).toBe(!comesApart(rows, true));
    if (holds) holding++;
  }
  expect(holding).toBe(906);
});

test('hangsTogether() with tied staves: the loose courses are those all in front or all behind', () => {
  for (const rows of everyChart) {
    const uniform = rows.flatMap((row, c) => (new Set(row).size === 1 ? [c + 1] : []));
    expect(hangsTogether(rows, { stavesTied: true }).looseCourses).toEqual(uniform);
  }
});

test('hangsTogether() puts every strand in one layer, and no strand in front of one of a layer before it', () => {
  for (const rows of everyChart.filter((_, i) => i % 7 === 0)) {
    const { layers } = hangsTogether(rows, { stavesTied: false });
    const layerOf = (kind: 'courses' | 'staves', strand: number) =>
      layers.findIndex((layer) => layer[kind].includes(strand));
    for (const [c, row] of rows.entries())
      for (const [j, side] of row.entries()) {
        const course = layerOf('courses', c + 1);
        const stave = layerOf('staves', j + 1);
        expect(Math.min(course, stave)).toBeGreaterThanOrEqual(0);
        expect(side === 1 ? course <= stave : stave <= course).toBe(true);
      }
  }
});

test('hangsTogether() tells all layers of a weave that comes apart, front first', () => {
  expect(hangsTogether(chart('1010 1111 0101 1010'), { stavesTied: false }).layers).toEqual([
    { courses: [2], staves: [] },
    { courses: [1, 3, 4], staves: [1, 2, 3, 4] },
  ]);
});

test.each([[[]], [[[]]], [chart('101 10')]])('hangsTogether(%j) is refused', (rows) => {
  expect(() => hangsTogether(rows, { stavesTied: true })).toThrow('invalid rows');
});
