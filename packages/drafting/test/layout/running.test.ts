import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dimensionSide, type RunningValue, runningRow } from '../../src/layout/running.ts';
import type { Side } from '../../src/layout/side.ts';
import { faultsOf, segmentsOf, textsOf } from './faults.ts';

const outline = { u0: 0, v0: 0, u1: 120, v1: 120 };
const every = (pitch: number, count: number): RunningValue[] =>
  Array.from({ length: count }, (_, i) => ({ at: pitch * (i + 1), text: String(i + 1) }));
const seeded = { seed: 20261124, numRuns: 200 };

const told = { what: 'Left edges of staves', from: 'the left edge', rest: 'the stick has all' };

describe('runningRow', () => {
  it('shows every value where there is room, in order, and says what they are from where', () => {
    const { marks } = runningRow({ side: 'below', outline, origin: 0, values: every(10, 12), ...told });
    expect(textsOf(marks).map(({ text }) => text)).toEqual([
      ...Array.from({ length: 13 }, (_, i) => String(i)),
      'Left edges of staves from the left edge',
    ]);
  });

  it('values turn along their extension lines: 90° below, level at the side', () => {
    const angles = (side: Side): number[] =>
      textsOf(runningRow({ side, outline, origin: 0, values: every(10, 3), ...told }).marks)
        .slice(0, -1)
        .map((one) => one.angle);
    expect(new Set(angles('below'))).toEqual(new Set([90]));
    expect(new Set(angles('left'))).toEqual(new Set([0]));
  });

  // 2.5 mm lettering takes (1.15 + 0.35) · 2.5 + 0.3 = 4.05 mm. Twenty courses 3.9 mm apart overrun 78 mm by 20 · 0.15 = 3 mm.
  it('pushes texts aside, their lines bent, before it leaves one out', () => {
    const values = every(3.9, 20);
    const { marks } = runningRow({ side: 'left', outline, origin: 0, values, ...told });
    const texts = textsOf(marks).slice(0, -1);
    expect(texts.map(({ text }) => text)).toEqual(['0', ...values.map(({ text }) => text)]);
    expect(faultsOf(marks)).toEqual([]);
    const bent = marks.filter((mark) => mark.kind === 'path' && mark.role === 'dimension' && mark.path.length === 4);
    expect(bent.length).toBeGreaterThan(0);
  });

  // Twenty texts of 4.05 mm at 3.4 mm overrun by 13 mm: the outer ones would stand beside the lines of others.
  it('shows every second where texts would stand beside lines of others, and tells the caller instead of printing it', () => {
    const values = every(3.4, 20);
    const rows = dimensionSide({
      side: 'left',
      outline,
      sizes: [],
      running: { origin: 0, values, ...told, aside: true },
    });
    expect(textsOf(rows.marks).map(({ text }) => text)).toEqual('0 1 3 5 7 9 11 13 15 17 19 20'.split(' '));
    expect(rows.aside).toBe('Left edges of staves 1, 3, 5 … 19, 20 from the left edge; the stick has all');
  });

  it('all texts stand on the same side of their lines', () => {
    const values = [...every(5, 10), { at: 51, text: 'top' }];
    const { marks } = runningRow({ side: 'right', outline, origin: 0, values, ...told, through: [54] });
    const ends = segmentsOf(marks).map(([, [, v]]) => v);
    for (const { at, text } of textsOf(marks).slice(0, -1))
      expect(
        ends.some((v) => Math.abs(v - at[1] - 1) < 1e-9),
        text,
      ).toBe(true);
  });

  it('thinned, it keeps the first, the last and what comes after, and names what is shown', () => {
    const values = [...every(2, 20).map(({ at, text }) => ({ at: at - 2, text })), { at: 40, text: 'top' }];
    const { marks } = runningRow({
      side: 'left',
      outline,
      origin: 0,
      values,
      what: 'Lower edges of courses',
      from: 'the foot',
      last: 'the top of the stack',
      rest: 'the stick has all',
    });
    const texts = textsOf(marks).map(({ text }) => text);
    expect(texts.slice(0, 12)).toEqual(['0', '3', '5', '7', '9', '11', '13', '15', '17', '19', '20', 'top']);
    expect(texts.slice(12).join(' ')).toBe(
      'Lower edges of courses 1, 3, 5 … 19, 20 and the top of the stack from the foot; the stick has all',
    );
  });

  it('marks the datum with an open circle', () => {
    const { marks } = runningRow({ side: 'below', outline, origin: 30, values: every(10, 12), ...told });
    const circles = marks.filter((mark) => mark.kind === 'path' && mark.path.some(([kind]) => kind === 'C'));
    expect(circles).toHaveLength(1);
  });

  it('values at the datum alone make no row', () => {
    expect(runningRow({ side: 'below', outline, origin: 10, values: [{ at: 10, text: '0' }], ...told }).marks).toEqual(
      [],
    );
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
            running: { origin: first, values: values.map((one) => ({ ...one, at: one.at + first })), ...told },
          });
          expect(faultsOf(rows.marks)).toEqual([]);
        },
      ),
      seeded,
    );
  });
});
