/**
 * Whole-number sizes. One tick is 1/640 mm, the coarsest unit that holds both 1/128 in (127 ticks) and 0.05 mm
 * (32 ticks) exactly: 1 in = 25.4 mm = 16 256 ticks. A 20 ft board is 3 901 440 ticks.
 */
const TICKS_PER_MM = 640;

/** A size that is off the grid by less than this share of a tick is taken as on it (rounding noise of doubles). */
const NOISE = 1e-3;

/** Ticks of a size that must not come out smaller than asked, such as a part or a kerf. */
export function ticksUp(size: number): number {
  return Math.ceil(size * TICKS_PER_MM - NOISE);
}

/** Ticks of a size that must not be taken for more than it is, such as a board. */
export function ticksDown(size: number): number {
  return Math.floor(size * TICKS_PER_MM + NOISE);
}

/** Millimetres of a whole number of ticks. */
export function fromTicks(ticks: number): number {
  return ticks / TICKS_PER_MM;
}

/** Greatest common divisor of two whole numbers; `gcd(0, n)` is n. */
export function gcd(a: number, b: number): number {
  let x = Math.abs(a);
  let y = Math.abs(b);
  while (y > 0) [x, y] = [y, x % y];
  return x;
}
