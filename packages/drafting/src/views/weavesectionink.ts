import { drainHoles, type Panel, type Part, stopThickness } from '@wattlewright/model';
import type { Box, Mark, Path } from '../mark.ts';
import { stroke } from '../mark.ts';
import { circle, line, polyline, rectangle } from '../path.ts';
import { type View, view, viewBox } from '../view.ts';
import { cutPlanes } from './detailkey.ts';
import { cutSlat, type SlatPlan, slatLine, slatOutline } from './detailslat.ts';
import { cutFace, seenFace } from './grain.ts';
import { partOf } from './partof.ts';
import type { Stretch } from './passes.ts';

/** What of the plan of a panel is to be drawn. */
export interface PlanInk {
  readonly panel: Panel;
  readonly parts: readonly Part[];
  readonly scale: number;
  /** Course that is cut, from 0; the one of section T–T unless given. */
  readonly course?: number;
  /** From where to where, mm from the panel's left edge; the whole width unless given. */
  readonly stretch?: Stretch;
}

/**
 * Maps a place in a plan to paper: x from the panel's left edge, z to the front. Looking down, the front lies towards the
 * reader, so z runs down the sheet; `v` 0 is mid-depth.
 */
export function planView(scale: number): View {
  const at = view(scale);
  return (x, z) => at(x, -z);
}

/** The paper box of a rectangle of the plan. */
export function planBox(plan: View, [x0, x1]: Stretch, [z0, z1]: readonly [number, number]): Box {
  return viewBox(plan, [x0, z0], [x1, z1]);
}

/**
 * The weave looking down from the middle of a course: the bottom rail and its groove, the next course beneath in outline,
 * the cut slat with its bend, stops, staves and stiles in section. Courses further down are left out, as is customary.
 */
export function weaveInk({ panel, parts, scale, course = cutPlanes(panel).down.course, stretch }: PlanInk): Mark[] {
  const whole: Stretch = stretch ?? [0, panel.outside.width];
  const plan = planView(scale);
  const { clear } = panel;
  const inside: Stretch = [whole[0] - clear.left, whole[1] - clear.left];
  const slatOf = (r: number): SlatPlan => {
    const row = panel.rows[r] as Panel['rows'][number];
    return { panel, row, plan, stretch: inside };
  };
  const letterOf = (r: number): string | undefined =>
    partOf(parts, panel, 'slat', panel.rows[r]?.cutLength)?.letter ?? partOf(parts, panel, 'slat')?.letter;
  const own = panel.weave.rowOfCourse[course] as number;
  const thin = panel.courses.thickness * scale < TWO_EDGES_FROM;
  return [
    ...railBeneath({ panel, parts, plan, scale, whole }),
    ...rowBeneath(panel, course).flatMap((r) =>
      thin ? [stroke('edge-light', slatLine(slatOf(r)), letterOf(r))] : seenFace(slatOutline(slatOf(r)), letterOf(r)),
    ),
    ...cutStops({ panel, parts, plan, scale, whole }),
    ...(thin ? [stroke('edge', slatLine(slatOf(own)), letterOf(own))] : cutSlat(slatOf(own), scale, letterOf(own))),
    ...cutUprights({ panel, parts, plan, scale, whole }),
  ];
}

/** The row of the nearest course beneath that the cut slat does not hide; none under the bottom course. */
export function rowBeneath({ weave }: Panel, course: number): number[] {
  const own = weave.rowOfCourse[course];
  const next = weave.rowOfCourse.slice(0, course).findLast((row) => row !== own);
  return next === undefined ? [] : [next];
}

/** Smaller holes, mm on paper, are left to a larger view. */
const HOLE_FROM = 1;

/** A slat thinner than this on paper, mm, is one line: its two edges would run into each other. */
const TWO_EDGES_FROM = 0.7;

interface Within {
  readonly panel: Panel;
  readonly parts: readonly Part[];
  readonly plan: View;
  readonly scale: number;
  readonly whole: Stretch;
}

