import { union } from '../ink.ts';
import { textWidth } from '../lettering.ts';
import type { Box, Chain, Mark } from '../mark.ts';
import { write } from '../mark.ts';
import type { SideFrame } from './side.ts';
import { ASCENT, DESCENT, TEXT, TEXT_CLEAR } from './style.ts';

/** What stands on one side of an outline: its ink, the room it takes and the sums it prints. */
export interface Rows {
  readonly marks: Mark[];
  /** Smallest box round the ink and the side of the outline, paper mm. */
  readonly bounds: Box;
  /** How far it reaches outward from the outline, mm; give it as `start` to what comes outside it. */
  readonly depth: number;
  readonly chains: Chain[];
}

/** Rows and what must still be said about them, which is printed outside all rows of the side, clear of their lines. */
export interface Unsaid extends Rows {
  readonly remarks: readonly string[];
}

/** The rows with their remarks printed outside them, each on a line of its own. */
export function say({ remarks, ...rows }: Unsaid, frame: SideFrame): Rows {
  const middle = (frame.ends[0] + frame.ends[1]) / 2;
  const rise = (ASCENT + DESCENT) * TEXT;
  const height = TEXT_CLEAR + rise;
  const marks = remarks.map((text, i) => {
    const d = rows.depth + TEXT_CLEAR + i * height;
    const base = frame.up > 0 ? d + DESCENT * TEXT : d + ASCENT * TEXT;
    return write('note', text, frame.at(middle, base), { height: TEXT, angle: frame.angle, anchor: 'middle' });
  });
  const depth = rows.depth + remarks.length * height;
  const boxes = remarks.map((text) => {
    const half = textWidth(text, TEXT) / 2;
    return frame.box(middle - half, middle + half, rows.depth, depth);
  });
  return { ...rows, marks: [...rows.marks, ...marks], bounds: union([rows.bounds, ...boxes]), depth };
}
