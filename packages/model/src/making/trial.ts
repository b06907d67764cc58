import { breakingText, mostUse } from '../findings/strength.ts';
import { percentText } from '../findings/words.ts';
import { INCH } from '../length.ts';
import type { Panel } from '../panel/panel.ts';
import { SLAT_USE } from '../weave/limits.ts';

/** How far to bend a trial slat: laid on two blocks and pressed down in the middle, mm. */
export interface TrialBend {
  /** Smallest radius that the weave bends a slat to. */
  readonly radius: number;
  /** Clear between the blocks. */
  readonly span: number;
  /** From straight down to where it is pressed. */
  readonly sag: number;
}

/** Blocks stand no farther apart than this: 24 in or 600 mm, what a bench has room for. */
const WIDEST = { in: 24 * INCH, mm: 600 } as const;

/**
 * The trial that bends a slat as hard as the weave will: between two blocks as far apart as neighbouring staves, pressed
 * in the middle. A beam so loaded has its greatest curvature there, 12 sag / span² (statics of a beam), which is one over
 * the radius. Undefined where no slat is bent.
 */
export function trialBend({ rows, staves, display }: Panel): TrialBend | undefined {
  const radii = rows.flatMap(({ bend }) => bend.minRadius ?? []);
  if (radii.length === 0) return undefined;
  const radius = Math.min(...radii);
  const span = Math.min(staves.pitch, WIDEST[display.unit]);
  return { radius, span, sag: span ** 2 / (12 * radius) };
}

/** What to press a trial slat of one panel by; undefined where no slat is bent. */
export function trialText(
  panel: Panel,
  show: (length: number) => string,
  fine: (length: number) => string,
): string | undefined {
  const trial = trialBend(panel);
  return (
    trial &&
    `${show(trial.span)} clear between the blocks, middle pressed down ${fine(trial.sag)}; radius ${show(trial.radius)}`
  );
}

/** Of panels whose bend breaks too many sound slats for a trial to tell a good board from a bad one. */
const BEYOND =
  'Where the findings stop a panel because its slats are bent too hard, a trial slat says nothing of its board: settle that first.';

/** How a slat of each board is tried, and what follows where it breaks. */
export function trialTexts(all: readonly Panel[]): string[] {
  const panels = all.filter((panel) => mostUse(panel) < SLAT_USE.stop);
  const trials = new Set(panels.flatMap((panel) => trialBend(panel)?.radius ?? []));
  const beyond = panels.length < all.length ? [BEYOND] : [];
  if (trials.size === 0) return beyond;
  return [
    ...beyond,
    `Bend a trial slat of each board that gives slats as soon as its first strip is off and finished to thickness: lay it flat on two blocks and press its middle down as far as told below. That is as hard as the weave bends it.${
      trials.size > 1
        ? ' Where a board gives slats of several panels, try it for the one with the smallest radius.'
        : ''
    }`,
    'A board whose trial slat creaks or cracks gives no slats: buy another of the same size and wood, straighter in its grain, and cut it by the same pattern. The other parts may still come from the first.',
  ];
}

/** Of panels that bend their slats harder than a slat is held at for good: how hard, and how many break. */
export function bendCautions(panels: readonly Panel[]): string[] {
  return panels
    .filter((panel) => mostUse(panel) > SLAT_USE.kept + 1e-9)
    .map((panel) => {
      const use = mostUse(panel);
      const who = panels.length > 1 ? `${panel.name}: slats` : 'Slats';
      return `${who} are bent to ${percentText(use)} of their strength, more than the ${percentText(SLAT_USE.kept)} they are held at for good: expect ${breakingText(use)} to break. See the findings.`;
    });
}

/**
 * How much thicker than planned slats may be, mm: 0.5 mm or 1/64 in, and no more than takes them to the share of their strength
 * that they are held at for good, as far as a caliper tells it; a slat's share grows somewhat faster than its thickness.
 */
export function thickerBy(panel: Panel): number {
  const { courses, staves, display } = panel;
  const [most, least] = display.unit === 'in' ? [INCH / 64, INCH / 128] : [0.5, 0.1];
  const use = mostUse(panel);
  if (use <= 0) return most;
  // Stress goes as t (d + t) at one pitch.
  const product = (courses.thickness * (staves.depth + courses.thickness) * SLAT_USE.kept) / use;
  const thickness = (Math.sqrt(staves.depth ** 2 + 4 * product) - staves.depth) / 2;
  return Math.min(most, Math.max(least, Math.floor((thickness - courses.thickness) * 10) / 10));
}
