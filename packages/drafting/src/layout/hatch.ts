import { boxOf } from '../ink.ts';
import type { Path, PathMark, Point, Step } from '../mark.ts';
import { stroke } from '../mark.ts';
import { arc } from '../path.ts';
import type { Segment } from './clearance.ts';
import { clipSegment, rings } from './clip.ts';

/** How a cut face is lined: across the fibres, or along them. */
export type Grain = 'end' | 'long';

/** Options of `hatch`. */
export interface HatchOptions {
  readonly grain: Grain;
  /**
   * End grain: direction of the lines, 45 unless given; give -45 to a neighbour so that the two can be told apart.
   * Long grain: direction of the grain, 0 unless given. Degrees, anticlockwise.
   */
  readonly angle?: number;
  /** Shifts the lines by this share of their spacing, 0 to 1, for neighbours lined the same way. */
  readonly phase?: number;
  readonly of?: string;
}

/** Smallest gap between parallel lines, mm (ISO 128-2, from memory). */
const SMALLEST_GAP = 0.7;

/** A face at least this wide, mm, has room for growth rings beside its section lines. */
const RINGS_FROM = 6;

/** Uneven gaps of long grain, as shares of the spacing, so that it never looks like section lining. */
const UNEVEN = [1, 0.55, 1.35, 0.8, 1.3];

/**
 * Section lining of a closed outline, clipped to it; rings within it are holes. End grain is even lines at 45° with arcs of
 * growth rings across them where the face has room; long grain is sparse uneven lines along the grain. Both read in
 * black and white, and the same outline always gives the same lines.
 */
export function hatch(outline: Path, { grain, angle, phase = 0, of }: HatchOptions): PathMark[] {
  const edges = rings(outline);
  if (edges.length === 0) return [];
  const box = boxOf(edges.flat());
  const narrow = Math.min(box.u1 - box.u0, box.v1 - box.v0);
  if (grain === 'long') {
    const spacing = Math.min(Math.max(narrow / 3, 1.1), 3);
    return mark('hatch-long', parallel(edges, angle ?? 0, { spacing, phase, gaps: UNEVEN }), of);
  }
  const spacing = Math.min(Math.max(narrow / 5, SMALLEST_GAP + 0.2), 2);
  const lines = parallel(edges, angle ?? 45, { spacing, phase, gaps: [1] });
  return mark('hatch', narrow < RINGS_FROM ? lines : [...lines, ...growthRings(edges, angle ?? 45)], of);
}

function mark(role: 'hatch' | 'hatch-long', lines: readonly Segment[], of?: string): PathMark[] {
  const path = lines.flatMap(([a, b]): Step[] => [
    ['M', ...a],
    ['L', ...b],
  ]);
  return path.length === 0 ? [] : [stroke(role, path, of)];
}

/** Lines across the whole outline at an angle, set out from the middle of its box, clipped. */
function parallel(
  edges: readonly (readonly Point[])[],
  angle: number,
  { spacing, phase, gaps }: { spacing: number; phase: number; gaps: readonly number[] },
): Segment[] {
  const box = boxOf(edges.flat());
  const middle: Point = [(box.u0 + box.u1) / 2, (box.v0 + box.v1) / 2];
  const reach = Math.hypot(box.u1 - box.u0, box.v1 - box.v0) / 2 + 1;
  const turn = (angle * Math.PI) / 180;
  const [cu, cv] = [Math.cos(turn), -Math.sin(turn)];
  const found: Segment[] = [];
  let across = -reach + phase * spacing - (reach % spacing);
  for (let i = 0; across <= reach; i++) {
    const p: Point = [middle[0] - cv * across, middle[1] + cu * across];
    const line: Segment = [
      [p[0] - cu * reach, p[1] - cv * reach],
      [p[0] + cu * reach, p[1] + cv * reach],
    ];
    found.push(...clipSegment(line, edges));
    across += spacing * (gaps[i % gaps.length] as number);
  }
  return found;
}

/** Arcs of growth rings about a pith that lies off the face's lower side, clipped. */
function growthRings(edges: readonly (readonly Point[])[], angle: number): Segment[] {
  const { u0, v0, u1, v1 } = boxOf(edges.flat());
  const [width, height] = [u1 - u0, v1 - v0];
  const pith: Point = [angle < 0 ? u0 + width * 0.3 : u1 - width * 0.3, v1 + Math.max(width, height) * 0.35];
  const far = Math.hypot(width, height) * 1.5 + Math.max(width, height);
  const spacing = Math.min(Math.max(Math.min(width, height) / 3.5, 2.5), 6);
  const found: Segment[] = [];
  for (let radius = spacing; radius < far; radius += spacing) {
    const points = (rings(arc(pith, radius, 0, 180))[0] ?? []) as Point[];
    points.slice(1).forEach((p, i) => {
      found.push(...clipSegment([points[i] as Point, p], edges));
    });
  }
  return found;
}
