import type { Part } from '@wattlewright/model';
import { ASCENT, DESCENT, LINE_STEP, TEXT } from '../layout/style.ts';
import { wrapText } from '../lettering.ts';
import type { Mark, Point } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { polygon } from '../path.ts';

/** What a full-size drawing is made with. */
export interface StickOptions {
  /** Parts of the job, for their letters. */
  readonly parts?: readonly Part[];
  /** How the panels that it serves are called together; the panel's own name unless given. */
  readonly named?: string;
}

/** Width of a printed stick across, mm: three to a sheet of paper, stiff enough to handle. Common practice, no source. */
export const STICK_WIDTH = 70;

/** Length of a tick at each edge of a stick, mm: long enough to set a square to. Common practice, no source. */
export const STICK_TICK = 12;

/** From a tick to the nearest ink of the text that stands beside it, mm. */
const BESIDE = 0.4;

/** Between two texts that stand beside their ticks, mm. */
const APART = 0.4;

/** A distance written along its own tick: on the side before it (-1) or after it (1). */
export interface TickText {
  /** Position of the tick, mm from the datum. */
  readonly at: number;
  readonly way: -1 | 1;
  readonly text: string;
  readonly of?: string;
}

/** Along the stick, the room that a text beside its tick takes, mm. */
function reach({ at, way }: TickText, height: number): readonly [number, number] {
  const far = at + way * (BESIDE + (ASCENT + DESCENT) * height);
  return way > 0 ? [at, far] : [far, at];
}

/** Whether no text stands on another, nor on another's tick. */
export function ticksFit(texts: readonly TickText[], height: number): boolean {
  const spans = texts.map((text) => reach(text, height)).toSorted((a, b) => a[0] - b[0]);
  return spans.every(([from], i) => i === 0 || from >= (spans[i - 1] as readonly [number, number])[1] + APART - 1e-9);
}

/** The baseline of a text that reads along its tick, in the direction that `at` counts. */
export function tickBase({ at, way }: TickText, height: number): number {
  return way < 0 ? at - BESIDE - DESCENT * height : at + BESIDE + ASCENT * height;
}

/** Lines of running text from `at` downwards, wrapped to `width` mm. */
export function paragraph(
  text: string,
  [u, v]: Point,
  width: number,
  { height = TEXT, role = 'note' }: { readonly height?: number; readonly role?: 'note' | 'title' } = {},
): { readonly marks: Mark[]; readonly height: number } {
  const lines = wrapText(text, width, height, role === 'title' ? 'semibold' : 'regular');
  return {
    marks: lines.map((line, i) => write(role, line, [u, v + (ASCENT + i * LINE_STEP) * height], { height })),
    height: lines.length * LINE_STEP * height,
  };
}

/** A solid pointer with its tip at `tip`, 4 mm long. */
export function pointer([u, v]: Point, way: 'left' | 'right' | 'up' | 'down'): Mark {
  const [du, dv] = { left: [1, 0], right: [-1, 0], up: [0, 1], down: [0, -1] }[way] as [number, number];
  const base = (side: number): Point => [u + 4 * du + 1.6 * side * dv, v + 4 * dv + 1.6 * side * du];
  return { ...stroke('dimension', polygon([[u, v], base(1), base(-1)])), shade: 0 };
}