/** The bottom rail with its groove, and the drain holes in its bed where they are large enough to be seen. */
function railBeneath({ panel, parts, plan, scale, whole }: Within): Mark[] {
  const { rail, groove, clear } = panel;
  const of = partOf(parts, panel, 'rail')?.letter;
  const face = rectangle(planBox(plan, whole, [-rail.depth / 2, rail.depth / 2]));
  const from = Math.max(clear.left, whole[0]);
  const to = Math.min(clear.left + clear.width, whole[1]);
  const { diameter, places } = drainHoles(panel);
  const drains = diameter * scale >= HOLE_FROM ? places : [];
  const edge = (z: number): Path => line(plan(from, z), plan(to, z));
  return [
    ...seenFace(face, of),
    stroke('edge-light', edge(groove.width / 2), of),
    stroke('edge-light', edge(-groove.width / 2), of),
    ...drains
      .filter((x) => x - diameter >= whole[0] && x + diameter <= whole[1])
      .map((x) => stroke('edge-light', circle(plan(x, 0), (diameter / 2) * scale), of)),
  ];
}

/** The stop strips at both stiles, front and back. */
function cutStops({ panel, parts, plan, whole }: Within): Mark[] {
  const stop = partOf(parts, panel, 'stop');
  const box = stopBox(panel, stop);
  if (!stop || !box) return [];
  return ([1, -1] as const).flatMap((side) =>
    ([0, 1] as const).flatMap((end) => {
      const x = end === 0 ? panel.clear.left : panel.clear.left + panel.clear.width - box.width;
      if (x < whole[0] - 1e-6 || x + box.width > whole[1] + 1e-6) return [];
      const face = planBox(plan, [x, x + box.width], [side * box.from, side * box.to]);
      return cutFace(rectangle(face), { grain: 'end', of: stop.letter });
    }),
  );
}

/** The stop strips: how wide they are along the panel, and from where to where through it, mm; undefined without stops. */
export function stopBox(
  panel: Panel,
  part: Part | undefined,
): { readonly width: number; readonly from: number; readonly to: number } | undefined {
  const through = stopThickness(panel);
  if (!part || through <= 0) return undefined;
  // The section is listed larger side first; the side that isn't the room before the stile's face runs along the panel.
  const width = Math.abs(part.thickness - through) < Math.abs(part.width - through) ? part.width : part.thickness;
  const to = panel.stile.depth / 2;
  return { width, from: to - through, to };
}

/** Staves and stiles, cut across: end grain. A stile is broken off where the stretch ends in it. */
function cutUprights({ panel, parts, plan, whole }: Within): Mark[] {
  const { staves, stile, outside } = panel;
  const staveOf = partOf(parts, panel, 'stave')?.letter;
  const stileOf = partOf(parts, panel, 'stile')?.letter;
  const inside = ([x0, x1]: Stretch): boolean => x0 >= whole[0] - 1e-6 && x1 <= whole[1] + 1e-6;
  const stileAt = [0, outside.width - stile.width]
    .map((x): Stretch => [Math.max(x, whole[0]), Math.min(x + stile.width, whole[1])])
    .filter(([from, to]) => to - from > 1e-6);
  const staveAt = staves.lefts.map((x): Stretch => [x, x + staves.width]).filter(inside);
  return [
    ...staveAt.flatMap((at) => {
      const face = rectangle(planBox(plan, at, [-staves.depth / 2, staves.depth / 2]));
      return cutFace(face, { grain: 'end', ...(staveOf === undefined ? {} : { of: staveOf }) });
    }),
    ...stileAt.flatMap(([from, to]) => {
      const half = stile.depth / 2;
      const face = rectangle(planBox(plan, [from, to], [-half, half]));
      const isWhole = to - from > stile.width - 1e-6;
      const [broken, kept] = from > 1e-6 && from < outside.width / 2 ? [from, to] : [to, from];
      const open = [plan(broken, half), plan(kept, half), plan(kept, -half), plan(broken, -half)];
      return cutFace(face, {
        grain: 'end',
        angle: -45,
        ...(isWhole ? {} : { inked: polyline(open) }),
        ...(stileOf === undefined ? {} : { of: stileOf }),
      });
    }),
  ];
}
