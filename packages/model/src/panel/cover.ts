import type { PanelSpec } from '../job/job.ts';
import { ceilToMark, floorToMark, INCH, type Marks } from '../length.ts';
import type { Weave } from '../weave/pattern.ts';
import { slatReach } from '../weave/reach.ts';
import type { Courses, Movement, Panel, RowBehaviour } from './panel.ts';

/**
 * Sizes of cover strips, mm; common practice, no source. `lap` is hidden beyond the gap at its widest, and their height goes
 * by `bench`; `play` is left on either side of the weave; one thicker than `most` only adds weight; `bears` is the least that
 * lies on the rail; thickness goes by `step`.
 */
const SIZES = {
  mm: { lap: 3, bench: 1, play: 0.8, most: 12, bears: 3, step: 0.5, fine: 0.5 },
  in: {
    lap: INCH / 8,
    bench: INCH / 8,
    play: INCH / 32,
    most: INCH / 2,
    bears: INCH / 8,
    step: INCH / 32,
    fine: INCH / 64,
  },
} as const;

/** Strips of panels alike in depth that differ in thickness by no more than this are all made the thinner, mm. */
const ALIKE = 1;

/** Width of a stop strip along the panel: enough to nail without splitting, common practice, no source; mm. */
export const STOP_WIDTH = 12.7;

/**
 * Thickness of the strips that hold the slats' ends at the stiles, mm; 0 where there are none. They lie flush with the
 * stile's faces, outside all that a slat leans out to under their width, so that none is pinched.
 */
export function stopThickness({
  spec,
  stile,
  courses,
  rows,
  clear,
  display,
}: Pick<Panel, 'spec' | 'courses' | 'rows' | 'display'> & {
  readonly stile: Pick<Panel['stile'], 'depth'>;
  readonly clear: Pick<Panel['clear'], 'width'>;
}): number {
  if (spec.endStop === undefined) return 0;
  const ends = [
    { from: 0, to: STOP_WIDTH },
    { from: clear.width - STOP_WIDTH, to: clear.width },
  ];
  const reached = rows.flatMap(({ bend }) =>
    ends.flatMap((end) => slatReach(bend, { ...end, thickness: courses.thickness }).map(Math.abs)),
  );
  const room = stile.depth / 2 - Math.max(spec.endStop + courses.thickness / 2, ...reached);
  return Math.max(0, floorToMark(room, SIZES[display.unit].fine));
}

/** What the strips are laid out from. */
interface UnderTheRail {
  readonly spec: PanelSpec;
  readonly clearWidth: number;
  readonly courses: Courses;
  readonly rows: readonly RowBehaviour[];
  readonly weave: Weave;
  readonly movement: Movement;
  readonly display: Marks;
}

/**
 * Strips under the top rail, front and back alike, outside all that the top courses reach, leaning ends and bows counted,
 * with play; flush with the rail's face, so that the frame's faces stay flat. Unless the job gives their height they hide the
 * gap of the driest season and a lap. Where a strip would hardly touch the rail, since the slats' ends stand out too far,
 * there are none.
 */
export function coverStrips(under: UnderTheRail): Panel['cover'] {
  const { spec, courses, movement, display, clearWidth } = under;
  const { play, most, bears, step, fine } = SIZES[display.unit];
  const none = { height: 0, thickness: 0, face: 0, length: 0, reach: 0 };
  const given = spec.cover !== 'auto';
  if (given ? spec.cover <= 0 : courses.gap > 0 || movement.dryOpening <= 0) return none;
  const height = given ? ceilToMark(spec.cover, display.mark) : hidingHeight(movement.dryOpening, display);
  const reach = reachUnder(under, height);
  const half = spec.rail.depth / 2;
  const room = half - reach - play;
  if (room < bears - 1e-9) return { ...none, reach };
  const stop = stopThickness({ ...under, stile: spec.stile, clear: { width: clearWidth } }) > 0 ? STOP_WIDTH : 0;
  const length = clearWidth - 2 * stop;
  if (room >= most) return { height, thickness: most, face: half - floorToMark(room, fine), length, reach };
  const thickness = Math.max(bears, floorToMark(room, step));
  return { height, thickness, face: half - thickness, length, reach };
}

/** Height of strips that hide a gap so wide and a lap, mm. */
export function hidingHeight(gap: number, { unit, mark }: Marks): number {
  const { lap, bench } = SIZES[unit];
  return ceilToMark(gap + lap, Math.max(bench, mark));
}

/** Depth of the frame in which strips would lie on the rail, past what the top courses reach, mm. */
export function depthForStrips({ cover, display }: Pick<Panel, 'cover' | 'display'>): number {
  const { play, bears } = SIZES[display.unit];
  return ceilToMark(2 * (cover.reach + play + bears), display.mark);
}

/** The panels with strips of one thickness where frames of one depth want strips nearly alike: one part, one setting. */
export function alikeStrips<P extends Pick<Panel, 'rail' | 'cover'>>(panels: readonly P[]): P[] {
  const flush = ({ rail, cover }: P) =>
    cover.height > 0 && Math.abs(rail.depth / 2 - cover.face - cover.thickness) < 1e-6;
  return panels.map((panel) => {
    const { rail, cover } = panel;
    if (!flush(panel)) return panel;
    const kin = panels.filter((other) => flush(other) && Math.abs(other.rail.depth - rail.depth) < 1e-6);
    const kept: number[] = [];
    for (const each of kin.map(({ cover: of }) => of.thickness).sort((one, other) => one - other))
      if (each - (kept.at(-1) ?? Number.NEGATIVE_INFINITY) > ALIKE + 1e-6) kept.push(each);
    const thickness = kept.findLast((each) => each <= cover.thickness + 1e-6) as number;
    return { ...panel, cover: { ...cover, thickness, face: rail.depth / 2 - thickness } };
  });
}

/** How far from mid-depth the courses reach that come under a strip so high when the stack is at its highest, mm. */
function reachUnder({ clearWidth, courses, rows, weave, movement }: UnderTheRail, height: number): number {
  const lowest = courses.stack + courses.allowance - height;
  const under = courses.bottoms.flatMap((bottom, course) => {
    const top = bottom - (courses.bottoms[0] ?? 0) + courses.height + Math.max(0, movement.swell);
    return top > lowest ? [weave.rowOfCourse[course] ?? 0] : [];
  });
  const reached = [...new Set(under)].flatMap((row) => {
    const { bend } = rows[row] as RowBehaviour;
    return slatReach(bend, { from: 0, to: clearWidth, thickness: courses.thickness }).map(Math.abs);
  });
  return Math.max(0, ...reached);
}
