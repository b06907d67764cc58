import type { Job, PanelSpec } from '../job/job.ts';
import { JobError, type Problem } from '../job/problem.ts';
import { formatLength } from '../length.ts';
import { changesOf, measuredCourses } from './asbuilt.ts';
import { seasons, slatChange, woven } from './behaviour.ts';
import { closeCourses, type HeightToClose } from './courses.ts';
import { alikeStrips, coverStrips } from './cover.ts';
import type { Courses, Panel } from './panel.ts';
import { layStaves, type NoRoom } from './staves.ts';

/** Slat heights that are settled outside, such as by the cutting plan: panel name → height, mm. */
export type SlatHeights = Readonly<Record<string, number>>;

/**
 * Every panel of a job with its whole geometry and what bending and the seasons do to it.
 * @param settled slat heights to take instead of choosing them; only for panels whose fit varies the slats
 * @throws {JobError} for a panel that cannot be laid out, with the nearest sizes that work
 */
export function solve(job: Job, settled: SlatHeights = {}): Panel[] {
  const problems: Problem[] = [];
  const panels = job.panels.flatMap((spec, i): Panel[] => {
    const result = solvePanel(job, spec, settled[spec.name]);
    if (!('field' in result)) return [result];
    problems.push({ path: `panels[${i}].${result.field}`, found: '', message: `${spec.name}: ${result.message}` });
    return [];
  });
  if (problems.length > 0) throw new JobError(problems);
  return alikeStrips(panels);
}

/** What is asked of the height of one panel, as `closeCourses` and the cutting plan's choice of slat height take it. */
export function heightToClose(job: Job, spec: PanelSpec): HeightToClose {
  return {
    spec,
    clearHeight: spec.size.height - 2 * spec.rail.height,
    bottom: spec.rail.height,
    display: job.display,
    swellShare: Math.max(0, slatChange(spec, job.site, job.site.wettest)),
  };
}

function solvePanel(job: Job, spec: PanelSpec, slatHeight: number | undefined): Panel | NoRoom {
  const ask = heightToClose(job, spec);
  const width = spec.size.width - 2 * spec.stile.width;
  const noRoom = roomInside(width, ask, job);
  if (noRoom) return noRoom;
  const courses = closeCourses(slatHeight === undefined ? ask : { ...ask, slatHeight });
  if ('field' in courses) return courses;
  const planned = assemble(job, spec, width, courses);
  const { measured } = spec;
  if (!measured || 'field' in planned) return planned;
  const real = measuredCourses(courses, { ...ask, measured });
  const now = assemble(job, spec, width, real);
  if ('field' in now) return now;
  // Slats that are cut do not grow.
  const rows = now.rows.map((row, i) => ({
    ...row,
    cutLength: Math.min(row.cutLength, planned.rows[i]?.cutLength ?? row.cutLength),
  }));
  return {
    ...now,
    rows,
    asBuilt: {
      changes: changesOf(planned, { ...now, rows }),
      broken: measured.broken,
      uncut: measured.uncut,
      planned,
      heightOff: now.outside.height - spec.size.height,
    },
  };
}

function roomInside(width: number, { clearHeight, spec }: HeightToClose, { display }: Job): NoRoom | undefined {
  const show = (length: number) => formatLength(length, display, { named: true });
  if (width < 3 * spec.stave.width) {
    return { field: 'stile.width', message: `the stiles leave ${show(width)} inside, less than three staves` };
  }
  if (clearHeight <= 0)
    return { field: 'rail.height', message: `the rails leave no height inside ${show(spec.size.height)}` };
  if (spec.groove.depth >= spec.rail.height) {
    return {
      field: 'groove.depth',
      message: `a groove of ${show(spec.groove.depth)} cuts through a rail of ${show(spec.rail.height)}`,
    };
  }
  const offset = (spec.stave.depth + spec.slat.thickness) / 2;
  if (spec.endStop !== undefined && spec.endStop < offset) {
    return {
      field: 'slat.stop',
      message: `stops at ${show(spec.endStop)} from mid-depth leave no room for slats that lie ${show(offset)} off it at the staves`,
    };
  }
  if (spec.stave.depth + spec.groove.clearance >= spec.rail.depth) {
    return {
      field: 'stave.depth',
      message: `the groove for a stave of ${show(spec.stave.depth)} leaves nothing of a rail ${show(spec.rail.depth)} deep`,
    };
  }
  return undefined;
}

function assemble(job: Job, spec: PanelSpec, clearWidth: number, courses: Courses): Panel | NoRoom {
  const { display, site } = job;
  const clear = {
    width: clearWidth,
    height: courses.stack + courses.allowance,
    left: spec.stile.width,
    bottom: spec.rail.height,
  };
  const staves = layStaves(spec, clear, display);
  if ('field' in staves) return staves;
  const outside = {
    width: spec.size.width,
    height: clear.height + 2 * spec.rail.height,
    depth: Math.max(spec.rail.depth, spec.stile.depth),
  };
  const movement = seasons(spec, site, courses, display);
  const { weave, rows } = woven(spec, { clearWidth, staves, courses, display });
  return {
    name: spec.name,
    count: spec.count,
    details: spec.details,
    spec,
    display,
    site,
    outside,
    ...(spec.opening && { opening: spec.opening }),
    clear,
    rail: { ...spec.rail, length: spec.size.width },
    stile: { ...spec.stile, length: clear.height },
    groove: {
      depth: spec.groove.depth,
      width: spec.stave.depth + spec.groove.clearance,
      clearance: spec.groove.clearance,
    },
    staves,
    courses,
    cover: coverStrips({ spec, clearWidth, courses, rows, weave, movement, display }),
    weave: {
      ...weave,
      name: typeof spec.weave.pattern === 'string' ? spec.weave.pattern : 'as given',
      start: weave.rows[0]?.[0] === -1 ? 'behind' : 'front',
    },
    rows,
    diagonal: Math.hypot(outside.width, outside.height),
    movement,
  };
}
