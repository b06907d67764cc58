import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { INCH_SCALES, largestScale, MILLIMETRE_SCALES, scalesOf, standardScale } from '../src/scale.ts';

describe('scales', () => {
  // ISO 5455:1979, table of recommended scales, as far as 1:100.
  it.each([
    ['5:1', 5],
    ['2:1', 2],
    ['1:1', 1],
    ['1:2', 1 / 2],
    ['1:5', 1 / 5],
    ['1:10', 1 / 10],
    ['1:20', 1 / 20],
    ['1:50', 1 / 50],
    ['1:100', 1 / 100],
  ])('MILLIMETRE_SCALES holds %s', (text, ratio) => {
    expect(MILLIMETRE_SCALES.find((scale) => scale.text === text)?.ratio).toBeCloseTo(ratio, 12);
    expect(MILLIMETRE_SCALES).toHaveLength(9);
  });

  // Architectural scales: real inches in one paper inch.
  it.each([
    ['full size', 1],
    ['6 in = 1 ft', 2],
    ['3 in = 1 ft', 4],
    ['1 1⁄2 in = 1 ft', 8],
    ['1 in = 1 ft', 12],
    ['3⁄4 in = 1 ft', 16],
    ['1⁄2 in = 1 ft', 24],
    ['3⁄8 in = 1 ft', 32],
    ['1⁄4 in = 1 ft', 48],
    ['3⁄16 in = 1 ft', 64],
    ['1⁄8 in = 1 ft', 96],
  ])('INCH_SCALES holds %s as one to %d', (text, n) => {
    expect(INCH_SCALES.find((scale) => scale.text === text)?.ratio).toBeCloseTo(1 / n, 12);
  });

  it('scalesOf runs from the largest to the smallest', () => {
    for (const unit of ['mm', 'in'] as const) {
      const ratios = scalesOf(unit).map(({ ratio }) => ratio);
      expect(ratios).toEqual([...ratios].sort((a, b) => b - a));
    }
  });

  it('standardScale(0.1, mm) is 1:10 and refuses 1:7', () => {
    expect(standardScale(0.1, 'mm').text).toBe('1:10');
    expect(() => standardScale(1 / 7, 'mm')).toThrow('invalid scale');
  });
});

describe('largestScale', () => {
  // 1200 / 5 = 240 <= 250 and 900 / 5 = 180 <= 180, while 1200 / 2 = 600 > 250.
  it('a 1200 × 900 panel on 250 × 180 mm of paper is drawn 1:5', () => {
    const scale = largestScale({ width: 1200, height: 900 }, { width: 250, height: 180 }, { unit: 'mm' });
    expect(scale?.text).toBe('1:5');
  });

  it('a panel larger than any scale brings onto the paper has none', () => {
    expect(largestScale({ width: 50_000, height: 1 }, { width: 100, height: 100 }, { unit: 'mm' })).toBeUndefined();
  });

  it('atMost 2 lets a small detail be enlarged, and without it full size is the most', () => {
    const [real, room] = [
      { width: 20, height: 20 },
      { width: 100, height: 100 },
    ];
    expect(largestScale(real, room, { unit: 'mm' })?.text).toBe('1:1');
    expect(largestScale(real, room, { unit: 'mm', atMost: 2 })?.text).toBe('2:1');
  });

  it('the scale found fits and the next larger does not', () => {
    const side = fc.double({ min: 1, max: 5000, noNaN: true });
    fc.assert(
      fc.property(side, side, side, side, fc.constantFrom('mm' as const, 'in' as const), (w, h, rw, rh, unit) => {
        const scale = largestScale({ width: w, height: h }, { width: rw, height: rh }, { unit, atMost: 10 });
        const fits = (ratio: number): boolean => w * ratio <= rw * (1 + 1e-9) && h * ratio <= rh * (1 + 1e-9);
        const larger = scalesOf(unit).filter(({ ratio }) => ratio > (scale?.ratio ?? 0));
        expect(scale === undefined || fits(scale.ratio)).toBe(true);
        expect(larger.some(({ ratio }) => fits(ratio))).toBe(false);
      }),
      { seed: 20261124, numRuns: 300 },
    );
  });
});
