import type { Panel } from '../panel/panel.ts';
import type { Part } from '../parts/part.ts';

/** Pieces of one part that are still to be cut once the slats have been measured. */
export interface RemainingCut {
  readonly letter: string;
  readonly name: string;
  readonly count: number;
  /** Length from the measured stack, mm. */
  readonly length: number;
}

/** Parts whose length or size follows the measured stack, and are left until it is known. */
const AFTER_THE_STACK: readonly Part['role'][] = ['stile', 'stave', 'cover strip', 'filler', 'stop'];

/**
 * What is still to cut when the slats are cut and measured: stiles, staves and strips, and slats where more broke than
 * there were spares (those that `partsOf` adds for the broken ones are not there yet). Empty while none is measured.
 */
export function remainingCuts(panels: readonly Panel[], parts: readonly Part[]): RemainingCut[] {
  const measured = panels.filter(({ asBuilt }) => asBuilt);
  const names = new Set(measured.map(({ name }) => name));
  const broken = measured.reduce((sum, { asBuilt }) => sum + (asBuilt?.broken ?? 0), 0);
  const spares = parts.reduce((sum, { role, spare }) => sum + (role === 'slat' ? spare : 0), 0) - broken;
  let missing = Math.max(0, broken - spares);
  return parts.flatMap((part): RemainingCut[] => {
    const { letter, name, role, length, where } = part;
    const own = where.filter(({ panel }) => names.has(panel)).reduce((sum, { count }) => sum + count, 0);
    if (AFTER_THE_STACK.includes(role)) return own > 0 ? [{ letter, name, count: own, length }] : [];
    if (role !== 'slat' || own === 0 || missing === 0) return [];
    const count = missing;
    missing = 0;
    return [{ letter, name, count, length }];
  });
}

/**
 * Parts with the pieces that are still to be cut: of measured panels what `remainingCuts` tells, of the others all. The
 * very parts while nothing is measured; parts of which nothing is left to cut are not among them.
 */
export function partsToCut(panels: readonly Panel[], parts: readonly Part[]): readonly Part[] {
  const measured = new Set(panels.filter(({ asBuilt }) => asBuilt).map(({ name }) => name));
  if (measured.size === 0) return parts;
  const left = new Map(remainingCuts(panels, parts).map(({ letter, count }) => [letter, count]));
  return parts.flatMap((part): Part[] => {
    const others = part.where.filter(({ panel }) => !measured.has(panel));
    const own = left.get(part.letter) ?? 0;
    const count = own + others.reduce((sum, place) => sum + place.count, 0);
    if (count === 0) return [];
    const waiting = part.where.filter(({ panel }) => measured.has(panel));
    const where = own > 0 ? [...others, ...waiting] : others;
    // Slats of measured panels have their spares already, whatever the share for those that are still to be cut.
    const spare = others.length > 0 ? part.spare : 0;
    return [{ ...part, count, spare, where }];
  });
}
