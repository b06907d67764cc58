import type { Knot } from './spline.ts';

/** Sizes of a plain weave over many staves, mm, MPa. */
export interface PlainSizes {
  /** Centre to centre of neighbouring staves. */
  readonly pitch: number;
  readonly staveWidth: number;
  readonly staveDepth: number;
  readonly slatThickness: number;
  readonly modulus: number;
  readonly strength: number;
}

/** What a slat does in a plain weave over many staves. */
export interface PlainWeave {
  /** Over the whole face of each stave, 1/mm. */
  readonly curvature: number;
  /** mm */
  readonly radius: number;
  /** MPa */
  readonly stress: number;
  /** Share of the strength. */
  readonly use: number;
  /** Force on each stave for each mm of slat height, N/mm. */
  readonly forcePerHeight: number;
  /** Slope at the arrises. */
  readonly arrisSlope: number;
  /** Slope in the middle of a bay, the steepest. */
  readonly midSlope: number;
  /** By how much each pitch of slat is longer than straight, mm. */
  readonly extraPerPitch: number;
}

/**
 * Closed forms for a slat in plain weave over many staves, with A = (d + t)/2 and the bay b = p − w:
 * κ = 12A/[b(b + 3w)], stress E κ t/2, force 4EIκ/b, and the cubic A(αv + βv³) across the bay.
 * A safe one-line value for any weave: over every row of 3 to 11 staves no curvature is more than 0.8 % above it with
 * w/p up to 0.1 (4 % up to 0.2). It over-states narrow panels: 1.8 times for three staves, 1.35 for four, 1.11 for five.
 * Derived for this project; 0.6 % above the exact infinite elastica at usual sizes.
 *
 * @throws RangeError if a size is not over 0 or the staves leave no bay.
 * @example plainWeave({ pitch: 277.8125, staveWidth: 19.05, staveDepth: 15.875, slatThickness: 4.7625,
 *   modulus: 9800, strength: 77 }).use // → 0.459
 */
export function plainWeave(sizes: PlainSizes): PlainWeave {
  checkSizes(sizes);
  const { staveWidth: w, slatThickness: t, modulus, strength } = sizes;
  const { offset: A, bay: b, curvature, alpha, beta } = plainShape(sizes);
  const stress = (modulus * curvature * t) / 2;
  const face = (curvature ** 2 * w ** 3) / 12;
  const clear = (A ** 2 / b) * (alpha ** 2 + (alpha * beta) / 2 + (9 * beta ** 2) / 80);
  return {
    curvature,
    radius: 1 / curvature,
    stress,
    use: stress / strength,
    forcePerHeight: (4 * modulus * (t ** 3 / 12) * curvature) / b,
    arrisSlope: (curvature * w) / 2,
    midSlope: (A * alpha) / b,
    extraPerPitch: (face + clear) / 2,
  };
}

/**
 * Closest pitch at which a slat in plain weave takes no more than a wanted share of its strength, mm:
 * [√(9w² + 4Q) − w]/2 with Q = 3Et(d + t)/(use · R). On the safe side of the exact elastica by 0.2 to 1.1 %.
 *
 * @param wanted `use` 0.55 is the usual limit; 1 is where the slat breaks.
 * @throws RangeError if a size or the share is not over 0.
 * @example smallestPitch({ use: 0.55, staveWidth: 15.875, staveDepth: 15.875, slatThickness: 4.7625,
 *   modulus: 7700, strength: 51.7 }) // → 275.6
 */
export function smallestPitch(wanted: Omit<PlainSizes, 'pitch'> & { readonly use: number }): number {
  for (const [what, value] of Object.entries(wanted)) checkPositive(what, value);
  const { use, staveWidth: w, staveDepth: d, slatThickness: t, modulus, strength } = wanted;
  const Q = (3 * modulus * t * (d + t)) / (use * strength);
  return (Math.sqrt(9 * w ** 2 + 4 * Q) - w) / 2;
}

/** Shape of a slat's centre line in plain weave over many staves; α and β those of z = −A(αv + βv³), v from −½ to ½. */
export function plainShape(sizes: Omit<PlainSizes, 'modulus' | 'strength'>): {
  /** Off the panel's middle over each arris, mm. */
  readonly offset: number;
  readonly bay: number;
  /** 1/mm */
  readonly curvature: number;
  readonly alpha: number;
  readonly beta: number;
} {
  const { pitch, staveWidth: w, staveDepth, slatThickness } = sizes;
  const offset = (staveDepth + slatThickness) / 2;
  const bay = pitch - w;
  const r = (6 * w) / (bay + 3 * w);
  return { offset, bay, curvature: (12 * offset) / (bay * (bay + 3 * w)), alpha: 3 - r / 2, beta: 2 * r - 4 };
}

/**
 * Knots of that centre line over some staves, the first in front: two to a stave. Stave j's middle is at j · pitch.
 * Between the first and the last knot it is exactly the infinite weave's line.
 */
export function plainKnots(sizes: Omit<PlainSizes, 'modulus' | 'strength'>, from: number, to: number): Knot[] {
  const { offset, curvature } = plainShape(sizes);
  const knots: Knot[] = [];
  for (let j = from; j <= to; j++) {
    const side = j % 2 === 0 ? 1 : -1;
    for (const arris of [-0.5, 0.5])
      knots.push({ x: j * sizes.pitch + arris * sizes.staveWidth, z: side * offset, curvature: -side * curvature });
  }
  return knots;
}

function checkSizes(sizes: PlainSizes): void {
  for (const [what, value] of Object.entries(sizes)) checkPositive(what, value);
  if (!(sizes.pitch > sizes.staveWidth))
    throw new RangeError(`invalid pitch: ${sizes.pitch} (expected over ${sizes.staveWidth}, the stave's width, mm)`);
}

function checkPositive(what: string, value: number): void {
  if (!(value > 0)) throw new RangeError(`invalid ${what}: ${value} (expected over 0)`);
}
