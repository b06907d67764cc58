import { inch, mph, psf } from '../wood/inchpound.ts';

/** Ground round about: B town and wood, C open country, D open water. ASCE 7, section 26.7. */
export type Exposure = 'B' | 'C' | 'D';

/** A panel in the wind. */
export interface WindOnPanel {
  /** mm */
  readonly width: number;
  /** mm */
  readonly height: number;
  /** Top of the panel above ground, mm; its height if absent: it then stands on the ground. */
  readonly top?: number;
  /** Strength-level basic wind speed, m/s: a map value of the standard, not a forecast. */
  readonly speed: number;
  readonly exposure: Exposure;
  /** Share of the panel that is solid seen level and square: 1 less `seeThrough` there. 1 if absent. */
  readonly solidity?: number;
  /** Directionality K_d; 0.85 if absent. */
  readonly directionality?: number;
  /** Gust factor G; 0.85 (rigid) if absent. */
  readonly gust?: number;
  /** Topography K_zt; 1 (level ground) if absent. */
  readonly topography?: number;
  /** Ground elevation K_e; 1 if absent. */
  readonly elevation?: number;
}

/** What the wind does to the panel. */
export interface WindLoad {
  /** Velocity pressure q at the top, Pa. */
  readonly velocityPressure: number;
  /** K_z at the top. */
  readonly exposureFactor: number;
  /** C_f */
  readonly forceCoefficient: number;
  /** What the openings leave of the force on the whole outline. */
  readonly openingFactor: number;
  /** Strength level, N. */
  readonly force: number;
  /** The standard's least force, 16 lb/ft² on the solid area, N; design for the larger. */
  readonly leastForce: number;
  /** Allowable-stress level of the larger: 0.6 of it, N. */
  readonly allowableForce: number;
  /** Strength-level force on the worse side, N: the resultant may be 0.2 of the width off centre, so 0.7 of the larger. */
  readonly worseSideForce: number;
  /** Free edges of long walls have higher pressures, not covered here: panel over twice as wide as high. */
  readonly longPanel: boolean;
}

/** Gradient height z_g in feet and power α of the wind profile. ASCE 7-16, Table 26.11-1 (from memory). */
const profiles: Readonly<Record<Exposure, { readonly zg: number; readonly alpha: number }>> = {
  B: { zg: 1200, alpha: 7 },
  C: { zg: 900, alpha: 9.5 },
  D: { zg: 700, alpha: 11.5 },
};

/** C_f of a solid wall by width over height (columns) and clearance ratio s/h (rows). ASCE 7-16, Fig. 29.3-1 (memory). */
const wallWidths = [0.05, 0.1, 0.2, 0.5, 1, 2, 4, 5, 10, 20, 30, 45] as const;
const wallRows: readonly (readonly [ratio: number, coefficients: readonly number[]])[] = [
  [0.5, [1.95, 1.85, 1.8, 1.75, 1.75, 1.7, 1.7, 1.7, 1.7, 1.7, 1.7, 1.75]],
  [0.7, [1.9, 1.85, 1.75, 1.7, 1.65, 1.6, 1.6, 1.55, 1.55, 1.55, 1.55, 1.55]],
  [0.9, [1.85, 1.75, 1.7, 1.6, 1.55, 1.5, 1.45, 1.45, 1.4, 1.4, 1.4, 1.4]],
  [1, [1.8, 1.7, 1.65, 1.55, 1.45, 1.4, 1.35, 1.35, 1.3, 1.3, 1.3, 1.3]],
];

/**
 * Wind force on a free-standing panel after ASCE 7 (7-16, sections 26.10 and 29.3 to 29.7; constants from memory):
 * q = 0.00256 K_z K_zt K_d K_e V² lb/ft², V in mi/h, the units converted exactly. Solid to seven tenths or more, as a
 * solid wall: F = q G C_f [1 − (1 − ε)^1.5] B s; else as an open screen: F = q G C_f ε B s. Posts, footings and fixings
 * are for a licensed professional; this sizes nothing.
 *
 * @throws RangeError if a size or the speed is not over 0, the solidity not over 0 to 1, or the top under the height.
 */
