import { INCH } from '../length.ts';
import { poundForce } from '../wood/inchpound.ts';

/** One screw that something pulls on. */
export interface PulledScrew {
  /** Specific gravity of the wood that the thread bites, oven-dry mass and volume. */
  readonly gravity: number;
  /** Outside diameter, mm. */
  readonly diameter: number;
  /** Thread in side grain, mm. */
  readonly penetration: number;
}

/**
 * Reference withdrawal value of a wood screw in side grain, N: 2850 G² D lb for each inch of thread, D in inches.
 * In end grain withdrawal is not permitted. Source: NDS 2018, eq. 12.2-2 and 12.2.2. A licensed professional decides.
 * @example screwWithdrawal({ gravity: 0.36, diameter: 0.164 * 25.4, penetration: 25.4 }) // → 269.5 (60.6 lb)
 */
export function screwWithdrawal({ gravity, diameter, penetration }: PulledScrew): number {
  return 2850 * gravity ** 2 * (diameter / INCH) * (penetration / INCH) * poundForce;
}

/** Factors on it: wind lasts 10 minutes (1.6), wood that gets wet (0.7). NDS Tables 2.3.2 and 11.3.3, from memory. */
export const WITHDRAWAL_FACTORS: { readonly wind: number; readonly wet: number } = { wind: 1.6, wet: 0.7 };
