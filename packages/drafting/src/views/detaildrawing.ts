import { formatLength, type Marks, roundToMark, sizeMarks } from '@wattlewright/model';
import { boxOf, pointsOf, union } from '../ink.ts';
import { dimensionRows } from '../layout/dimension.ts';
import type { NoteTarget } from '../layout/notes.ts';
import { placeNotes } from '../layout/notes.ts';
import type { Size } from '../layout/rows.ts';
import type { Side } from '../layout/side.ts';
import { TEXT } from '../layout/style.ts';
import { textBox } from '../lettering.ts';
import { type Box, type Drawing, type Mark, type Point, write } from '../mark.ts';
import type { Scale } from '../scale.ts';
import { markUnder, sideText } from './cutsize.ts';

/** What `stated` needs beside the two ends. */
export interface StatedOptions {
  readonly display: Marks;
  /** From a real place along the side, mm, to paper. */
  readonly along: (place: number) => number;
  /** The mark to print to, mm; unless given the coarsest from the job's down that the size lies on, else that of `sizeMarks`. */
  readonly mark?: number;
  readonly total?: boolean;
  readonly level?: number;
  /** Where the view between the ends is broken, paper mm along the side. */
  readonly broken?: number;
  readonly of?: string | undefined;
}

/**
 * The size between two places along a side, printed as what it measures. Empty when it would print as nothing, so that
 * the caller can spread it into a list.
 */
export function stated(from: number, to: number, options: StatedOptions): Size[] {
  const { display, along, total, level, broken, of } = options;
  const size = Math.abs(to - from);
  const mark = options.mark ?? markUnder(size, display) ?? sizeMarks(size, display).mark;
  const value = roundToMark(size, mark);
  if (value <= 0) return [];
  return [
    {
      from: along(from),
      to: along(to),
      text: formatLength(value, { unit: display.unit, mark }, { fractions: 'stacked' }),
      value,
      ...(total === undefined ? {} : { total }),
      ...(level === undefined ? {} : { level }),
      ...(broken === undefined ? {} : { broken }),
      ...(of === undefined ? {} : { of }),
    },
  ];
}

/** A length in a sentence, with its unit: at the coarsest mark from the job's down that it lies on, else at that of `sizeMarks`. */
export function said(length: number, display: Marks): string {
  const mark = markUnder(length, display) ?? sizeMarks(length, display).mark;
  return formatLength(length, { unit: display.unit, mark }, { named: true, fractions: 'stacked' });
}

/** A clearance in a sentence: the same, but at the finest mark where it lies on none. */
export function saidFine(length: number, display: Marks): string {
  return sideText(length, display, { named: true });
}

/** From the frame to the words that say which side is which, mm. */
const FACING_APART = 2;

/**
 * The words beside a view from front to back that say which side is which: `front` left of the first point, `back` right of
 * the second, both standing in the middle of the height given.
 */
export function facing([u0, v]: Point, [u1]: Point): Mark[] {
  const base = v + TEXT * 0.36;
  return [
    write('faint', 'front', [u0 - FACING_APART, base], { height: TEXT, anchor: 'end' }),
    write('faint', 'back', [u1 + FACING_APART, base], { height: TEXT }),
  ];
}

/**
 * The words over and under the right end of a plan that say which side is which, clear of leaders that go to the right: the
 * back is up on paper. They end at the right edge of `box`.
 */
export function planFacingOver({ u1, v0, v1 }: Box): Mark[] {
  return [
    write('faint', 'back', [u1 - 1.5, v0 - 1.5], { height: TEXT, anchor: 'end' }),
    write('faint', 'front', [u1 - 1.5, v1 + 1.5 + TEXT], { height: TEXT, anchor: 'end' }),
  ];
}

/**
 * The words beside a plan that say which side is which: the back is up on paper. `way` is the side of the plan that they
 * stand on; they stand clear of `ink` at their height, such as a slat that slants out of the plan.
 */
export function planFacing([u, v]: Point, way: 1 | -1 = 1, ink: readonly Mark[] = []): Mark[] {
  const anchor = way > 0 ? 'start' : 'end';
  const room = 1.2 + TEXT * 1.3;
  const ends = ink.flatMap((mark) => {
    const box = boxOfInk([mark]);
    return box.v1 > v - room && box.v0 < v + room ? [way > 0 ? box.u1 : box.u0] : [];
  });
  const from = way * Math.max(way * u, ...ends.map((end) => way * end));
  return [
    write('faint', 'back', [from + way * 3, v - 1.2], { height: TEXT, anchor }),
    write('faint', 'front', [from + way * 3, v + 1.2 + TEXT], { height: TEXT, anchor }),
  ];
}

/** A view's ink with what is to be stated round it. */
export interface ToDimension {
  readonly name: string;
  readonly title: string;
  readonly alt: string;
  readonly scale: Scale;
  /** What is drawn, without sizes and notes. */
  readonly ink: readonly Mark[];
  /** Outline that the dimension rows stand clear of; the box of all ink unless given. */
  readonly outline?: Box;
  readonly sizes: Partial<Readonly<Record<Side, readonly Size[]>>>;
  readonly notes?: readonly NoteTarget[];
  /** Side of the notes; right unless given. */
  readonly noteSide?: 'left' | 'right';
  /** Widest line of a note, mm. */
  readonly noteWidth?: number;
}

/** The drawing of a view: its ink, dimension rows on each side and notes outside them. */
export function dimensioned(view: ToDimension): Drawing {
  const { name, title, alt, scale, ink, sizes, notes = [], noteSide = 'right', noteWidth } = view;
  const drawn = boxOfInk(ink);
  const outline = view.outline ?? drawn;
  const rows = (['above', 'below', 'left', 'right'] as const).map((side) =>
    dimensionRows({ side, outline, sizes: sizes[side] ?? [] }),
  );
  const rowMarks = rows.flatMap(({ marks }) => marks);
  const around = union([drawn, outline, ...rows.map(({ bounds }) => bounds), boxOfInk(rowMarks)]);
  const placed = placeNotes({
    around,
    targets: notes,
    sides: [noteSide],
    keepOut: [...ink, ...rowMarks].flatMap((mark) => (mark.kind === 'text' ? [textBox(mark)] : [])),
    ...(noteWidth === undefined ? {} : { width: noteWidth }),
  });
  const marks = [...ink, ...rowMarks, ...placed.marks];
  return {
    name,
    title,
    scale: scale.ratio,
    scaleText: scale.text,
    marks,
    bounds: union([placed.bounds, boxOfInk(marks)]),
    alt,
    chains: rows.flatMap(({ chains }) => chains),
  };
}

/** The smallest box round the lines and texts of some ink, mm. */
export function boxOfInk(marks: readonly Mark[]): Box {
  const boxes = marks.map((mark) => (mark.kind === 'text' ? textBox(mark) : boxOf(pointsOf(mark.path))));
  return boxes.length === 0 ? boxOf([]) : union(boxes);
}
