// Inch-pound units of published tables, in the units used inside. The inch and the pound are exact by definition
// (international yard and pound agreement, 1959; standard gravity 9.80665 m/s2).

/** One inch, mm. */
export const inch = 25.4;

/** One pound, kg. */
export const pound = 0.45359237;

/** One pound-force, N. */
export const poundForce: number = pound * 9.80665;

/** One pound-force per square inch, MPa. */
export const psi: number = poundForce / inch ** 2;

/** One pound-force per square foot, Pa. */
export const psf: number = (psi / 144) * 1e6;

/** One mile per hour, m/s. */
export const mph: number = (5280 * 12 * inch) / 1000 / 3600;
