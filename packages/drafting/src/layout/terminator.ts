import type { PathMark, Point } from '../mark.ts';
import { stroke } from '../mark.ts';
import { circle, polygon } from '../path.ts';

/** Half the run of an oblique stroke along each axis, mm: about 3 mm long at 45°, the height of small lettering. */
export const STROKE_HALF = 1.06;

/** Length of an arrowhead, mm, and its width: about 1/8 in long, three times its width (ASME Y14.2). */
const ARROW_LENGTH = 3.175;
const ARROW_WIDTH = ARROW_LENGTH / 3;

/** A 45° stroke through a point, rising to the right: how every dimension line ends, one kind in a drawing (ISO 129-1). */
export function obliqueStroke([u, v]: Point): PathMark {
  return stroke('dimension', [
    ['M', u - STROKE_HALF, v + STROKE_HALF],
    ['L', u + STROKE_HALF, v - STROKE_HALF],
  ]);
}

/** A solid arrowhead with its tip at `tip`, pointing away from `from`. */
export function arrowhead(tip: Point, from: Point): PathMark {
  const length = Math.hypot(tip[0] - from[0], tip[1] - from[1]) || 1;
  const [cu, cv] = [(tip[0] - from[0]) / length, (tip[1] - from[1]) / length];
  const base = (across: number): Point => [
    tip[0] - cu * ARROW_LENGTH - cv * across,
    tip[1] - cv * ARROW_LENGTH + cu * across,
  ];
  return { ...stroke('dimension', polygon([tip, base(ARROW_WIDTH / 2), base(-ARROW_WIDTH / 2)])), shade: 0 };
}

/** Small open circle: the origin of running dimensions (ISO 129-1). */
export function originCircle(at: Point): PathMark {
  return stroke('dimension', circle(at, 1));
}

/** A solid dot in a face, the end of a leader that points into it (ISO 128-2). */
export function dot(at: Point): PathMark {
  return { ...stroke('dimension', circle(at, 0.4)), shade: 0 };
}
