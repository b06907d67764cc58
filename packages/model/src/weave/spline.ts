/** A point that a bent line passes, with the curvature there, positive where the line opens to the front. */
export interface Knot {
  /** From the left stile's inner face, mm. */
  readonly x: number;
  /** Through the panel, front positive, mm. */
  readonly z: number;
  /** Second derivative of z by x, 1/mm. */
  readonly curvature: number;
}

/** A line that is cubic between its knots, with curvature varying evenly, and straight beyond the first and the last. */
export interface Curve {
  /** Two or more, from left to right. */
  readonly knots: readonly Knot[];
}

/** Where a curve is at one place. */
export interface Sample {
  readonly z: number;
  /** dz/dx */
  readonly slope: number;
  /** d²z/dx², 1/mm */
  readonly curvature: number;
}

/**
 * Curvatures at the points of the natural cubic spline through them: the line of least bending through these points,
 * with free ends. Solves H₋κ₋ + 2(H₋ + H₊)κ + H₊κ₊ = 6 (slope₊ − slope₋) by elimination down and substitution up.
 *
 * @param x Two places or more, rising, mm.
 * @param z Heights there, mm.
 */
export function naturalCurvatures(x: readonly number[], z: readonly number[]): number[] {
  const last = x.length - 1;
  const curvature = new Array<number>(x.length).fill(0);
  const pivot = new Array<number>(x.length).fill(1);
  for (let i = 1; i < last; i++) {
    const before = at(x, i) - at(x, i - 1);
    const after = at(x, i + 1) - at(x, i);
    // The end curvature is zero and stays out of the first row.
    const factor = i > 1 ? before / at(pivot, i - 1) : 0;
    pivot[i] = 2 * (before + after) - factor * before;
    const turn = (at(z, i + 1) - at(z, i)) / after - (at(z, i) - at(z, i - 1)) / before;
    curvature[i] = 6 * turn - factor * at(curvature, i - 1);
  }
  for (let i = last - 1; i > 0; i--) {
    const after = at(x, i + 1) - at(x, i);
    curvature[i] = (at(curvature, i) - after * at(curvature, i + 1)) / at(pivot, i);
  }
  return curvature;
}

/**
 * Jump of the third derivative at each knot, left to right: times the bending stiffness, the force put on the line
 * there, towards the front. Beyond the first and the last knot the line is straight, so it is zero there.
 */
export function thirdDerivativeJumps(x: readonly number[], curvature: readonly number[]): number[] {
  const rate = x.slice(1).map((next, i) => (at(curvature, i + 1) - at(curvature, i)) / (next - at(x, i)));
  return x.map((_, i) => (rate[i] ?? 0) - (rate[i - 1] ?? 0));
}

/** Where a curve is at `x`, by its own cubic there or its straight tails. */
export function sampleCurve(curve: Curve, x: number): Sample {
  const { knots } = curve;
  let low = 0;
  let high = knots.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (knot(knots, middle).x <= x) low = middle;
    else high = middle;
  }
  const a = knot(knots, low);
  const b = knot(knots, high);
  const length = b.x - a.x;
  const chord = (b.z - a.z) / length;
  if (x < a.x) {
    const slope = chord - (length * (2 * a.curvature + b.curvature)) / 6;
    return { z: a.z + slope * (x - a.x), slope, curvature: 0 };
  }
  if (x > b.x) {
    const slope = chord + (length * (a.curvature + 2 * b.curvature)) / 6;
    return { z: b.z + slope * (x - b.x), slope, curvature: 0 };
  }
  const u = x - a.x;
  const rate = (b.curvature - a.curvature) / length;
  const start = chord - (length * (2 * a.curvature + b.curvature)) / 6;
  return {
    z: a.z + u * (start + u * (a.curvature / 2 + (u * rate) / 6)),
    slope: start + u * (a.curvature + (u * rate) / 2),
    curvature: a.curvature + u * rate,
  };
}

/**
 * By how much a curve from `from` to `to` is longer than straight, mm: ½∫(dz/dx)² dx, exact for the curve.
 * √(1 + z′²) − 1 is not used: the two errors of small slopes nearly cancel, and this comes closer to the true elastica.
 */
export function extraLength(curve: Curve, from: number, to: number): number {
  const { knots } = curve;
  const first = knot(knots, 0);
  const last = knot(knots, knots.length - 1);
  let sum = sampleCurve(curve, from).slope ** 2 * (first.x - from) + sampleCurve(curve, to).slope ** 2 * (to - last.x);
  for (let i = 1; i < knots.length; i++) {
    const a = knot(knots, i - 1);
    const b = knot(knots, i);
    const length = b.x - a.x;
    // Chord and the deviation from it are orthogonal, so their squares add.
    sum += (b.z - a.z) ** 2 / length;
    sum += (length ** 3 * (4 * a.curvature ** 2 + 7 * a.curvature * b.curvature + 4 * b.curvature ** 2)) / 180;
  }
  return sum / 2;
}

function at(values: readonly number[], i: number): number {
  return values[i] as number;
}

function knot(knots: readonly Knot[], i: number): Knot {
  return knots[i] as Knot;
}
