import type { Side } from '../../src/weave/pattern.ts';
import { inch, poundForce, psi } from '../../src/wood/inchpound.ts';

// The panel that most worked numbers are for, 44 1/2 in clear: five staves 3/4 in along and 5/8 in through it, slats
// 3/16 x 1 5/8 in of yellow-cedar, 1.42e6 and 11 100 psi. Offset (5/8 + 3/16)/2 = 0.40625 in, pitch 43.75/4 = 10.9375 in.
export const typical = {
  clearWidth: 44.5 * inch,
  staves: { count: 5, width: 0.75 * inch, depth: 0.625 * inch },
  slat: { thickness: 0.1875 * inch, height: 1.625 * inch },
  modulus: 1.42e6 * psi,
  strength: 11100 * psi,
};

export const offset: number = 0.40625 * inch;

/** The same weave without ends. */
export const typicalPlain = {
  pitch: 10.9375 * inch,
  staveWidth: 0.75 * inch,
  staveDepth: 0.625 * inch,
  slatThickness: 0.1875 * inch,
  modulus: 1.42e6 * psi,
  strength: 11100 * psi,
};

/** The typical panel with another number of staves at some pitch, in. */
export function withStaves(count: number, pitch = 10.9375): typeof typical {
  const clearWidth = ((count - 1) * pitch + 0.75) * inch;
  return { ...typical, clearWidth, staves: { ...typical.staves, count } };
}

/** Sides from `f` in front and `b` behind. */
export function sidesOf(row: string): Side[] {
  return Array.from(row, (letter) => (letter === 'f' ? 1 : -1));
}

/** Plain weave's row, the first stave in front. */
export function plainRow(staves: number): Side[] {
  return Array.from({ length: staves }, (_, j) => (j % 2 === 0 ? 1 : -1));
}

/** Every row of some staves, the first in front: the others are their mirror images front to back. */
export function everyRow(staves: number): Side[][] {
  return Array.from({ length: 2 ** (staves - 1) }, (_, bits) =>
    Array.from({ length: staves }, (_, j): Side => (j > 0 && (bits >> (j - 1)) & 1 ? -1 : 1)),
  );
}

/** In inches and pounds-force, as the worked numbers are. */
export function inInches(length: number): number {
  return length / inch;
}

/** In pounds-force. */
export function inPounds(force: number): number {
  return force / poundForce;
}
