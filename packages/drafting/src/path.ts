import type { Box, Path, Point, Step } from './mark.ts';

/** A straight line from `a` to `b`. */
export function line(a: Point, b: Point): Path {
  return [
    ['M', a[0], a[1]],
    ['L', b[0], b[1]],
  ];
}

/** An open run of straight lines. */
export function polyline(points: readonly Point[]): Path {
  return points.map(([u, v], i) => (i === 0 ? ['M', u, v] : ['L', u, v]) as Step);
}

/** A closed polygon. */
export function polygon(points: readonly Point[]): Path {
  return [...polyline(points), ['Z']];
}

/** A closed rectangle. */
export function rectangle({ u0, v0, u1, v1 }: Box): Path {
  return polygon([
    [u0, v0],
    [u1, v0],
    [u1, v1],
    [u0, v1],
  ]);
}

/**
 * An arc as cubic curves, the only place where arcs become curves. Angles in degrees, anticlockwise as seen on paper.
 * Each piece spans at most 30°, where the cubic with handles 4/3·tan(θ/4) leaves the circle by under 1e-7 of its radius.
 */
export function arc(centre: Point, radius: number, from: number, to: number): Path {
  const pieces = Math.max(1, Math.ceil(Math.abs(to - from) / 30));
  const step = ((to - from) / pieces) * (Math.PI / 180);
  const handle = (4 / 3) * Math.tan(step / 4) * radius;
  const on = (a: number): Point => [centre[0] + radius * Math.cos(a), centre[1] - radius * Math.sin(a)];
  const start = from * (Math.PI / 180);
  const steps: Step[] = [['M', ...on(start)]];
  for (let i = 0; i < pieces; i++) {
    const a = start + i * step;
    const b = a + step;
    const [au, av] = on(a);
    const [bu, bv] = on(b);
    steps.push([
      'C',
      au - handle * Math.sin(a),
      av - handle * Math.cos(a),
      bu + handle * Math.sin(b),
      bv + handle * Math.cos(b),
      bu,
      bv,
    ]);
  }
  return steps;
}

/** A full circle, closed. */
export function circle(centre: Point, radius: number): Path {
  return [...arc(centre, radius, 0, 360), ['Z']];
}

/**
 * A smooth curve through samples of a function and its slope: each piece is the exact cubic with those ends and slopes.
 * `points` are `[u, v, dv/du]` with `u` rising or falling throughout.
 */
export function curve(points: readonly (readonly [u: number, v: number, slope: number])[]): Path {
  const steps: Step[] = [];
  points.forEach(([u, v, slope], i) => {
    const before = points[i - 1];
    if (!before) {
      steps.push(['M', u, v]);
      return;
    }
    const third = (u - before[0]) / 3;
    steps.push(['C', before[0] + third, before[1] + before[2] * third, u - third, v - slope * third, u, v]);
  });
  return steps;
}
