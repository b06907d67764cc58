import { INCH, type Marks } from '../length.ts';
import type { Panel } from './panel.ts';

/** Bit for drain holes, mm: 1/4 in, or 6 mm in metric work; common practice, no source. */
const BIT: Readonly<Record<Marks['unit'], number>> = { in: INCH / 4, mm: 6 };

/** Holes down through the bottom rail, out of its groove, mm. */
export interface DrainHoles {
  readonly diameter: number;
  /** From the left end of the rail to the middles of the holes; empty for a panel indoors. At mid-depth, all through the rail. */
  readonly places: readonly number[];
}

/**
 * Drain holes of a panel that stands outdoors, where the bottom groove is a gutter: one half-way between every two staves
 * (common practice, no source).
 */
export function drainHoles(panel: Pick<Panel, 'staves' | 'site' | 'display'>): DrainHoles {
  const { centres } = panel.staves;
  const between = centres.slice(1).map((centre, i) => (centre + (centres[i] as number)) / 2);
  return { diameter: BIT[panel.display.unit], places: panel.site.where === 'outdoors' ? between : [] };
}
