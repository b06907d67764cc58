import { addPieceOf } from './knapsack.ts';
import type { StickItem } from './sticks.ts';

/** One way to fill a board: items, how many of each, and what is left over. */
export interface Way {
  readonly items: readonly number[];
  readonly counts: readonly number[];
  readonly waste: number;
}

/** Ways to fill a board, as far as they were listed. */
export interface Ways {
  /** Those that waste least come first. */
  readonly ways: readonly Way[];
  /** False where the list was given up before its end. */
  readonly whole: boolean;
  readonly work: number;
}

/** Most steps of one list, and most ways kept. */
const [STEPS, WAYS] = [6e5, 3000];

/** What keeping a way counts, in steps. */
const KEEPING = 10;

/** Ways to fill a room with pieces needed that waste no more than `slack`; where they are many, those that waste least. */
export function waysToFill(
  items: readonly StickItem[],
  need: Float64Array,
  { room, slack }: { readonly room: number; readonly slack: number },
): Ways {
  const size = (j: number): number => (items[j] as StickItem).size;
  const open = [...need.keys()].filter((j) => (need[j] as number) > 0).sort((a, b) => size(b) - size(a));
  const sizes = Float64Array.from(open, size);
  const smallest = sizes.at(-1) ?? 0;
  // What all pieces from one place on come to.
  const after = new Float64Array(open.length + 1);
  for (let x = open.length - 1; x >= 0; x--) {
    after[x] = (after[x + 1] as number) + (need[open[x] as number] as number) * (sizes[x] as number);
  }
  let ways: Way[] = [];
  let most = slack;
  let steps = 0;
  const chosen: number[] = [];
  const keep = (waste: number): void => {
    steps += KEEPING;
    const [held, counts]: [number[], number[]] = [[], []];
    for (const j of chosen) addPieceOf(j, held, counts);
    ways.push({ items: held, counts, waste });
    if (ways.length < 2 * WAYS) return;
    ways = leastWaste(ways);
    most = (ways.at(-1) as Way).waste;
  };
  /** Fills what is left with pieces from a place on; false where that takes too long. */
  const fill = (from: number, left: number): boolean => {
    if (left <= most) keep(left);
    for (let x = fitting(sizes, from, left); x < open.length && left - (after[x] as number) <= most; x++) {
      if (++steps > STEPS) return false;
      const piece = sizes[x] as number;
      if (left - piece > most && left - piece < smallest) continue;
      const j = open[x] as number;
      const times = Math.min(need[j] as number, Math.floor(left / piece));
      const depth = chosen.length;
      for (let n = 1; n <= times; n++) {
        chosen.push(j);
        if (!fill(x + 1, left - n * piece)) return false;
      }
      chosen.length = depth;
    }
    return true;
  };
  const whole = fill(0, room);
  return { ways: leastWaste(ways), whole, work: 2 * steps };
}

function leastWaste(ways: Way[]): Way[] {
  return ways.sort((a, b) => a.waste - b.waste).slice(0, WAYS);
}

/** Longest first: the place of the first size from a place on that is no longer than what is left. */
function fitting(sizes: Float64Array, from: number, left: number): number {
  let [low, high] = [from, sizes.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sizes[middle] as number) > left) low = middle + 1;
    else high = middle;
  }
  return low;
}
