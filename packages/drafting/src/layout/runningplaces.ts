import { SAME } from './rows.ts';
import { ASCENT, DESCENT, TEXT, TEXT_LIFT } from './style.ts';

/** A position along a side, and where the line that carries its text lies: the same, or pushed aside for room. */
export interface Place {
  readonly at: number;
  readonly line: number;
}

/** From a text's line to the next, mm: the height of a text and a little air. */
const PITCH = (ASCENT + DESCENT) * TEXT + 0.3;

/** From a line that the row must not touch to the line of the first text after it, mm. */
const AFTER = TEXT_LIFT + ASCENT * TEXT + 0.3;

/**
 * Places for texts that all stand on the same side of their lines, each as near its position as the others leave it, none
 * over one of the lines `through`. Positions rise. A position without room gets no place: then its entry is undefined.
 */
export function spread(positions: readonly number[], through: readonly number[]): (Place | undefined)[] {
  const walls = [-Infinity, ...through.toSorted((a, b) => a - b), Infinity].filter(
    (wall, i, all) => i === 0 || wall - (all[i - 1] as number) > SAME,
  );
  const placed: (Place | undefined)[] = positions.map(() => undefined);
  let next = 0;
  for (let w = 1; w < walls.length; w++) {
    const [low, high] = [walls[w - 1] as number, walls[w] as number];
    const own: number[] = [];
    while (next < positions.length && (positions[next] as number) <= high + SAME) own.push(next++);
    const most = Math.max(0, Math.floor((high - low - AFTER) / PITCH + 1 + 1e-9));
    // What stands on the far line itself may go to its other side instead.
    if (own.length > most && high - (positions[next - 1] as number) < SAME) {
      own.pop();
      next--;
    }
    const kept = fewer(own, most);
    const lines = apart(
      kept.map((i) => positions[i] as number),
      [low + AFTER, high],
    );
    kept.forEach((i, k) => {
      placed[i] = { at: positions[i] as number, line: lines[k] as number };
    });
  }
  return placed;
}

/** As many of some entries as there is room for, the first and the last before those between. */
function fewer(all: readonly number[], most: number): readonly number[] {
  if (all.length <= most) return all;
  const step = most > 1 ? (all.length - 1) / (most - 1) : 0;
  return Array.from({ length: most }, (_, k) => all[Math.round(all.length - 1 - k * step)] as number).toSorted(
    (a, b) => a - b,
  );
}

/**
 * Lines at least `PITCH` apart within bounds, the sum of the squares of their shifts least: pool adjacent violators
 * (Barlow and others, "Statistical Inference under Order Restrictions", 1972, from memory).
 */
function apart(positions: readonly number[], [low, high]: readonly [number, number]): number[] {
  const pools: { sum: number; count: number }[] = [];
  positions.forEach((at, i) => {
    let pool = { sum: at - i * PITCH, count: 1 };
    for (
      let before = pools.at(-1);
      before && before.sum / before.count > pool.sum / pool.count;
      before = pools.at(-1)
    ) {
      pool = { sum: pool.sum + before.sum, count: pool.count + before.count };
      pools.pop();
    }
    pools.push(pool);
  });
  const most = high - (positions.length - 1) * PITCH;
  return pools
    .flatMap(({ sum, count }) => Array.from({ length: count }, () => Math.max(low, Math.min(most, sum / count))))
    .map((base, i) => base + i * PITCH);
}
