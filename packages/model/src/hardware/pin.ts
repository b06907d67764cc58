import { INCH, type Marks } from '../length.ts';
import type { Pin } from './row.ts';

/** Headless pins of one wire, and the lengths that they are sold in, inches and millimetres. */
interface Series {
  readonly wire: Pin['wire'];
  readonly diameter: number;
  readonly in: readonly number[];
  readonly mm: readonly number[];
}

/** Pins of 0.047 in and 0.0625 in wire; diameters from memory, lengths common practice, no source. */
const SERIES: readonly Series[] = [
  { wire: 18, diameter: 0.047 * INCH, in: [0.625, 0.75, 1, 1.25, 1.5, 2], mm: [16, 20, 25, 30, 35, 40, 50] },
  { wire: 16, diameter: 0.0625 * INCH, in: [1.5, 1.75, 2, 2.5], mm: [40, 45, 50, 64] },
];

/** Least depth beyond the strip, 5/8 in or 15 mm: common practice, no source. */
export const PIN_REACH: { readonly in: number; readonly mm: number } = { in: 0.625 * INCH, mm: 15 };

/** Thinnest strip that takes a pin along its middle without splitting, 3/16 in or 5 mm: common practice, no source. */
export const PIN_STRIP: { readonly in: number; readonly mm: number } = { in: (3 / 16) * INCH, mm: 5 };

/**
 * The shortest pin that goes through a strip and a good half inch beyond; none where no pin is long enough, or the strip
 * is too thin for one.
 * @param strip what the pin goes through, and the strip's thickness across it, mm
 */
export function choosePin(
  { through, thickness }: { readonly through: number; readonly thickness: number },
  unit: Marks['unit'],
): Pin | undefined {
  if (thickness < PIN_STRIP[unit] - 1e-9) return undefined;
  const wanted = through + PIN_REACH[unit] - 1e-9;
  for (const { wire, diameter, ...series } of SERIES) {
    const length = series[unit].map((each) => (unit === 'in' ? each * INCH : each)).find((each) => each >= wanted);
    if (length !== undefined) return { wire, diameter, length, through, penetration: length - through };
  }
  return undefined;
}
