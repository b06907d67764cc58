import { describe, expect, test } from 'vitest';
import { type Exposure, windLoad, windOnSlat } from '../../src/loads/wind.ts';
import { inch, mph, poundForce, psf, psi } from '../../src/wood/inchpound.ts';

// 48 x 62 13/16 in on the ground, 110 mi/h, open country.
const panel = { width: 48 * inch, height: 62.8125 * inch, speed: 110 * mph, exposure: 'C' as Exposure };

describe('windLoad() of the typical panel', () => {
  const wind = windLoad(panel);

  // K_z = 2.01 (15/900)^(2/9.5) = 0.848884; q = 0.00256 * 0.848884 * 0.85 * 110² = 22.3507802 lb/ft2.
  test('has a velocity pressure of 22.351 lb/ft2', () => {
    expect(wind.exposureFactor).toBeCloseTo(0.848884152, 9);
    expect(wind.velocityPressure / psf).toBeCloseTo(22.3507802, 6);
  });

  // B/s = 48/62.8125 = 0.764179: C_f = 1.55 − 0.1 * 0.264179/0.5 = 1.49716418; F = q 0.85 C_f * 20.9375 ft² = 595.533 lb.
  test('is pressed with 595.5 lb, 357.3 at the allowable level, 416.9 on the worse side', () => {
    expect(wind.forceCoefficient).toBeCloseTo(1.49716418, 8);
    expect(wind.force / poundForce).toBeCloseTo(595.533045, 5);
    expect(wind.allowableForce / poundForce).toBeCloseTo(357.319827, 5);
    expect(wind.worseSideForce / 2 / poundForce).toBeCloseTo(208.436566, 5);
  });

  // 1 − (1 − 0.9335)^1.5 = 0.98285: 585.31 lb with a gap of 1/8 in, ε = 1 − 0.066531.
  test('with a gap of 1/8 in is pressed with 585.3 lb', () => {
    const open = windLoad({ ...panel, solidity: 1 - 0.066531 });
    expect(open.openingFactor).toBeCloseTo(0.982839, 5);
    expect(open.force / poundForce).toBeCloseTo(585.3133, 2);
  });

  test('as an open screen takes the coefficient of its band and its own solid area', () => {
    for (const [solidity, coefficient] of [
      [0.5, 1.6],
      [0.2, 1.8],
      [0.05, 2],
    ] as const) {
      const open = windLoad({ ...panel, solidity });
      expect(open.forceCoefficient).toBe(coefficient);
      expect(open.force / poundForce).toBeCloseTo(22.3507802 * 0.85 * coefficient * solidity * 20.9375, 4);
    }
  });

  test('in a light wind is designed for 16 lb/ft2 all the same', () => {
    const light = windLoad({ ...panel, speed: 20 });
    expect(light.leastForce / poundForce).toBeCloseTo(16 * 20.9375, 8);
    expect(light.allowableForce).toBe(0.6 * light.leastForce);
  });
});

// ASCE 7-16, Table 26.10-1: K_z at 15 ft and below, B 0.57, C 0.85, D 1.03; at 30 ft 0.70, 0.98, 1.16.
test.each([
  ['B', 1000, 0.57],
  ['C', 1000, 0.85],
  ['D', 1000, 1.03],
  ['B', 9144, 0.7],
  ['C', 9144, 0.98],
  ['D', 9144, 1.16],
] as const)('windLoad() in exposure %s with its top at %d mm has K_z %d, as tabled', (exposure, top, factor) => {
  expect(windLoad({ ...panel, height: 1000, top, exposure }).exposureFactor).toBeCloseTo(factor, 2);
});

// Width over height, height over top: table cells, and half way between two of them.
test.each([
  [1, 1, 1.45],
  [2, 1, 1.4],
  [100, 1, 1.3],
  [0.01, 0.9, 1.85],
  [1.5, 1, 1.425],
  [1, 0.8, 1.6],
  [1, 0.5, 1.75],
  [1, 0.3, 1.85],
])('windLoad() of a solid panel with B/s %d and s/h %d has C_f %d', (byHeight, byTop, coefficient) => {
  const wind = windLoad({ width: byHeight * 1000, height: 1000, top: 1000 / byTop, speed: 40, exposure: 'B' });
  expect(wind.forceCoefficient).toBeCloseTo(coefficient, 9);
  expect(wind.longPanel).toBe(byHeight > 2);
});

// 0.613 N/m2 is the standard's own rounding for metres a second.
test('windLoad() agrees with the metric form of the standard to 0.1 percent', () => {
  const { velocityPressure, exposureFactor } = windLoad({ ...panel, speed: 50 });
  expect(Math.abs(velocityPressure / (0.613 * exposureFactor * 0.85 * 2500) - 1)).toBeLessThan(0.001);
});

// q G C_f = 28.4433693 lb/ft2: 0.320975522 lb/in on 1.625 in, moment w p²/12 = 3.19982922 lb in, stress 336.064 psi.
test('windOnSlat() of the typical slat adds 336 psi', () => {
  const slat = { pitch: 10.9375 * inch, thickness: 0.1875 * inch, height: 1.625 * inch };
  const { lineLoad, moment, stress } = windOnSlat({ pressure: 28.4433693 * psf, ...slat });
  expect(lineLoad / (poundForce / inch)).toBeCloseTo(0.320975522, 8);
  expect(moment / (poundForce * inch)).toBeCloseTo(3.19982922, 7);
  expect(stress / psi).toBeCloseTo(336.064115, 4);
});

test.each([
  [{ width: 0 }, 'invalid width: 0'],
  [{ solidity: 1.2 }, 'invalid solidity: 1.2'],
  [{ top: 100 }, 'invalid top: 100'],
  [{ speed: Number.NaN }, 'invalid speed: NaN'],
])('windLoad() with %o is refused', (wrong, message) => {
  expect(() => windLoad({ ...panel, ...wrong })).toThrow(message);
});
