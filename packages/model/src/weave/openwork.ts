import { slatContact, stavePitch } from './contact.ts';
import type { Side } from './pattern.ts';
import { plainKnots } from './plain.ts';
import { type Curve, sampleCurve } from './spline.ts';

/** A plain weave without ends, by its sizes alone, mm. */
export interface PlainOpenwork {
  /** Centre to centre of neighbouring staves. */
  readonly pitch: number;
  readonly staveWidth: number;
  readonly staveDepth: number;
  readonly slatThickness: number;
  readonly slatHeight: number;
  /** Open height between courses; 0 where they lie edge to edge. */
  readonly gap: number;
}

/** The weave inside a panel's frame, mm; what `bendSlat` takes, and the courses. */
export interface PanelOpenwork {
  readonly clearWidth: number;
  readonly staves: { readonly count: number; readonly width: number; readonly depth: number };
  readonly slat: { readonly thickness: number; readonly height: number };
  readonly gap: number;
  /** The rows that differ, as `weaveSides` gives them. */
  readonly rows: readonly (readonly Side[])[];
  /** Each course's place in `rows`, bottom up: all courses, or one repeat. Absent: each row once, in turn. */
  readonly rowOfCourse?: readonly number[];
  /** Each row's curve, where it has been worked out. */
  readonly bends?: readonly Curve[];
  /** As for `bendSlat`. */
  readonly endStop?: number;
}

/** A weave to look through. */
export type Openwork = PlainOpenwork | PanelOpenwork;

/** Both forms of weave brought to one: lines, staves and the stretch to average over. */
export interface Lattice {
  readonly from: number;
  readonly to: number;
  /** Whether stiles stand at `from` and `to`. */
  readonly framed: boolean;
  /** Middles of all staves that matter, from the left. */
  readonly staves: readonly number[];
  readonly staveWidth: number;
  readonly staveDepth: number;
  readonly thickness: number;
  readonly height: number;
  readonly gap: number;
  readonly lines: readonly Curve[];
  /** Line of each course of the smallest repeat. */
  readonly courses: readonly number[];
}

/** @throws RangeError if the gap is negative, or a row that a course needs is missing. */
export function latticeOf(openwork: Openwork): Lattice {
  if (!(openwork.gap >= 0)) throw new RangeError(`invalid gap: ${openwork.gap} (expected 0 or more, mm)`);
  return 'rows' in openwork ? panelLattice(openwork) : plainLattice(openwork);
}

function plainLattice(plain: PlainOpenwork): Lattice {
  const { pitch, staveWidth, staveDepth, slatThickness: thickness, slatHeight: height, gap } = plain;
  if (!(pitch > staveWidth)) throw new RangeError(`invalid pitch: ${pitch} (expected over ${staveWidth}, mm)`);
  // A ray at the most oblique azimuth, tan 75° < 4, runs this many pitches along the panel while within the weave.
  const beyond = 1 + Math.ceil((4 * (staveDepth / 2 + thickness)) / pitch);
  const front = plainKnots(plain, -beyond, beyond + 1);
  const behind = front.map(({ x, z, curvature }) => ({ x, z: -z, curvature: -curvature }));
  return {
    from: 0,
    to: pitch,
    framed: false,
    staves: Array.from({ length: 2 * beyond + 2 }, (_, j) => (j - beyond) * pitch),
    staveWidth,
    staveDepth,
    thickness,
    height,
    gap,
    lines: [{ knots: front }, { knots: behind }],
    courses: [0, 1],
  };
}

function panelLattice(panel: PanelOpenwork): Lattice {
  const { clearWidth, staves, slat, gap, rows, rowOfCourse = rows.map((_, i) => i), bends, endStop } = panel;
  const lines =
    bends ?? rows.map((sides) => slatContact({ ...panel, sides, ...(endStop !== undefined && { endStop }) }));
  const unknown = rowOfCourse.find((row) => !lines[row]);
  if (unknown !== undefined || rowOfCourse.length === 0)
    throw new RangeError(`invalid row of a course: ${unknown} (expected 0 to ${lines.length - 1})`);
  return {
    from: 0,
    to: clearWidth,
    framed: true,
    staves: Array.from({ length: staves.count }, (_, j) => staves.width / 2 + j * stavePitch(panel)),
    staveWidth: staves.width,
    staveDepth: staves.depth,
    thickness: slat.thickness,
    height: slat.height,
    gap,
    lines,
    courses: smallestRepeat(rowOfCourse),
  };
}

/** The shortest beginning that, repeated, gives the whole list. */
function smallestRepeat(list: readonly number[]): readonly number[] {
  for (let length = 1; length < list.length; length++)
    if (list.every((value, i) => value === list[i % length])) return list.slice(0, length);
  return list;
}

/** Stretches along the panel that are `margin` or more from every stave's face, in order. */
export function clearStretches(lattice: Lattice, margin = 0): (readonly [from: number, to: number])[] {
  const { staves, staveWidth } = lattice;
  const half = staveWidth / 2 + margin;
  const edges = [lattice.from, ...staves.flatMap((x) => [x - half, x + half]), lattice.to];
  const stretches: (readonly [number, number])[] = [];
  for (let i = 0; i < edges.length; i += 2) {
    const from = Math.max(lattice.from, edges[i] ?? 0);
    const to = Math.min(lattice.to, edges[i + 1] ?? 0);
    if (to > from) stretches.push([from, to]);
  }
  return stretches;
}

/** Pairs of lines that lie next to one another somewhere up the stack, with how often in one repeat. */
export function neighbourLines(
  lattice: Lattice,
): { readonly pair: readonly [number, number]; readonly times: number }[] {
  const { courses } = lattice;
  const times = new Map<string, number>();
  for (const [k, line] of courses.entries()) {
    const next = courses[(k + 1) % courses.length] ?? line;
    const key = `${Math.min(line, next)} ${Math.max(line, next)}`;
    times.set(key, (times.get(key) ?? 0) + 1);
  }
  return Array.from(times, ([key, count]) => {
    const [a = 0, b = 0] = key.split(' ').map(Number);
    return { pair: [a, b] as const, times: count };
  });
}

/** Clear distance between the facing edges of two neighbouring courses at `x`, with `gap` between them, mm. */
export function openingAt(lattice: Lattice, [a, b]: readonly [number, number], gap: number, x: number): number {
  const apart = Math.abs(sampleCurve(line(lattice, a), x).z - sampleCurve(line(lattice, b), x).z);
  return Math.hypot(gap, Math.max(0, apart - lattice.thickness));
}

function line(lattice: Lattice, i: number): Curve {
  return lattice.lines[i] as Curve;
}
