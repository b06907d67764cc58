import { INCH, type Marks } from '../length.ts';
import type { Pin } from './row.ts';

/** Lengths that 18 gauge pins are sold in; common practice, no source. */
const LENGTHS = { in: [0.625, 0.75, 1, 1.25, 1.5, 2], mm: [16, 20, 25, 30, 35, 40, 50] } as const;

/** Diameter of an 18 gauge pin, 0.047 in, mm; from memory. */
const DIAMETER = 0.047 * INCH;

/** Depth wanted beyond the strip, mm: common practice, no source. */
const WANTED = 15;

/** The shortest pin that goes through a strip and a good half inch beyond, or the longest there is. */
export function choosePin(through: number, unit: Marks['unit']): Pin {
  const lengths = LENGTHS[unit].map((length) => (unit === 'in' ? length * INCH : length));
  const length = lengths.find((each) => each >= through + WANTED) ?? (lengths.at(-1) as number);
  return { diameter: DIAMETER, length, through, penetration: Math.max(0, length - through) };
}
