import type { Point } from '../mark.ts';

/** A cubic curve by its ends and handles. */
export type Cubic = readonly [Point, Point, Point, Point];

/** Which coordinate of a point: 0 for `u`, 1 for `v`. */
export type Axis = 0 | 1;

/** Where along a cubic (0 to 1, ends left out) one coordinate passes a value, in rising order. */
export function crossings(curve: Cubic, axis: Axis, value: number): number[] {
  const [a, b, c, d] = curve.map((p) => p[axis] - value) as [number, number, number, number];
  const at = (t: number): number => {
    const s = 1 - t;
    return s * s * s * a + 3 * s * s * t * b + 3 * s * t * t * c + t * t * t * d;
  };
  // Between turning points the coordinate only rises or only falls, so that each stretch holds one crossing at most.
  const bounds = [0, ...turns(a, b, c, d), 1];
  const found: number[] = [];
  for (let i = 0; i + 1 < bounds.length; i++) {
    let [low, high] = [bounds[i] as number, bounds[i + 1] as number];
    if (at(low) < 0 === at(high) < 0) continue;
    const rising = at(low) < 0;
    // Halving until doubles have nothing between: slow and certain, and curves are few.
    for (let step = 0; step < 60; step++) {
      const half = (low + high) / 2;
      if (at(half) < 0 === rising) low = half;
      else high = half;
    }
    found.push((low + high) / 2);
  }
  return found.filter((t) => t > 1e-12 && t < 1 - 1e-12);
}

/** Where the derivative of a cubic in Bernstein form vanishes between its ends. */
function turns(a: number, b: number, c: number, d: number): number[] {
  const [p, q, r] = [b - a, c - b, d - c];
  const [square, linear] = [p - 2 * q + r, 2 * (q - p)];
  const roots: number[] = [];
  if (Math.abs(square) < 1e-12) {
    if (linear !== 0) roots.push(-p / linear);
  } else {
    const under = linear * linear - 4 * square * p;
    if (under > 0) {
      // The form that loses no digits when one root is much larger than the other.
      const w = -(linear + Math.sign(linear || 1) * Math.sqrt(under)) / 2;
      roots.push(w / square, p / w);
    }
  }
  return roots.filter((t) => t > 0 && t < 1).sort((x, y) => x - y);
}

/** The two parts of a cubic cut at `t`: exactly the same curve (de Casteljau). */
export function cut([a, b, c, d]: Cubic, t: number): readonly [Cubic, Cubic] {
  const ab = between(a, b, t);
  const bc = between(b, c, t);
  const cd = between(c, d, t);
  const abc = between(ab, bc, t);
  const bcd = between(bc, cd, t);
  const m = between(abc, bcd, t);
  return [
    [a, ab, abc, m],
    [m, bcd, cd, d],
  ];
}

/** The point at a share of the way from one to another. */
export function between(a: Point, b: Point, t: number): Point {
  return [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
}
