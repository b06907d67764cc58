import type { BoardCuts } from './cutboard.ts';
import type { CrossCuts, Stretch } from './cutcross.ts';

/** Pieces of one kind: the letter of a part, or none for lengths that are ripped next. */
export interface Kind {
  readonly letter: string | undefined;
  readonly count: number;
}

/** Crosscuts of one length, by which a stop is set once. */
export interface Stop {
  /** Finished length, mm. */
  readonly length: number;
  /** Cuts at it, all boards counted. */
  readonly count: number;
  readonly kinds: readonly Kind[];
  /** Numbers of the boards, from 1. */
  readonly boards: readonly number[];
}

/** Lengths closer than this, mm, are one stop. */
const SAME = 1e-4;

interface Kinds {
  length: number;
  count: number;
  kinds: Counts;
  boards: Set<number>;
}

/** The crosscuts of a plan: those of whole boards, those of strips after ripping, longest first; parts that need none. */
export interface Stops {
  readonly boards: readonly Stop[];
  readonly strips: readonly Stop[];
  /** Parts as long as the wood that they come from, which a stop cut. */
  readonly whole: readonly Kind[];
  /** Parts that are the last of their wood, as long as the cuts before them are true. */
  readonly last: readonly Kind[];
}

/** Every piece of a plan by the stop that cuts it to length, or among those that are at length without a cut. */
export function cutStops(boards: readonly BoardCuts[]): Stops {
  const found: Found = { boards: [], strips: [], whole: new Map(), last: new Map() };
  boards.forEach(({ board, cuts, ripped }, i) => {
    const source = { board: i + 1, times: board.count, whole: found.whole, last: found.last };
    add(found.boards, cuts, source);
    for (const { strips } of ripped) for (const strip of strips) add(found.strips, strip.cuts, source);
  });
  return {
    boards: found.boards.map(stopOf).sort(longest),
    strips: found.strips.map(stopOf).sort(longest),
    whole: kindsOf(found.whole).sort(byLetter),
    last: kindsOf(found.last).sort(byLetter),
  };
}

const byLetter = (a: Kind, b: Kind): number => ((a.letter ?? '') < (b.letter ?? '') ? -1 : 1);

type Counts = Map<string | undefined, number>;

interface Found {
  readonly boards: Kinds[];
  readonly strips: Kinds[];
  readonly whole: Counts;
  readonly last: Counts;
}

function add(
  found: Kinds[],
  { stretches, kerfs }: CrossCuts,
  { board, times, whole, last }: Pick<Found, 'whole' | 'last'> & { readonly board: number; readonly times: number },
): void {
  const isCut = ({ start, length }: Stretch): boolean => kerfs.some(({ at }) => Math.abs(at - start - length) < SAME);
  const count = (counts: Counts, letter: string | undefined): unknown =>
    counts.set(letter, (counts.get(letter) ?? 0) + times);
  for (const stretch of stretches) {
    const { kind, length, letter } = stretch;
    if (kind !== 'part' && kind !== 'ripped') continue;
    if (!isCut(stretch)) {
      if (kind === 'part') count(stretch.unstopped === true ? last : whole, letter);
      continue;
    }
    let stop = found.find((one) => Math.abs(one.length - length) < SAME);
    if (!stop) {
      stop = { length, count: 0, kinds: new Map(), boards: new Set() };
      found.push(stop);
    }
    stop.count += times;
    count(stop.kinds, letter);
    stop.boards.add(board);
  }
}

const kindsOf = (counts: Counts): Kind[] => [...counts].map(([letter, count]) => ({ letter, count }));

function stopOf({ length, count, kinds, boards }: Kinds): Stop {
  return { length, count, kinds: kindsOf(kinds), boards: [...boards] };
}

const longest = (a: Stop, b: Stop): number => b.length - a.length;
