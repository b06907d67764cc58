/** A paper that full-size drawings are printed on, mm. */
export interface TilePaper {
  /** The paper's name, as a job says it. */
  readonly name: TilePaperName;
  /** Shorter side, or the width of the roll. */
  readonly short: number;
  /** Longer side; absent for a roll, which is cut where the drawing ends. */
  readonly long?: number;
}

/** Names of the papers for full-size sheets, as a job says them. */
export type TilePaperName = 'A4' | 'A3' | 'Letter' | 'Legal' | 'Tabloid' | 'roll 610' | 'roll 914';

const inch = 25.4;

/**
 * The papers for full-size sheets. Sources: A4 and A3, ISO 216:2007; Letter and Tabloid, ASME Y14.1 sizes A and B; Legal
 * 8 1/2 × 14 in, office paper (from memory); rolls of 610 and 914 mm, the 24 and 36 in of plotters (common practice, no
 * source).
 */
export const TILE_PAPERS: Readonly<Record<TilePaperName, TilePaper>> = {
  A4: { name: 'A4', short: 210, long: 297 },
  A3: { name: 'A3', short: 297, long: 420 },
  Letter: { name: 'Letter', short: 8.5 * inch, long: 11 * inch },
  Legal: { name: 'Legal', short: 8.5 * inch, long: 14 * inch },
  Tabloid: { name: 'Tabloid', short: 11 * inch, long: 17 * inch },
  'roll 610': { name: 'roll 610', short: 610 },
  'roll 914': { name: 'roll 914', short: 914 },
};

/**
 * Margin that common office printers can leave unprinted on any side, mm: 1/4 in. Common practice, no source; a printer's
 * own figure goes before it.
 */
export const SAFE_MARGIN: number = inch / 4;
