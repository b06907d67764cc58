import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dimensionSide, type RunningValue, runningRow } from '../../src/layout/running.ts';
import type { Side } from '../../src/layout/side.ts';
import { faultsOf, textsOf } from './faults.ts';

const outline = { u0: 0, v0: 0, u1: 120, v1: 120 };
const every = (pitch: number, count: number): RunningValue[] =>
  Array.from({ length: count }, (_, i) => ({ at: pitch * (i + 1), text: String(i + 1) }));
const seeded = { seed: 20261124, numRuns: 200 };

describe('runningRow', () => {
  it('shows every value where there is room, with no note', () => {
    const { marks } = runningRow({ side: 'below', outline, origin: 0, values: every(10, 12), word: 'stave' });
    expect(textsOf(marks).map(({ text }) => text)).toEqual([
      '0',
      '12',
      '1',
      '2',
      '3',
      '4',
      '5',
      '6',
      '7',
      '8',
      '9',
      '10',
      '11',
    ]);
  });

  it('values turn along their extension lines: 90° below, level at the side', () => {
    const angles = (side: Side): number[] =>
      textsOf(runningRow({ side, outline, origin: 0, values: every(10, 3), word: 'stave' }).marks).map(
        (one) => one.angle,
      );
    expect(new Set(angles('below'))).toEqual(new Set([90]));
    expect(new Set(angles('left'))).toEqual(new Set([0]));
  });

  // 2.5 mm lettering takes (1.15 + 0.35) · 2.5 + 0.3 = 4.05 mm, so of courses 2 mm apart every third has room: 6 mm.
  it('thins crowded courses evenly, keeps the last, and says so', () => {
    const { marks } = runningRow({ side: 'left', outline, origin: 0, values: every(2, 20), word: 'course' });
    const texts = textsOf(marks).map(({ text }) => text);
    expect(texts).toEqual(['0', '20', '3', '6', '9', '12', '15', 'Every 3rd course and the last shown']);
  });

  it.each([
    [2, 'Every 2nd'],
    [3, 'Every 3rd'],
    [4, 'Every 4th'],
  ])('one of %d is said as %s', (step, said) => {
    const { marks } = runningRow({ side: 'left', outline, origin: 0, values: every(4.5 / step, 24), word: 'course' });
    expect(textsOf(marks).at(-1)?.text).toContain(said);
  });

  it('marks the datum with an open circle', () => {
    const { marks } = runningRow({ side: 'below', outline, origin: 30, values: every(10, 12), word: 'stave' });
    const circles = marks.filter((mark) => mark.kind === 'path' && mark.path.some(([kind]) => kind === 'C'));
    expect(circles).toHaveLength(1);
  });

  it('values at the datum alone make no row', () => {
    expect(
      runningRow({ side: 'below', outline, origin: 10, values: [{ at: 10, text: '0' }], word: 'stave' }).marks,
    ).toEqual([]);
  });
});

describe('dimensionSide laws', () => {
  it('running values and rows outside them share a side without a text on a text or on a line', () => {
    const side = fc.constantFrom<Side>('above', 'below', 'left', 'right');
    const cuts = fc.uniqueArray(fc.integer({ min: 1, max: 119 }), { maxLength: 4 });
    fc.assert(
      fc.property(
        side,
        cuts,
        fc.integer({ min: 1, max: 90 }),
        fc.double({ min: 0, max: 12, noNaN: true }),
        (where, at, n, first) => {
          const ends = [0, ...at.sort((a, b) => a - b), 120];
          const sizes = ends
            .slice(1)
            .map((to, i) => ({ from: ends[i] as number, to, text: '12 3⁄8', value: to - (ends[i] as number) }));
          const values = every((120 - first) / n, n).map((one) => ({ ...one, text: `${one.text} 15⁄16` }));
          const rows = dimensionSide({
            side: where,
            outline,
            sizes: [...sizes, { from: 0, to: 120, text: '120', value: 120, total: true }],
            running: { origin: first, values: values.map((one) => ({ ...one, at: one.at + first })), word: 'course' },
          });
          expect(faultsOf(rows.marks)).toEqual([]);
        },
      ),
      seeded,
    );
  });
});
