/** A piece of wood and where its middle is; mm in the panel's frame, or any other. */
export interface Solid {
  /** mm³ */
  readonly volume: number;
  /** kg/m3, as `density` gives it. */
  readonly density: number;
  readonly x: number;
  readonly y: number;
  /** 0 if absent. */
  readonly z?: number;
}

/** Mass in kg, and its centre in mm. */
export interface MassCentre {
  readonly mass: number;
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/**
 * Mass and centre of mass of pieces: Σ m x / Σ m.
 *
 * @throws RangeError if there are no pieces, or a volume or density is not over 0.
 */
export function centreOfMass(solids: readonly Solid[]): MassCentre {
  if (solids.length === 0) throw new RangeError('no pieces to weigh (expected at least one)');
  let [mass, x, y, z] = [0, 0, 0, 0];
  for (const solid of solids) {
    const own = solid.volume * 1e-9 * solid.density;
    if (!(own > 0))
      throw new RangeError(`invalid piece: ${solid.volume} mm3 of ${solid.density} kg/m3 (expected both over 0)`);
    mass += own;
    x += own * solid.x;
    y += own * solid.y;
    z += own * (solid.z ?? 0);
  }
  return { mass, x: x / mass, y: y / mass, z: z / mass };
}
