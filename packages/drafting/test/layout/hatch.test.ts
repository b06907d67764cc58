import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clipSegment, isInside, rings } from '../../src/layout/clip.ts';
import { hatch } from '../../src/layout/hatch.ts';
import type { Point } from '../../src/mark.ts';
import { circle, polygon, rectangle } from '../../src/path.ts';

const square = rectangle({ u0: 0, v0: 0, u1: 10, v1: 10 });
const groove = polygon([
  [0, 0],
  [10, 0],
  [10, 10],
  [7, 10],
  [7, 4],
  [3, 4],
  [3, 10],
  [0, 10],
]);
/** The separate lines of a hatch. */
const linesOf = (...args: Parameters<typeof hatch>): (readonly [Point, Point])[] =>
  hatch(...args).flatMap(({ path }) =>
    path.flatMap((step, i): (readonly [Point, Point])[] => {
      const before = path[i - 1];
      return step[0] === 'L' && before?.[0] === 'M'
        ? [
            [
              [before[1], before[2]],
              [step[1], step[2]],
            ],
          ]
        : [];
    }),
  );

describe('rings', () => {
  it('a flattened circle lies within 0.01 mm of the circle', () => {
    const [ring = []] = rings(circle([0, 0], 50));
    ring.forEach(([u, v], i) => {
      const [pu, pv] = ring[(i + 1) % ring.length] as Point;
      expect(Math.hypot(u, v)).toBeCloseTo(50, 3);
      expect(50 - Math.hypot((u + pu) / 2, (v + pv) / 2)).toBeLessThan(0.01);
    });
  });
});

describe('clipSegment', () => {
  it.each([
    [
      'across a square',
      [
        [-5, 5],
        [15, 5],
      ],
      square,
      [
        [
          [0, 5],
          [10, 5],
        ],
      ],
    ],
    [
      'wholly within',
      [
        [2, 2],
        [8, 3],
      ],
      square,
      [
        [
          [2, 2],
          [8, 3],
        ],
      ],
    ],
    [
      'wholly outside',
      [
        [-5, 12],
        [15, 12],
      ],
      square,
      [],
    ],
    [
      'through both legs of a groove',
      [
        [-5, 8],
        [15, 8],
      ],
      groove,
      [
        [
          [0, 8],
          [3, 8],
        ],
        [
          [7, 8],
          [10, 8],
        ],
      ],
    ],
    [
      'through a hole',
      [
        [-5, 5],
        [15, 5],
      ],
      [...square, ...rectangle({ u0: 4, v0: 4, u1: 6, v1: 6 })],
      [
        [
          [0, 5],
          [4, 5],
        ],
        [
          [6, 5],
          [10, 5],
        ],
      ],
    ],
  ] as const)('%s', (_, line, outline, kept) => {
    const got = clipSegment(line as never, rings(outline));
    expect(got.map((piece) => piece.map((point) => point.map((n) => Number(n.toFixed(9)))))).toEqual(kept);
  });

  it('all of a clipped line lies inside, and all that was cut away lies outside', () => {
    const point = fc.tuple(fc.double({ min: -3, max: 13, noNaN: true }), fc.double({ min: -3, max: 13, noNaN: true }));
    fc.assert(
      fc.property(point, point, (a, b) => {
        const edges = rings([...groove, ...circle([2, 2], 1)]);
        const kept = clipSegment([a, b], edges);
        const length = (pieces: readonly (readonly [Point, Point])[]): number =>
          pieces.reduce((sum, [p, q]) => sum + Math.hypot(q[0] - p[0], q[1] - p[1]), 0);
        for (const [p, q] of kept) expect(isInside([(p[0] + q[0]) / 2, (p[1] + q[1]) / 2], edges)).toBe(true);
        const steps = 400;
        const sampled = Array.from({ length: steps }, (_, i) => (i + 0.5) / steps).filter((t) =>
          isInside([a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t], edges),
        ).length;
        const whole = Math.hypot(b[0] - a[0], b[1] - a[1]);
        expect(Math.abs(length(kept) - (sampled / steps) * whole)).toBeLessThan((whole * 12) / steps + 1e-6);
      }),
      { seed: 20261124, numRuns: 200 },
    );
  });
});

describe('hatch', () => {
  it('end grain is lined at 45°, and a neighbour at -45°', () => {
    const small = rectangle({ u0: 0, v0: 0, u1: 4, v1: 4 });
    for (const [angle, slope] of [
      [45, -1],
      [-45, 1],
    ] as const)
      for (const [[au, av], [bu, bv]] of linesOf(small, { grain: 'end', angle }))
        expect((bv - av) / (bu - au)).toBeCloseTo(slope, 6);
  });

  it('long grain runs along the grain and is sparser than end grain', () => {
    const long = linesOf(square, { grain: 'long', angle: 90 });
    expect(long.every(([[au], [bu]]) => Math.abs(au - bu) < 1e-9)).toBe(true);
    expect(long.length).toBeLessThan(linesOf(square, { grain: 'end' }).length);
  });

  it('parallel lines of the smallest face keep 0.7 mm apart (ISO 128-2)', () => {
    const lines = linesOf(rectangle({ u0: 0, v0: 0, u1: 2, v1: 30 }), { grain: 'end' });
    const offsets = lines.map(([[u, v]]) => (u + v) / Math.SQRT2).sort((a, b) => a - b);
    offsets.slice(1).forEach((offset, i) => {
      expect(offset - (offsets[i] as number)).toBeGreaterThan(0.7);
    });
    expect(lines.length).toBeGreaterThan(10);
  });

  it('the two grains have roles of their own and name their part', () => {
    expect(hatch(square, { grain: 'end', of: 'A' })[0]).toMatchObject({ role: 'hatch', of: 'A' });
    expect(hatch(square, { grain: 'long', of: 'B' })[0]).toMatchObject({ role: 'hatch-long', of: 'B' });
  });

  it('an outline without an inside is left bare', () => {
    expect(
      hatch(
        polygon([
          [0, 0],
          [5, 5],
        ]),
        { grain: 'end' },
      ),
    ).toEqual([]);
  });
});
