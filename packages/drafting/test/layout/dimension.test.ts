import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pointsOf } from '../../src/ink.ts';
import { contains, grown } from '../../src/layout/clearance.ts';
import { dimensionRows } from '../../src/layout/dimension.ts';
import { rowsOf, type Size } from '../../src/layout/rows.ts';
import type { Side } from '../../src/layout/side.ts';
import { textBox } from '../../src/lettering.ts';
import { faultsOf, segmentsOf, textsOf } from './faults.ts';

const outline = { u0: 0, v0: 0, u1: 120, v1: 100 };
const size = (from: number, to: number, more: Partial<Size> = {}): Size => ({
  from,
  to,
  text: String(Math.abs(to - from) * 10),
  value: Math.abs(to - from) * 10,
  ...more,
});
const seeded = { seed: 20261124, numRuns: 200 };

describe('rowsOf', () => {
  it.each([
    ['a chain and its total', [size(0, 4), size(4, 116), size(116, 120), size(0, 120)], [0, 0, 0, 1]],
    ['nested spans', [size(0, 120), size(10, 110), size(20, 100)], [2, 1, 0]],
    [
      'a size within one link of a chain moves the whole chain',
      [size(0, 4), size(4, 116), size(116, 120), size(10, 30), size(0, 120)],
      [1, 1, 1, 0, 2],
    ],
    [
      'a chain and the finer chain of one link',
      [size(0, 40), size(40, 120), size(0, 10), size(10, 40), size(0, 120)],
      [1, 1, 0, 0, 2],
    ],
    [
      'a size that overlaps a chain in part',
      [size(0, 20), size(20, 24), size(24, 120), size(20, 60), size(0, 120)],
      [0, 0, 0, 1, 2],
    ],
    ['the same span twice', [size(0, 50), size(0, 50)], [0, 1]],
    ['spans that overlap in part', [size(0, 60), size(50, 120)], [0, 1]],
    ['a level of its own', [size(0, 50), size(60, 120, { level: 3 }), size(0, 120)], [0, 1, 2]],
    [
      'a second chain along one size gives way',
      [size(0, 50), size(50, 120), size(0, 20), size(20, 120), size(0, 120)],
      [1, 1, 0, 2, 3],
    ],
    [
      'two chains that would each be outside the other are let go',
      [size(0, 50), size(50, 120), size(0, 20), size(20, 120), size(0, 120), size(0, 120)],
      [1, 0, 0, 2, 3, 4],
    ],
    ['ends in either order', [size(50, 0), size(120, 0)], [0, 1]],
  ])('%s', (_, sizes, rows) => {
    expect(rowsOf(sizes)).toEqual(rows);
  });

  it('a total equal in length to another size stands outside it', () => {
    expect(rowsOf([size(0, 120, { total: true }), size(0, 120)])).toEqual([1, 0]);
  });
});

