import { ceilToMark, INCH, type Marks } from '../length.ts';
import { type Gauge, screwDiameter, screwLengths } from './gauge.ts';

/** A screw chosen for the pieces it joins, mm. */
export interface ChosenScrew {
  readonly gauge: Gauge;
  readonly diameter: number;
  readonly length: number;
  /** Wood between the head and the piece that the thread bites. */
  readonly through: number;
  /** Thread in the far piece. */
  readonly penetration: number;
  /** How deep the head is sunk below the face in a bored hole; 0: flush, countersunk. */
  readonly counterbore: number;
}

/** What a screw has to join, mm. */
export interface Joint {
  /** Gauges to try, the best first. */
  readonly gauges: readonly Gauge[];
  /** Thickness of the piece under the head, with anything between it and the far piece. */
  readonly through: number;
  /** Most that the thread may reach into the far piece. */
  readonly room: number;
  /** Wood to keep under the head where a thick piece is counterbored; absent: no counterbore. */
  readonly keep?: number;
  readonly unit: Marks['unit'];
}

/** Thread wanted in the far piece, and the least, in diameters of the screw. NDS 12.1.5.6, for loads across the screw. */
export const PENETRATION: { readonly wanted: number; readonly least: number } = { wanted: 10, least: 6 };

/** Steps of the depth that a head is sunk, mm: 1/16 in or 1 mm; common practice, no source. */
const BORED: Readonly<Record<Marks['unit'], number>> = { in: INCH / 16, mm: 1 };

/**
 * The screw for a joint: of the first gauge that reaches it, the shortest length with ten diameters of thread in the far
 * piece, or as much as its thickness lets in. Where even six diameters cannot be had, the screw that comes nearest.
 */
export function chooseScrew({ gauges, through, room, keep, unit }: Joint): ChosenScrew {
  // Bored to a depth that a tape reads, so that list, drawing and step tell one figure.
  const bored = keep === undefined ? 0 : ceilToMark(Math.max(0, through - keep), BORED[unit]);
  const under = through - bored;
  const tries = gauges.map((gauge) => tryGauge(gauge, under, room, unit));
  const share = ({ penetration, diameter }: ChosenScrew) => penetration / diameter;
  const good = tries.find((screw) => share(screw) >= PENETRATION.least - 1e-9);
  const best = good ?? tries.reduce((a, b) => (share(b) > share(a) ? b : a));
  return { ...best, counterbore: through - under };
}

function tryGauge(gauge: Gauge, through: number, room: number, unit: Marks['unit']): ChosenScrew {
  const diameter = screwDiameter(gauge);
  const lengths = screwLengths(gauge, unit).filter((length) => length <= through + room + 1e-9);
  const wanted = through + PENETRATION.wanted * diameter;
  const length = lengths.find((each) => each >= wanted - 1e-9) ?? lengths.at(-1) ?? screwLengths(gauge, unit)[0] ?? 0;
  return {
    gauge,
    diameter,
    length,
    through,
    penetration: Math.max(0, Math.min(length - through, room)),
    counterbore: 0,
  };
}
