import { pointsOf } from '../ink.ts';
import { detailCircle } from '../layout/balloon.ts';
import { crossesBox, grown, overlaps, type Segment } from '../layout/clearance.ts';
import { textBox } from '../lettering.ts';
import type { Mark, Point } from '../mark.ts';

/** Directions in which the letter of a circle may stand, in the order tried, degrees. */
const DIRECTIONS = [40, 20, 60, 0, -20, -40, 90, 140, 160, 120, 180, -140, -90];

/** Between the letter and other ink, mm. */
const LETTER_CLEAR = 0.5;

/** The circle of a detail, with its letter in the first direction where no other ink crosses it; the first if none is free. */
export function freeCircle(
  ink: readonly Mark[],
  circle: { readonly at: Point; readonly radius: number; readonly letter: string },
): Mark[] {
  const lines = ink.flatMap(segmentsOf);
  const texts = ink.flatMap((mark) => (mark.kind === 'text' ? [textBox(mark)] : []));
  const tries = DIRECTIONS.map((towards) => detailCircle({ ...circle, towards }));
  const free = tries.find((marks) =>
    marks.every((mark) => {
      if (mark.kind === 'path') return true;
      const box = grown(textBox(mark), LETTER_CLEAR);
      return !lines.some((line) => crossesBox(line, box)) && !texts.some((text) => overlaps(text, box));
    }),
  );
  return free ?? (tries[0] as Mark[]);
}

/** The straight lines between the points of a path, curves by their control points, and back to its start. */
function segmentsOf(mark: Mark): Segment[] {
  if (mark.kind === 'text') return [];
  const points = pointsOf(mark.path);
  return points.map((p, i): Segment => [p, points[(i + 1) % points.length] as Point]);
}
