import { detailCircle } from '../layout/balloon.ts';
import type { Mark, Point } from '../mark.ts';
import { firstFree } from './freeink.ts';

/** Directions in which the letter of a circle may stand, in the order tried, degrees. */
const DIRECTIONS = [40, 20, 60, 0, -20, -40, 90, 140, 160, 120, 180, -140, -90];

/** The circle of a detail, with its letter in the first direction where no other ink crosses it; the first if none is free. */
export function freeCircle(
  ink: readonly Mark[],
  circle: { readonly at: Point; readonly radius: number; readonly letter: string },
): Mark[] {
  const tries = DIRECTIONS.map((towards) => detailCircle({ ...circle, towards }));
  return [...firstFree(tries, ink)];
}
