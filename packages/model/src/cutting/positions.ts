import { addSize, eachSum, emptySums } from './sums.ts';
import { gcd } from './ticks.ts';

/** Sizes that pieces laid end to end can add up to, smallest first, beginning with 0. */
export interface Positions {
  readonly at: Int32Array;
  /** False where the list was thinned to the cap: still safe to plan with, but no longer good for a bound. */
  readonly complete: boolean;
}

/** Pieces of one size, at most `most` of them. */
export interface Run {
  readonly size: number;
  readonly most: number;
}

/**
 * The normal positions of a length: every sum of the given sizes up to `max`, each size used at most as often as it is
 * wanted. A cut anywhere else can be moved to the next lower one without loss.
 */
export function normalPositions(runs: readonly Run[], max: number, cap = 12_000): Positions {
  const grid = runs.reduce((unit, { size }) => gcd(unit, size), 0);
  if (grid > 0 && max / grid < cap) return { at: gridPositions(runs, Math.floor(max / grid), grid), complete: true };
  let sums: number[] = [0];
  let complete = true;
  for (const { size, most } of runs) {
    if (size > max) continue;
    const seen = new Set<number>(sums);
    let frontier = sums;
    for (let n = 0; n < most && frontier.length > 0; n++) {
      const next: number[] = [];
      for (const sum of frontier) {
        const to = sum + size;
        if (to <= max && !seen.has(to)) {
          seen.add(to);
          next.push(to);
        }
      }
      frontier = next;
      if (seen.size > 4 * cap) break;
    }
    sums = [...seen];
    if (sums.length > cap) {
      sums = thin(
        sums.sort((a, b) => a - b),
        cap >> 1,
      );
      complete = false;
    }
  }
  return { at: Int32Array.from(sums).sort(), complete };
}

/** The same where all sizes are whole multiples of a grid that is not too fine. */
function gridPositions(runs: readonly Run[], last: number, grid: number): Int32Array {
  const sums = emptySums(last);
  sums[0] = 1;
  for (const { size, most } of runs) {
    for (let n = 0; n < most; n++) if (!addSize(sums, size / grid, last)) break;
  }
  const at: number[] = [];
  eachSum(sums, (place) => {
    at.push(place * grid);
  });
  return Int32Array.from(at);
}

function thin(sorted: readonly number[], cap: number): number[] {
  const step = Math.ceil(sorted.length / cap);
  return sorted.filter((_, i) => i % step === 0);
}

/** Index of the greatest position not above `size`, or -1. */
export function floorIndex(at: Int32Array, size: number): number {
  let low = 0;
  let high = at.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((at[middle] as number) <= size) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

/** For every position, the index of the greatest position not above it less `size`, or -1. */
export function stepsDown(at: Int32Array, size: number, from: Int32Array = at): Int32Array {
  const steps = new Int32Array(from.length);
  let j = -1;
  for (let i = 0; i < from.length; i++) {
    const rest = (from[i] as number) - size;
    while (j + 1 < at.length && (at[j + 1] as number) <= rest) j++;
    steps[i] = j;
  }
  return steps;
}
