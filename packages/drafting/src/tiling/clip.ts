import { boxOf, pointsOf } from '../ink.ts';
import type { Box, Path, PathMark, Point, Role, Step } from '../mark.ts';
import { fillOf, pen } from '../pen.ts';
import { type Axis, between, type Cubic, crossings, cut } from './cubic.ts';

/** A stretch of a path: a straight line by two points or a cubic by four. */
type Stretch = readonly [Point, Point] | Cubic;

/** A side of a box: the coordinate it bounds, where, and whether the inside lies above it. */
interface Side {
  readonly axis: Axis;
  readonly at: number;
  readonly above: boolean;
}

/**
 * The ink of a path mark inside a box, cut exactly at its sides; curves are split, not approached. A filled mark that is cut
 * becomes its cut face and, over it, its cut lines.
 */
export function clipMark(mark: PathMark, box: Box): PathMark[] {
  const around = boxOf(pointsOf(mark.path));
  if (around.u1 < box.u0 || around.u0 > box.u1 || around.v1 < box.v0 || around.v0 > box.v1) return [];
  const within = around.u0 >= box.u0 && around.u1 <= box.u1 && around.v0 >= box.v0 && around.v1 <= box.v1;
  if (within) return [mark];
  const sides: Side[] = [
    { axis: 0, at: box.u0, above: true },
    { axis: 0, at: box.u1, above: false },
    { axis: 1, at: box.v0, above: true },
    { axis: 1, at: box.v1, above: false },
  ];
  const fill = fillOf(mark);
  const { kind, shade: _, ...bare } = mark;
  const out: PathMark[] = [];
  if (fill !== undefined) {
    const path = clipFace(mark.path, sides);
    if (path.length > 0) out.push({ kind, ...bare, role: 'wood', path, shade: fill });
  }
  if (pen(mark.role).width > 0) {
    const path = clipLines(mark.path, sides);
    if (path.length > 0) out.push({ kind, ...bare, role: lineOnly[mark.role] ?? mark.role, path });
  }
  return out;
}

/** Roles that are filled and lined at once, by roles whose lines look alike and stay unfilled. */
const lineOnly: Partial<Record<Role, Role>> = { waste: 'grid', keep: 'hidden' };

function clipLines(path: Path, sides: readonly Side[]): Path {
  let stretches = rings(path).flat();
  for (const side of sides) stretches = stretches.flatMap((s) => parts(s, side).filter((part) => inside(part, side)));
  return joined(stretches);
}

/** Clips a face by one side after another (Sutherland and Hodgman 1974), with curves as they are. */
function clipFace(path: Path, sides: readonly Side[]): Path {
  return rings(path).flatMap((ring) => {
    let stretches = ring;
    const [start, end] = [ring[0]?.[0], ring.at(-1)?.at(-1) as Point | undefined];
    if (start && end && !same(start, end)) stretches = [...ring, [end, start]];
    for (const side of sides) {
      const kept = stretches.flatMap((s) => parts(s, side).filter((part) => inside(part, side)));
      stretches = kept.flatMap((part, i) => {
        const next = kept[(i + 1) % kept.length] as Stretch;
        const end = part.at(-1) as Point;
        return same(end, next[0]) ? [part] : [part, [end, next[0]] as const];
      });
    }
    return stretches.length === 0 ? [] : [...joined(stretches), ['Z'] as const];
  });
}

/** The stretches of each ring or run of a path, closing lines among them. */
function rings(path: Path): Stretch[][] {
  const out: Stretch[][] = [];
  let [start, pen]: [Point, Point] = [
    [0, 0],
    [0, 0],
  ];
  for (const step of path) {
    if (step[0] === 'M') {
      start = [step[1], step[2]];
      pen = start;
      out.push([]);
    } else if (step[0] === 'Z') {
      if (!same(pen, start)) out.at(-1)?.push([pen, start]);
      pen = start;
    } else {
      const points = pointsOf([step]);
      out.at(-1)?.push([pen, ...points] as unknown as Stretch);
      pen = points.at(-1) as Point;
    }
  }
  return out.filter((ring) => ring.length > 0);
}

/** A stretch cut wherever it crosses the side; the cut points lie on the side exactly. */
function parts(stretch: Stretch, side: Side): Stretch[] {
  const { axis, at } = side;
  if (stretch.length === 2) {
    const [a, b] = stretch;
    if ((a[axis] - at) * (b[axis] - at) >= 0) return [stretch];
    const m = onto(between(a, b, (at - a[axis]) / (b[axis] - a[axis])), side);
    return [
      [a, m],
      [m, b],
    ];
  }
  const out: Stretch[] = [];
  let rest: Cubic = stretch;
  let gone = 0;
  for (const t of crossings(stretch, axis, at)) {
    const [[a, b, c, d], [, f, g, h]] = cut(rest, (t - gone) / (1 - gone));
    const m = onto(d, side);
    out.push([a, b, c, m]);
    rest = [m, f, g, h];
    gone = t;
  }
  return [...out, rest];
}

function onto([u, v]: Point, { axis, at }: Side): Point {
  return axis === 0 ? [at, v] : [u, at];
}

/** Whether a stretch that crosses the side nowhere lies on its inner hand; what runs along it counts as inside. */
function inside(stretch: Stretch, { axis, at, above }: Side): boolean {
  const middle =
    stretch.length === 2
      ? (stretch[0][axis] + stretch[1][axis]) / 2
      : (stretch[0][axis] + 3 * stretch[1][axis] + 3 * stretch[2][axis] + stretch[3][axis]) / 8;
  return above ? middle >= at : middle <= at;
}

function same(a: Point, b: Point): boolean {
  return a[0] === b[0] && a[1] === b[1];
}

function joined(stretches: readonly Stretch[]): Path {
  const steps: Step[] = [];
  let pen: Point | undefined;
  for (const stretch of stretches) {
    const [from, ...points] = stretch;
    if (!pen || !same(pen, from)) steps.push(['M', ...from]);
    const numbers = points.flat() as unknown as [number, number, number, number, number, number];
    steps.push(points.length === 1 ? ['L', numbers[0], numbers[1]] : ['C', ...numbers]);
    pen = points.at(-1) as Point;
  }
  return steps;
}
