/**
 * By how much the bending grows while a slat is pushed off its stave to slip the last stave in: 1 + 0.5 c/A for the
 * whole face pushed, 1 + 0.76 c/A for a finger or wedge in its middle, A = (d + t)/2. For information: the load is
 * short, so three quarters of the strength is a sensible bound for it. Threading a slat endwise, or weaving over the
 * free stave tops and sliding down, needs no factor; springing an end into the frame needs none on `plainWeave`'s
 * figure.
 *
 * Derived for this project with the model of `bendSlat`: within 1 % at c = t/2, on the safe side above it.
 *
 * @param push Sizes in mm; `clearance` is how far the slat is pushed off, half its thickness if absent.
 * @throws RangeError if the clearance is negative.
 * @example insertionFactor({ staveDepth: 15.875, slatThickness: 4.7625 }) // → 1.115
 */
export function insertionFactor(push: {
  readonly staveDepth: number;
  readonly slatThickness: number;
  readonly clearance?: number;
  readonly at?: 'whole face' | 'point';
}): number {
  const { staveDepth, slatThickness, clearance = slatThickness / 2, at = 'whole face' } = push;
  if (!(clearance >= 0)) throw new RangeError(`invalid clearance: ${clearance} (expected 0 or more, mm)`);
  const offset = (staveDepth + slatThickness) / 2;
  return 1 + ((at === 'point' ? 0.76 : 0.5) * clearance) / offset;
}
