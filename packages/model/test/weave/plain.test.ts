import { describe, expect, test } from 'vitest';
import { plainWeave, smallestPitch } from '../../src/weave/plain.ts';
import { inch, psi } from '../../src/wood/inchpound.ts';
import { inInches, typicalPlain } from './typical.ts';

describe('plainWeave() of the typical sizes', () => {
  const plain = plainWeave(typicalPlain);

  // A = 0.40625, b = 10.1875: κ = 12A/[b(b + 3w)] = 4.875/(10.1875 * 12.4375) = 0.0384745815 1/in;
  // stress 1.42e6 κ 0.09375 = 5121.92866 psi = 0.461435015 of 11 100.
  test('bends to 0.03847 per inch, 0.4614 of the strength', () => {
    expect(plain.curvature * inch).toBeCloseTo(0.0384745815, 10);
    expect(plain.stress / psi).toBeCloseTo(5121.92866, 5);
    expect(plain.use).toBeCloseTo(0.461435015, 9);
    expect(plain.radius).toBeCloseTo(1 / plain.curvature, 9);
  });

  // 4 EI κ / b = 4 * 1267.54761 * 0.0384745815 / 10.1875 = 19.1483146 lb on 1.625 in of slat.
  test('presses with 19.148 lb on a slat 1 5/8 in high', () => {
    const pounds = (plain.forcePerHeight / (psi * inch)) * 1.625;
    expect(pounds).toBeCloseTo(19.1483146, 6);
  });

  // Half of κw: 0.0144279681; Aα/b = 0.40625 * 2.81909548 / 10.1875 = 0.112417918; extra as worked.
  test('slopes 0.0144 at the arris and 0.1124 in mid-bay, and is 0.03677 in longer a pitch', () => {
    expect(plain.arrisSlope).toBeCloseTo(0.0144279681, 10);
    expect(plain.midSlope).toBeCloseTo(0.112417918, 9);
    expect(inInches(plain.extraPerPitch)).toBeCloseTo(0.0367739135, 10);
  });

  test('is within 0.6 percent of the exact infinite elastica with rolling contact', () => {
    expect((plain.curvature * inch) / 0.0382560712).toBeCloseTo(1.0057, 4);
    expect(inInches(plain.extraPerPitch) / 0.0367287082).toBeCloseTo(1.0012, 4);
    expect(plain.midSlope / 0.112687259).toBeCloseTo(0.9976, 4);
  });
});

// With point staves κ = 12A/p², slope 3A/p, extra 2.4A²/p, force 48EIA/p³.
test('plainWeave() with ever narrower staves comes to the forms for points', () => {
  const sizes = { pitch: 250, staveWidth: 1e-6, staveDepth: 15, slatThickness: 5, modulus: 9000, strength: 70 };
  const plain = plainWeave(sizes);
  expect(plain.curvature / (120 / 250 ** 2)).toBeCloseTo(1, 7);
  expect(plain.midSlope / (30 / 250)).toBeCloseTo(1, 7);
  expect(plain.extraPerPitch / (240 / 250)).toBeCloseTo(1, 7);
  expect(plain.forcePerHeight / ((48 * 9000 * (125 / 12) * 10) / 250 ** 3)).toBeCloseTo(1, 7);
});

// Western redcedar 1.11e6 and 7500 psi, staves 5/8 x 5/8: closed form and exact elastica, in.
describe('smallestPitch() of western redcedar', () => {
  test.each([
    [1, 0.125, 6.207, 6.15938],
    [1, 0.1875, 7.96515, 7.92112],
    [1, 0.25, 9.58719, 9.54443],
    [1, 0.3125, 11.13115, 11.08863],
    [0.6, 0.125, 8.06926, 8.03262],
    [0.6, 0.1875, 10.34645, 10.31256],
    [0.6, 0.25, 12.445, 12.41209],
    [0.6, 0.3125, 14.44134, 14.40863],
    [0.55, 0.125, 8.4374, 8.40235],
    [0.55, 0.1875, 10.81682, 10.7844],
    [0.55, 0.25, 13.00928, 12.9778],
    [0.55, 0.3125, 15.09479, 15.0635],
    [0.5, 0.125, 8.85968, 8.8263],
    [0.5, 0.1875, 11.35627, 11.32538],
    [0.5, 0.25, 13.65635, 13.62637],
    [0.5, 0.3125, 15.84408, 15.81428],
  ])(
    'for %d of the strength and slats of %d in is %d in, a little over the exact %d',
    (use, thickness, closed, exact) => {
      const pitch = inInches(
        smallestPitch({
          use,
          staveWidth: 0.625 * inch,
          staveDepth: 0.625 * inch,
          slatThickness: thickness * inch,
          modulus: 1.11e6 * psi,
          strength: 7500 * psi,
        }),
      );
      expect(pitch).toBeCloseTo(closed, 5);
      expect(pitch / exact - 1).toBeGreaterThan(0.0018);
      expect(pitch / exact - 1).toBeLessThan(0.0078);
    },
  );
});

