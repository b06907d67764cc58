import { INCH } from '../length.ts';
import type { Wood } from '../wood/wood.ts';
import type { Gauge } from './gauge.ts';

/** A drill: the inch fraction nearest to it, and its diameter in mm. */
export interface Drill {
  /** Such as `5/64`. */
  readonly inch: string;
  readonly diameter: number;
}

/** Holes of one screw. */
export interface ScrewHoles {
  /** For the thread, in the piece that it bites. */
  readonly pilot: Drill;
  /** For the shank, in the piece under the head. */
  readonly clearance: Drill;
  /** Diameter of the countersink, mm. */
  readonly countersink: number;
  readonly source: string;
}

/** 64ths of an inch: pilot in wood up to 0.60 specific gravity, pilot in heavier wood, shank clearance. */
type Row = readonly [soft: number, hard: number, shank: number];

/**
 * Traditional drill chart, read in a boat-building screw chart and kept to the nearest 1/64 in: softwood about 70 %,
 * hardwood about 90 % of the root. Where the chart gives a number drill alone for hardwood (6 and 12), the nearest
 * fraction; 14 hard is garbled in the copy and is number drill 14. 4 and 5 from memory.
 */
const ROWS: Readonly<Record<Gauge, Row>> = {
  4: [3, 4, 7],
  5: [4, 5, 8],
  6: [4, 6, 9],
  8: [5, 7, 11],
  10: [6, 8, 12],
  12: [7, 10, 14],
  14: [7, 12, 16],
};

/** Specific gravity above which lead holes are about 90 % of the root. NDS 12.1.5.2 (limit from memory). */
const HARD_GRAVITY = 0.6;

/** Specific gravity for fasteners: the NDS figure where there is one, else the one at 12 % moisture, a little low. */
export function screwGravity(wood: Wood): number {
  return wood.fastenerGravity ?? wood.specificGravity12;
}

/**
 * Drills of a wood screw: pilot by the wood that the thread bites, clearance, countersink of twice the screw's diameter.
 * @example screwHoles(8, { specificGravity: 0.36 }).pilot.inch // → '5/64'
 */
export function screwHoles(gauge: Gauge, into: { readonly specificGravity: number }): ScrewHoles {
  const [soft, hard, shank] = ROWS[gauge];
  return {
    pilot: drill(into.specificGravity > HARD_GRAVITY ? hard : soft),
    clearance: drill(shank),
    countersink: 2 * (0.06 + 0.013 * gauge) * INCH,
    source:
      gauge < 6
        ? 'traditional screw chart, from memory'
        : 'traditional screw chart: softwood 70 %, hardwood 90 % of the root; split at specific gravity 0.60 (NDS 12.1.5.2)',
  };
}

function drill(sixtyFourths: number): Drill {
  let [numerator, denominator] = [sixtyFourths, 64];
  while (numerator % 2 === 0) [numerator, denominator] = [numerator / 2, denominator / 2];
  return { inch: `${numerator}/${denominator}`, diameter: (sixtyFourths / 64) * INCH };
}
