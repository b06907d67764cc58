import { pointsOf } from '../../src/ink.ts';
import { crossesBox, overlaps } from '../../src/layout/clearance.ts';
import { textBox } from '../../src/lettering.ts';
import type { Mark, PathMark, Point, TextMark } from '../../src/mark.ts';

/** The texts among some marks. */
export const textsOf = (marks: readonly Mark[]): TextMark[] => marks.filter((mark) => mark.kind === 'text');

/** The straight pieces of every drawn line among some marks. */
export function segmentsOf(marks: readonly Mark[]): (readonly [Point, Point])[] {
  return marks
    .filter((mark): mark is PathMark => mark.kind === 'path' && mark.shade === undefined)
    .flatMap((mark) => {
      const points = pointsOf(mark.path);
      return points.slice(1).map((point, i) => [points[i] as Point, point] as const);
    });
}

/** What is wrong with the lettering of some marks: each text on a text, and each text on a line, named. */
export function faultsOf(marks: readonly Mark[]): string[] {
  const texts = textsOf(marks).map((mark) => ({ text: mark.text, box: textBox(mark) }));
  const lines = segmentsOf(marks);
  return texts.flatMap(({ text, box }, i) => [
    ...texts.slice(i + 1).flatMap((other) => (overlaps(box, other.box) ? [`${text} lies on ${other.text}`] : [])),
    ...lines.flatMap((line) => (crossesBox(line, box) ? [`${text} is crossed by ${line.join(' - ')}`] : [])),
  ]);
}
