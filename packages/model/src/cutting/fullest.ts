import { type Filling, type Lengthwise, longestFirst } from './fillings.ts';
import { addPieceOf } from './knapsack.ts';
import { addSize, emptySums } from './sums.ts';
import { gcd } from './ticks.ts';

/** Most places of a board's length that sums are told apart at. */
const PLACES = 1_000_000;

/**
 * Board by board, each as full as can be, of pieces that come early in an order: longest first unless told. `undefined` where
 * it takes `most` boards or more, and for lengths too odd to be listed.
 */
export function fullest(
  { at, items }: Lengthwise,
  top: number,
  { order = longestFirst(items), most = Number.POSITIVE_INFINITY }: { order?: readonly number[]; most?: number } = {},
): Filling[] | undefined {
  const unit = items.reduce((common, { size }) => gcd(common, size), 0);
  const room = Math.floor((at[top] as number) / unit);
  if (room > PLACES) return undefined;
  const sizes = items.map(({ size }) => size / unit);
  const need = items.map((item) => item.need);
  const sums = { reached: emptySums(room), by: new Int32Array(room + 1) };
  const fillings: Filling[] = [];
  let boards = 0;
  let left = need.reduce((sum, n) => sum + n, 0);
  while (left > 0) {
    const { items: held, counts } = fullBoard(order, { sizes, need, room }, sums);
    const often = held.map((j, x) => Math.floor((need[j] as number) / (counts[x] as number)));
    const times = Math.min(...often);
    boards += times;
    if (boards >= most) return undefined;
    held.forEach((j, x) => {
      const made = times * (counts[x] as number);
      need[j] = (need[j] as number) - made;
      left -= made;
    });
    fillings.push({ board: 0, items: held, counts, times });
  }
  return fillings;
}

/** Lengths that pieces add up to, a bit each, and the piece that came last to each. */
interface Sums {
  readonly reached: Int32Array;
  readonly by: Int32Array;
}

interface Filled {
  readonly items: number[];
  readonly counts: number[];
}

/** The most of a board that pieces fill, of the earliest of them; by lengths that they add up to, 32 at a time. */
function fullBoard(
  order: readonly number[],
  { sizes, need, room }: { readonly sizes: readonly number[]; readonly need: readonly number[]; readonly room: number },
  { reached, by }: Sums,
): Filled {
  reached.fill(0);
  reached[0] = 1;
  let longest = 0;
  let piece = 0;
  const reach = (length: number): void => {
    by[length] = piece;
    if (length > longest) longest = length;
  };
  for (const j of order) {
    piece = j;
    const size = sizes[j] as number;
    const most = Math.min(need[j] as number, Math.floor(room / size));
    for (let n = 0; n < most && longest < room; n++) if (!addSize(reached, size, room, reach)) break;
    if (longest === room) break;
  }
  const [items, counts]: [number[], number[]] = [[], []];
  for (let length = longest; length > 0; ) {
    const j = by[length] as number;
    addPieceOf(j, items, counts);
    length -= sizes[j] as number;
  }
  return { items, counts };
}
