import { INCH, type Marks } from '../length.ts';
import type { Wood } from '../wood/wood.ts';
import { type Gauge, screwDiameter } from './gauge.ts';

/** A drill as it is sold: in 64ths of an inch, and in steps of half a millimetre. */
export interface Drill {
  /** Such as `5/64`. */
  readonly inch: string;
  /** Such as 2, mm. */
  readonly metric: number;
}

/** A drill with its unit, the same words on every sheet. */
export function drillText({ inch, metric }: Drill, unit: Marks['unit']): string {
  return unit === 'in' ? `${inch} in` : `${metric} mm`;
}

/** Holes of one screw or pin. */
export interface Holes {
  /** For the thread, in the piece that it bites; of a pin, nearly as deep as it is long. */
  readonly pilot: Drill;
  /** For the shank, in the piece under the head; always wider than the screw. */
  readonly clearance?: Drill;
  /** Diameter of the countersink, mm. */
  readonly countersink?: number;
  readonly source: string;
}

/** Holes of a screw: all three. */
export type ScrewHoles = Required<Holes>;

/**
 * Pilots in light wood, 64ths of an inch: traditional drill chart, read in a boat-building screw chart, about 70 % of the
 * root as charts reckon it. 4 and 5 from memory.
 */
const LIGHT: Readonly<Record<Gauge, number>> = { 4: 3, 5: 4, 6: 4, 8: 5, 10: 6, 12: 7, 14: 7 };

/** Root diameters, inches: NDS Appendix L, from memory; 4 and 5 by the ratio of No. 6. */
const ROOTS: Readonly<Record<Gauge, number>> = {
  4: 0.092,
  5: 0.102,
  6: 0.113,
  8: 0.131,
  10: 0.152,
  12: 0.171,
  14: 0.196,
};

/**
 * Share of the root that a pilot takes by specific gravity: 70 % from 0.50 (larch, Douglas fir), 90 % over 0.60 (oak).
 * NDS 12.1.5.2, which has 70 % only over 0.50; limits from memory.
 */
const DENSE = { from: 0.5, share: 0.7 } as const;
const HARD = { over: 0.6, share: 0.9 } as const;

/** Specific gravity for fasteners: the NDS figure where there is one, else the one at 12 % moisture, a little low. */
export function screwGravity(wood: Wood): number {
  return wood.fastenerGravity ?? wood.specificGravity12;
}

/**
 * Drills of a wood screw: pilot by the wood that the thread bites, to the nearest size sold; clearance, the next size
 * over the screw; countersink of twice the screw's diameter.
 * @example screwHoles(8, { specificGravity: 0.36 }).pilot.inch // → '5/64'
 */
export function screwHoles(gauge: Gauge, { specificGravity }: { readonly specificGravity: number }): ScrewHoles {
  const share = specificGravity > HARD.over ? HARD.share : specificGravity >= DENSE.from ? DENSE.share : undefined;
  const pilot = share === undefined ? (LIGHT[gauge] / 64) * INCH : share * ROOTS[gauge] * INCH;
  const diameter = screwDiameter(gauge);
  return {
    pilot: nearestDrill(pilot),
    clearance: drillOver(diameter),
    countersink: 2 * diameter,
    source:
      share === undefined
        ? `traditional screw chart, softwood${gauge < 6 ? ', from memory' : ''}`
        : `${share * 100} % of the root (NDS 12.1.5.2; roots NDS Appendix L, from memory)`,
  };
}

/** Hole for a headless pin, four fifths of it: common practice, no source. Drills so thin are sold by tenths of a mm. */
export function pinHoles(diameter: number): Holes {
  const size = 0.8 * diameter;
  const pilot = { inch: inchText(Math.round((size / INCH) * 64)), metric: Math.round(size * 10) / 10 };
  return { pilot, source: 'four fifths of the pin, common practice, no source' };
}

/** The drill nearest to a diameter. */
function nearestDrill(diameter: number): Drill {
  return {
    inch: inchText(Math.max(1, Math.round((diameter / INCH) * 64))),
    metric: Math.max(1, Math.round(2 * diameter) / 2),
  };
}

/** The smallest drill wider than a diameter. */
function drillOver(diameter: number): Drill {
  const over = (steps: number) => Math.floor(steps + 1e-9) + 1;
  return { inch: inchText(over((diameter / INCH) * 64)), metric: over(2 * diameter) / 2 };
}

/** 64ths of an inch as a reduced fraction. */
function inchText(sixtyFourths: number): string {
  let [numerator, denominator] = [sixtyFourths, 64];
  while (numerator % 2 === 0) [numerator, denominator] = [numerator / 2, denominator / 2];
  return `${numerator}/${denominator}`;
}
