import { INCH, type Marks } from '../length.ts';
import { type Gauge, headDiameter } from './gauge.ts';
import type { Drill } from './pilot.ts';

/** A hole bored over a screw's head, and the wooden plug glued into it. */
export interface Plug {
  /** Bit, and plug of the same diameter; mm. */
  readonly drill: Drill;
  readonly diameter: number;
  /** How deep the head lies below the face, mm. */
  readonly depth: number;
}

/** Diameters that plug cutters make, 64ths of an inch and millimetres; common practice, no source. */
const CUTTERS = { in: [24, 32, 40, 48], mm: [10, 12, 15, 20] } as const;
const FRACTIONS: Readonly<Record<number, string>> = { 24: '3/8', 32: '1/2', 40: '5/8', 48: '3/4' };

/** Wooden plug for a head sunk that deep: the smallest cutter that lets the head through. */
export function plugFor({ gauge, counterbore }: { gauge: Gauge; counterbore: number }, { unit }: Marks): Plug {
  const sizes = CUTTERS[unit].map((size) => (unit === 'in' ? (size / 64) * INCH : size));
  const diameter = sizes.find((each) => each >= headDiameter(gauge)) ?? (sizes.at(-1) as number);
  const nearest = Math.round((diameter / INCH) * 8) * 8;
  return { drill: { inch: FRACTIONS[nearest] ?? '3/8', metric: Math.round(diameter) }, diameter, depth: counterbore };
}
