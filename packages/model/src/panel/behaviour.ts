import type { PanelSpec, Site } from '../job/job.ts';
import { floorToMark, type Marks } from '../length.ts';
import { bendSlat } from '../weave/bend.ts';
import type { Weave } from '../weave/pattern.ts';
import { woodChange } from '../wood/movement.ts';
import { allowanceMargin } from './courses.ts';
import type { Courses, Movement, RowBehaviour, Staves } from './panel.ts';

/** Change of one millimetre across the grain of the slats, from the moisture at building to another, mm. */
export function slatChange(spec: PanelSpec, site: Site, to: number): number {
  const { wood, rings } = spec.wood.slat;
  return woodChange(wood, { size: 1, from: site.built, to, ringAngle: rings });
}

/** Bends one slat of each row of the weave; rows alike are bent once. */
export function bendRows(
  spec: PanelSpec,
  {
    clearWidth,
    staves,
    courses,
    weave,
    display,
  }: { clearWidth: number; staves: Staves; courses: Courses; weave: Weave; display: Marks },
): RowBehaviour[] {
  const { wood } = spec.wood.slat;
  return weave.rows.map((sides, row) => {
    const bend = bendSlat({
      clearWidth,
      staves: { count: staves.count, width: staves.width, depth: staves.depth },
      slat: { thickness: courses.thickness, height: courses.height },
      sides,
      modulus: wood.modulus,
      strength: wood.strength,
      ...(spec.endStop !== undefined && { endStop: spec.endStop }),
    });
    return {
      sides,
      bend,
      courses: weave.rowOfCourse.filter((of) => of === row).length,
      short: bend.extraLength,
      cutLength: floorToMark(bend.cutLength, display.mark),
    };
  });
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
