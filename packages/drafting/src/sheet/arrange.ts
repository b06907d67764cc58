import { TooLarge } from '../layout/toolarge.ts';
import type { Sheet } from '../mark.ts';
import { TILE_PAPERS } from '../paper.ts';
import type { Extent, Unit } from '../scale.ts';
import type { Item } from './fit.ts';
import type { Orientation } from './frame.ts';
import { frame } from './frame.ts';
import type { Layout } from './layout.ts';
import { finish, lay } from './layout.ts';
import type { SheetMeta } from './titleblock.ts';

/** A sheet size by name, mm; which side comes first does not matter. */
export interface SheetPaper extends Extent {
  readonly name: string;
}

/**
 * Sheet sizes that drawings are arranged on, smallest first in each series.
 * Source: ISO 216 A4 to A2; ASME Y14.1 A and B (Letter, Tabloid); ARCH C, 18 × 24 in, architectural series (from memory).
 */
export const SHEET_PAPERS: Readonly<Record<'A4' | 'A3' | 'A2' | 'Letter' | 'Tabloid' | 'ARCH C', SheetPaper>> = {
  A4: sheet('A4'),
  A3: sheet('A3'),
  A2: { name: 'A2', width: 420, height: 594 },
  Letter: sheet('Letter'),
  Tabloid: sheet('Tabloid'),
  'ARCH C': { name: 'ARCH C', width: 18 * 25.4, height: 24 * 25.4 },
};

/** A paper that full-size pages are printed on too: its size stands once, in `TILE_PAPERS`. */
function sheet(name: 'A4' | 'A3' | 'Letter' | 'Tabloid'): SheetPaper {
  const { short, long = short } = TILE_PAPERS[name];
  return { name, width: short, height: long };
}

/** Name of a sheet size. */
export type SheetPaperName = keyof typeof SHEET_PAPERS;

/** What `arrange` needs to know. */
export interface ArrangeOptions {
  /** A sheet size, or `fit`: the smallest of the unit's series on which every view can be read. */
  readonly paper: SheetPaperName | 'fit';
  /** Whichever gives the larger views, unless given. */
  readonly orientation?: Orientation;
  readonly unit: Unit;
  readonly meta: SheetMeta;
}

/**
 * Drawings on finished sheets: each view at the largest standard scale that fits, titles in place, nothing overlapping,
 * border and title block on every sheet, sheets numbered from 1. The count of sheets grows; text never shrinks.
 * `TooLarge` when something fits no sheet of the paper.
 */
export function arrange(items: readonly Item[], options: ArrangeOptions): Sheet[] {
  return finish(arrangeLayouts(items, options), options.meta);
}

/** As `arrange`, but not yet numbered, to be joined with composed sheets and numbered together by `finish`. */
export function arrangeLayouts(
  items: readonly Item[],
  { paper, orientation, unit }: Omit<ArrangeOptions, 'meta'>,
): Layout[] {
  const names: SheetPaperName[] =
    paper !== 'fit' ? [paper] : unit === 'mm' ? ['A4', 'A3', 'A2'] : ['Letter', 'Tabloid', 'ARCH C'];
  const refused: TooLarge[] = [];
  for (const name of names) {
    const layouts = larger(
      (orientation ? [orientation] : (['landscape', 'portrait'] as const)).map((lies) =>
        attempt(() => lay(items, frame(SHEET_PAPERS[name], lies), unit), refused),
      ),
    );
    if (layouts) return layouts;
  }
  throw refused.at(-1);
}

function attempt(layouts: () => Layout[], refused: TooLarge[]): Layout[] | undefined {
  try {
    return layouts();
  } catch (error) {
    if (!(error instanceof TooLarge)) throw error;
    refused.push(error);
    return undefined;
  }
}

/** Of several ways to lie, the one with the larger views, then with fewer sheets, then the first. */
function larger(ways: readonly (Layout[] | undefined)[]): Layout[] | undefined {
  const size = (layouts: Layout[]): number =>
    layouts.flatMap(({ drawings }) => drawings).reduce((sum, { scale }) => sum + (scale > 0 ? Math.log(scale) : 0), 0);
  return ways
    .filter((layouts) => layouts !== undefined)
    .toSorted((a, b) => {
      const difference = size(b) - size(a);
      return Math.abs(difference) > 1e-9 ? difference : a.length - b.length;
    })[0];
}
