/** A point in the panel frame, mm: x right, y up, z to the viewer of the front. */
export interface Place {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** Ends nearer than this get one place in the middle, mm; common practice, no source. */
const ONE_BELOW = 60;

/**
 * Places from `from` to `to` at equal steps, both ends taken, no step over `most`. A stretch too short for two fixings
 * gets one in its middle.
 * @example spread(0, 1000, 400) // → [0, 333.3, 666.7, 1000]
 */
export function spread(from: number, to: number, most: number): number[] {
  if (to - from < ONE_BELOW) return [(from + to) / 2];
  const steps = Math.max(1, Math.ceil((to - from) / most - 1e-9));
  return Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps);
}

/** Length of a stand-off block along the stile, and along its own grain: 3 in, common practice, no source; mm. */
export const BLOCK_HEIGHT: number = 3 * 25.4;
