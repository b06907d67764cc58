import {
  headDiameter,
  type JointName,
  type Panel,
  type PanelPlace,
  type ScrewRow,
  screwSchedule,
} from '@wattlewright/model';
import { fractions } from '../lettering.ts';
import type { Mark, Point } from '../mark.ts';
import { stroke } from '../mark.ts';
import { circle, line, polygon, polyline } from '../path.ts';
import { said } from './detaildrawing.ts';

/** The screws of a joint of a panel; undefined where the joint has none, or pins. */
export function screwsOf(panel: Panel, joint: JointName): ScrewRow | undefined {
  return screwSchedule(panel).find((row) => row.joint === joint && row.fastener.kind === 'screw');
}

/** The name of a row's screw as drawings letter it. */
export function screwName({ name }: ScrewRow): string {
  return fractions(name);
}

/** Length from the face to the screw's tip, mm: it starts at the bottom of its counterbore. */
export function screwReach({ fastener }: ScrewRow): number {
  return fastener.length + (fastener.kind === 'screw' ? fastener.counterbore : 0);
}

/** How far the centre line runs past a screw at both ends, mm on paper. */
const CENTRE_PAST = 2;

/** A screw thinner than this on paper, mm, is its centre line alone. */
const SHAPE_FROM = 0.8;

/** Where a screw lies on paper: its head's middle on the face, and the way it is driven as a unit vector. */
export interface ScrewLine {
  readonly from: Point;
  readonly way: readonly [u: number, v: number];
  readonly scale: number;
}

/**
 * A screw hidden in the wood, seen from the side, true to size: its counterbore with the plug over it, countersunk head, shank and point, and
 * its centre line. Thinner on paper than a dashed pair can show, the centre line stands alone.
 */
export function screwSide(row: ScrewRow, { from, way, scale }: ScrewLine): Mark[] {
  const { fastener, plug } = row;
  const at = (along: number, across: number): Point => [
    from[0] + (way[0] * along - way[1] * across) * scale,
    from[1] + (way[1] * along + way[0] * across) * scale,
  ];
  const past = CENTRE_PAST / scale;
  const reach = screwReach(row);
  const centre = stroke('centre', line(at(-past, 0), at(reach + past, 0)));
  if (fastener.kind === 'pin' || !hasShape(row, scale)) return [centre];
  const [r, head, bore] = [fastener.diameter / 2, headDiameter(fastener.gauge) / 2, fastener.counterbore];
  const bit = (plug?.diameter ?? 2 * head) / 2;
  const half = (way: 1 | -1): Point[] => [
    ...(bore > 0 ? [at(0, way * bit), at(bore, way * bit), at(bore, way * head)] : [at(0, way * head)]),
    at(bore + head - r, way * r),
    at(reach - 2 * r, way * r),
    at(reach, 0),
  ];
  const side = (way: 1 | -1): Mark => stroke('hidden', polyline(half(way)));
  // The plug that closes the bore over the head, where one does.
  const filled =
    bore > 0 && !plug?.open
      ? [stroke('wood-shade', polygon([at(0, bit), at(bore, bit), at(bore, -bit), at(0, -bit)]))]
      : [];
  return [...filled, side(1), side(-1), centre];
}

/** Whether a screw seen from the side is wide enough on paper for its shape. */
export function hasShape({ fastener }: ScrewRow, scale: number): boolean {
  return fastener.kind === 'screw' && fastener.diameter * scale >= SHAPE_FROM;
}

/**
 * Screws of one joint side by side at different depths, the nearest first: that one in full, those behind it by their centre
 * lines alone, since two dashed shapes in each other look like one bolt.
 */
export function screwsSide(row: ScrewRow, [nearest, ...behind]: readonly ScrewLine[]): Mark[] {
  if (!nearest) return [];
  const apart = behind.filter(({ from }) => Math.hypot(from[0] - nearest.from[0], from[1] - nearest.from[1]) > 0.01);
  const lines = apart.flatMap((one) => screwSide(row, one).filter(({ role }) => role === 'centre'));
  return [...lines, ...screwSide(row, nearest)];
}

/** A screw seen along its length: the circle of its head, hidden in the wood, and a cross of centre lines. */
export function screwEnd({ fastener }: ScrewRow, at: Point, scale: number): Mark[] {
  const radius = (fastener.kind === 'screw' ? headDiameter(fastener.gauge) / 2 : fastener.diameter / 2) * scale;
  const arm = radius + CENTRE_PAST;
  return [
    ...(radius >= 0.6 ? [stroke('edge-light', circle(at, radius))] : []),
    stroke('dimension', line([at[0] - arm, at[1]], [at[0] + arm, at[1]])),
    stroke('dimension', line([at[0], at[1] - arm], [at[0], at[1] + arm])),
  ];
}

/** How deep the heads of a row are sunk, mm; 0 where they are flush. */
export function sunkBy({ fastener }: ScrewRow): number {
  return fastener.kind === 'screw' ? fastener.counterbore : 0;
}

/** Places of a row near one corner of the panel, the nearest to the edge first. */
export function cornerPlaces({ places }: ScrewRow, { outside }: Panel): readonly PanelPlace[] {
  return places
    .filter(({ x, y }) => x < outside.width / 2 && y < outside.height / 2)
    .toSorted((a, b) => a.x - b.x || b.z - a.z);
}

/** The plug over a sunk head, by its diameter. */
export function plugText({ display }: Panel, { plug }: ScrewRow): string {
  if (!plug) return 'plugs';
  const across = display.unit === 'in' ? `${fractions(plug.drill.inch)} in` : said(plug.diameter, display);
  return `${across} plugs`;
}
