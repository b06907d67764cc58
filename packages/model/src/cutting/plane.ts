import type { Saw } from './stock.ts';

/** What the shop planes instead of ripping it, and what is planed off a sawn face, mm. */
export type Planing = Pick<Saw, 'shaving' | 'planing'>;

/**
 * Whether a cut along the grain is planing and no rip: it leaves `at` of a piece `size` mm across, nothing beyond, and takes
 * no more than the saw's `shaving`; or the blade, set off by what is planed off the sawn face, would not touch the wood.
 * Never where the saw has no `shaving`.
 *
 * @example
 * isPlaned({ at: 40.6, b: null }, 40.9, { shaving: 1.5, planing: 0.5 }); // → true
 */
export function isPlaned(
  cut: { readonly at: number; readonly b: unknown },
  size: number,
  { shaving, planing }: Planing,
): boolean {
  if (shaving === undefined || cut.b !== null) return false;
  return size - cut.at <= Math.max(shaving, planing) + SAME;
}

/** Rounding of doubles, mm. */
const SAME = 1e-6;
