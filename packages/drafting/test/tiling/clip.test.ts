import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boxOf, pointsOf } from '../../src/ink.ts';
import type { Box, Path, Point } from '../../src/mark.ts';
import { stroke } from '../../src/mark.ts';
import { circle, line, polygon, rectangle } from '../../src/path.ts';
import { clipMark } from '../../src/tiling/clip.ts';
import { type Cubic, crossings, cut } from '../../src/tiling/cubic.ts';

const seed = { seed: 20261124, numRuns: 300 };
const box: Box = { u0: 0, v0: 0, u1: 100, v1: 80 };
const number = fc.integer({ min: -150_000, max: 250_000 }).map((n) => n / 1000);
const point = fc.tuple(number, number);

/** Points of a path at equal shares of each step, by the textbook polynomial. */
function sampled(path: Path, shares = 40): Point[] {
  const out: Point[] = [];
  let [pen, start]: [Point, Point] = [
    [0, 0],
    [0, 0],
  ];
  for (const step of path) {
    const points = step[0] === 'Z' ? [start] : pointsOf([step]);
    const [a, b, c] = points as [Point, Point, Point];
    if (step[0] === 'M') start = a;
    else {
      const curve = step[0] === 'C' ? [pen, a, b, c] : [pen, between(pen, a, 1 / 3), between(pen, a, 2 / 3), a];
      for (let i = 0; i <= shares; i++) out.push(on(curve as unknown as Cubic, i / shares));
    }
    pen = points.at(-1) as Point;
  }
  return out;
}
const between = (a: Point, b: Point, t: number): Point => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
function on([a, b, c, d]: Cubic, t: number): Point {
  const s = 1 - t;
  const at = (k: 0 | 1): number => s * s * s * a[k] + 3 * s * s * t * b[k] + 3 * s * t * t * c[k] + t * t * t * d[k];
  return [at(0), at(1)];
}
function area(path: Path): number {
  const points = sampled(path, 200);
  return Math.abs(
    points.reduce((sum, [u, v], i) => {
      const [pu, pv] = points[(i + 1) % points.length] as Point;
      return sum + (u * pv - pu * v) / 2;
    }, 0),
  );
}

describe('clipMark', () => {
  test('clipMark of a line through the box cuts it at both sides', () => {
    const [mark] = clipMark(stroke('edge', line([-50, 40], [150, 40])), box);
    expect(mark?.path).toEqual(line([0, 40], [100, 40]));
  });
  test('clipMark of ink inside is the ink itself', () => {
    const mark = stroke('edge', circle([50, 40], 10), 'A');
    expect(clipMark(mark, box)).toEqual([mark]);
  });
  test('clipMark of ink outside is nothing', () => {
    expect(clipMark(stroke('edge', line([-5, -5], [-1, 90])), box)).toEqual([]);
  });
  test('clipMark of a circle keeps to the circle, as closely as its curves do', () => {
    const [mark] = clipMark(stroke('edge', circle([0, 40], 30)), box);
    for (const [u, v] of sampled(mark?.path ?? [])) expect(Math.hypot(u, v - 40)).toBeCloseTo(30, 4);
  });
  test('clipMark of a face of half a circle has half its area', () => {
    const [mark] = clipMark(stroke('wood', circle([0, 40], 30)), box);
    expect(area(mark?.path ?? [])).toBeCloseTo((Math.PI * 30 * 30) / 2, 0);
  });
  test('clipMark of a face larger than the box is the box', () => {
    const [mark] = clipMark(stroke('wood', rectangle({ u0: -9, v0: -9, u1: 300, v1: 300 })), box);
    expect(area(mark?.path ?? [])).toBeCloseTo(8000, 6);
  });
  test('clipMark of a filled and lined mark keeps its fill, and its lines leave the cut edge open', () => {
    const arrow = {
      ...stroke(
        'dimension',
        polygon([
          [-5, 10],
          [5, 8],
          [5, 12],
        ]),
      ),
      shade: 0,
    }; // a tip outside
    const [face, lines] = clipMark(arrow, box);
    expect(face?.shade).toBe(0);
    expect(lines).toMatchObject({ role: 'dimension' });
    expect(lines?.shade).toBeUndefined();
    const along = sampled(lines?.path ?? []).filter(([u]) => u === 0);
    expect(new Set(along.map(([, v]) => v.toFixed(6))).size).toBe(2);
  });
  test('clipMark never leaves ink outside, and drops none inside', () => {
    fc.assert(
      fc.property(fc.array(point, { minLength: 4, maxLength: 10 }), fc.boolean(), (points, curved) => {
        const [first, ...rest] = points as Point[] as [Point, ...Point[]];
        const path: Path = curved
          ? [
              ['M', ...first],
              ['C', ...(rest[0] as Point), ...(rest[1] as Point), ...(rest[2] as Point)],
            ]
          : [['M', ...first], ...rest.map((p) => ['L', ...p] as const)];
        const clipped = clipMark(stroke('edge', path), box).flatMap((mark) => sampled(mark.path, 2000));
        const around = boxOf(clipped);
        if (clipped.length > 0) {
          expect(around.u0).toBeGreaterThanOrEqual(-1e-9);
          expect(around.u1).toBeLessThanOrEqual(100 + 1e-9);
          expect(around.v0).toBeGreaterThanOrEqual(-1e-9);
          expect(around.v1).toBeLessThanOrEqual(80 + 1e-9);
        }
        const inner = sampled(path, 7).filter(([u, v]) => u > 0.5 && u < 99.5 && v > 0.5 && v < 79.5);
        for (const [u, v] of inner) {
          // 2,000 samples of a step of at most 600 mm lie 0.3 mm apart.
          expect(Math.min(...clipped.map(([cu, cv]) => Math.hypot(cu - u, cv - v)))).toBeLessThan(0.5);
        }
      }),
      { ...seed, numRuns: 60 },
    );
  });
});

describe('crossings and cut', () => {
  const curve = fc.tuple(point, point, point, point) as fc.Arbitrary<Cubic>;
  test('crossings(curve) lie on the value, and are all of them', () => {
    fc.assert(
      fc.property(curve, number, (c, value) => {
        const found = crossings(c, 0, value);
        for (const t of found) expect(on(c, t)[0]).toBeCloseTo(value, 8);
        let changes = 0;
        for (let i = 0; i < 4000; i++) {
          const [before, after] = [on(c, i / 4000)[0] - value, on(c, (i + 1) / 4000)[0] - value];
          // An end that lies on the value itself is no crossing.
          if (Math.min(Math.abs(before), Math.abs(after)) > 1e-9 && before < 0 !== after < 0) changes++;
        }
        expect(found.length).toBeGreaterThanOrEqual(changes);
      }),
      { ...seed, numRuns: 100 },
    );
  });
  test('cut(curve, t) is the same curve in two', () => {
    fc.assert(
      fc.property(curve, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (c, t) => {
        const [a, b] = cut(c, t);
        for (const s of [0.2, 0.7]) {
          expect(on(a, s)[0]).toBeCloseTo(on(c, s * t)[0], 8);
          expect(on(b, s)[1]).toBeCloseTo(on(c, t + s * (1 - t))[1], 8);
        }
      }),
      seed,
    );
  });
});
