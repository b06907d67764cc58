import { formatLength, type Panel, screwSchedule } from '@wattlewright/model';
import { SAME, type Size } from '../layout/rows.ts';
import { TEXT } from '../layout/style.ts';
import { textWidth } from '../lettering.ts';
import type { Mark, PathMark, Point } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { circle, line, polyline } from '../path.ts';
import { markUnder } from './cutsize.ts';
import { screwsOf } from './detailscrew.ts';

/** Where one screw of the lower left corner stands: along the rail from its end, and off mid-depth to the front, mm. */
export interface ScrewCentre {
  readonly along: number;
  readonly z: number;
}

/** Half an arm of a centre cross, mm. */
const CROSS = 4;

/** The screws through the bottom rail into the left stile, as the screw schedule has them. */
export function cornerScrews(panel: Panel): ScrewCentre[] {
  const row = screwSchedule(panel).find(({ joint }) => joint === 'rail to stile');
  return (row?.places ?? [])
    .filter(({ x, y }) => y < panel.outside.height / 2 && x < panel.outside.width / 2)
    .map(({ x, z }) => ({ along: x, z }))
    .toSorted((a, b) => a.along - b.along);
}

/** Radius of the plugs over the corner's screws, mm; undefined where their heads are not sunk. */
export function plugRadius(panel: Panel): number | undefined {
  const plug = screwsOf(panel, 'rail to stile')?.plug;
  return plug && plug.diameter / 2;
}

/** A drilling centre: a cross to prick through the paper, ringed to be found. */
export function centreCross([u, v]: Point, of?: string): PathMark[] {
  return [
    stroke('tick', line([u - CROSS, v], [u + CROSS, v]), of),
    stroke('tick', line([u, v - CROSS], [u, v + CROSS]), of),
    stroke('dimension', circle([u, v], CROSS / 2), of),
  ];
}

/** Where a piece goes on beyond the paper: a line with a break in it, from `a` down to `b`. */
export function breakLine([u, v0]: Point, v1: number): PathMark {
  return stroke('dimension', polyline(broken(v0, v1).map(([along, aside]): Point => [u + aside, along])));
}

/** The same across: from `a` to `u1` on its right. */
export function breakAcross([u0, v]: Point, u1: number): PathMark {
  return stroke('dimension', polyline(broken(u0, u1).map(([along, aside]): Point => [along, v + aside])));
}

/** A line from one place to another with a break half-way: how far along, and how far aside. */
function broken(from: number, to: number): (readonly [along: number, aside: number])[] {
  const middle = (from + to) / 2;
  return [
    [from, 0],
    [middle - 4, 0],
    [middle - 1.5, 2.5],
    [middle + 1.5, -2.5],
    [middle + 4, 0],
    [to, 0],
  ];
}

/** The unit of the printed sizes, in words. */
export function unitName({ display }: Panel): string {
  return display.unit === 'in' ? 'inches' : 'mm';
}

/** A size between two places on paper at full size, rounded once: to the coarsest mark that it lies on, else to the job's. */
export function fullSize(panel: Panel, from: number, to: number, of?: string): Size {
  const value = Math.abs(to - from);
  const { unit, mark } = panel.display;
  const text = formatLength(value, { unit, mark: markUnder(value, panel.display) ?? mark }, { fractions: 'stacked' });
  return { from, to, text, value, ...(of === undefined ? {} : { of }) };
}

/** Sizes from one place to several others, each once: places nearer than a hundredth are one. */
export function fullSizes(panel: Panel, from: number, places: readonly number[]): Size[] {
  const once = places.filter((place, i) => places.findIndex((other) => Math.abs(other - place) <= SAME) === i);
  return once.filter((place) => Math.abs(place - from) > SAME).map((place) => fullSize(panel, from, place));
}

/** Sizes across a face, each place from the edge that it is nearer to, as a marking gauge is set. */
export function gaugedSizes(panel: Panel, [from, to]: readonly [number, number], places: readonly number[]): Size[] {
  return [from, to].flatMap((edge) =>
    fullSizes(
      panel,
      edge,
      places.filter((place) => place - from <= to - place === (edge === from)),
    ),
  );
}

/** What the first stave is called on its own width. */
export function staveName([u0, u1]: readonly [number, number]): string {
  return textWidth('stave 1', TEXT) + 2 > u1 - u0 ? 'S1' : 'stave 1';
}

/** A text in the middle of a face, or nothing where the face is too narrow for it. */
export function nameIn(text: string, [u0, u1]: readonly [number, number], v: number): Mark[] {
  if (textWidth(text, TEXT) + 2 > u1 - u0) return [];
  return [write('note', text, [(u0 + u1) / 2, v], { height: TEXT, anchor: 'middle' })];
}
