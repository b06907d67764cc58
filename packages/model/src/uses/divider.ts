import type { DividerUse } from '../job/job.ts';
import { INCH } from '../length.ts';
import type { Panel } from '../panel/panel.ts';
import type { Place } from './place.ts';
import { GRAVITY, panelCentre } from './weight.ts';

/** How the two faces of a panel compare. */
export type Faces =
  /** The back looks as the front does. */
  | 'alike'
  /** The back is the front moved up by some courses: alike to the eye, not course for course. */
  | 'alike but shifted'
  /** The back is the front in a mirror: a diagonal runs the other way. */
  | 'mirrored'
  | 'different';

/** A divider, mm, N, kg. */
export interface DividerDetails {
  readonly use: 'divider';
  readonly stand: DividerUse['stand'];
  readonly mass: number;
  /** Feet: their middles in the panel frame and their size; absent on a track. */
  readonly feet?: {
    readonly places: readonly Place[];
    readonly length: number;
    readonly height: number;
    readonly width: number;
  };
  /** Track: opening height it needs, where its carriers go, and the weight on each; absent on feet. */
  readonly track?: {
    readonly opening: number;
    readonly above: number;
    readonly below: number;
    readonly carriers: readonly Place[];
    readonly carrierLoad: number;
  };
  /** Over all, feet counted in. */
  readonly height: number;
  /** Level push at `at` above the floor that starts to tip it; absent on a track. */
  readonly tipping?: { readonly at: number; readonly push: number; readonly footWanted: number };
  readonly faces: Faces;
}

/** Middle of a track's carrier from the stile inwards, clear of the corner's screws, mm: 1 1/2 in, common practice, no source. */
const CARRIER_IN = 1.5 * INCH;

/** Height of a push by shoulder or hand, mm, and the push a divider should bear, N (10 lbf); common practice, no source. */
export const TIPPING: { readonly at: number; readonly push: number } = { at: 1500, push: 45 };

/**
 * How a divider stands and what tips it.
 * @throws RangeError for a panel of another use
 */
export function dividerDetails(panel: Panel): DividerDetails {
  const { details, outside, stile } = panel;
  if (details.use !== 'divider') throw new RangeError(`invalid use: ${details.use} (expected divider)`);
  const { mass } = panelCentre(panel);
  const weight = mass * GRAVITY;
  const { feet, track } = details;
  const height = outside.height + (feet?.height ?? 0);
  const xs = [stile.width / 2, outside.width - stile.width / 2];
  const at = Math.min(TIPPING.at, height);
  return {
    use: 'divider',
    stand: details.stand,
    mass,
    ...(feet && { feet: { ...feet, places: xs.map((x) => ({ x, y: -feet.height / 2, z: 0 })) } }),
    ...(track && {
      track: {
        ...track,
        opening: outside.height + track.above + track.below,
        carriers: [stile.width + CARRIER_IN, outside.width - stile.width - CARRIER_IN].map((x) => ({
          x,
          y: outside.height,
          z: 0,
        })),
        carrierLoad: weight / 2,
      },
    }),
    height,
    // Weight at the middle of the foot against the push: P at = W length / 2.
    ...(feet && {
      tipping: { at, push: (weight * feet.length) / (2 * at), footWanted: (2 * TIPPING.push * at) / weight },
    }),
    faces: facesOf(panel),
  };
}

/**
 * Compares the back with the front: seen from behind, left and right change places, and so do front and behind.
 * In plain weave an even number of staves makes both alike, an odd one shifts them by a course.
 */
export function facesOf({ weave, staves, courses }: Pick<Panel, 'weave' | 'staves' | 'courses'>): Faces {
  const side = (course: number, stave: number) => weave.rows[weave.rowOfCourse[course] ?? 0]?.[stave] ?? 1;
  const last = staves.count - 1;
  const same = (shift: number, seen: (stave: number) => number) => {
    const most = courses.count - shift;
    for (let course = 0; course < most; course++)
      for (let stave = 0; stave <= last; stave++)
        if (-side(course, last - stave) !== side(course + shift, seen(stave))) return false;
    return most > 0;
  };
  const straight = (stave: number) => stave;
  const mirrored = (stave: number) => last - stave;
  const shifts = Array.from({ length: Math.min(weave.repeat.courses, courses.count) }, (_, i) => i);
  if (same(0, straight)) return 'alike';
  if (shifts.some((shift) => same(shift, straight))) return 'alike but shifted';
  return shifts.some((shift) => same(shift, mirrored)) ? 'mirrored' : 'different';
}
