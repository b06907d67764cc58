import { bendRows } from '../panel/behaviour.ts';
import type { Panel } from '../panel/panel.ts';
import { layStaves } from '../panel/staves.ts';
import { weaveSides } from '../weave/pattern.ts';
import { plainWeave, smallestPitch } from '../weave/plain.ts';

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

/** Most staves that are tried beyond a panel's own. */
const MOST_TRIED = 12;

/**
 * The panel with the count of staves nearest its own, more of them or fewer, that passes; undefined where none does. Each
 * count is laid out and bent anew.
 */
export function otherCount(
  panel: Panel,
  { by, passes }: { readonly by: 1 | -1; readonly passes: (panel: Panel) => boolean },
): Panel | undefined {
  const { spec, staves, clear, courses, display, weave } = panel;
  // Rows given stave by stave hold for their own count only.
  const { pattern } = spec.weave;
  if (typeof pattern !== 'string') return undefined;
  for (let tried = 1; tried <= MOST_TRIED; tried++) {
    const count = staves.count + by * tried;
    if (count < 3 || staves.width * count >= clear.width / 2) return undefined;
    const laid = layStaves({ ...spec, stave: { ...spec.stave, spacing: { count } } }, clear, display);
    if ('field' in laid) return undefined;
    const sides = weaveSides({ weave: pattern, start: spec.weave.start, courses: courses.count, staves: count });
    const rows = bendRows(spec, { clearWidth: clear.width, staves: laid, courses, weave: sides, display });
    const other = { ...panel, staves: laid, weave: { ...weave, ...sides }, rows };
    if (passes(other)) return other;
  }
  return undefined;
}
