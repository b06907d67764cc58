import type { RingPair, Wood } from './wood.ts';

/** Moisture range in which the coefficients hold, percent. Source: Wood Handbook FPL-GTR-190, Table 13-5. */
const coefficientRange = { from: 6, to: 14 } as const;

/** Fibre saturation where a wood says nothing else, percent. Source: Wood Handbook FPL-GTR-190, ch. 4 and 13. */
const usualFibreSaturation = 30;

/** A size, and the moisture it goes from and to. */
export interface MoistureChange {
  /** Size at the moisture it starts from, mm. Gaps between pieces do not count: they do not swell. */
  readonly size: number;
  /** Moisture before, percent. */
  readonly from: number;
  /** Moisture after, percent. */
  readonly to: number;
}

/**
 * Change of a size across the grain, mm, swelling positive: size × coefficient × (to − from).
 * Holds for 6 to 14 % moisture; see `shrinkageChange` beyond. Source: Wood Handbook FPL-GTR-190, ch. 13.
 *
 * @example sizeChange({ size: 1485.9, coefficient: 0.00208, from: 11, to: 17 }) // → 18.544 (0.7301 in)
 */
export function sizeChange(change: MoistureChange & { readonly coefficient: number }): number {
  return change.size * change.coefficient * (change.to - change.from);
}

/**
 * The same over the whole range from green to dry, from the total shrinkage in percent:
 * size × (to − from) / (100 F / S − F + from). Above fibre saturation F nothing moves, so both moistures stop there.
 * F is 30 % for most woods but 22 % for redwood, western redcedar and northern white-cedar: with 30 their answer comes
 * out a quarter low. Source: Wood Handbook FPL-GTR-190, eq. 13-3.
 *
 * @throws RangeError if the shrinkage is not between 0 and 100 %.
 * @example shrinkageChange({ size: 1485.9, shrinkage: 6, fibreSaturation: 30, from: 11, to: 17 }) // → 18.535
 */
export function shrinkageChange(
  change: MoistureChange & { readonly shrinkage: number; readonly fibreSaturation?: number },
): number {
  const { size, shrinkage, fibreSaturation = usualFibreSaturation } = change;
  if (!(shrinkage > 0 && shrinkage < 100))
    throw new RangeError(`invalid shrinkage: ${shrinkage} (expected over 0 and under 100, percent)`);
  const from = Math.min(change.from, fibreSaturation);
  const to = Math.min(change.to, fibreSaturation);
  return (size * (to - from)) / ((100 * fibreSaturation) / shrinkage - fibreSaturation + from);
}

/**
 * Coefficient that a shrinkage amounts to near 10 % moisture: (S / F) / (100 − S (F − 10) / F).
 * It reproduces every single-species row of Wood Handbook Table 13-5 to the last printed figure; rows that stand for a
 * group of species, and teak, differ. Source: Wood Handbook FPL-GTR-190, ch. 13 (form from memory, checked so).
 *
 * @param wood `shrinkage` and `fibreSaturation` in percent.
 * @example coefficientFromShrinkage({ shrinkage: 5, fibreSaturation: 22 }) // → 0.002336
 */
export function coefficientFromShrinkage(wood: {
  readonly shrinkage: number;
  readonly fibreSaturation?: number;
}): number {
  const { shrinkage, fibreSaturation = usualFibreSaturation } = wood;
  return shrinkage / fibreSaturation / (100 - (shrinkage * (fibreSaturation - 10)) / fibreSaturation);
}

/**
 * Value for growth rings at an angle to the moving face: tangential cos² + radial sin², for coefficients as for
 * shrinkage. 0° is flat sawn, 90° quarter sawn. Usual engineering interpolation, not a table of the Wood Handbook.
 *
 * @param ringAngle Degrees between the rings and the wide face.
 * @example ringCoefficient({ radial: 0.00095, tangential: 0.00208 }, 45) // → 0.001515
 */
export function ringCoefficient(pair: RingPair, ringAngle: number): number {
  const angle = (ringAngle * Math.PI) / 180;
  return pair.tangential * Math.cos(angle) ** 2 + pair.radial * Math.sin(angle) ** 2;
}

/**
 * Change of a size of a given wood, mm, swelling positive, by the best form its figures allow: the coefficient form
 * where both moistures lie in 6 to 14 %, the shrinkage form beyond; whichever there is where the wood has only one.
 * The two agree within 1 % where both are of one species. White oak, northern red oak and shagbark hickory bear the
 * coefficients of their commercial group, 3 to 18 % from their own shrinkage; teak's differ by up to 17 %.
 *
 * @param change `ringAngle` in degrees, 0 flat sawn (the greater movement, and the default), 90 quarter sawn.
 * @throws RangeError if the wood has neither coefficients nor shrinkage.
 */
export function woodChange(wood: Wood, change: MoistureChange & { readonly ringAngle?: number }): number {
  const { ringAngle = 0, ...moistureChange } = change;
  const { coefficients, shrinkage, fibreSaturation = usualFibreSaturation } = wood;
  const within = (moisture: number) => moisture >= coefficientRange.from && moisture <= coefficientRange.to;
  if (coefficients && (!shrinkage || (within(change.from) && within(change.to))))
    return sizeChange({ ...moistureChange, coefficient: ringCoefficient(coefficients, ringAngle) });
  if (!shrinkage) throw new RangeError(`no shrinkage or coefficients for ${wood.name}`);
  return shrinkageChange({ ...moistureChange, fibreSaturation, shrinkage: ringCoefficient(shrinkage, ringAngle) });
}
