import type { Box, Point } from '../mark.ts';
import type { Segment } from './clearance.ts';
import { crossesBox, grown, overlaps, segmentsCross } from './clearance.ts';
import { TEXT_CLEAR } from './style.ts';

/** A note that wants a place: what it points at, and how large it is. */
export interface Demand {
  readonly at: Point;
  readonly lines: readonly string[];
  readonly width: number;
  readonly height: number;
  /** Room wanted to the next one, mm. */
  readonly apart: number;
}

/** A place in a column: the note's box, and where its leader ends. */
export interface Spot {
  readonly box: Box;
  readonly port: Point;
}

/** The column beside a view: its edge towards the view, and the view's own height. */
export interface Column {
  readonly side: 'left' | 'right';
  readonly edge: number;
  readonly v0: number;
  readonly v1: number;
  readonly keepOut: readonly Box[];
}

function spotAt({ side, edge }: Column, { width, height }: Demand, v: number): Spot {
  const [u0, u1] = side === 'right' ? [edge, edge + width] : [edge - width, edge];
  const port: Point = [side === 'right' ? edge - TEXT_CLEAR / 2 : edge + TEXT_CLEAR / 2, v];
  return { box: { u0, v0: v - height / 2, u1, v1: v + height / 2 }, port };
}

/**
 * A place for each note of one column. Tries several orders of placing, each note as near its target as it can stand
 * free, and keeps the order with the shortest leaders. When no order stands free of the boxes to keep out of, the notes
 * still stand clear of each other and no two leaders cross.
 */
export function spots(demands: readonly Demand[], column: Column): Spot[] {
  if (demands.length === 0) return [];
  const keys = [...demands.keys()];
  const at = (i: number): Point => (demands[i] as Demand).at;
  const far = (i: number): number => Math.abs(at(i)[0] - column.edge);
  const orders = [
    keys.toSorted((i, j) => at(i)[1] - at(j)[1] || far(i) - far(j)),
    keys.toSorted((i, j) => at(j)[1] - at(i)[1] || far(i) - far(j)),
    keys.toSorted((i, j) => far(i) - far(j) || at(i)[1] - at(j)[1]),
    keys.toSorted((i, j) => far(j) - far(i) || at(i)[1] - at(j)[1]),
  ];
  let best: { placed: Spot[]; length: number } | undefined;
  for (const order of orders) {
    const placed = greedy(demands, column, order);
    if (!placed) continue;
    const length = placed.reduce((sum, { port: [u, v] }, i) => sum + Math.hypot(u - at(i)[0], v - at(i)[1]), 0);
    if (!best || length < best.length - 1e-9) best = { placed, length };
  }
  return best?.placed ?? untangled(demands, column);
}

/** Places notes in the order given; undefined when one finds no free place. */
function greedy(demands: readonly Demand[], column: Column, order: readonly number[]): Spot[] | undefined {
  const placed: (Spot | undefined)[] = demands.map(() => undefined);
  const reach =
    Math.max(
      column.v1 - column.v0,
      demands.reduce((sum, { height, apart }) => sum + height + 1 + apart, 0),
    ) + 20;
  for (const i of order) {
    const demand = demands[i] as Demand;
    const set = placed.flatMap((spot, j) => {
      const { at, apart } = demands[j] as Demand;
      return spot ? [{ spot, at, apart: Math.max(apart, demand.apart) }] : [];
    });
    const ends = demands.flatMap(({ at }, j) => (j === i ? [] : [at]));
    for (let shift = 0; shift <= reach && !placed[i]; shift += 0.5)
      for (const v of shift === 0 ? [demand.at[1]] : [demand.at[1] - shift, demand.at[1] + shift]) {
        const spot = spotAt(column, demand, v);
        if (!placed[i] && free(spot, demand.at, set, column.keepOut, ends)) placed[i] = spot;
      }
    if (!placed[i]) return undefined;
  }
  return placed as Spot[];
}

function free(
  { box, port }: Spot,
  at: Point,
  set: readonly { spot: Spot; at: Point; apart: number }[],
  keepOut: readonly Box[],
  ends: readonly Point[],
): boolean {
  const lead: Segment = [at, port];
  const roomy = grown(box, TEXT_CLEAR / 2);
  if (keepOut.some((other) => overlaps(roomy, other) || crossesBox(lead, other))) return false;
  if (
    ends.some(([u, v]) => crossesBox(lead, { u0: u - 0.6, v0: v - 0.6, u1: u + 0.6, v1: v + 0.6 }) && !near(at, [u, v]))
  )
    return false;
  return set.every(
    (other) =>
      !overlaps(box, grown(other.spot.box, other.apart)) &&
      !segmentsCross(lead, [other.at, other.spot.port]) &&
      !crossesBox(lead, other.spot.box) &&
      !crossesBox([other.at, other.spot.port], box),
  );
}

/** Two targets closer than their dots are wide cannot keep out of each other's way. */
function near(a: Point, b: Point): boolean {
  return Math.hypot(a[0] - b[0], a[1] - b[1]) < 1.5;
}

/**
 * Equal slots down the column, exchanged between notes as long as two leaders cross. Each exchange shortens the sum of
 * the leaders (the two diagonals of a quadrangle exceed either pair of opposite sides), so it ends, without crossings.
 */
function untangled(demands: readonly Demand[], column: Column): Spot[] {
  const slot = Math.max(...demands.map(({ height, apart }) => height + apart));
  const middle = (column.v0 + column.v1) / 2;
  const order = [...demands.keys()].toSorted((i, j) => (demands[i] as Demand).at[1] - (demands[j] as Demand).at[1]);
  const slots = order.map((_, k) => middle + (k - (order.length - 1) / 2) * slot);
  const spotOf = (k: number): Spot => spotAt(column, demands[order[k] as number] as Demand, slots[k] as number);
  const leadOf = (k: number): Segment => [(demands[order[k] as number] as Demand).at, spotOf(k).port];
  for (let again = true; again; ) {
    again = false;
    for (let a = 0; a < order.length; a++)
      for (let b = a + 1; b < order.length; b++)
        if (segmentsCross(leadOf(a), leadOf(b))) {
          [order[a], order[b]] = [order[b] as number, order[a] as number];
          again = true;
        }
  }
  const placed: Spot[] = [];
  order.forEach((i, k) => {
    placed[i] = spotOf(k);
  });
  return placed;
}
