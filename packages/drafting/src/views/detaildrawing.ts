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
import { type Alternatives, firstFree } from './freeink.ts';

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
 * the second, each with its middle at that height.
 */
export function facing([u0, front]: Point, [u1, back]: Point): Mark[] {
  const sunk = TEXT * 0.36;
  return [
    write('faint', 'front', [u0 - FACING_APART, front + sunk], { height: TEXT, anchor: 'end' }),
    write('faint', 'back', [u1 + FACING_APART, back + sunk], { height: TEXT }),
  ];
}

/**
 * The words over and under a plan that say which side is which, each with the places where it may stand: round the middles
 * given, the best first. The back is up on paper.
 */
export function planFacingOver({ v0, v1 }: Box, middles: readonly number[]): Alternatives[] {
  const words = (text: string, v: number): Alternatives =>
    middles.map((u) => [write('faint', text, [u, v], { height: TEXT, anchor: 'middle' })]);
  return [words('back', v0 - 1.5), words('front', v1 + 1.5 + TEXT)];
}

/**
 * The same beside an upright view between two edges, u on paper, at the first of the heights where both stand free; else
 * each at a height of its own.
 */
export function facingFree([u0, u1]: readonly [number, number], heights: readonly number[]): Alternatives[] {
  const level = heights.map((v) => facing([u0, v], [u1, v]));
  return [[...level, ...heights.flatMap((front) => heights.map((back) => facing([u0, front], [u1, back])))]];
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
  /** Words that are set last, each where sizes and leaders leave room. */
  readonly words?: readonly Alternatives[];
}

/** The drawing of a view: its ink, dimension rows on each side and notes outside them. */
export function dimensioned(view: ToDimension): Drawing {
  const { name, title, alt, scale, ink, sizes, notes = [], noteSide = 'right', noteWidth, words = [] } = view;
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
  const stated = [...ink, ...rowMarks, ...placed.marks];
  const marks = [...stated, ...words.flatMap((alternatives) => firstFree(alternatives, stated))];
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
