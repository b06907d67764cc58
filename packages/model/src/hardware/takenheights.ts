import type { Panel } from '../panel/panel.ts';
import { sideFixings } from '../uses/fixings.ts';
import { gateDetails } from '../uses/gate.ts';
import { HINGE_SCREWS } from './row.ts';

/** Least distance between screws that cross in a stile, mm: 1 in, common practice, no source. */
const APART = 25.4;

/** Heights at which fixings and hinges drive screws through the stiles. */
function takenHeights(panel: Panel): number[] {
  switch (panel.details.use) {
    case 'screen':
    case 'guard':
      return sideFixings(panel).places.map(({ y }) => y);
    case 'gate':
      return gateDetails(panel).hinges.flatMap(({ y }) => [-1, 0, 1].map((i) => y + i * HINGE_SCREWS));
    case 'divider':
      return [];
  }
}

/**
 * Heights for screws in the stiles, moved by as little as it takes to stand clear of those of fixings and hinges, and
 * kept between two ends. A height that finds no free place there stays where it is.
 */
export function clearOfTaken(
  heights: readonly number[],
  panel: Panel,
  [low, high]: readonly [number, number],
): number[] {
  const taken = takenHeights(panel);
  const free = (y: number) =>
    y >= low - 1e-9 && y <= high + 1e-9 && taken.every((at) => Math.abs(at - y) >= APART - 1e-9);
  return heights.map((y) => {
    const tries = [y, ...taken.flatMap((at) => [at - APART, at + APART])].filter(free);
    return tries.reduce((best, each) => (Math.abs(each - y) < Math.abs(best - y) ? each : best), tries[0] ?? y);
  });
}
