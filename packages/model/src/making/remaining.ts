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
