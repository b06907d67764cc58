import { pointsOf } from '../ink.ts';
import { crossesBox, grown, overlaps, type Segment } from '../layout/clearance.ts';
import { textBox } from '../lettering.ts';
import type { Mark } from '../mark.ts';

/** Between a word or letter set into free paper and other ink, mm. */
const CLEAR = 0.5;

/** Ways in which some words may stand, the best first. */
export type Alternatives = readonly (readonly Mark[])[];

/** The first of the alternatives whose texts no other ink crosses; the first of all where none is free. */
export function firstFree(alternatives: Alternatives, ink: readonly Mark[]): readonly Mark[] {
  return freeOf(alternatives, ink) ?? alternatives[0] ?? [];
}

/** The first of the alternatives whose texts no other ink crosses; undefined where none is free. */
export function freeOf(alternatives: Alternatives, ink: readonly Mark[]): readonly Mark[] | undefined {
  const lines = ink.flatMap(segmentsOf);
  const texts = ink.flatMap((mark) => (mark.kind === 'text' ? [textBox(mark)] : []));
  return alternatives.find((marks) =>
    marks.every((mark) => {
      if (mark.kind === 'path') return true;
      const box = grown(textBox(mark), CLEAR);
      return !lines.some((line) => crossesBox(line, box)) && !texts.some((text) => overlaps(text, box));
    }),
  );
}

/** The straight lines between the points of a path, curves by their control points, and back to its start. */
function segmentsOf(mark: Mark): Segment[] {
  if (mark.kind === 'text') return [];
  const points = pointsOf(mark.path);
  return points.map((p, i): Segment => [p, points[(i + 1) % points.length] as Segment[0]]);
}
