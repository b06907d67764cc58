import { addPieceOf } from './knapsack.ts';
import type { StickItem } from './sticks.ts';

/** Boards of one section that are only crosscut, and the pieces wanted of them. */
export interface Lengthwise {
  /** Sizes that pieces laid end to end add up to, each with its kerf. */
  readonly at: Int32Array;
  readonly items: readonly StickItem[];
  readonly boards: readonly LengthwiseBoard[];
  /** Every cost is a whole multiple of it. */
  readonly step: number;
}

interface LengthwiseBoard {
  /** Index of its room among the positions. */
  readonly top: number;
  readonly cost: number;
  readonly most: number;
}

/** Boards crosscut alike: the items of each, with their counts. */
export interface Filling {
  readonly board: number;
  readonly items: readonly number[];
  readonly counts: readonly number[];
  /** How many boards. */
  readonly times: number;
}

/** What fillings cost. */
export function costOfFillings({ boards }: Lengthwise, fillings: readonly Filling[]): number {
  return fillings.reduce((sum, { board, times }) => sum + times * (boards[board]?.cost as number), 0);
}

/** Worth of each item where wood is worth the same wherever it goes. */
export function worthsBySize({ at, items, boards }: Lengthwise): Float64Array {
  const rate = boards.reduce(
    (least, { top, cost }) => Math.min(least, cost / (at[top] as number)),
    Number.POSITIVE_INFINITY,
  );
  return Float64Array.from(items, ({ size }) => rate * size);
}

/** The one kind of board where there is just one and no end of it: what is least in number is then least in cost. */
export function onlyBoard({ boards }: Lengthwise): LengthwiseBoard | undefined {
  return boards.length === 1 && boards[0]?.most === Number.POSITIVE_INFINITY ? boards[0] : undefined;
}

/**
 * The fewest boards of one length that any plan needs, told by counting: pieces over half a board have a board each, and
 * pieces that fit none of those need others. Bound L2 of Martello and Toth, Knapsack Problems, Wiley 1990, section 8.3.
 */
export function fewestBoards({ at, items }: Lengthwise, top: number): number {
  const room = at[top] as number;
  const small = new Set(items.flatMap(({ size }) => (2 * size <= room ? [size] : [])));
  let fewest = 0;
  for (const least of [0, ...small]) {
    let [alone, half, halfSize, smallSize] = [0, 0, 0, 0];
    for (const { size, need } of items) {
      if (size > room - least) alone += need;
      else if (2 * size > room) {
        half += need;
        halfSize += need * size;
      } else if (size >= least) smallSize += need * size;
    }
    const more = Math.ceil((smallSize - (half * room - halfSize)) / room);
    fewest = Math.max(fewest, alone + half + Math.max(0, more));
  }
  return fewest;
}

/** Longest pieces first, each on the board that it leaves least of. */
export function bestFit({ at, items }: Lengthwise, top: number): Filling[] {
  const fillings: { items: number[]; counts: number[] }[] = [];
  const left: number[] = [];
  for (const j of longestFirst(items)) {
    const { size, need } = items[j] as StickItem;
    for (let n = 0; n < need; n++) {
      let to = -1;
      for (let b = 0; b < left.length; b++) {
        const room = left[b] as number;
        if (room >= size && (to < 0 || room < (left[to] as number))) to = b;
      }
      if (to < 0) {
        to = left.push(at[top] as number) - 1;
        fillings.push({ items: [], counts: [] });
      }
      left[to] = (left[to] as number) - size;
      const { items: held, counts } = fillings[to] as (typeof fillings)[number];
      addPieceOf(j, held, counts);
    }
  }
  return fillings.map((f) => ({ board: 0, ...f, times: 1 }));
}

/** Items by length, the longest first; with `by`, by a length shifted as it says. */
export function longestFirst(items: readonly StickItem[], by: () => number = () => 1): number[] {
  const sizes = items.map(({ size }) => size * by());
  return [...items.keys()].sort((a, b) => (sizes[b] as number) - (sizes[a] as number));
}
