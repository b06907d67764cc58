import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bendSlat, type SlatToBend, sampleSlat } from '../../src/weave/bend.ts';
import { mirrorRow, type Side, swapRow } from '../../src/weave/pattern.ts';

describe('laws of bendSlat()', () => {
  const slats = fc
    .record({
      sides: fc.array(fc.constantFrom<Side>(1, -1), { minLength: 2, maxLength: 16 }),
      bay: fc.double({ min: 80, max: 500, noNaN: true }),
      width: fc.double({ min: 3, max: 60, noNaN: true }),
      depth: fc.double({ min: 5, max: 40, noNaN: true }),
      thickness: fc.double({ min: 2, max: 10, noNaN: true }),
      height: fc.double({ min: 15, max: 90, noNaN: true }),
      stop: fc.option(fc.double({ min: 1.001, max: 4, noNaN: true }), { nil: undefined }),
    })
    .map(
      ({ sides, bay, width, depth, thickness, height, stop }): SlatToBend => ({
        clearWidth: sides.length * width + (sides.length - 1) * bay,
        staves: { count: sides.length, width, depth },
        slat: { thickness, height },
        sides,
        modulus: 9800,
        strength: 77,
        ...(stop !== undefined && { endStop: (stop * (depth + thickness)) / 2 }),
      }),
    );
  const hold = (law: (slat: SlatToBend) => void) =>
    fc.assert(fc.property(slats, law), { seed: 20261124, numRuns: 300 });
  const near = (a: number, b: number, scale: number) => expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-7 * scale);

  test('stress does not depend on the slat’s height, forces are in proportion to it', () => {
    hold((slat) => {
      const one = bendSlat(slat);
      const two = bendSlat({ ...slat, slat: { ...slat.slat, height: 2 * slat.slat.height } });
      expect(two.maxStress).toBe(one.maxStress);
      two.staveForces.forEach((force, j) => {
        near(force, 2 * (one.staveForces[j] ?? 0), force);
      });
    });
  });

  test('forces are never negative and balance with those of the stops', () => {
    hold((slat) => {
      const { staveForces, stopForces, endOffsets } = bendSlat(slat);
      for (const force of [...staveForces, ...stopForces]) expect(force).toBeGreaterThanOrEqual(0);
      const net = staveForces.reduce((sum, force, j) => sum + force * (slat.sides[j] ?? 0), 0);
      const stops = stopForces.reduce((sum, force, end) => sum - force * Math.sign(endOffsets[end] ?? 0), 0);
      near(net + stops, 0, Math.max(...staveForces));
    });
  });

  test('front and back swapped change no length and turn the curve over', () => {
    hold((slat) => {
      const one = bendSlat(slat);
      const other = bendSlat({ ...slat, sides: swapRow(slat.sides) });
      near(other.cutLength, one.cutLength, one.cutLength);
      near(other.use, one.use, one.use);
      for (const x of [0, 0.3, 0.71, 1])
        near(sampleSlat(other, x * slat.clearWidth).z, -sampleSlat(one, x * slat.clearWidth).z, slat.clearWidth);
    });
  });

  test('the mirror row gives the mirrored curve and forces', () => {
    hold((slat) => {
      const one = bendSlat(slat);
      const mirror = bendSlat({ ...slat, sides: mirrorRow(slat.sides) });
      near(mirror.cutLength, one.cutLength, one.cutLength);
      mirror.staveForces.forEach((force, j) => {
        near(force, one.staveForces.at(-1 - j) ?? 0, Math.max(...one.staveForces));
      });
      for (const x of [0, 0.3, 0.71, 1])
        near(sampleSlat(mirror, x * slat.clearWidth).z, sampleSlat(one, (1 - x) * slat.clearWidth).z, slat.clearWidth);
    });
  });

  test('all lengths times k: lengths times k, the same use, the same staves touched', () => {
    hold((slat) => {
      const k = 25.4;
      const one = bendSlat(slat);
      const big = bendSlat({
        ...slat,
        clearWidth: k * slat.clearWidth,
        staves: { ...slat.staves, width: k * slat.staves.width, depth: k * slat.staves.depth },
        slat: { thickness: k * slat.slat.thickness, height: k * slat.slat.height },
        ...(slat.endStop !== undefined && { endStop: k * slat.endStop }),
      });
      near(big.use, one.use, one.use);
      near(big.cutLength, k * one.cutLength, k * one.cutLength);
      near(big.endOffsets[1], k * one.endOffsets[1], k * slat.clearWidth);
      expect(big.touched).toEqual(one.touched);
    });
  });

  test('the result is data: it comes back from JSON as it was', () => {
    hold((slat) => {
      const bend = bendSlat(slat);
      expect(JSON.parse(JSON.stringify(bend))).toEqual(bend);
    });
  });
});
