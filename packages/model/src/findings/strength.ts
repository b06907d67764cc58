import { windOnSlat } from '../loads/wind.ts';
import type { Panel } from '../panel/panel.ts';
import type { GuardBending } from '../uses/guard.ts';
import { panelWind } from '../uses/wind.ts';
import { SLAT_USE } from '../weave/limits.ts';
import { plainWeave, smallestPitch } from '../weave/plain.ts';

/** Scatter of the strength of clear wood, standard deviation over average. Wood Handbook FPL-GTR-190, from memory. */
const SCATTER = 0.16;

/** The greatest share of its strength that any slat of the panel is bent to. */
export function mostUse({ rows }: Panel): number {
  return Math.max(0, ...rows.map(({ bend }) => bend.use));
}

/**
 * Share of the slats that are weaker than what they are bent to, 0 to 1: strengths lie about their average as normal errors
 * do. Abramowitz and Stegun 7.1.26, good to 1e-7 (from memory).
 */
function breakingShare(use: number): number {
  const x = (use - 1) / SCATTER / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * Math.abs(x));
  const sum = ((((1.061405429 * t - 1.453152027) * t + 1.421413741) * t - 0.284496736) * t + 0.254829592) * t;
  const erf = Math.sign(x) * (1 - sum * Math.exp(-x * x));
  return (1 + erf) / 2;
}

/** How many slats break, in words: `about 11 slats in 100`, `about 1 slat in 400`. */
export function breakingText(use: number): string {
  const share = breakingShare(use);
  if (share >= 0.02) return `about ${Math.round(100 * share)} slats in 100`;
  return share < 1e-4 ? 'hardly any slat' : `about 1 slat in ${Number((1 / share).toPrecision(1))}`;
}

/** The pitch and the thickness at which this weave would take no more than the kept share of its strength, mm. */
export function gentler(panel: Panel): { readonly pitch: number; readonly thickness: number } {
  const { staves, courses, spec } = panel;
  const { modulus, strength } = spec.wood.slat.wood;
  const sizes = {
    staveWidth: staves.width,
    staveDepth: staves.depth,
    slatThickness: courses.thickness,
    modulus,
    strength,
  };
  const use = mostUse(panel);
  // The closed form over-states narrow panels: it is asked for the share that it itself would show here.
  const wanted = (SLAT_USE.kept * plainWeave({ ...sizes, pitch: staves.pitch }).use) / use;
  // Stress goes as t (d + t) at one pitch.
  const product = (courses.thickness * (staves.depth + courses.thickness) * SLAT_USE.kept) / use;
  return {
    pitch: smallestPitch({ ...sizes, use: wanted }),
    thickness: (Math.sqrt(staves.depth ** 2 + 4 * product) - staves.depth) / 2,
  };
}

/** Gust factor of a rigid panel. ASCE 7-16, 26.11. */
const GUST = 0.85;

/** Share of their strength that weave and design wind together take of the slats; undefined without a wind. */
export function windyUse(panel: Panel): number | undefined {
  const wind = panelWind(panel);
  if (!wind) return undefined;
  const { staves, courses, spec } = panel;
  const pressure = wind.velocityPressure * GUST * wind.forceCoefficient;
  const sizes = { pitch: staves.pitch, thickness: courses.thickness, height: courses.height };
  return mostUse(panel) + windOnSlat({ ...sizes, pressure }).stress / spec.wood.slat.wood.strength;
}

/** Share of the average strength that a member may take of a code load: 5 % exclusion value over 2.1. */
export const WORKING_SHARE: number = (1 - 1.645 * SCATTER) / 2.1;

/** What a member of a guard may take: a slat is bent by the weave for good, so a load on it is judged as a gust is. */
export function guardShare(of: GuardBending['of']): number {
  return of === 'slat' ? SLAT_USE.weaving : WORKING_SHARE;
}
