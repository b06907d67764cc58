import { boxOf, pointsOf } from '../ink.ts';
import type { Grain } from '../layout/hatch.ts';
import { hatch } from '../layout/hatch.ts';
import type { Mark, Path, Point } from '../mark.ts';
import { stroke } from '../mark.ts';
import { polyline } from '../path.ts';

/** Narrower faces than this, mm on paper, have no room for lining and are shaded instead (ISO 128-3 fills thin sections). */
const LINED_FROM = 1.5;

/** Narrower cut faces than this, mm on paper, get a narrow outline, so that two wide lines do not close on each other. */
const WIDE_FROM = 2;

/** How a face that a section cuts is to be inked. */
export interface CutFace {
  /** `end` where the plane crosses the fibres, `long` where it runs along them. */
  readonly grain: Grain;
  /** Direction of the lining, degrees anticlockwise; as `hatch` has it unless given. */
  readonly angle?: number;
  /** Smaller side of the face, mm on paper; that of its box unless given. */
  readonly narrow?: number;
  /** What of the outline is inked, where a break line takes the place of the rest; all of it unless given. */
  readonly inked?: Path;
  readonly of?: string;
}

/**
 * A face that the section cuts: hides what lies behind, lined for its grain, with a wide outline. End grain gets section
 * lines, long grain sparse lines along the fibres; a face too narrow for lines is shaded, end grain darker.
 */
export function cutFace(
  outline: Path,
  { grain, angle, narrow = narrowOf(outline), inked = outline, of }: CutFace,
): Mark[] {
  const lined = narrow >= LINED_FROM;
  const fill = lined ? 'paper' : grain === 'end' ? 'wood-deep' : 'wood-shade';
  const lining = lined
    ? hatch(outline, { grain, ...(angle === undefined ? {} : { angle }), ...(of === undefined ? {} : { of }) })
    : [];
  return [stroke(fill, outline, of), ...lining, stroke(edgeOf(narrow), inked, of)];
}

/** Role of the outline of a cut face whose smaller side is `narrow` mm on paper. */
export function edgeOf(narrow: number): 'edge' | 'edge-light' {
  return narrow >= WIDE_FROM ? 'edge' : 'edge-light';
}

/** Whether a face whose smaller side is `narrow` mm on paper has room for lining. */
export function isLined(narrow: number): boolean {
  return narrow >= LINED_FROM;
}

/** A face seen behind the plane of the section: light, with a narrow outline. */
export function seenFace(outline: Path, of?: string): Mark[] {
  return [stroke('wood', outline, of), stroke('edge-light', outline, of)];
}

function narrowOf(outline: Path): number {
  const { u0, v0, u1, v1 } = boxOf(pointsOf(outline));
  return Math.min(u1 - u0, v1 - v0);
}

/** How far a break line stands out past what it breaks, mm, and half the height of its zigzag. */
const BREAK_PAST = 3;

/**
 * The line along which a view is broken off: thin, straight, with a zigzag in its middle (ISO 128-2, continuous narrow
 * line with zigzags). Runs a little past both ends given.
 */
export function breakLine(from: Point, to: Point, past: number = BREAK_PAST): Mark {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
  const [cu, cv] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const at = (along: number, across: number): Point => [
    from[0] + cu * along - cv * across,
    from[1] + cv * along + cu * across,
  ];
  const middle = length / 2;
  return stroke(
    'edge-light',
    polyline([
      at(-past, 0),
      at(middle - 1.2, 0),
      at(middle - 0.6, BREAK_PAST / 2),
      at(middle + 0.6, -BREAK_PAST / 2),
      at(middle + 1.2, 0),
      at(length + past, 0),
    ]),
  );
}
