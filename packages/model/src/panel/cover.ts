import type { PanelSpec } from '../job/job.ts';
import { ceilToMark, floorToMark, INCH, type Marks } from '../length.ts';
import type { Weave } from '../weave/pattern.ts';
import { slatReach } from '../weave/reach.ts';
import type { Courses, Movement, Panel, RowBehaviour } from './panel.ts';

/**
 * Sizes of cover strips, mm; common practice, no source. `play` is left on either side of the weave; a strip thinner than
 * `least` splits when it is pinned, one thicker than `most` only adds weight; `bears` is the least of it that lies on the
 * rail; thickness goes by `step`.
 */
const SIZES = {
  mm: { play: 1, least: 5, most: 12, bears: 3, step: 0.5, fine: 0.5 },
  in: { play: INCH / 32, least: (3 * INCH) / 16, most: INCH / 2, bears: INCH / 8, step: INCH / 32, fine: INCH / 64 },
} as const;

/** Width of a stop strip along the panel: enough to nail without splitting, common practice, no source; mm. */
export const STOP_WIDTH = 12.7;

/** Thickness of the strips that hold the slats' ends at the stiles, mm; 0 where there are none. */
export function stopThickness({ spec, stile, courses }: Pick<Panel, 'spec' | 'stile' | 'courses'>): number {
  if (spec.endStop === undefined) return 0;
  return Math.max(0, stile.depth / 2 - spec.endStop - courses.thickness / 2);
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
 * with play; flush with the rail's face. Where less than the least thickness is left they stand proud of it by what lacks;
 * where a strip would hardly touch the rail, since the slats' ends stand out too far, there are none.
 */
export function coverStrips(under: UnderTheRail): Panel['cover'] {
  const { spec, courses, movement, display, clearWidth } = under;
  const { play, least, most, bears, step, fine } = SIZES[display.unit];
  const wanted = spec.cover === 'auto' ? (courses.gap > 0 ? 0 : movement.dryOpening) : spec.cover;
  const none = { height: 0, thickness: 0, face: 0, proud: 0, length: 0, reach: 0 };
  if (wanted <= 0) return none;
  const height = Math.ceil(wanted / display.mark - 1e-9) * display.mark;
  const reach = reachUnder(under, height);
  const half = spec.rail.depth / 2;
  const room = half - reach - play;
  if (room < bears - 1e-9) return { ...none, reach };
  const stop = stopThickness({ spec, stile: { ...spec.stile, length: 0 }, courses }) > 0 ? STOP_WIDTH : 0;
  const length = clearWidth - 2 * stop;
  if (room >= most) return { height, thickness: most, face: half - floorToMark(room, fine), proud: 0, length, reach };
  const proud = Math.max(0, ceilToMark(least - room, fine));
  const thickness = proud > 0 ? least : Math.max(least, floorToMark(room, step));
  return { height, thickness, face: half + proud - thickness, proud, length, reach };
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
