import { INCH } from '../length.ts';
import { poundForce } from '../wood/inchpound.ts';
import type { SlatBend } from './bend.ts';

/**
 * Shares of the average strength: what a slat may be held at for good, for a moment while weaving or in a gust, where about
 * one slat in ten breaks so that the usual spare slats are used up, and where every second one does.
 */
export const SLAT_USE: {
  readonly kept: number;
  readonly weaving: number;
  readonly stop: number;
  readonly breaks: number;
} = {
  kept: 0.55,
  weaving: 0.75,
  stop: 0.8,
  breaks: 1,
};

/** Least grip: what a 3/16 in yellow-cedar slat 1 5/8 in high has at 14 in pitch, N for each mm of its height. */
export const LEAST_GRIP: number = (7.5 * poundForce) / (1.625 * INCH);

/** With less than this share of the least grip a panel is not worth building; common practice, no source. */
export const HARDLY_GRIPS = 0.5;

/** The least force, N, with which a slat that is gripped presses on the stave it presses hardest; absent: none is. */
export function leastGrip(bends: readonly Pick<SlatBend, 'gripped' | 'staveForces'>[]): number | undefined {
  const gripped = bends.filter(({ gripped: held }) => held);
  return gripped.length > 0 ? Math.min(...gripped.map(({ staveForces }) => Math.max(...staveForces))) : undefined;
}

/** Thicknesses that slats are sawn to at the bench, and depths of staves, go by such steps, mm; common practice, no source. */
export const BENCH_STEP: { readonly in: number; readonly mm: number } = { in: INCH / 32, mm: 0.5 };
