import type { Box } from '../mark.ts';
import type { Span } from './joint.ts';

/** Room round a drawing for register crosses and page arrows, mm. */
const ROOM = 11;

/** Room that is left round a drawing alone on its page at the least, mm: it has neither crosses nor arrows. */
export const LEAST = 1;

/** A stretch along the page and one down it, mm of the drawing. */
interface Spread {
  readonly u: Span;
  readonly v: Span;
}

/**
 * What of a drawing's plane its pages show: the drawing with room round it for what joins them, or with less where one
 * page then holds it whole.
 * @param window how much of the plane one page can show each way; infinite along a roll
 */
export function withHeadroom({ u0, v0, u1, v1 }: Box, window: { readonly u: number; readonly v: number }): Spread {
  const free = { u: (window.u - (u1 - u0)) / 2, v: (window.v - (v1 - v0)) / 2 };
  const isAlone = free.u >= LEAST && free.v >= LEAST;
  const u = isAlone ? Math.min(ROOM, free.u) : ROOM;
  const v = isAlone ? Math.min(ROOM, free.v) : ROOM;
  return { u: [u0 - u, u1 + u], v: [v0 - v, v1 + v] };
}
