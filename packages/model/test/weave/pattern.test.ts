import fc from 'fast-check';
import { expect, test } from 'vitest';
import { changesOfSide, mirrorRow, type Side, swapRow, weaveNames, weaveSides } from '../../src/weave/pattern.ts';

const signs = (row: readonly Side[] | undefined) => (row ?? []).map((side) => (side === 1 ? '+' : '-')).join('');
const chart = (weave: Parameters<typeof weaveSides>[0]) => {
  const { rows, rowOfCourse } = weaveSides(weave);
  return rowOfCourse.map((row) => signs(rows[row]));
};

test.each([
  ['plain', 'front', '+-+-+ -+-+- +-+-+ -+-+-'],
  ['plain', 'behind', '-+-+- +-+-+ -+-+- +-+-+'],
  ['two-over-two twill', 'front', '++--+ -++-- --++- +--++'],
  ['two-over-two twill', 'behind', '--++- +--++ ++--+ -++--'],
  ['two-over-two basket', 'front', '++--+ ++--+ --++- --++-'],
  ['two-over-one twill', 'front', '++-++ -++-+ +-++- ++-++'],
  ['two-over-one twill', 'behind', '-++-+ +-++- ++-++ -++-+'],
  ['paired courses', 'front', '+-+-+ +-+-+ -+-+- -+-+-'],
] as const)('weaveSides() of %s starting in %s', (weave, start, expected) => {
  expect(chart({ weave, start, courses: 4, staves: 5 })).toEqual(expected.split(' '));
});

test('weaveSides() takes given rows as written, whatever the start, and repeats them', () => {
  const given = { weave: ['-++', '+--'], courses: 3, staves: 4 };
  for (const start of [{}, { start: 'front' }, { start: 'behind' }] as const)
    expect(chart({ ...given, ...start })).toEqual(['-++-', '+--+', '-++-']);
});

test('weaveSides() gives each distinct row once', () => {
  const weave = weaveSides({ weave: 'two-over-two basket', courses: 60, staves: 12 });
  expect(weave.rows).toHaveLength(2);
  expect(weave.rowOfCourse.slice(0, 6)).toEqual([0, 0, 1, 1, 0, 0]);
  expect(weave.repeat).toEqual({ courses: 4, staves: 4 });
});

test.each([
  [{ weave: ['+x'], courses: 2, staves: 2 }, 'invalid weave row: +x'],
  [{ weave: ['+-', '+'], courses: 2, staves: 2 }, 'row 2 is +, row 1 +-'],
  [{ weave: [], courses: 2, staves: 2 }, 'no rows'],
  [{ weave: 'satin' as 'plain', courses: 2, staves: 2 }, 'invalid weave: satin'],
  [{ weave: 'plain' as const, courses: 0, staves: 2 }, 'invalid number of courses: 0'],
  [{ weave: 'plain' as const, courses: 2, staves: 2.5 }, 'invalid number of staves: 2.5'],
])('weaveSides(%o) is refused', (pattern, message) => {
  expect(() => weaveSides(pattern)).toThrow(message);
});

const sides = fc.array(fc.constantFrom<Side>(1, -1), { minLength: 1, maxLength: 12 });
const settings = { seed: 20261124, numRuns: 200 };

test('mirrorRow() and swapRow() undo themselves and keep the number of changes', () => {
  fc.assert(
    fc.property(sides, (row) => {
      expect(mirrorRow(mirrorRow(row))).toEqual(row);
      expect(swapRow(swapRow(row))).toEqual(row);
      expect(changesOfSide(mirrorRow(row))).toHaveLength(changesOfSide(row).length);
      expect(changesOfSide(swapRow(row))).toEqual(changesOfSide(row));
    }),
    settings,
  );
});

// What odd and even numbers of staves and courses do in plain weave, s = (-1)^(course + stave).
const plain = (courses: number, staves: number) => chart({ weave: 'plain', courses, staves });
const mirror = (rows: readonly string[]) => rows.map((row) => [...row].reverse().join(''));
const swap = (rows: readonly string[]) => rows.map((row) => row.replace(/./g, (sign) => (sign === '+' ? '-' : '+')));

test.each([3, 4, 5, 6, 7, 8])(
  'plain weave of %d staves: ends, mirror and back as its number is odd or even',
  (staves) => {
    const odd = staves % 2 === 1;
    const front = plain(6, staves);
    const shifted = plain(7, staves).slice(1);
    for (const row of front) expect(row.at(0) === row.at(-1)).toBe(odd);
    expect(mirror(front)).toEqual(odd ? front : shifted);
    // Seen from the back: left for right, front for back.
    expect(swap(mirror(front))).toEqual(odd ? shifted : front);
  },
);

test('plain weave: top to bottom mirror holds for odd courses, a half turn for even staves and courses together', () => {
  for (const courses of [3, 4, 5, 6])
    for (const staves of [3, 4, 5, 6]) {
      const rows = plain(courses, staves);
      expect(rows.join() === rows.toReversed().join()).toBe(courses % 2 === 1);
      expect(rows.join() === mirror(rows.toReversed()).join()).toBe((staves + courses) % 2 === 0);
      const corners = new Set([rows.at(0)?.at(0), rows.at(0)?.at(-1), rows.at(-1)?.at(0), rows.at(-1)?.at(-1)]);
      expect(corners.size === 1).toBe(staves % 2 === 1 && courses % 2 === 1);
    }
});

test('every named weave has in each row of twelve staves at least two changes of side', () => {
  for (const weave of weaveNames)
    for (const row of weaveSides({ weave, courses: 12, staves: 12 }).rows)
      expect(changesOfSide(row).length).toBeGreaterThanOrEqual(2);
});
