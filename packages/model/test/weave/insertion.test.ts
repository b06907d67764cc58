import { expect, test } from 'vitest';
import { bendSlat } from '../../src/weave/bend.ts';
import { slatContact } from '../../src/weave/contact.ts';
import { insertionFactor } from '../../src/weave/insertion.ts';
import { inch } from '../../src/wood/inchpound.ts';
import { plainRow, typical, withStaves } from './typical.ts';

const sizes = { staveDepth: typical.staves.depth, slatThickness: typical.slat.thickness };

// t/(2(d + t)) = 0.1875 / 1.625 = 0.1154.
test('insertionFactor() of the typical panel, pushed half a slat off, is 1.115', () => {
  expect(insertionFactor(sizes)).toBeCloseTo(1.115385, 6);
});

// Bending with the middle stave's face pushed off, of the model itself, five staves and many: whole face; at a point.
test.each([
  ['whole face', 0.1875 / 2, 1.12, 1.118],
  ['whole face', 0.125, 1.1467, 1.1513],
  ['whole face', 0.25, 1.2605, 1.2756],
  ['point', 0.1875 / 2, 1.165, 1.185],
  ['point', 0.125, 1.199, 1.224],
  ['point', 0.25, 1.337, 1.353],
] as const)(
  'insertionFactor() for the %s by %d in is within 1 percent of %d and %d, or over',
  (at, push, few, many) => {
    const factor = insertionFactor({ ...sizes, at, clearance: push * inch });
    expect(factor / Math.max(few, many)).toBeGreaterThan(0.99);
    expect(factor / Math.min(few, many)).toBeLessThan(1.1);
  },
);

// A slat threaded in passes the staves one by one: each state is a panel of fewer staves.
test('bendSlat() of fewer staves, as while threading, bends no more than 0.3 percent above the whole panel', () => {
  const whole = bendSlat({ ...withStaves(12), sides: plainRow(12) }).maxCurvature;
  for (let count = 2; count < 12; count++) {
    const { knots } = slatContact({ ...withStaves(count), sides: plainRow(count) });
    expect(Math.max(...knots.map(({ curvature }) => Math.abs(curvature)))).toBeLessThan(1.003 * whole);
  }
});

test('insertionFactor() with a negative clearance is refused', () => {
  expect(() => insertionFactor({ ...sizes, clearance: -1 })).toThrow('invalid clearance: -1');
});