export function windLoad(panel: WindOnPanel): WindLoad {
  const { width, height, top = height, speed, exposure, solidity = 1, gust = 0.85, directionality = 0.85 } = panel;
  for (const [what, value] of Object.entries({ width, height, speed }))
    if (!(value > 0)) throw new RangeError(`invalid ${what}: ${value} (expected over 0)`);
  if (!(solidity > 0 && solidity <= 1)) throw new RangeError(`invalid solidity: ${solidity} (expected over 0 to 1)`);
  if (!(top >= height)) throw new RangeError(`invalid top: ${top} (expected the height ${height} or more, mm)`);
  const { zg, alpha } = profiles[exposure];
  const exposureFactor = 2.01 * (Math.max(top / (12 * inch), 15) / zg) ** (2 / alpha);
  const factors = exposureFactor * (panel.topography ?? 1) * directionality * (panel.elevation ?? 1);
  const velocityPressure = 0.00256 * psf * factors * (speed / mph) ** 2;
  const wall = solidity >= 0.7;
  const forceCoefficient = wall ? wallCoefficient(width / height, height / top) : screenCoefficient(solidity);
  const openingFactor = wall ? 1 - (1 - solidity) ** 1.5 : solidity;
  const area = (width * height) / 1e6;
  const force = velocityPressure * gust * forceCoefficient * openingFactor * area;
  const leastForce = 16 * psf * solidity * area;
  return {
    velocityPressure,
    exposureFactor,
    forceCoefficient,
    openingFactor,
    force,
    leastForce,
    allowableForce: 0.6 * Math.max(force, leastForce),
    worseSideForce: 0.7 * Math.max(force, leastForce),
    longPanel: width > 2 * height,
  };
}

/** C_f of an open screen of flat-sided members. ASCE 7-16, Table 29.4-2. */
function screenCoefficient(solidity: number): number {
  if (solidity < 0.1) return 2;
  return solidity < 0.3 ? 1.8 : 1.6;
}

/** C_f of a solid wall, linear between the table's figures; below s/h = 0.5 a tenth is added, as a caution. */
function wallCoefficient(widthByHeight: number, ratio: number): number {
  const inRow = wallRows.map(([row, coefficients]) => [row, between(wallWidths, coefficients, widthByHeight)] as const);
  const value = between(
    inRow.map(([row]) => row),
    inRow.map(([, coefficient]) => coefficient),
    ratio,
  );
  return ratio < 0.5 ? value + 0.1 : value;
}

/** Linear between points, level beyond them. */
function between(places: readonly number[], values: readonly number[], place: number): number {
  const next = places.findIndex((each) => each >= place);
  const [a, b] = next === -1 ? [places.length - 1, places.length - 1] : [Math.max(0, next - 1), next];
  const [xa = 0, xb = 0, ya = 0, yb = 0] = [places[a], places[b], values[a], values[b]];
  return xb === xa ? yb : ya + ((yb - ya) * (place - xa)) / (xb - xa);
}

/**
 * Wind on one slat as a beam held at every stave: line load, moment w p²/12 at the staves, and the bending stress that
 * it adds to the weave's own.
 *
 * @param slat `pressure` in Pa (q G C_f), sizes in mm.
 * @returns Line load in N/mm, moment in N mm, stress in MPa.
 */
export function windOnSlat(slat: {
  readonly pressure: number;
  readonly pitch: number;
  readonly thickness: number;
  readonly height: number;
}): { readonly lineLoad: number; readonly moment: number; readonly stress: number } {
  const lineLoad = (slat.pressure / 1e6) * slat.height;
  const moment = (lineLoad * slat.pitch ** 2) / 12;
  return { lineLoad, moment, stress: (6 * moment) / (slat.height * slat.thickness ** 2) };
}
