import { expect, test } from 'vitest';
import { density, gravity12FromBasic } from '../../src/wood/density.ts';
import { woodNamed } from '../../src/wood/species.ts';

// Inch-pound form of the same equation: 62.4 lb/ft3 for water. G_12 = 0.44: 62.4 * 0.44 * 1.12 = 30.75072 at 12 %;
// G_b = 0.44 / 1.06996 = 0.411230326, a = 11/30, G_19 = 0.411230326 / (1 - 0.265 * 0.366667 * 0.411230326)
// = 0.428346130, 62.4 * 0.428346130 * 1.19 = 31.8072702 at 19 %.
test.each([
  [12, 30.75072],
  [19, 31.8072702],
])('density() of yellow-cedar at %d percent is 1000/62.4 of the inch-pound figure', (moisture, poundsPerCubicFoot) => {
  expect(density({ specificGravity12: 0.44, moisture }) / 1000).toBeCloseTo(poundsPerCubicFoot / 62.4, 8);
});

test('density() dry is the oven-dry mass over the oven-dry volume', () => {
  const basic = 0.44 / 1.06996;
  expect(density({ specificGravity12: 0.44, moisture: 0 })).toBeCloseTo((1000 * basic) / (1 - 0.265 * basic), 9);
});

test('density() above fibre saturation gains water alone', () => {
  const at = (moisture: number) => density({ specificGravity12: 0.44, moisture });
  expect(at(60) / at(30)).toBeCloseTo(1.6 / 1.3, 12);
});

test('keeping the gravity at 12 percent errs by up to 3 percent for yellow-cedar between 6 and 19 percent', () => {
  for (let moisture = 6; moisture <= 19; moisture++) {
    const kept = 440 * (1 + moisture / 100);
    expect(Math.abs(kept / density({ specificGravity12: 0.44, moisture }) - 1)).toBeLessThan(0.03);
  }
});

// Basic 0.55: 0.55 / (1 - 0.265 * 0.6 * 0.55) = 0.55 / 0.91255 = 0.602707.
test('gravity12FromBasic() of teak, published green, is 0.6027', () => {
  expect(gravity12FromBasic(0.55)).toBeCloseTo(0.602707, 6);
  expect(woodNamed('teak')?.specificGravity12).toBe(gravity12FromBasic(0.55));
});

test.each([
  [{ specificGravity12: 0, moisture: 12 }, 'invalid specific gravity: 0'],
  [{ specificGravity12: 440, moisture: 12 }, 'invalid specific gravity: 440'],
  [{ specificGravity12: 0.4, moisture: -1 }, 'invalid moisture: -1'],
])('density(%o) is refused', (wood, message) => {
  expect(() => density(wood)).toThrow(message);
});
