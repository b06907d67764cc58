import { boxOf, mapPath, pointsOf } from './ink.ts';
import type { Drawing, Mark, Path, PathMark, Point, Role, Step } from './mark.ts';

/** What a cutter follows or scribes, one group each, in this order. */
const followed: readonly Role[] = ['edge', 'edge-light', 'hidden', 'tick'];

/**
 * The drawing for a cutter: real size with its corner at the origin, only edges and ticks, the lines of one part joined
 * where their ends meet, each line once. Lettering stays only where the drawing was full size already. A drawing
 * without a scale is taken as full size.
 */
export function forMachine(drawing: Drawing): Drawing {
  const full = drawing.scale === 0 || drawing.scale === 1;
  const enlarge = full ? 1 : 1 / drawing.scale;
  const { u0, v0, u1, v1 } = drawing.bounds;
  const real = ([u, v]: Point): Point => [(u - u0) * enlarge, (v - v0) * enlarge];
  const marks: Mark[] = followed.flatMap((role) => {
    const parts = new Map<string | undefined, Path[]>();
    for (const mark of drawing.marks) {
      if (mark.kind !== 'path' || mark.role !== role) continue;
      const paths = parts.get(mark.of) ?? [];
      paths.push(...pieces(mapPath(mark.path, real)));
      parts.set(mark.of, paths);
    }
    return [...parts].flatMap(([of, paths]) =>
      joinPaths(paths).map((path): PathMark => ({ kind: 'path', role, path, ...(of === undefined ? {} : { of }) })),
    );
  });
  if (full) {
    for (const mark of drawing.marks) {
      if (mark.kind === 'text' && mark.role === 'label') marks.push({ ...mark, at: real(mark.at) });
    }
  }
  const size = boxOf([
    [0, 0],
    [(u1 - u0) * enlarge, (v1 - v0) * enlarge],
  ]);
  return { ...drawing, marks, bounds: size, scale: 1, scaleText: '1:1' };
}

/** The path cut at its moves. */
function pieces(path: Path): Path[] {
  const out: Step[][] = [];
  for (const step of path) {
    if (step[0] === 'M') out.push([step]);
    else out.at(-1)?.push(step);
  }
  return out.filter((piece) => piece.length > 1);
}

/**
 * Paths joined end to end wherever exactly two ends meet, closed where that makes a ring; a path that is there twice,
 * either way round, once. Ends meet when they agree to a ten thousandth of a millimetre.
 */
export function joinPaths(paths: readonly Path[]): Path[] {
  const seen = new Set<string>();
  const out: Path[] = [];
  const open: Path[] = [];
  for (const path of paths) {
    const name = [spelt(path), spelt(reversed(path))].sort()[0] as string;
    if (seen.has(name)) continue;
    seen.add(name);
    if (path.at(-1)?.[0] === 'Z') out.push(path);
    else open.push(path);
  }
  const meeting = new Map<string, number[]>();
  open.forEach((path, i) => {
    for (const end of ends(path)) meeting.set(end, [...(meeting.get(end) ?? []), i]);
  });
  const used = new Set<number>();
  /** Goes on from the end of `run` through further paths for as long as just one other path starts there. */
  const extend = (run: Path): Path => {
    let grown = run;
    for (;;) {
      const [, end] = ends(grown);
      const here = meeting.get(end) ?? [];
      const next = here.find((i) => !used.has(i));
      if (here.length !== 2 || next === undefined) return grown;
      used.add(next);
      const path = open[next] as Path;
      grown = [...grown, ...(ends(path)[0] === end ? path : reversed(path)).slice(1)];
    }
  };
  open.forEach((path, i) => {
    if (used.has(i)) return;
    used.add(i);
    const run = reversed(extend(reversed(extend(path))));
    const [start, end] = ends(run);
    out.push(start === end ? closed(run) : run);
  });
  return out;
}

/** The ring with its last step made exact: a line home is said by closing, a curve home ends on the start. */
function closed(run: Path): Path {
  return [...(run.at(-1)?.[0] === 'L' ? run.slice(0, -1) : run), ['Z']];
}

function ends(path: Path): readonly [string, string] {
  const points = pointsOf(path);
  return [place(points[0] as Point), place(points.at(-1) as Point)];
}

function place([u, v]: Point): string {
  return `${Math.round(u * 1e4) + 0} ${Math.round(v * 1e4) + 0}`;
}

function spelt(path: Path): string {
  return path.map((step) => step[0] + pointsOf([step]).map(place).join(' ')).join(' ');
}

/** The same line the other way round. */
function reversed(path: Path): Path {
  const isClosed = path.at(-1)?.[0] === 'Z';
  const drawn = isClosed ? path.slice(0, -1) : path;
  const steps: Step[] = [['M', ...(pointsOf(drawn).at(-1) as Point)]];
  for (let i = drawn.length - 1; i > 0; i--) {
    const step = drawn[i] as Step;
    const [u, v] = pointsOf([drawn[i - 1] as Step]).at(-1) as Point;
    if (step[0] === 'C') steps.push(['C', step[3], step[4], step[1], step[2], u, v]);
    else steps.push(['L', u, v]);
  }
  return isClosed ? [...steps, ['Z']] : steps;
}
