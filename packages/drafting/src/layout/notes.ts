import { boxOf, union } from '../ink.ts';
import { textBox, textWidth } from '../lettering.ts';
import type { Box, Mark, Point } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { line } from '../path.ts';
import { BALLOON_RADIUS, balloon } from './balloon.ts';
import { grown } from './clearance.ts';
import type { Column, Demand, Spot } from './column.ts';
import { spots } from './column.ts';
import { lines } from './lines.ts';
import { ASCENT, DESCENT, LINE_STEP, TEXT, TEXT_CLEAR, TEXT_HEADING } from './style.ts';
import { arrowhead, dot } from './terminator.ts';

/** Something in a view to be named beside it: by a text, or by a letter in a balloon. */
export interface NoteTarget {
  /** The point on paper that the leader touches. */
  readonly at: Point;
  /** The text of a note, the letter or number of a balloon, or the letter of a detail, which stands large and by itself. */
  readonly text: string;
  readonly kind?: 'note' | 'balloon' | 'letter';
  /** A dot when the point lies in a face, an arrowhead when it lies on an edge (ISO 128-2); a dot unless given. */
  readonly end?: 'dot' | 'arrow';
  readonly of?: string;
}

/** What `placeNotes` needs to know. */
export interface NotesOptions {
  /** The view's box with all that stands round it, paper mm; notes stand beside it. */
  readonly around: Box;
  readonly targets: readonly NoteTarget[];
  /** Where notes may stand; left and right unless given. */
  readonly sides?: readonly ('left' | 'right')[];
  /** Boxes, such as those of labels, that neither notes nor leaders may touch. */
  readonly keepOut?: readonly Box[];
  /** Widest line of a note, mm; 45 unless given. */
  readonly width?: number;
  /** From the view to the notes, mm: room for leaders to spread; 12 unless given. */
  readonly aside?: number;
}

/** Notes with their leaders, and the box round the texts. */
export interface Notes {
  readonly marks: Mark[];
  /** The view's box grown by the notes. */
  readonly bounds: Box;
}

/** From the view to the notes beside it, mm. Common practice, no source. */
const ASIDE = 12;

/** Between two notes, mm: more than between the lines of one, so that they do not read on. Common practice, no source. */
const PARAGRAPH = 2.4;

/**
 * Notes and balloons in ordered columns beside a view, each with a straight leader. Every target goes to the nearer
 * allowed side, texts do not overlap, leaders cross neither each other nor a text, and the shortest order is taken.
 */
export function placeNotes(options: NotesOptions): Notes {
  const { around, targets, sides = ['left', 'right'], keepOut = [], width = 45, aside = ASIDE } = options;
  const middle = (around.u0 + around.u1) / 2;
  const sideOf = ({ at: [u] }: NoteTarget): 'left' | 'right' =>
    sides.length === 1 ? (sides[0] as 'left' | 'right') : u < middle ? 'left' : 'right';
  const marks: Mark[] = [];
  const boxes: Box[] = [around];
  for (const side of ['left', 'right'] as const) {
    const own = targets.filter((target) => sideOf(target) === side);
    const demands = own.map((target) => demandOf(target, width));
    const edge = side === 'left' ? around.u0 - aside : around.u1 + aside;
    const column: Column = { side, edge, v0: around.v0, v1: around.v1, keepOut };
    spots(demands, column).forEach((spot, i) => {
      marks.push(...noteInk(own[i] as NoteTarget, demands[i] as Demand, spot, side));
      boxes.push(spot.box);
    });
  }
  return { marks, bounds: union(boxes) };
}

function demandOf({ at, text, kind }: NoteTarget, width: number): Demand {
  if (kind === 'balloon')
    return { at, lines: [text], width: 2 * BALLOON_RADIUS, height: 2 * BALLOON_RADIUS, apart: TEXT_CLEAR };
  if (kind === 'letter') {
    return { at, lines: [text], width: textWidth(text, TEXT_HEADING), height: TEXT_HEADING, apart: TEXT_CLEAR };
  }
  const wrapped = lines(text, width);
  return {
    at,
    lines: wrapped,
    width: Math.max(...wrapped.map((one) => textWidth(one, TEXT))),
    height: (ASCENT + DESCENT + (wrapped.length - 1) * LINE_STEP) * TEXT,
    apart: PARAGRAPH,
  };
}

function noteInk(target: NoteTarget, demand: Demand, { box, port }: Spot, side: 'left' | 'right'): Mark[] {
  const { at, text, kind, end = 'dot', of } = target;
  const lead = [stroke('dimension', line(at, port), of), end === 'dot' ? dot(at) : arrowhead(at, port)];
  if (kind === 'balloon') return [...lead, ...balloon([(box.u0 + box.u1) / 2, (box.v0 + box.v1) / 2], text, of)];
  if (kind === 'letter') return [...lead, write('label', text, [box.u0, box.v1], { height: TEXT_HEADING })];
  const [u, anchor] = side === 'right' ? [box.u0, 'start' as const] : [box.u1, 'end' as const];
  const texts = demand.lines.map((one, i) =>
    write('note', one, [u, box.v0 + (ASCENT + i * LINE_STEP) * TEXT], {
      height: TEXT,
      anchor,
      ...(of === undefined ? {} : { of }),
    }),
  );
  return [...lead, ...texts];
}

/** The boxes of all texts among some marks, such as those of dimension rows, for `keepOut`. */
export function textBoxes(marks: readonly Mark[]): Box[] {
  return marks.flatMap((mark) => (mark.kind === 'text' ? [textBox(mark)] : []));
}

/** A leader by itself: a text at a place of the caller's choosing, read from `to`, pointing at `at`. */
export function leader(target: NoteTarget, to: Point): Notes {
  const side = to[0] >= target.at[0] ? 'right' : 'left';
  const demand = demandOf(target, Infinity);
  const u0 = side === 'right' ? to[0] + TEXT_CLEAR : to[0] - TEXT_CLEAR - demand.width;
  const v0 = to[1] - demand.height / 2;
  const box = { u0, v0, u1: u0 + demand.width, v1: v0 + demand.height };
  const marks = noteInk(target, demand, { box, port: to }, side);
  return { marks, bounds: union([grown(boxOf([target.at]), 0.5), box]) };
}
