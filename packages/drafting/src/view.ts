import type { Box, Point } from './mark.ts';

/** Maps a point of the panel frame (mm, x right, y up) to paper (mm, u right, v down). */
export type View = (x: number, y: number) => Point;

/**
 * The one map from the panel frame to paper. `scale` is paper length over real length; `origin` is where on paper the
 * panel's `0, 0` falls, the paper's own origin unless given. Only geometry goes through it: text, gaps, arrowheads and
 * rows are in paper mm already, so that they keep their size at any scale.
 * `view(0.1)(100, 50)` is `[10, -5]`.
 */
export function view(scale: number, origin: Point = [0, 0]): View {
  return (x, y) => [origin[0] + x * scale, origin[1] - y * scale];
}

/** The paper box of a rectangle of the panel frame, given by any two opposite corners. */
export function viewBox(at: View, a: readonly [x: number, y: number], b: readonly [x: number, y: number]): Box {
  const [au, av] = at(...a);
  const [bu, bv] = at(...b);
  return { u0: Math.min(au, bu), v0: Math.min(av, bv), u1: Math.max(au, bu), v1: Math.max(av, bv) };
}
