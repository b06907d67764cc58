import type { PanelSpec, Site } from '../job/job.ts';
import { floorToMark, INCH, type Marks } from '../length.ts';
import { bendSlat, type SlatBend } from '../weave/bend.ts';
import { type Weave, weaveSides } from '../weave/pattern.ts';
import { woodChange } from '../wood/movement.ts';
import { allowanceMargin } from './courses.ts';
import type { Courses, Movement, RowBehaviour, Staves } from './panel.ts';

/** Change of one millimetre across the grain of the slats, from the moisture at building to another, mm. */
export function slatChange(spec: PanelSpec, site: Site, to: number): number {
  const { wood, rings } = spec.wood.slat;
  return woodChange(wood, { size: 1, from: site.built, to, ringAngle: rings });
}

/** Least clearance between a slat's end and its stile, mm: 1/64 in or half a millimetre, common practice, no source. */
const END_CLEARANCE = { in: INCH / 64, mm: 0.5 } as const;

/** Slats of one panel that differ by no more than this, or by the mark, are cut alike, mm. */
const ALIKE = 1;

interface WovenOver {
  readonly clearWidth: number;
  readonly staves: Staves;
  readonly courses: Courses;
  readonly display: Marks;
}

/** The weave of a panel over its staves and courses, and how its rows bend. */
export function woven(spec: PanelSpec, over: WovenOver): { readonly weave: Weave; readonly rows: RowBehaviour[] } {
  const { pattern, start } = spec.weave;
  const weave = weaveSides({ weave: pattern, start, courses: over.courses.count, staves: over.staves.count });
  return { weave, rows: bendRows(spec, weave, over) };
}

/** Bends one slat of each row of the weave; rows alike are bent once. */
function bendRows(spec: PanelSpec, weave: Weave, { clearWidth, staves, courses, display }: WovenOver): RowBehaviour[] {
  const { wood } = spec.wood.slat;
  const bends = weave.rows.map((sides) =>
    bendSlat({
      clearWidth,
      staves: { count: staves.count, width: staves.width, depth: staves.depth },
      slat: { thickness: courses.thickness, height: courses.height },
      sides,
      modulus: wood.modulus,
      strength: wood.strength,
      ...(spec.endStop !== undefined && { endStop: spec.endStop }),
    }),
  );
  const clearance = 2 * END_CLEARANCE[display.unit];
  const cuts = evened(
    bends.map(({ cutLength }) => floorToMark(cutLength - clearance, display.mark)),
    Math.max(ALIKE, display.mark),
  );
  return weave.rows.map((sides, row) => {
    const bend = bends[row] as SlatBend;
    return {
      sides,
      bend,
      courses: weave.rowOfCourse.filter((of) => of === row).length,
      short: bend.extraLength,
      cutLength: cuts[row] as number,
    };
  });
}

/** Lengths within `alike` of a shorter one become that one: two stops a hair apart only get mixed up. */
function evened(lengths: readonly number[], alike: number): number[] {
  const kept: number[] = [];
  for (const length of [...lengths].sort((a, b) => a - b))
    if (length - (kept.at(-1) ?? Number.NEGATIVE_INFINITY) > alike + 1e-6) kept.push(length);
  return lengths.map((length) => kept.findLast((each) => each <= length + 1e-9) as number);
}

/** What the seasons of the site do to the stack and to the staves in their grooves. */
export function seasons(spec: PanelSpec, site: Site, courses: Courses, display: Marks): Movement {
  const solid = courses.count * courses.height;
  const swell = solid * slatChange(spec, site, site.wettest);
  const shrink = solid * slatChange(spec, site, site.driest);
  const { stave, rail } = spec.wood;
  const groove = spec.stave.depth + spec.groove.clearance;
  const clearanceAt = (to: number) => {
    const change = { from: site.built, to };
    const wider = woodChange(rail.wood, { ...change, size: groove, ringAngle: rail.rings });
    const thicker = woodChange(stave.wood, { ...change, size: spec.stave.depth, ringAngle: stave.rings });
    return spec.groove.clearance + wider - thicker;
  };
  const gaps = courses.gap * (courses.count - 1);
  return {
    built: site.built,
    driest: site.driest,
    wettest: site.wettest,
    swell,
    shrink,
    needed: swell + allowanceMargin(display),
    dryOpening: (courses.gap > 0 ? gaps : courses.allowance) - shrink,
    grooveClearance: {
      built: spec.groove.clearance,
      wettest: clearanceAt(site.wettest),
      driest: clearanceAt(site.driest),
    },
  };
}