describe('dimensionRows', () => {
  const chain = [size(0, 4), size(4, 116), size(116, 120), size(0, 120, { total: true })];

  it('the first line stands 10 mm off and the next 8 mm further (ASME Y14.5 asks for 3/8 in and 1/4 in at least)', () => {
    const { marks } = dimensionRows({ side: 'below', outline, sizes: chain });
    const levels = segmentsOf(marks).filter(([a, b]) => a[1] === b[1] && Math.abs(a[0] - b[0]) > 1);
    expect([...new Set(levels.map(([a]) => a[1]))].sort((a, b) => a - b)).toEqual([110, 118]);
  });

  it('extension lines start 1/16 in from the outline and pass the outermost line by 2 mm', () => {
    const { marks } = dimensionRows({ side: 'below', outline, sizes: chain });
    const left = segmentsOf(marks).filter(([a, b]) => a[0] === 0 && b[0] === 0);
    expect(left).toEqual([
      [
        [0, 100 + 25.4 / 16],
        [0, 120],
      ],
    ]);
  });

  it('small spans at the ends push their text outside along the line', () => {
    const { marks } = dimensionRows({ side: 'below', outline, sizes: chain });
    const [first, , third] = textsOf(marks);
    expect(textBox(first as never).u1).toBeLessThan(0);
    expect(textBox(third as never).u0).toBeGreaterThan(120);
  });

  it('a small span between others gets its text outside the row with a leader', () => {
    const sizes = [size(0, 50, { text: '500' }), size(50, 52, { text: '20.5' }), size(52, 120, { text: '680' })];
    const { marks } = dimensionRows({ side: 'above', outline, sizes });
    const leaders = segmentsOf(marks).filter(([a]) => a[0] === 51 && a[1] === -10);
    expect(leaders).toHaveLength(1);
    expect(faultsOf(marks)).toEqual([]);
  });

  it('text is 2.5 mm, totals 3.5 mm (ISO 3098-1 heights)', () => {
    const { marks } = dimensionRows({ side: 'left', outline, sizes: chain });
    expect(textsOf(marks).map(({ height }) => height)).toEqual([2.5, 2.5, 2.5, 3.5]);
  });

  it('text reads from the bottom above and below, from the right at the sides (ISO 129-1)', () => {
    const angle = (side: Side): number[] => [
      ...new Set(textsOf(dimensionRows({ side, outline, sizes: [size(0, 90)] }).marks).map((text) => text.angle)),
    ];
    expect([angle('above'), angle('below'), angle('left'), angle('right')]).toEqual([[0], [0], [90], [90]]);
  });

  it('a chain that spans a total is recorded with its printed values', () => {
    const { chains } = dimensionRows({ side: 'below', outline, sizes: chain });
    expect(chains).toEqual([{ what: 'below: 40 + 1120 + 40', parts: [40, 1120, 40], total: 1200 }]);
  });

  it('a chain that does not add up says so beside the row and in its record', () => {
    const sizes = [size(0, 40, { value: 400.5 }), size(40, 120, { value: 800 }), size(0, 120, { value: 1200 })];
    const { chains, marks } = dimensionRows({ side: 'below', outline, sizes });
    expect(chains[0]?.saidSo).toBe(true);
    expect(textsOf(marks).some(({ text }) => text.includes('does not add up'))).toBe(true);
    expect(faultsOf(marks)).toEqual([]);
  });

  it('start pushes the rows out and depth says how far they reach', () => {
    const inner = dimensionRows({ side: 'right', outline, sizes: [size(0, 50)] });
    const outer = dimensionRows({ side: 'right', outline, sizes: [size(0, 100)], start: inner.depth });
    expect(inner.depth).toBe(12);
    expect(outer.depth).toBe(12 + 8 + 2);
  });

  it('no sizes make no ink', () => {
    expect(dimensionRows({ side: 'above', outline, sizes: [] }).marks).toEqual([]);
  });
});

/** Arbitrary sizes of one side: chains of neighbours with any cuts, totals, and some loose spans. */
const anySizes = fc
  .tuple(
    fc.array(fc.integer({ min: 1, max: 599 }), { maxLength: 14 }),
    fc.array(fc.tuple(fc.integer({ min: 0, max: 590 }), fc.integer({ min: 1, max: 300 })), { maxLength: 3 }),
  )
  .map(([cuts, loose]) => {
    const at = [0, ...[...new Set(cuts)].sort((a, b) => a - b), 600].map((n) => n / 5);
    const links = at.slice(1).map((to, i) => size(at[i] as number, to, { text: `${i + 1} 13⁄16` }));
    const more = loose.map(([from, length]) => size(from / 5, Math.min(120, (from + length) / 5), { text: '7 1⁄2' }));
    return [...links, ...more.filter(({ from, to }) => to > from), size(0, 120, { total: true })];
  });
const anySide = fc.constantFrom<Side>('above', 'below', 'left', 'right');

describe('dimensionRows laws', () => {
  it('no text lies on a text or is crossed by a line', () => {
    fc.assert(
      fc.property(anySizes, anySide, (sizes, side) => {
        expect(faultsOf(dimensionRows({ side, outline: { ...outline, v1: 120 }, sizes }).marks)).toEqual([]);
      }),
      seeded,
    );
  });

  it('a size stands outside all that lie within its span, and never in one row with one that it overlaps', () => {
    fc.assert(
      fc.property(anySizes, (sizes) => {
        const rows = rowsOf(sizes);
        sizes.forEach((a, i) => {
          sizes.forEach((b, j) => {
            if (a.from >= b.from && a.to <= b.to && a.to - a.from < b.to - b.from - 0.02)
              expect(rows[i]).toBeLessThan(rows[j] as number);
            if (i !== j && a.from < b.to - 0.02 && b.from < a.to - 0.02) expect(rows[i]).not.toBe(rows[j]);
          });
        });
      }),
      seeded,
    );
  });

  it('every text is printed once and all ink lies within the bounds', () => {
    fc.assert(
      fc.property(anySizes, anySide, (sizes, side) => {
        const { marks, bounds } = dimensionRows({ side, outline: { ...outline, v1: 120 }, sizes });
        const texts = textsOf(marks);
        expect(texts.map(({ text }) => text).sort()).toEqual(expect.arrayContaining(sizes.map(({ text }) => text)));
        for (const mark of texts) expect(contains(grown(bounds, 0.01), textBox(mark))).toBe(true);
        for (const mark of marks)
          if (mark.kind === 'path')
            for (const [u, v] of pointsOf(mark.path))
              expect(contains(grown(bounds, 0.01), { u0: u, v0: v, u1: u, v1: v })).toBe(true);
      }),
      seeded,
    );
  });
});
