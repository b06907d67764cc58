/** Density of water, kg/m3, as the metric form of the Wood Handbook's equation takes it. */
const water = 1000;

/**
 * Specific gravity (oven-dry mass over volume) at 12 % moisture from the basic one (oven-dry mass over green volume).
 * Source: Wood Handbook FPL-GTR-190, ch. 4: G_M = G_b / (1 - 0.265 a G_b), a = (30 - M) / 30.
 */
export function gravity12FromBasic(basic: number): number {
  return gravityFromBasic(basic, 12);
}

/**
 * Density of wood with its water, kg/m3, from the specific gravity at 12 % moisture that tables give.
 *
 * Basic specific gravity G_b = G_12 / (1 + 0.159 G_12); swollen to M: G_M = G_b / (1 - 0.265 a G_b) with
 * a = (30 - M) / 30, 0 above 30 %; density = 1000 G_M (1 + M / 100). Keeping G_12 as it is errs by up to 4 %.
 * Source: Wood Handbook FPL-GTR-190, ch. 4.
 *
 * @param wood `moisture` in percent of the oven-dry mass.
 * @throws RangeError if the specific gravity is not between 0 and 1.5, or the moisture is negative.
 * @example density({ specificGravity12: 0.44, moisture: 12 }) // → 492.8
 */
export function density(wood: { readonly specificGravity12: number; readonly moisture: number }): number {
  const { specificGravity12, moisture } = wood;
  if (!(specificGravity12 > 0 && specificGravity12 <= 1.5))
    throw new RangeError(`invalid specific gravity: ${specificGravity12} (expected over 0 to 1.5)`);
  if (!(moisture >= 0)) throw new RangeError(`invalid moisture: ${moisture} (expected 0 or more, percent)`);
  // At 12 % the handbook's two equations are each other's inverse but for rounding: 0.265 * 0.6 = 0.159.
  const basic = specificGravity12 / (1 + 0.265 * 0.6 * specificGravity12);
  return water * gravityFromBasic(basic, moisture) * (1 + moisture / 100);
}

function gravityFromBasic(basic: number, moisture: number): number {
  const swelling = Math.max(0, (30 - moisture) / 30);
  return basic / (1 - 0.265 * swelling * basic);
}
