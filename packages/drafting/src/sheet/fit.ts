import { union } from '../ink.ts';
import { TEXT_LARGE } from '../layout/style.ts';
import { textBox, textWidth, wrapText } from '../lettering.ts';
import type { Box, Drawing, Mark } from '../mark.ts';
import { write } from '../mark.ts';
import type { Extent, Scale, Unit } from '../scale.ts';
import { scalesOf } from '../scale.ts';
import { extentOf } from './frame.ts';

/**
 * A view that can be drawn at any scale. Text and dimension rows keep their size on paper, so only the maker knows how
 * large the drawing becomes: the scale is chosen by trying.
 */
export interface ViewMaker {
  readonly name: string;
  /** Draws it at a scale. */
  readonly make: (scale: Scale) => Drawing;
  /** Size of what is drawn, real mm, without dimensions: rules scales out without drawing them. */
  readonly real: Extent;
  /** Largest scale wanted; full size unless given. */
  readonly atMost?: number;
  /** Smallest scale at which the view can still be read; any standard scale unless given. */
  readonly atLeast?: number;
  /** Share of a sheet's room that the view may take, 0 to 1 each way; all of it unless given. */
  readonly share?: Partial<Extent>;
}

/** What goes on a sheet: a view still to be scaled, or a drawing as it is, such as a table. */
export type Item = ViewMaker | Drawing;

/** Whether the item still wants a scale. */
export function isMaker(item: Item): item is ViewMaker {
  return 'make' in item;
}

/** From a drawing to its title, mm. */
const TITLE_GAP = 4;

/** From line to line of a title, mm. */
const TITLE_LINE = 5.5;

/** Width within which a title may stand wider than its drawing, mm: of a narrow view it goes on in lines, so that others stand beside it. */
const TITLE_WIDTH = 70;

/** A drawing with its title: a view's under it with the scale, a table's or a chart's over it; a long one in lines. */
export function titled(drawing: Drawing): Drawing {
  const { title, scaleText, bounds, scale } = drawing;
  if (title === '') return drawing;
  const height = TEXT_LARGE;
  const lines = wrapText(title, Math.max(TITLE_WIDTH, bounds.u1 - bounds.u0), height, 'semibold');
  const widths = lines.map((words) => textWidth(words, height, 'semibold'));
  const last = widths.at(-1) as number;
  const tail = scaleText === '' ? 0 : 4 + textWidth(scaleText, height);
  const under = scale > 0;
  const start = (width: number): number => (under ? (bounds.u0 + bounds.u1 - width) / 2 : bounds.u0);
  const depth = (lines.length - 1) * TITLE_LINE;
  const v0 = under ? bounds.v1 + TITLE_GAP + height : bounds.v0 - TITLE_GAP - depth;
  const marks: Mark[] = lines.map((words, i) => {
    const width = (widths[i] as number) + (i === lines.length - 1 ? tail : 0);
    return write('title', words, [start(width), v0 + i * TITLE_LINE], { height });
  });
  if (tail > 0) marks.push(write('note', scaleText, [start(last + tail) + last + 4, v0 + depth], { height }));
  const boxes = marks.flatMap((mark) => (mark.kind === 'text' ? [textBox(mark)] : []));
  return { ...drawing, marks: [...drawing.marks, ...marks], bounds: union([bounds, ...boxes]) };
}

/**
 * The item as a drawing with its title that fits one of the rooms: a view at the largest standard scale of the unit that
 * does. Undefined when it fits none. No text is made smaller.
 */
export function fit(item: Item, rooms: readonly Box[], unit: Unit): Drawing | undefined {
  const extents = rooms.map(extentOf);
  if (!isMaker(item)) {
    const drawing = titled(item);
    return extents.some((room) => fitsIn(extentOf(drawing.bounds), room)) ? drawing : undefined;
  }
  const { real, make, atMost = 1, atLeast = 0, share = {} } = item;
  const shares = extents.map(({ width, height }) => ({
    width: width * (share.width ?? 1),
    height: height * (share.height ?? 1),
  }));
  for (const scale of scalesOf(unit)) {
    if (scale.ratio > atMost + 1e-9 || scale.ratio < atLeast - 1e-9) continue;
    const bare = { width: real.width * scale.ratio, height: real.height * scale.ratio };
    if (!shares.some((room) => fitsIn(bare, room))) continue;
    const drawing = titled(make(scale));
    if (shares.some((room) => fitsIn(extentOf(drawing.bounds), room))) return drawing;
  }
  return undefined;
}

/** The item as small as it may be drawn, with its title. */
export function smallest(item: Item, unit: Unit): Drawing {
  if (!isMaker(item)) return titled(item);
  const { atMost = 1, atLeast = 0 } = item;
  const may = scalesOf(unit).filter(({ ratio }) => ratio <= atMost + 1e-9 && ratio >= atLeast - 1e-9);
  return titled(item.make((may.at(-1) ?? scalesOf(unit).at(-1)) as Scale));
}

function fitsIn(what: Extent, room: Extent): boolean {
  return what.width <= room.width + 1e-6 && what.height <= room.height + 1e-6;
}
