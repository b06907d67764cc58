import { union } from '../ink.ts';
import { textWidth } from '../lettering.ts';
import type { Box, Chain, Mark } from '../mark.ts';
import { write } from '../mark.ts';
import { lines } from './lines.ts';
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
  /** What its caller is to print about it, where the caller asked for that. */
  readonly aside?: string;
}

/** Rows and what must still be said about them, which is printed outside all rows of the side, clear of their lines. */
export interface Unsaid extends Rows {
  readonly remarks: readonly string[];
}

/** The rows with their remarks printed outside them, each wrapped to the length of the side. */
export function say({ remarks, ...rows }: Unsaid, frame: SideFrame): Rows {
  const { marks, bounds, depth } = remarkInk(remarks, rows.depth, { frame, room: frame.ends });
  return { ...rows, marks: [...rows.marks, ...marks], bounds: union([rows.bounds, ...bounds]), depth };
}

/** Narrowest room between lines in which a remark is set, mm: a few words to the line. */
const NARROWEST = 30;

/**
 * The rows with their remarks printed right outside them, between the lines `through` that rows further out will send past;
 * unsaid still where those leave no room.
 */
export function sayBetween(unsaid: Unsaid, frame: SideFrame, through: readonly number[]): Unsaid {
  const walls = [...frame.ends, ...through].toSorted((a, b) => a - b);
  const rooms = walls.slice(1).map((to, i): readonly [number, number] => [walls[i] as number, to]);
  const [room] = rooms.toSorted((a, b) => b[1] - b[0] - (a[1] - a[0]) || a[0] - b[0]);
  if (unsaid.remarks.length === 0 || !room || room[1] - room[0] < NARROWEST) return unsaid;
  const { marks, bounds, depth } = remarkInk(unsaid.remarks, unsaid.depth, { frame, room });
  return {
    ...unsaid,
    marks: [...unsaid.marks, ...marks],
    bounds: union([unsaid.bounds, ...bounds]),
    depth,
    remarks: [],
  };
}

/** Remarks in the middle of a room along the side, from a depth outwards; read in their order from above or from the left. */
function remarkInk(
  remarks: readonly string[],
  from: number,
  { frame, room }: { frame: SideFrame; room: readonly [number, number] },
): { marks: Mark[]; bounds: Box[]; depth: number } {
  const middle = (room[0] + room[1]) / 2;
  const wide = Math.max(NARROWEST, room[1] - room[0]) - 2 * TEXT_CLEAR;
  const all = remarks.flatMap((text) => lines(text, wide));
  const height = TEXT_CLEAR + (ASCENT + DESCENT) * TEXT;
  const depth = from + all.length * height;
  const marks = all.map((text, i) => {
    // Where up is outwards the first line stands outermost.
    const d = from + TEXT_CLEAR + (frame.up > 0 ? all.length - 1 - i : i) * height;
    const base = frame.up > 0 ? d + DESCENT * TEXT : d + ASCENT * TEXT;
    return write('note', text, frame.at(middle, base), { height: TEXT, angle: frame.angle, anchor: 'middle' });
  });
  const bounds = all.map((text) => {
    const half = textWidth(text, TEXT) / 2;
    return frame.box(middle - half, middle + half, from, depth);
  });
  return { marks, bounds, depth };
}
