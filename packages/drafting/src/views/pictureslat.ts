import { type Panel, type RowBehaviour, sampleSlat } from '@wattlewright/model';
import { pointsOf } from '../ink.ts';
import type { Path, PathMark, Point } from '../mark.ts';
import { stroke } from '../mark.ts';
import { curve, polygon } from '../path.ts';
import type { Axonometry } from './axonometry.ts';
import { faceShade, TO_LIGHT } from './axonometry.ts';
import { shaded } from './pictureblock.ts';

/** One row's slat cut into facets of one grey each, the same for all its courses. */
export interface SlatFacets {
  readonly row: RowBehaviour;
  /** Ends of the facets, from the left: distances from the left stile's inner face, mm, and greys. */
  readonly facets: readonly { readonly from: number; readonly to: number; readonly shade: number }[];
  /** The commonest grey. The whole front is painted with it first, so that no light line shows where facets meet. */
  readonly ground: number;
}

/** Places looked at in each bay. */
const LOOKS = 12;

/** The step between greys that are told apart: coarser where many courses cross many bays, each small on paper. */
function greyStep({ courses, staves }: Panel): number {
  return Math.min(0.12, Math.max(0.03, (0.03 * courses.count * (staves.count - 1)) / 300));
}

/** How much darker a slat is at the bottom of a dip, where less light comes in, and by its slope of 1. */
const DIP = 0.2;
const TURN = 0.55;

/** How much a shadow darkens. */
const SHADOW = 0.8;

/** The facets of a slat: darker where it dips behind, where it turns from the light, and in the left stile's shadow. */
export function slatFacets(panel: Panel, row: RowBehaviour): SlatFacets {
  const { clear, staves, courses, stile } = panel;
  const farthest = (staves.depth + courses.thickness) / 2;
  const steps = Math.max(2, Math.round((clear.width / staves.pitch) * LOOKS));
  const grade = greyStep(panel);
  const facets: { from: number; to: number; shade: number }[] = [];
  for (let i = 0; i < steps; i++) {
    const [from, to] = [(clear.width * i) / steps, (clear.width * (i + 1)) / steps];
    const { z, slope } = sampleSlat(row.bend, (from + to) / 2);
    const dip = Math.min(1, Math.max(0, (farthest - z) / (2 * farthest)));
    const lit = faceShade({ x: 0, y: 0, z: 1 }) + TURN * slope - DIP * dip;
    const reach = (-TO_LIGHT.x / TO_LIGHT.z) * (stile.depth / 2 - z - courses.thickness / 2);
    const grey = Math.min(0.97, Math.max(0.5, lit)) * ((from + to) / 2 < reach ? SHADOW : 1);
    const shade = Math.round(grey / grade) * grade;
    const last = facets.at(-1);
    if (last && Math.abs(last.shade - shade) < grade / 2) last.to = to;
    else facets.push({ from, to, shade });
  }
  return { row, facets, ground: commonest(facets) };
}

function commonest(facets: SlatFacets['facets']): number {
  const lengths = new Map<number, number>();
  for (const { from, to, shade } of facets) lengths.set(shade, (lengths.get(shade) ?? 0) + to - from);
  return [...lengths].reduce((best, one) => (one[1] > best[1] ? one : best))[0];
}

/** What `slatInk` needs to know. */
export interface SlatInk {
  readonly panel: Panel;
  readonly to: Axonometry;
  readonly of: string | undefined;
}

/**
 * One course of slat: its upper edge's face, its front in facets, its edges. `y` is its lower edge. The edges are exact
 * curves; facets are straight between their ends, and those of one grey are one path.
 */
export function slatInk(slat: SlatFacets, y: number, { panel, to, of }: SlatInk): PathMark[] {
  const { row, facets, ground } = slat;
  const { clear, courses } = panel;
  const half = courses.thickness / 2;
  const top = y + courses.height;
  const point = (x: number, height: number): Point => to(clear.left + x, height, sampleSlat(row.bend, x).z + half);
  const low = edgeLine(panel, row, { to, y, off: half });
  const high = edgeLine(panel, row, { to, y: top, off: half });
  const back = edgeLine(panel, row, { to, y: top, off: -half });
  const faces = new Map<number, Path[]>();
  for (const { from, to: end, shade } of facets) {
    if (shade === ground) continue;
    const own = faces.get(shade) ?? [];
    faces.set(shade, own);
    own.push(polygon([point(from, y), point(end, y), point(end, top), point(from, top)]));
  }
  return [
    shaded(between(high, back), faceShade({ x: 0, y: 1, z: 0 }), of),
    shaded(between(low, high), ground, of),
    ...[...faces].map(([shade, paths]) => shaded(paths.flat(), shade, of)),
    ...shadowInk(slat, y, { panel, to, of }),
    stroke('edge-light', [...low, ...high], of),
  ];
}

/** The top rail's shadow on a course: each facet darkened from the shadow's edge up. */
function shadowInk({ row, facets }: SlatFacets, y: number, { panel, to, of }: SlatInk): PathMark[] {
  const { clear, courses, rail } = panel;
  const half = courses.thickness / 2;
  const top = y + courses.height;
  const edge = (x: number): number => {
    const falls = (TO_LIGHT.y / TO_LIGHT.z) * (rail.depth / 2 - sampleSlat(row.bend, x).z - half);
    return Math.min(top, Math.max(y, clear.bottom + clear.height - falls));
  };
  const point = (x: number, height: number): Point => to(clear.left + x, height, sampleSlat(row.bend, x).z + half);
  return facets.flatMap(({ from, to: end, shade }) => {
    const [a, b] = [edge(from), edge(end)];
    if (a > top - 0.01 && b > top - 0.01) return [];
    return [shaded(polygon([point(from, a), point(end, b), point(end, top), point(from, top)]), shade * SHADOW, of)];
  });
}

/** One edge of a slat from stile to stile at a height, `off` from its middle line: its own cubics, knot by knot. */
function edgeLine(
  { clear }: Panel,
  { bend }: RowBehaviour,
  { to, y, off }: { readonly to: Axonometry; readonly y: number; readonly off: number },
): Path {
  const inner = bend.knots.map(({ x }) => x).filter((x) => x > 1e-6 && x < clear.width - 1e-6);
  const line = curve(
    [0, ...inner, clear.width].map((x) => {
      const { z, slope } = sampleSlat(bend, x);
      return [x, z, slope] as const;
    }),
  );
  // The curve in plan, x and z, becomes the curve on paper: a parallel projection keeps cubics.
  const project = (x: number, z: number): Point => to(clear.left + x, y, z + off);
  return line.map((step) => {
    if (step[0] === 'C') {
      return ['C', ...project(step[1], step[2]), ...project(step[3], step[4]), ...project(step[5], step[6])];
    }
    return step[0] === 'Z' ? step : [step[0], ...project(step[1], step[2])];
  });
}

/** The face between two lines that run the same way, the second of curves. */
function between(a: Path, b: Path): Path {
  const points = pointsOf(b).reverse();
  const back: Path = points.flatMap((p, i): Path => {
    if (i === 0) return [['L', ...p]];
    if (i % 3 !== 0) return [];
    return [['C', ...(points[i - 2] as Point), ...(points[i - 1] as Point), ...p]];
  });
  return [...a, ...back, ['Z']];
}
