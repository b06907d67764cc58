/** A gate as its brace sees it, mm and N; x from the hinge axis, y up. */
export interface GateLoad {
  /** Hinge axis to latch side. */
  readonly width: number;
  /** Weight of the gate, N: its mass in kg times 9.80665. */
  readonly weight: number;
  /** Hinge axis to the centre of mass; the middle of the width if absent. */
  readonly centre?: number;
  /** Force pressing down on the latch side, such as a child, N; 0 if absent. */
  readonly latchLoad?: number;
}

/** Where the brace's ends are, mm: `hinge` the one nearer the hinge axis. */
export interface BraceEnds {
  readonly hinge: { readonly x: number; readonly y: number };
  readonly latch: { readonly x: number; readonly y: number };
}

/** A diagonal brace. */
export interface GateBrace {
  /** Between its ends, mm. */
  readonly length: number;
  /** N; positive pulls, negative pushes. */
  readonly tension: number;
  /** A cable or rod must run from the top of the hinge side down, a wooden strut from its bottom up. */
  readonly kind: 'cable' | 'strut';
}

/**
 * Force in the diagonal that keeps a gate with yielding joints square: (W c + P B) ℓ / [(x₂ − x₁)(y₁ − y₂)]. With the
 * joints stiff as well it takes only a share of this, by stiffness. Statics; checked against a plane-frame model.
 *
 * @throws RangeError unless the latch end lies further from the hinges than the hinge end, and not level with it.
 * @example corner to corner, c = B/2: W ℓ / (2 H).
 */
export function gateBrace(gate: GateLoad & BraceEnds): GateBrace {
  const { run, drop, length } = braceLine(gate);
  const tension = (gateMoment(gate) * length) / (run * drop);
  return { length, tension, kind: drop > 0 ? 'cable' : 'strut' };
}

/**
 * By how much to shorten a cable, mm, to lift the latch side by `lift`: δ (x₂ − x₁)(y₁ − y₂) / (ℓ B); negative for a
 * strut, which is to be made longer by as much. Small turns.
 */
export function braceTakeUp(brace: Pick<GateLoad, 'width'> & BraceEnds & { readonly lift: number }): number {
  const { run, drop, length } = braceLine(brace);
  return (brace.lift * run * drop) / (length * brace.width);
}

/**
 * By how much a brace stretches (or shortens, negative) under its force, and the latch side drops for it, mm.
 * Joint play is far more than either.
 *
 * @param brace `area` of the brace's section in mm², `modulus` in MPa.
 */
export function braceSag(brace: GateLoad & BraceEnds & { readonly area: number; readonly modulus: number }): {
  readonly stretch: number;
  readonly drop: number;
} {
  const { tension, length } = gateBrace(brace);
  const { run, drop } = braceLine(brace);
  const stretch = (tension * length) / (brace.modulus * brace.area);
  return { stretch, drop: (stretch * length * brace.width) / (run * drop) };
}

/**
 * Force at which a strut with free-turning ends buckles, N: π² E I / ℓ² (Euler), about the section's weaker axis. Wanted
 * at least three times the force in it.
 *
 * @param strut Section and length in mm, modulus along the grain in MPa.
 */
export function strutBuckling(strut: {
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  readonly modulus: number;
}): number {
  const thin = Math.min(strut.width, strut.thickness);
  const wide = Math.max(strut.width, strut.thickness);
  return (Math.PI ** 2 * strut.modulus * ((wide * thin ** 3) / 12)) / strut.length ** 2;
}

/** Forces on a gate's hinges, N. */
export interface HingeForces {
  /** The post pulls the top hinge towards itself and pushes the bottom one away, with this each. */
  readonly pull: number;
  /** To be assumed on either hinge alone. */
  readonly vertical: number;
}

/**
 * Forces on two hinges a distance apart: the level pair (W c + P B) / a, and the whole weight on either. Statics.
 *
 * @param gate `apart`: between the hinges, mm.
 * @throws RangeError if the hinges are not apart.
 */
export function gateHinges(gate: GateLoad & { readonly apart: number }): HingeForces {
  if (!(gate.apart > 0)) throw new RangeError(`invalid distance of the hinges: ${gate.apart} (expected over 0, mm)`);
  return { pull: gateMoment(gate) / gate.apart, vertical: gate.weight + (gate.latchLoad ?? 0) };
}

/** Moment of weight and latch load about the hinge axis, N mm. */
function gateMoment({ width, weight, centre = width / 2, latchLoad = 0 }: GateLoad): number {
  return weight * centre + latchLoad * width;
}

function braceLine({ hinge, latch }: BraceEnds): {
  readonly run: number;
  readonly drop: number;
  readonly length: number;
} {
  const run = latch.x - hinge.x;
  const drop = hinge.y - latch.y;
  if (!(run > 0) || drop === 0)
    throw new RangeError(`invalid brace: ${run} across, ${-drop} up (expected over 0 across, and not level, mm)`);
  return { run, drop, length: Math.hypot(run, drop) };
}
