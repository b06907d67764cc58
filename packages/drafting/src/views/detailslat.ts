import { type Panel, type RowBehaviour, type Sample, sampleSlat } from '@wattlewright/model';
import type { Mark, Path, Point, Step } from '../mark.ts';
import { stroke } from '../mark.ts';
import { curve } from '../path.ts';
import type { View } from '../view.ts';
import { edgeOf, isLined } from './grain.ts';
import type { Stretch } from './passes.ts';

/** Between two samples of a slat's curve, mm at most: the cubic through ends and slopes is then true to a micron. */
const SAMPLE_STEP = 12;

/**
 * Where the centre line of a slat starts and ends, mm from the left stile's inner face. A square end that slopes touches
 * its stile with one corner, so its centre stands off by half the thickness times the sine of the slope; the length cut
 * is rounded down to the mark, and the play this leaves is shared between both ends.
 */
export function slatEnds(panel: Pick<Panel, 'clear' | 'courses'>, { bend, cutLength }: RowBehaviour): Stretch {
  const half = panel.courses.thickness / 2;
  const play = Math.max(0, bend.cutLength - cutLength) / 2;
  const [left, right] = bend.endSlopes.map((slope) => (half * Math.abs(slope)) / Math.hypot(1, slope)) as [
    number,
    number,
  ];
  return [left + play, panel.clear.width - right - play];
}

/** Centre-line samples from end to end of a stretch: every knot of the curve, and steps between. */
function samples({ bend }: RowBehaviour, [from, to]: Stretch): (Sample & { readonly x: number })[] {
  const stops = [from, ...bend.knots.map(({ x }) => x).filter((x) => x > from + 1e-6 && x < to - 1e-6), to];
  const xs = stops.flatMap((x, i) => {
    const next = stops[i + 1];
    if (next === undefined) return [x];
    const pieces = Math.max(2, Math.ceil((next - x) / SAMPLE_STEP));
    return Array.from({ length: pieces }, (_, k) => x + ((next - x) * k) / pieces);
  });
  return xs.map((x) => ({ x, ...sampleSlat(bend, x) }));
}

/** The line parallel to the centre line at `off` mm to the front of it, in the panel's plan: `[x, z, dz/dx]`. */
function parallel(centre: readonly (Sample & { readonly x: number })[], off: number): [number, number, number][] {
  return centre.map(({ x, z, slope }) => {
    const length = Math.hypot(1, slope);
    return [x - (off * slope) / length, z + off / length, slope];
  });
}

/** What `slatPlan` needs to know. */
export interface SlatPlan {
  readonly panel: Panel;
  readonly row: RowBehaviour;
  /** The stretch to draw, x from the left stile's inner face; cut off square to x where it ends inside the slat. */
  readonly stretch?: Stretch;
  /** Maps a place in the plan to paper: x from the panel’s left edge, z to the front, which is down on paper. */
  readonly plan: View;
}

/** Outline of a slat looking down: both faces parallel to its bent centre line, half the thickness off, ends square. */
export function slatOutline({ panel, row, stretch, plan }: SlatPlan): Path {
  const half = panel.courses.thickness / 2;
  const centre = samples(row, within(slatEnds(panel, row), stretch));
  const front = faceCurve(parallel(centre, half), panel, plan);
  const back = faceCurve(parallel(centre, -half).toReversed(), panel, plan);
  return [...front, ...back.map((step): Step => (step[0] === 'M' ? ['L', step[1], step[2]] : step)), ['Z']];
}

/** The centre line of a slat looking down, for a scale at which its two faces would be one line. */
export function slatLine({ panel, row, stretch, plan }: SlatPlan): Path {
  return faceCurve(parallel(samples(row, within(slatEnds(panel, row), stretch)), 0), panel, plan);
}

function within([low, high]: Stretch, stretch: Stretch = [low, high]): Stretch {
  return [Math.max(low, stretch[0]), Math.min(high, stretch[1])];
}

function faceCurve(points: readonly [number, number, number][], panel: Panel, plan: View): Path {
  return curve(
    points.map(([x, z, slope]) => {
      const [u, v]: Point = plan(panel.clear.left + x, z);
      return [u, v, slope] as const;
    }),
  );
}

/** Places of the grain lines across a slat, as shares of its half thickness: uneven, so as not to look like lining. */
const GRAIN_LINES = [-0.55, -0.05, 0.4];

/** A slat that the section cuts along its length: long grain, its lines following the bend. `scale` is the drawing's. */
export function cutSlat(slat: SlatPlan, scale: number, of?: string): Mark[] {
  const outline = slatOutline(slat);
  const narrow = slat.panel.courses.thickness * scale;
  if (!isLined(narrow)) return [stroke('wood-shade', outline, of), stroke('edge-light', outline, of)];
  const { panel, row, stretch, plan } = slat;
  const centre = samples(row, within(slatEnds(panel, row), stretch));
  const shares = narrow < 3 ? GRAIN_LINES.slice(1, 2) : GRAIN_LINES;
  const lines = shares.map((share) =>
    stroke('hatch-long', faceCurve(parallel(centre, (share * panel.courses.thickness) / 2), panel, plan), of),
  );
  return [stroke('paper', outline, of), ...lines, stroke(edgeOf(narrow), outline, of)];
}

/** The slat of a course where a plane across the panel cuts it: z of the middle, and its width measured along z, mm. */
export function slatAcross(
  row: RowBehaviour,
  x: number,
  thickness: number,
): { readonly z: number; readonly through: number } {
  const { z, slope } = sampleSlat(row.bend, x);
  return { z, through: thickness * Math.hypot(1, slope) };
}
