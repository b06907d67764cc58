import { boxOf } from '../ink.ts';
import { contains, crossesBox, grown, overlaps } from '../layout/clearance.ts';
import { TEXT } from '../layout/style.ts';
import { textBox } from '../lettering.ts';
import type { Box, Point, TextMark } from '../mark.ts';
import { write } from '../mark.ts';
import type { Level, PlotPoint, Series } from './plotdata.ts';

/** A plot's rectangle and its map from values to paper, mm. */
export interface Field {
  readonly box: Box;
  readonly u: (x: number) => number;
  readonly v: (y: number) => number;
  /** Lines of the grid, which a name keeps off where there is room. */
  readonly grid?: readonly (readonly Point[])[];
}

/** A curve as it runs on paper. */
export interface Curve {
  readonly one: Series;
  readonly run: readonly Point[];
}

/** Radius of the ring on a point, mm. */
export const POINT_RADIUS = 1.3;

/** What a plot has to name. */
export interface Named {
  readonly curves: readonly Curve[];
  readonly levels: readonly Level[];
  readonly points: readonly PlotPoint[];
}

/** Room round a name that stands on its curve, mm. */
export const ON_GAP = 0.7;

/** Steps along a curve between the places where its name is tried, mm. */
const TRIED = 1.5;

/**
 * Names that stand on their own curves, which leave room for them: off all other curves, levels, points and lines of the
 * grid. The most important is placed first; one without a place is not among them, nor is a curve alone, whose end is free.
 */
export function onCurves({ box, v, u, grid = [] }: Field, { curves, levels, points }: Named): Map<Series, TextMark> {
  const found = new Map<Series, TextMark>();
  if (curves.length < 2) return found;
  const fixed: (readonly Point[])[] = [
    ...grid,
    ...levels.map(({ y }): Point[] => [
      [box.u0, v(y)],
      [box.u1, v(y)],
    ]),
  ];
  const kept = points.map((point) => grown(boxOf([[u(point.x), v(point.y)]]), POINT_RADIUS + 3));
  const within = grown(box, -1);
  for (const { one, run } of curves.toSorted((a, b) => Number(b.one.main ?? false) - Number(a.one.main ?? false))) {
    if (one.named !== undefined) continue;
    const lines = [...fixed, ...curves.flatMap((other) => (other.one === one ? [] : [other.run]))];
    for (const [at, base] of along(run)) {
      const text = write(one.main ? 'title' : 'label', one.label, [at, base + TEXT / 2], {
        height: TEXT,
        anchor: 'middle',
      });
      const own = grown(textBox(text), ON_GAP);
      const isFree =
        contains(within, own) &&
        ![...kept, ...[...found.values()].map(textBox)].some((other) => overlaps(own, other)) &&
        !lines.some((line) => line.some((point, i) => i > 0 && crossesBox([line[i - 1] as Point, point], own)));
      if (!isFree) continue;
      found.set(one, text);
      break;
    }
  }
  return found;
}

/** Places along a line, a step apart. */
function along(run: readonly Point[]): Point[] {
  return run.flatMap((point, i): Point[] => {
    const before = run[i - 1];
    if (!before) return [point];
    const [du, dv] = [point[0] - before[0], point[1] - before[1]];
    const steps = Math.max(1, Math.ceil(Math.hypot(du, dv) / TRIED));
    return Array.from(
      { length: steps },
      (_, k): Point => [before[0] + (du * (k + 1)) / steps, before[1] + (dv * (k + 1)) / steps],
    );
  });
}

/** The pieces of a line that lie outside a box. */
export function outside(run: readonly Point[], box: Box): Point[][] {
  const pieces: Point[][] = [];
  let piece: Point[] = [];
  const end = (): void => {
    if (piece.length > 1) pieces.push(piece);
    piece = [];
  };
  // In short steps: what is left out is an air gap, whose ends need not be exact.
  for (const [i, point] of run.entries()) {
    const before = run[i - 1];
    if (!before || !crossesBox([before, point], box)) {
      if (piece.length === 0 && before) piece.push(before);
      piece.push(point);
      continue;
    }
    for (let k = 0; k <= FINE; k++) {
      const at: Point = [
        before[0] + ((point[0] - before[0]) * k) / FINE,
        before[1] + ((point[1] - before[1]) * k) / FINE,
      ];
      if (overlaps(grown(boxOf([at]), 1e-3), box)) end();
      else piece.push(at);
    }
  }
  end();
  return pieces;
}

/** Parts of a straight piece of a curve that are looked at one by one where a name stands on it. */
const FINE = 24;
