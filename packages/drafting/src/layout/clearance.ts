import type { Box, Point } from '../mark.ts';

/** A straight line between two points, mm. */
export type Segment = readonly [Point, Point];

/** Distances that touch within this, mm, are not counted as overlap: far under what a printer can show. */
const TOUCH = 1e-6;

/** The box larger on every side by `by` mm. */
export function grown({ u0, v0, u1, v1 }: Box, by: number): Box {
  return { u0: u0 - by, v0: v0 - by, u1: u1 + by, v1: v1 + by };
}

/** Whether two boxes share more than an edge. */
export function overlaps(a: Box, b: Box): boolean {
  return a.u0 < b.u1 - TOUCH && b.u0 < a.u1 - TOUCH && a.v0 < b.v1 - TOUCH && b.v0 < a.v1 - TOUCH;
}

/** Whether `inner` lies wholly within `outer`. */
export function contains(outer: Box, inner: Box): boolean {
  return (
    inner.u0 >= outer.u0 - TOUCH &&
    inner.v0 >= outer.v0 - TOUCH &&
    inner.u1 <= outer.u1 + TOUCH &&
    inner.v1 <= outer.v1 + TOUCH
  );
}

/** Whether a straight line passes through the inside of a box (by clipping the line's parameter to both slabs). */
export function crossesBox([[au, av], [bu, bv]]: Segment, { u0, v0, u1, v1 }: Box): boolean {
  let [t0, t1] = [0, 1];
  for (const [a, b, low, high] of [
    [au, bu, u0, u1],
    [av, bv, v0, v1],
  ] as const) {
    const run = b - a;
    if (Math.abs(run) < TOUCH) {
      if (a <= low + TOUCH || a >= high - TOUCH) return false;
      continue;
    }
    const [enter, leave] = run > 0 ? [(low - a) / run, (high - a) / run] : [(high - a) / run, (low - a) / run];
    t0 = Math.max(t0, enter);
    t1 = Math.min(t1, leave);
  }
  return t1 - t0 > TOUCH;
}

/** Twice the signed area of the triangle `a b c`: its sign says on which side of the line `a b` the point `c` lies. */
function turn(a: Point, b: Point, c: Point): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}

/** Whether two straight lines cross or touch, their common ends apart. */
export function segmentsCross([a, b]: Segment, [c, d]: Segment): boolean {
  const [p, q, r, s] = [turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b)];
  return p * q < -TOUCH * TOUCH && r * s < -TOUCH * TOUCH;
}
