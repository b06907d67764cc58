import { type SlatPath, slatContact } from './contact.ts';
import { type Curve, extraLength, type Sample, sampleCurve } from './spline.ts';

/** One slat to bend: its path, size and wood. */
export interface SlatToBend extends SlatPath {
  /** `thickness` through the panel, `height` up the panel, mm. */
  readonly slat: { readonly thickness: number; readonly height: number };
  /** Modulus of elasticity, MPa. */
  readonly modulus: number;
  /** Modulus of rupture, MPa. */
  readonly strength: number;
}

/** A slat as it lies in the weave; its `knots` are the curve of its centre line, read by `sampleSlat`. */
export interface SlatBend extends Curve {
  /** Largest curvature, always over an arris, 1/mm. */
  readonly maxCurvature: number;
  /** Smallest bending radius, mm; null for a straight slat. */
  readonly minRadius: number | null;
  /** Largest bending stress, MPa; does not depend on the slat's height. */
  readonly maxStress: number;
  /** Share of the strength that the stress takes, 1 being all. */
  readonly use: number;
  /** Force with which the slat presses on each stave, from the left, N; in proportion to the slat's height. */
  readonly staveForces: readonly number[];
  /** Force on the left and the right end stop, N. */
  readonly stopForces: readonly [left: number, right: number];
  /** Staves that the slat presses on, from 1 at the left. */
  readonly touched: readonly number[];
  /** Whether the bending holds the slat; if not it lies straight and loose. */
  readonly gripped: boolean;
  /** By how much the bent slat is longer than the clear width, mm; one cut to that is short by as much. */
  readonly extraLength: number;
  /** Length of the centre line between the stiles, mm. */
  readonly pathLength: number;
  /** Length to cut with square ends, mm: each sloping end meets its stile with one corner first. */
  readonly cutLength: number;
  /** dz/dx at the left and the right stile. */
  readonly endSlopes: readonly [left: number, right: number];
  /** z of the centre line at the left and the right stile, mm. */
  readonly endOffsets: readonly [left: number, right: number];
}

/**
 * Bends a slat into its row of staves. Curvature gives the stress E κ t / 2, the jumps of its slope give the forces; the
 * line itself is `slatContact`'s, whose model, checks and errors hold here. Linear up to the strength, no friction, no
 * steam, straight grain. A row with fewer than two changes of side is not gripped, unless end stops bend it.
 *
 * @throws RangeError also for a modulus, strength or slat height that is not over 0.
 * @example
 * bendSlat({ clearWidth: 1130.3, staves: { count: 5, width: 19.05, depth: 15.875 },
 *   slat: { thickness: 4.7625, height: 41.275 }, sides: [1, -1, 1, -1, 1], modulus: 9800, strength: 77 }).use // → 0.415
 */
export function bendSlat(slat: SlatToBend): SlatBend {
  const { clearWidth, modulus, strength } = slat;
  const { thickness, height } = slat.slat;
  for (const [what, value] of Object.entries({ modulus, strength, height }))
    if (!(value > 0)) throw new RangeError(`invalid ${what}: ${value} (expected over 0)`);
  const { knots, staveLoads, stopLoads } = slatContact(slat);
  const curve = { knots };
  const stiffness = (modulus * height * thickness ** 3) / 12;
  const staveForces = staveLoads.map((load) => stiffness * load);
  const gripped = staveLoads.some((load) => load > 0);
  const maxCurvature = gripped ? Math.max(...knots.map((knot) => Math.abs(knot.curvature))) : 0;
  const maxStress = (modulus * maxCurvature * thickness) / 2;
  const left = sampleCurve(curve, 0);
  const right = sampleCurve(curve, clearWidth);
  const extra = extraLength(curve, 0, clearWidth);
  return {
    knots,
    maxCurvature,
    minRadius: maxCurvature > 0 ? 1 / maxCurvature : null,
    maxStress,
    use: maxStress / strength,
    staveForces,
    stopForces: [stiffness * stopLoads[0], stiffness * stopLoads[1]],
    touched: staveForces.flatMap((force, j) => (force > 0 ? [j + 1] : [])),
    gripped,
    extraLength: extra,
    pathLength: clearWidth + extra,
    cutLength: clearWidth + extra - (thickness / 2) * (Math.abs(left.slope) + Math.abs(right.slope)),
    endSlopes: [left.slope, right.slope],
    endOffsets: [left.z, right.z],
  };
}

/**
 * Where a slat's centre line is at `x` from the left stile's inner face: z in mm, front positive, slope and curvature.
 *
 * @example sampleSlat(bend, 0).z // → the left end's offset
 */
export function sampleSlat(bend: Curve, x: number): Sample {
  return sampleCurve(bend, x);
}
