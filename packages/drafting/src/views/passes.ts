import type { Panel, Side } from '@wattlewright/model';
import { sampleSlat, sideAt } from '@wattlewright/model';

/** A stretch of a line, mm: of `x` along a course or of `y` up a stave, in the panel frame or from the stile's inner face as its user says. */
export type Stretch = readonly [from: number, to: number];

/** A stretch left out of another: what remains of it, in order. `gaps` rise and do not overlap. */
function without([from, to]: Stretch, gaps: readonly Stretch[]): Stretch[] {
  const left: Stretch[] = [];
  let at = from;
  for (const [a, b] of gaps) {
    if (a > at) left.push([at, Math.min(a, to)]);
    at = Math.max(at, b);
  }
  if (at < to) left.push([at, to]);
  return left;
}

/** Stretches that meet or overlap as one, in order. */
export function joined(stretches: readonly Stretch[]): Stretch[] {
  const out: [number, number][] = [];
  for (const [from, to] of stretches.toSorted((a, b) => a[0] - b[0])) {
    const last = out.at(-1);
    if (last && from <= last[1] + 1e-6) last[1] = Math.max(last[1], to);
    else out.push([from, to]);
  }
  return out;
}

/** What of a course with these sides is seen from the front: the clear width less the staves that it passes behind. */
export function slatSeen({ clear, staves }: Panel, sides: readonly Side[]): Stretch[] {
  const before = staves.lefts.flatMap((x, j): Stretch[] => (sides[j] === -1 ? [[x, x + staves.width]] : []));
  return without([clear.left, clear.left + clear.width], before);
}

/** What of a stave is seen from the front: the clear height less the courses that pass in front of it. */
export function staveSeen(panel: Panel, stave: number): Stretch[] {
  const { clear, courses } = panel;
  const before = courses.bottoms.flatMap((y, course): Stretch[] =>
    sideAt(panel, course, stave) === 1 ? [[y, y + courses.height]] : [],
  );
  return without([clear.bottom, clear.bottom + clear.height], joined(before));
}

/** The lines of slats' edges seen from the front: for each height the stretches where a slat's edge is seen. */
export function slatEdges(panel: Panel): { readonly y: number; readonly course: number; readonly seen: Stretch[] }[] {
  const { bottoms, height, gap } = panel.courses;
  const seenOf = panel.weave.rows.map((sides) => slatSeen(panel, sides));
  const seen = (course: number): Stretch[] => seenOf[panel.weave.rowOfCourse[course] as number] ?? [];
  const apart = gap > 1e-6;
  return bottoms.flatMap((y, course) => {
    const under = course > 0 && !apart ? seen(course - 1) : [];
    const lower = { y, course, seen: joined([...under, ...seen(course)]) };
    const last = course === bottoms.length - 1;
    return apart || last ? [lower, { y: y + height, course, seen: seen(course) }] : [lower];
  });
}

/** How deep a stretch of a slat lies: `low` behind mid-depth, `deep` nearly as far as behind a stave. */
export interface Depths {
  readonly low: readonly Stretch[];
  readonly deep: readonly Stretch[];
}

/** Shares of the farthest depth from which a slat turned from the light counts as low and as deep. */
const TURNED = { low: 0.05, deep: 0.6 };

/** The same for a slat that faces the light, which comes from the left. */
const FACING = { low: 0.45, deep: 0.85 };

/** Places looked at in each bay to find where a slat passes a depth. */
const LOOKS = 32;

/**
 * Where the slat of a row dips behind, read off its bend: the tones of the front view. The light comes from the left, so
 * the side of a dip that is turned to the right darkens sooner. Positions in the panel frame.
 */
export function slatDepths(panel: Panel, row: number): Depths {
  const { clear, staves, courses, rows } = panel;
  const { bend, sides } = rows[row] as Panel['rows'][number];
  const farthest = (staves.depth + courses.thickness) / 2;
  const found = { low: [] as Stretch[], deep: [] as Stretch[] };
  for (let bay = 0; bay + 1 < staves.count; bay++) {
    if (sides[bay] === 1 && sides[bay + 1] === 1) continue;
    const from = (staves.lefts[bay] as number) + staves.width;
    const step = staves.bay / LOOKS;
    for (let i = 0; i < LOOKS; i++) {
      const x = from + i * step;
      const { z, slope } = sampleSlat(bend, x + step / 2 - clear.left);
      const bounds = slope < -1e-9 ? TURNED : FACING;
      if (z < -bounds.low * farthest) found.low.push([x, x + step]);
      if (z < -bounds.deep * farthest) found.deep.push([x, x + step]);
    }
  }
  return { low: joined(found.low), deep: joined(found.deep) };
}
