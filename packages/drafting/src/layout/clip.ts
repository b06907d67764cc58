import type { Path, Point } from '../mark.ts';
import type { Segment } from './clearance.ts';

/** How far a flattened curve may lie from the true one, mm on paper: a twentieth of the thinnest line. */
const FLATNESS = 0.01;

/**
 * The path as closed rings of straight lines, curves cut finely enough to lie within 0.01 mm. A chord of a curve cut into
 * n equal parts strays by at most 1/8 · |B''| / n², and |B''| of a cubic is at most 6 times the larger second difference
 * of its control points: derived, checked against circles in the tests.
 */
export function rings(path: Path): Point[][] {
  const found: Point[][] = [];
  let ring: Point[] = [];
  for (const step of path) {
    if (step[0] === 'M') {
      ring = [[step[1], step[2]]];
      found.push(ring);
    } else if (step[0] === 'L') ring.push([step[1], step[2]]);
    else if (step[0] === 'C') {
      const from = ring.at(-1) ?? [step[1], step[2]];
      ring.push(...flat(from, [step[1], step[2]], [step[3], step[4]], [step[5], step[6]]));
    }
  }
  return found.filter((points) => points.length > 2);
}

function flat(...[a, b, c, d]: [Point, Point, Point, Point]): Point[] {
  const bend = (p: Point, q: Point, r: Point): number => Math.hypot(p[0] - 2 * q[0] + r[0], p[1] - 2 * q[1] + r[1]);
  const pieces = Math.max(1, Math.ceil(Math.sqrt((6 * Math.max(bend(a, b, c), bend(b, c, d))) / (8 * FLATNESS))));
  return Array.from({ length: pieces }, (_, i): Point => {
    const t = (i + 1) / pieces;
    const s = 1 - t;
    const at = (k: 0 | 1): number => s * s * s * a[k] + 3 * s * s * t * b[k] + 3 * s * t * t * c[k] + t * t * t * d[k];
    return [at(0), at(1)];
  });
}

/**
 * The parts of a straight line inside some rings, by the even-odd rule, so that a ring within a ring is a hole. Exact but
 * for the rounding of the crossing parameters; the line's parameter is cut at each crossing and every second piece kept.
 */
export function clipSegment([a, b]: Segment, outline: readonly (readonly Point[])[]): Segment[] {
  const cuts = [0, 1];
  for (const ring of outline)
    ring.forEach((p, i) => {
      const t = crossing(a, b, p, ring[(i + 1) % ring.length] as Point);
      if (t !== undefined) cuts.push(t);
    });
  cuts.sort((s, t) => s - t);
  const along = (t: number): Point => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
  const kept: Segment[] = [];
  for (let i = 0; i + 1 < cuts.length; i++) {
    const [s, t] = [cuts[i] as number, cuts[i + 1] as number];
    if (t - s > 1e-9 && isInside(along((s + t) / 2), outline)) kept.push([along(s), along(t)]);
  }
  return kept;
}

/** Where the line `a b` meets the ring's side `p q`, as a parameter along `a b`. */
function crossing(a: Point, b: Point, p: Point, q: Point): number | undefined {
  const [ru, rv, su, sv] = [b[0] - a[0], b[1] - a[1], q[0] - p[0], q[1] - p[1]];
  const det = ru * sv - rv * su;
  if (det === 0) return undefined;
  const t = ((p[0] - a[0]) * sv - (p[1] - a[1]) * su) / det;
  const s = ((p[0] - a[0]) * rv - (p[1] - a[1]) * ru) / det;
  return t > 0 && t < 1 && s >= -1e-12 && s <= 1 + 1e-12 ? t : undefined;
}

/** Whether a point lies inside the rings by the even-odd rule: the number of sides to its right is odd. */
export function isInside([u, v]: Point, outline: readonly (readonly Point[])[]): boolean {
  let inside = false;
  for (const ring of outline)
    ring.forEach(([pu, pv], i) => {
      const [qu, qv] = ring[(i + 1) % ring.length] as Point;
      if (pv > v !== qv > v && u < pu + ((v - pv) / (qv - pv)) * (qu - pu)) inside = !inside;
    });
  return inside;
}
