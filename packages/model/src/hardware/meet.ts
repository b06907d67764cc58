import type { Panel } from '../panel/panel.ts';
import type { Place } from '../uses/place.ts';
import { headDiameter } from './gauge.ts';
import { plugFor } from './plug.ts';
import type { JointName, JointToScrew, ScrewRow } from './row.ts';

/** Wood to keep between two screws in the same piece, mm; common practice, no source. */
export const WOOD_BETWEEN = 3;

/** A stretch of a screw as it lies in the panel frame, from its head inwards, mm. */
export interface Stretch {
  readonly from: Place;
  readonly to: Place;
  readonly radius: number;
  /** A head that lies flush only has to clear another head. */
  readonly head: boolean;
}

type Fastener = Pick<ScrewRow['fastener'], 'diameter' | 'length'> | ScrewRow['fastener'];

/** Screws or pins of one kind, driven one way. */
export interface Drive extends Pick<ScrewRow, 'along'> {
  readonly fastener: Fastener;
  readonly outward?: boolean;
}

/** Shaft, bored hole over a sunk head, and head of a screw or pin that is driven from a place. */
export function stretchesAt({ fastener, along, outward = false }: Drive, place: Place, panel: Panel): Stretch[] {
  const { outside, display } = panel;
  const middle = { x: outside.width / 2, y: outside.height / 2, z: 0 };
  const way = (place[along] < middle[along] ? 1 : -1) * (outward ? -1 : 1);
  const at = (depth: number): Place => ({ ...place, [along]: place[along] + way * depth });
  const screw = 'gauge' in fastener ? fastener : undefined;
  const sunk = screw?.counterbore ?? 0;
  const shaft = { from: at(sunk), to: at(sunk + fastener.length), radius: fastener.diameter / 2, head: false };
  if (!screw) return [shaft];
  const head = { from: at(sunk), to: at(sunk), radius: headDiameter(screw.gauge) / 2, head: true };
  const bore = { from: place, to: at(sunk), radius: plugFor(screw, display).diameter / 2, head: false };
  return sunk > 0 ? [shaft, bore] : [shaft, head];
}

/** Every screw or pin of a joint in the panel; none of a joint that found no screw. */
export function jointStretches(joint: JointToScrew, panel: Panel): Stretch[][] {
  const fastener = joint.screw ?? joint.pin;
  if (!fastener) return [];
  return (joint.driven ?? joint.places).map((place) => stretchesAt({ ...joint, fastener }, place, panel));
}

/** Room that two screws leave beyond the wood to keep between them, mm; negative where they meet. */
export function roomBetween(one: readonly Stretch[], other: readonly Stretch[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const a of one)
    for (const b of other) {
      if (a.head !== b.head) continue;
      const keep = a.head ? 0 : WOOD_BETWEEN;
      least = Math.min(least, apart(a, b) - a.radius - b.radius - keep);
    }
  return least;
}

/** Whether a screw stays clear of all those. */
export function isClear(one: readonly Stretch[], others: readonly (readonly Stretch[])[]): boolean {
  return others.every((other) => roomBetween(one, other) >= -1e-6);
}

/** Those of many screws that come within a reach of a height. */
export function nearHeight(all: readonly Stretch[][], y: number, reach: number): Stretch[][] {
  return all.filter((stretches) =>
    stretches.some(({ from, to }) => Math.min(from.y, to.y) <= y + reach && Math.max(from.y, to.y) >= y - reach),
  );
}

/** Two joints whose screws come too near to one another. */
export interface Meeting {
  readonly joints: readonly [JointName, JointName];
  /** Wood left between the nearest two, mm; negative where they run into one another. */
  readonly wood: number;
}

/** Joints of a panel whose screws meet, each pair once with its nearest two. */
export function meetings(rows: readonly ScrewRow[], panel: Panel): Meeting[] {
  const all = rows.flatMap((row) =>
    row.driven.map((place) => ({ joint: row.joint, stretches: stretchesAt(row, place, panel) })),
  );
  const found = new Map<string, Meeting>();
  all.forEach((one, i) => {
    for (const other of all.slice(i + 1)) {
      const room = roomBetween(one.stretches, other.stretches);
      if (room >= -1e-6) continue;
      const key = `${one.joint}|${other.joint}`;
      const wood = room + WOOD_BETWEEN;
      if (wood < (found.get(key)?.wood ?? Number.POSITIVE_INFINITY))
        found.set(key, { joints: [one.joint, other.joint], wood });
    }
  });
  return [...found.values()];
}

/**
 * Distance of two stretches, each along one axis of the panel frame. Along an axis they are intervals: the gap between
 * two intervals axis by axis, since a stretch is a box without width. Derived; checked against points on both.
 */
function apart(a: Stretch, b: Stretch): number {
  return Math.hypot(gap(a, b, 'x'), gap(a, b, 'y'), gap(a, b, 'z'));
}

function gap(a: Stretch, b: Stretch, axis: 'x' | 'y' | 'z'): number {
  const [a0, a1, b0, b1] = [a.from[axis], a.to[axis], b.from[axis], b.to[axis]];
  return Math.max(0, Math.min(a0, a1) - Math.max(b0, b1), Math.min(b0, b1) - Math.max(a0, a1));
}
