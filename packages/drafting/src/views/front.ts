import type { Panel, Part, PartRole } from '@wattlewright/model';
import type { Box, Path, PathMark, Role } from '../mark.ts';
import { stroke } from '../mark.ts';
import { line, rectangle } from '../path.ts';
import { type View, viewBox } from '../view.ts';
import { partOf } from './partof.ts';
import { joined, type Stretch, slatDepths, slatEdges, slatSeen, staveSeen } from './passes.ts';

/** A rectangle of the panel frame, mm. */
export interface Face {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** What the drawers of front views share. */
export interface Front {
  readonly panel: Panel;
  readonly parts: readonly Part[];
  readonly at: View;
  /** Paper mm for a real mm. */
  readonly ratio: number;
}

/** A bay narrower than this on paper, mm, shows one tone of a dipping slat instead of two. */
const TWO_TONES_FROM = 4;

/** Edges of slats nearer to each other than this on paper, mm, would run together (ISO 128-2, from memory); tones show them. */
const LINES_FROM = 0.7;

/** Courses lower than this on paper, mm, are drawn by their edges alone: tones in so fine a stripe shimmer. */
const TONES_FROM = 1.2;

/** A rail or stile narrower than this on paper, mm, gets thin edges, so that wood shows between them. */
const WIDE_EDGES_FROM = 2;

/** Grey of the deepest part of a dip: lighter than the pen's own, since in some weaves whole bays lie so deep. */
const DEEP = 0.74;

/** The letter of a part of the panel, for `of`. */
export function letterOf(
  { panel, parts }: Pick<Front, 'panel' | 'parts'>,
  role: PartRole,
  length?: number,
): string | undefined {
  return partOf(parts, panel, role, length)?.letter;
}

/** The box on paper of a face. */
export function faceBox(at: View, { x0, y0, x1, y1 }: Face): Box {
  return viewBox(at, [x0, y0], [x1, y1]);
}

/** A face of wood with its outline. */
export function woodFace(
  at: View,
  face: Face,
  { of, edge = 'edge' }: { of: string | undefined; edge?: Role },
): PathMark[] {
  const path = rectangle(faceBox(at, face));
  return [stroke('wood', path, of), stroke(edge, path, of)];
}

/** Rails and stiles as seen from the front: the rails run through, the stiles stand between. */
export function frameFront(front: Front): PathMark[] {
  const { panel, at, ratio } = front;
  const { outside, clear, rail, stile } = panel;
  const [right, top] = [outside.width - stile.width, outside.height - rail.height];
  const edge = Math.min(rail.height, stile.width) * ratio < WIDE_EDGES_FROM ? 'edge-light' : 'edge';
  const rails = [0, top].flatMap((y0) =>
    woodFace(at, { x0: 0, y0, x1: outside.width, y1: y0 + rail.height }, { of: letterOf(front, 'rail'), edge }),
  );
  const stiles = [0, right].flatMap((x0) =>
    woodFace(at, { x0, y0: clear.bottom, x1: x0 + stile.width, y1: top }, { of: letterOf(front, 'stile'), edge }),
  );
  return [...rails, ...stiles];
}

/**
 * The weave as it looks from the front: staves, over them what is seen of each course, darker where it dips behind a
 * stave, and the edges of both. What lies behind is left out rather than painted over. Pieces of one part and tone are
 * one path, so that a panel of many courses stays light.
 */
export function weaveFront(front: Front): PathMark[] {
  return [...staveFaces(front), ...slatFaces(front), ...slatLines(front)];
}

function staveFaces(front: Front): PathMark[] {
  const { panel, at } = front;
  const { staves } = panel;
  const of = letterOf(front, 'stave');
  const seen = staves.lefts.map((x, j) => ({ x, runs: staveSeen(panel, j) }));
  const faces = seen.flatMap(({ x, runs }) =>
    boxes(
      at,
      runs.map(([y0, y1]) => ({ x0: x, y0, x1: x + staves.width, y1 })),
    ),
  );
  const edges = seen.flatMap(({ x, runs }, j) =>
    // The outer faces of the end staves lie on the stiles' edges, which are drawn already.
    [...(j > 0 ? [x] : []), ...(j < staves.count - 1 ? [x + staves.width] : [])].flatMap((edge) =>
      runs.flatMap(([y0, y1]) => line(at(edge, y0), at(edge, y1))),
    ),
  );
  return [...ink('wood', faces, of), ...ink('edge-light', edges, of)];
}

function slatFaces(front: Front): PathMark[] {
  const { panel, at, ratio } = front;
  const wide = panel.staves.bay * ratio >= TWO_TONES_FROM;
  const pitch = panel.courses.pitch * ratio;
  const plain = pitch < TONES_FROM && pitch >= LINES_FROM;
  const tones = plain ? [] : wide ? (['low', 'deep'] as const) : (['low'] as const);
  const faces = new Map<string | undefined, Record<'seen' | 'low' | 'deep', Path[]>>();
  panel.rows.forEach((row, r) => {
    const of = letterOf(front, 'slat', row.cutLength);
    const own = faces.get(of) ?? { seen: [], low: [], deep: [] };
    faces.set(of, own);
    const depths = slatDepths(panel, r);
    own.seen.push(bands(front, r, slatSeen(panel, row.sides)));
    for (const tone of tones) own[tone].push(bands(front, r, depths[tone]));
  });
  return [...faces].flatMap(([of, { seen, low, deep }]) => [
    ...ink('wood', seen.flat(), of),
    ...ink('wood-shade', low.flat(), of),
    ...ink('wood-deep', deep.flat(), of).map((mark) => ({ ...mark, shade: DEEP })),
  ]);

  function bands({ panel: { courses, weave } }: Front, row: number, runs: readonly Stretch[]): Path {
    const ys = courses.bottoms.flatMap((y, c): Stretch[] =>
      weave.rowOfCourse[c] === row ? [[y, y + courses.height]] : [],
    );
    return joined(ys).flatMap(([y0, y1]) =>
      boxes(
        at,
        runs.map(([x0, x1]) => ({ x0, y0, x1, y1 })),
      ),
    );
  }
}

function slatLines(front: Front): PathMark[] {
  const { panel, at, ratio } = front;
  if (panel.courses.pitch * ratio < LINES_FROM) return [];
  const lines = new Map<string | undefined, Path[]>();
  for (const { y, course, seen } of slatEdges(panel)) {
    const row = panel.rows[panel.weave.rowOfCourse[course] as number];
    const of = letterOf(front, 'slat', row?.cutLength);
    const own = lines.get(of) ?? [];
    lines.set(of, own);
    own.push(seen.flatMap(([x0, x1]) => line(at(x0, y), at(x1, y))));
  }
  return [...lines].flatMap(([of, paths]) => ink('edge-light', paths.flat(), of));
}

function boxes(at: View, faces: readonly Face[]): Path {
  return faces.flatMap((face) => rectangle(faceBox(at, face)));
}

function ink(role: Role, path: Path, of: string | undefined): PathMark[] {
  return path.length === 0 ? [] : [stroke(role, path, of)];
}
