import { INCH } from '../length.ts';
import type { Panel } from '../panel/panel.ts';

/** How far to bend a trial slat: laid on two blocks and pressed down in the middle, mm. */
export interface TrialBend {
  /** Smallest radius that the weave bends a slat to. */
  readonly radius: number;
  /** From block to block. */
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
