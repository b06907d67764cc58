import { type Mark, type Point, stroke, write } from '../mark.ts';
import { line } from '../path.ts';

/** Height of small lettering, mm (ISO 3098-1). */
const text = 2.5;

/** Real length of a check bar, mm: 4 in, with 100 mm marked on it. */
export const CHECK_LENGTH: number = 4 * 25.4;
/** Room that a check bar takes across its length, mm, numbers included. */
export const CHECK_ROOM = 13;

/** How a check bar lies. */
export interface CheckBar {
  /** Its zero. */
  readonly at: Point;
  /** Along `u`, or up `v`. */
  readonly along: 'u' | 'v';
  /** What the printer needs to be told, as a factor: paper mm drawn for a real millimetre. */
  readonly factor: number;
}

/**
 * A bar of 4 in with 100 mm marked on it, in both units, to be measured once it is printed. Centimetres are marked on
 * one side, half inches on the other; drawn with the same correction as the sheet.
 */
export function checkBar({ at: [u, v], along, factor }: CheckBar): Mark[] {
  const on = (real: number, off: number): Point =>
    along === 'u' ? [u + real * factor, v + off] : [u + off, v - real * factor];
  const angle = along === 'u' ? 0 : 90;
  const tick = (real: number, to: number): Mark => stroke('tick', line(on(real, 0), on(real, to)));
  const marks: Mark[] = [stroke('tick', line(on(0, 0), on(CHECK_LENGTH, 0)))];
  for (let cm = 0; cm <= 10; cm++) marks.push(tick(10 * cm, cm % 10 === 0 ? -3 : -1.5));
  for (let half = 0; half <= 8; half++) marks.push(tick(12.7 * half, half % 8 === 0 ? 3 : half % 2 === 0 ? 2 : 1.2));
  const say = (words: string, real: number, off: number): Mark =>
    write('label', words, on(real, off), { height: text, angle, anchor: 'middle' });
  return [...marks, say('0', 0, -4), say('100 mm', 94, -4), say('4 in', 98, 6.2), say('0', 0, 6.2)];
}
