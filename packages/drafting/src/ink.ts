import type { Box, Drawing, Mark, Path, Point, Step } from './mark.ts';

/** A move and a scale on paper, applied to ink at once: `u' = u·scale + du`. */
export interface Placement {
  readonly du: number;
  readonly dv: number;
}

/** The path with every point mapped. */
export function mapPath(path: Path, map: (p: Point) => Point): Path {
  return path.map((step): Step => {
    if (step[0] === 'Z') return step;
    if (step[0] === 'C') {
      return ['C', ...map([step[1], step[2]]), ...map([step[3], step[4]]), ...map([step[5], step[6]])];
    }
    return [step[0], ...map([step[1], step[2]])];
  });
}

/** The marks moved by `du`, `dv` mm. */
export function moved(marks: readonly Mark[], { du, dv }: Placement): Mark[] {
  const map = ([u, v]: Point): Point => [u + du, v + dv];
  return marks.map((mark) =>
    mark.kind === 'path' ? { ...mark, path: mapPath(mark.path, map) } : { ...mark, at: map(mark.at) },
  );
}

/** Every point that the path's steps name, control points of curves among them. */
export function pointsOf(path: Path): Point[] {
  const points: Point[] = [];
  for (const step of path)
    for (let i = 1; i + 1 < step.length; i += 2) points.push([step[i] as number, step[i + 1] as number]);
  return points;
}

/** The smallest box round some points; an empty box at the origin for none. */
export function boxOf(points: readonly Point[]): Box {
  if (points.length === 0) return { u0: 0, v0: 0, u1: 0, v1: 0 };
  let [u0, v0, u1, v1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [u, v] of points) {
    u0 = Math.min(u0, u);
    v0 = Math.min(v0, v);
    u1 = Math.max(u1, u);
    v1 = Math.max(v1, v);
  }
  return { u0, v0, u1, v1 };
}

/** The smallest box round several boxes. */
export function union(boxes: readonly Box[]): Box {
  return boxOf(
    boxes.flatMap(({ u0, v0, u1, v1 }): Point[] => [
      [u0, v0],
      [u1, v1],
    ]),
  );
}

/** The drawing moved by `du`, `dv` mm. */
export function place(drawing: Drawing, by: Placement): Drawing {
  const { u0, v0, u1, v1 } = drawing.bounds;
  return {
    ...drawing,
    marks: moved(drawing.marks, by),
    bounds: { u0: u0 + by.du, v0: v0 + by.dv, u1: u1 + by.du, v1: v1 + by.dv },
  };
}
