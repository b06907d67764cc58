import { INCH, type Marks } from '../length.ts';

/** Gauges of wood screws that the schedule chooses from. */
export type Gauge = 4 | 5 | 6 | 8 | 10 | 12 | 14;

/**
 * Outside diameter of a wood screw, mm: 0.060 in and 0.013 in for each number of the gauge. Screws with a milling point
 * sold by their own length and load tables do not follow it. Source: ASME B18.6.1.
 * @example screwDiameter(8) / 25.4 // → 0.164
 */
export function screwDiameter(gauge: number): number {
  return (0.06 + 0.013 * gauge) * INCH;
}

/** Lengths that are sold, inches and millimetres; common practice, no source. */
const LENGTHS = {
  in: [0.5, 0.625, 0.75, 0.875, 1, 1.25, 1.5, 1.75, 2, 2.25, 2.5, 2.75, 3, 3.5, 4, 4.5, 5, 6],
  mm: [12, 16, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 120, 140, 160],
} as const;

/** The longest of each gauge, inches; common practice, no source. */
const LONGEST: Readonly<Record<Gauge, number>> = { 4: 1.6, 5: 1.6, 6: 2.5, 8: 3.5, 10: 4, 12: 5, 14: 6.5 };

/** Lengths that a gauge is sold in, mm, in the series of the job's unit, shortest first. */
export function screwLengths(gauge: Gauge, unit: Marks['unit']): number[] {
  const longest = LONGEST[gauge] * INCH;
  return LENGTHS[unit].map((length) => (unit === 'in' ? length * INCH : length)).filter((length) => length <= longest);
}

/** Diameter of the head of a flat-head screw, mm: twice the screw's, common practice, no source. */
export function headDiameter(gauge: number): number {
  return 2 * screwDiameter(gauge);
}
