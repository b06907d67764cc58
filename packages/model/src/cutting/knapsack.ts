import type { StickItem } from './sticks.ts';

/** The best that lengths of wood can be crosscut to. */
export interface Knapsack {
  /** Worth at each position. */
  readonly worth: Float64Array;
  /** Table cells filled. */
  readonly work: number;
  /** The pieces of most worth at a position: items, each with its count. */
  readonly read: (position: number) => { readonly items: number[]; readonly counts: number[] };
}

const GAIN = 1e-9;

/** One byte for each position and piece: whether the piece is taken there. Grows as needed, and is filled anew each time. */
let taken = new Uint8Array(1 << 16);

/**
 * Bounded knapsack over positions 0 to `top`: no item is taken more often than `need` says. What it returns is good until
 * the next call.
 */
export function knapsack(
  items: readonly StickItem[],
  top: number,
  worths: ArrayLike<number>,
  need: ArrayLike<number>,
): Knapsack {
  const n = top + 1;
  const worth = new Float64Array(n);
  const pieces: number[] = [];
  for (let j = 0; j < items.length; j++) {
    if ((worths[j] as number) <= GAIN) continue;
    const { steps } = items[j] as StickItem;
    for (let left = need[j] as number; left > 0; left--) {
      if (!addPiece(worth, steps, worths[j] as number, pieces.length * n)) break;
      pieces.push(j);
    }
  }
  const read: Knapsack['read'] = (position) => {
    const found: number[] = [];
    const counts: number[] = [];
    let i = position;
    for (let p = pieces.length - 1; p >= 0; p--) {
      if (taken[p * n + i] !== 1) continue;
      const j = pieces[p] as number;
      addPieceOf(j, found, counts);
      i = (items[j] as StickItem).steps[i] as number;
    }
    return { items: found, counts };
  };
  return { worth, work: pieces.length * n, read };
}

/** One more piece of an item; pieces of one item come one after the other. */
export function addPieceOf(item: number, items: number[], counts: number[]): void {
  if (items.at(-1) === item) counts[counts.length - 1] = (counts.at(-1) as number) + 1;
  else {
    items.push(item);
    counts.push(1);
  }
}

/** Lets one more piece be taken, its bytes from `base` on; false where it is of no use anywhere. */
function addPiece(worth: Float64Array, steps: Int32Array, gain: number, base: number): boolean {
  const n = worth.length;
  if (base + n > taken.length) {
    const more = new Uint8Array(2 * (base + n));
    more.set(taken);
    taken = more;
  }
  taken.fill(0, base, base + n);
  let used = false;
  for (let i = n - 1; i > 0; i--) {
    const rest = steps[i] as number;
    if (rest < 0) break;
    const total = gain + (worth[rest] as number);
    if (total > (worth[i] as number) + GAIN) {
      worth[i] = total;
      taken[base + i] = 1;
      used = true;
    }
  }
  return used;
}
