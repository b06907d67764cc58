import type { BoardCuts, CrossCuts, Stretch } from './cutboard.ts';

/** Crosscuts of one length, by which a stop is set once. */
export interface Stop {
  /** Finished length, mm. */
  readonly length: number;
  /** Cuts at it, all boards counted. */
  readonly count: number;
  /** What is cut: the letter of a part, or none for lengths that are ripped next. */
  readonly kinds: readonly { readonly letter: string | undefined; readonly count: number }[];
  /** Numbers of the boards, from 1. */
  readonly boards: readonly number[];
}

/** Lengths closer than this, mm, are one stop. */
const SAME = 1e-4;

interface Kinds {
  length: number;
  count: number;
  kinds: Map<string | undefined, number>;
  boards: Set<number>;
}

/**
 * The crosscuts of a plan by length, longest first: those of whole boards, and those of strips after ripping. A piece that
 * is as long as the wood it comes from needs no cut and is not counted.
 */
export function cutStops(boards: readonly BoardCuts[]): { readonly boards: Stop[]; readonly strips: Stop[] } {
  const whole: Kinds[] = [];
  const strips: Kinds[] = [];
  boards.forEach(({ board, cuts, ripped }, i) => {
    add(whole, cuts, i + 1, board.count);
    for (const { strips: own } of ripped) for (const strip of own) add(strips, strip.cuts, i + 1, board.count);
  });
  return { boards: whole.map(stopOf).sort(longest), strips: strips.map(stopOf).sort(longest) };
}

function add(found: Kinds[], { stretches, kerfs }: CrossCuts, board: number, times: number): void {
  const isCut = ({ start, length }: Stretch): boolean => kerfs.some(({ at }) => Math.abs(at - start - length) < SAME);
  for (const stretch of stretches) {
    if ((stretch.kind !== 'part' && stretch.kind !== 'ripped') || !isCut(stretch)) continue;
    let stop = found.find(({ length }) => Math.abs(length - stretch.length) < SAME);
    if (!stop) {
      stop = { length: stretch.length, count: 0, kinds: new Map(), boards: new Set() };
      found.push(stop);
    }
    stop.count += times;
    stop.kinds.set(stretch.letter, (stop.kinds.get(stretch.letter) ?? 0) + times);
    stop.boards.add(board);
  }
}

function stopOf({ length, count, kinds, boards }: Kinds): Stop {
  return { length, count, kinds: [...kinds].map(([letter, n]) => ({ letter, count: n })), boards: [...boards] };
}

const longest = (a: Stop, b: Stop): number => b.length - a.length;
