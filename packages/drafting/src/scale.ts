/** The two ways of working: millimetres, or inches with fractions. */
export type Unit = 'mm' | 'in';

/** A standard drawing scale: paper length over real length, and how it is written. */
export interface Scale {
  /** 1 is full size, 0.1 is 1:10. */
  readonly ratio: number;
  readonly text: string;
}

const times = (n: number): Scale => ({ ratio: n, text: `${n}:1` });
const oneTo = (n: number): Scale => ({ ratio: 1 / n, text: `1:${n}` });
const perFoot = (inches: number, text: string): Scale => ({ ratio: inches / 12, text: `${text} in = 1 ft` });

/**
 * Standard scales for millimetre work, largest first, as far as a panel on a sheet needs them.
 * Source: ISO 5455:1979, enlargements 5:1 and 2:1, full size, reductions 1:2 to 1:100 in steps of 1, 2, 5.
 */
export const MILLIMETRE_SCALES: readonly Scale[] = [
  times(5),
  times(2),
  oneTo(1),
  oneTo(2),
  oneTo(5),
  oneTo(10),
  oneTo(20),
  oneTo(50),
  oneTo(100),
];

/**
 * Customary scales for inch work, largest first.
 * Source: architectural scales in common use, inches of paper to the foot; twice full size is common practice for details.
 */
export const INCH_SCALES: readonly Scale[] = [
  { ratio: 2, text: 'twice full size' },
  { ratio: 1, text: 'full size' },
  perFoot(6, '6'),
  perFoot(3, '3'),
  perFoot(1.5, '1 1⁄2'),
  perFoot(1, '1'),
  perFoot(0.75, '3⁄4'),
  perFoot(0.5, '1⁄2'),
  perFoot(0.375, '3⁄8'),
  perFoot(0.25, '1⁄4'),
  perFoot(0.1875, '3⁄16'),
  perFoot(0.125, '1⁄8'),
];

/** The standard scales of a unit, largest first. */
export function scalesOf(unit: Unit): readonly Scale[] {
  return unit === 'mm' ? MILLIMETRE_SCALES : INCH_SCALES;
}

/** The standard scale with this ratio; a RangeError when the unit has none. `standardScale(0.1, 'mm').text` is `1:10`. */
export function standardScale(ratio: number, unit: Unit): Scale {
  const found = scalesOf(unit).find((scale) => Math.abs(scale.ratio / ratio - 1) < 1e-9);
  if (!found) throw new RangeError(`invalid scale: ${ratio} (expected a standard scale for ${unit} work)`);
  return found;
}

/** Width and height, mm. */
export interface Extent {
  readonly width: number;
  readonly height: number;
}

/**
 * The largest standard scale at which something `real` mm large fits into `room` mm of paper; undefined when none does.
 * Never larger than `atMost`, which is full size unless given.
 * `largestScale({ width: 1200, height: 900 }, { width: 250, height: 180 }, { unit: 'mm' })` is 1:5 (240 × 180).
 */
export function largestScale(
  real: Extent,
  room: Extent,
  { unit, atMost = 1 }: { readonly unit: Unit; readonly atMost?: number },
): Scale | undefined {
  const slack = 1 + 1e-9;
  return scalesOf(unit).find(
    ({ ratio }) =>
      ratio <= atMost * slack && real.width * ratio <= room.width * slack && real.height * ratio <= room.height * slack,
  );
}
