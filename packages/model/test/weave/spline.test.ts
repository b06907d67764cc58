import fc from 'fast-check';
import { expect, test } from 'vitest';
import { extraLength, naturalCurvatures, sampleCurve, thirdDerivativeJumps } from '../../src/weave/spline.ts';

// Three points 0, 1, 0 at a distance of 1: 2(1 + 1) κ = 6(-1 - 1), so κ = -3 in the middle.
test('naturalCurvatures() of a single peak is -3 on top', () => {
  expect(naturalCurvatures([0, 1, 2], [0, 1, 0])).toEqual([0, -3, 0]);
  expect(thirdDerivativeJumps([0, 1, 2], [0, -3, 0])).toEqual([-3, 6, -3]);
});

test('naturalCurvatures() of two points is a straight line', () => {
  const knots = [
    { x: 1, z: 2, curvature: 0 },
    { x: 3, z: 6, curvature: 0 },
  ];
  expect(naturalCurvatures([1, 3], [2, 6])).toEqual([0, 0]);
  for (const x of [-5, 1, 2.2, 9]) expect(sampleCurve({ knots }, x)).toEqual({ z: 2 * x, slope: 2, curvature: 0 });
});

const curves = fc
  .array(fc.tuple(fc.double({ min: 0.1, max: 5, noNaN: true }), fc.double({ min: -3, max: 3, noNaN: true })), {
    minLength: 2,
    maxLength: 12,
  })
  .map((steps) => {
    let place = 0;
    const x = steps.map(([step]) => {
      place += step;
      return place;
    });
    const z = steps.map(([, height]) => height);
    const curvatures = naturalCurvatures(x, z);
    return { knots: x.map((at, i) => ({ x: at, z: z[i] ?? 0, curvature: curvatures[i] ?? 0 })) };
  });

test('a natural spline passes its points, and z, slope and curvature run on through them', () => {
  fc.assert(
    fc.property(curves, ({ knots }) => {
      for (const { x, z, curvature } of knots) {
        const before = sampleCurve({ knots }, x - 1e-9);
        const after = sampleCurve({ knots }, x + 1e-9);
        const size = 1 + Math.abs(before.slope) + Math.abs(curvature);
        expect(Math.abs(sampleCurve({ knots }, x).z - z)).toBeLessThan(1e-9 * size);
        expect(Math.abs(before.slope - after.slope)).toBeLessThan(1e-6 * size);
        expect(Math.abs(before.curvature - after.curvature)).toBeLessThan(1e-5 * size);
      }
    }),
    { seed: 20261124, numRuns: 200 },
  );
});

test('extraLength() is half the sum of squared slopes', () => {
  fc.assert(
    fc.property(curves, (curve) => {
      const to = (curve.knots.at(-1)?.x ?? 0) + 1;
      const steps = 20000;
      let sum = 0;
      for (let i = 0; i < steps; i++) sum += sampleCurve(curve, ((i + 0.5) * to) / steps).slope ** 2;
      const expected = (sum * to) / steps / 2;
      expect(Math.abs(extraLength(curve, 0, to) / expected - 1)).toBeLessThan(1e-4);
    }),
    { seed: 20261124, numRuns: 25 },
  );
});