// Breaking pitch and pitch at 0.55 for slats of 1/8, 3/16, 1/4, 5/16, staves 5/8 x 5/8, in. MOE 10^6 psi, MOR psi.
const thicknesses = [0.125, 0.1875, 0.25, 0.3125];
test.each([
  ['western redcedar', 1.11, 7500, [6.207, 7.9652, 9.5872, 11.1311], [8.4374, 10.8168, 13.0093, 15.0948]],
  ['northern white-cedar', 0.8, 6500, [5.6452, 7.2459, 8.7234, 10.1303], [7.676, 9.8439, 11.842, 13.743]],
  ['redwood, old growth', 1.34, 10000, [5.8977, 7.5692, 9.1117, 10.5803], [8.0183, 10.2813, 12.3668, 14.3508]],
  ['eastern white pine', 1.24, 8600, [6.1242, 7.8592, 9.46, 10.9837], [8.3252, 10.6735, 12.8374, 14.8957]],
  ['Douglas-fir, coast', 1.95, 12400, [6.4037, 8.2169, 9.8894, 11.4813], [8.7039, 11.1572, 13.4176, 15.5676]],
  ['yellow-poplar', 1.58, 10100, [6.3865, 8.1948, 9.863, 11.4506], [8.6805, 11.1274, 13.3818, 15.5262]],
  ['baldcypress', 1.44, 10600, [5.9394, 7.6226, 9.1759, 10.6546], [8.0748, 10.3536, 12.4535, 14.4512]],
  ['white oak', 1.78, 15200, [5.5025, 7.0631, 8.5039, 9.8759], [7.4825, 9.5966, 11.5453, 13.3993]],
  ['white ash', 1.74, 15000, [5.4758, 7.0288, 8.4627, 9.8281], [7.4462, 9.5501, 11.4895, 13.3348]],
  ['shagbark hickory', 2.16, 20200, [5.2511, 6.7408, 8.1167, 9.4272], [7.1413, 9.1603, 11.0218, 12.793]],
  ['black cherry', 1.49, 12300, [5.5993, 7.187, 8.6528, 10.0484], [7.6137, 9.7642, 11.7465, 13.6324]],
  ['yellow-cedar', 1.42, 11100, [5.7586, 7.3911, 8.8979, 10.3325], [7.8298, 10.0404, 12.0778, 14.0161]],
])('smallestPitch() of %s, breaking and at 0.55', (_, modulus, strength, breaking, limit) => {
  const stave = { staveWidth: 0.625 * inch, staveDepth: 0.625 * inch };
  const wood = { modulus: modulus * 1e6 * psi, strength: strength * psi };
  for (const [i, thickness] of thicknesses.entries()) {
    const pitch = (use: number) => inInches(smallestPitch({ use, ...stave, ...wood, slatThickness: thickness * inch }));
    expect(pitch(1)).toBeCloseTo(breaking[i] ?? 0, 4);
    expect(pitch(0.55)).toBeCloseTo(limit[i] ?? 0, 4);
  }
});

// The typical stave, 3/4 by 5/8, in yellow-cedar, in.
test.each([
  [1, 0.1875, 7.35],
  [0.6, 0.1875, 9.56],
  [0.55, 0.1875, 10.0],
  [0.5, 0.1875, 10.5],
  [1, 0.25, 8.86],
  [0.6, 0.25, 11.51],
  [0.5, 0.25, 12.63],
  [1, 0.125, 5.73],
  [0.6, 0.125, 7.45],
  [0.5, 0.125, 8.18],
])(
  'smallestPitch() of the typical stave for %d of the strength and slats of %d in is %d in',
  (use, thickness, pitch) => {
    const { staveWidth, staveDepth, modulus, strength } = typicalPlain;
    const sizes = { staveWidth, staveDepth, modulus, strength, slatThickness: thickness * inch };
    expect(inInches(smallestPitch({ use, ...sizes }))).toBeCloseTo(pitch, 2);
  },
);

test('plainWeave() at smallestPitch() takes just the wanted share', () => {
  const { pitch: _, ...sizes } = typicalPlain;
  for (const use of [0.2, 0.55, 1]) {
    const pitch = smallestPitch({ use, ...sizes });
    expect(plainWeave({ ...sizes, pitch }).use).toBeCloseTo(use, 12);
  }
});

test.each([
  [{ pitch: 10 }, 'invalid pitch: 10 (expected over 19.0'],
  [{ slatThickness: 0 }, 'invalid slatThickness: 0'],
  [{ strength: Number.NaN }, 'invalid strength: NaN'],
])('plainWeave() with %o is refused', (wrong, message) => {
  expect(() => plainWeave({ ...typicalPlain, ...wrong })).toThrow(message);
});
