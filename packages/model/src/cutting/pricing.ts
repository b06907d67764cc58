import type { BoardRoom, Nested } from './nested.ts';
import type { StickKind } from './sticks.ts';

/** One stick of a board as it is cut: the demands its pieces serve, in order along the stick. */
export type Stick = readonly number[];

/** A length of board as it is cut: ripped by one section pattern, each stick then crosscut. */
export interface Segment {
  /** Length in ticks with one crosscut kerf. */
  readonly size: number;
  readonly pattern: number;
  /** Per entry of the pattern's counts, its sticks. */
  readonly sticks: readonly (readonly Stick[])[];
}

/** How one board is cut up. */
export interface BoardPattern {
  /** Index of the room in the tables, and of the board within the room. */
  readonly room: number;
  readonly board: number;
  readonly segments: readonly Segment[];
}

const GAIN = 1e-9;

/**
 * Sets the worth of every demand's piece and works out the best worth of all sticks, segments and boards. With `need`
 * the sticks that one segment yields of a kind count for no more than all the pieces still needed of it.
 */
export function price(nested: Nested, worthOf: Float64Array, need?: readonly number[]): void {
  for (const kind of nested.kinds) priceKind(kind, worthOf);
  const caps = nested.kinds.map((kind) =>
    need === undefined
      ? Number.POSITIVE_INFINITY
      : kind.items.reduce((sum, { demand }) => sum + (worthOf[demand] as number) * (need[demand] as number), 0),
  );
  for (const room of nested.rooms) priceRoom(nested, room, caps);
}

/** Sets what the sticks of a kind are worth. */
export function priceKind(kind: StickKind, worthOf: Float64Array): void {
  const { at, worth, last } = kind;
  const indices = kind.items.flatMap(({ demand }, j) => ((worthOf[demand] as number) > GAIN ? [j] : []));
  const steps = indices.map((j) => kind.items[j]?.steps as Int32Array);
  const worths = indices.map((j) => worthOf[kind.items[j]?.demand as number] as number);
  worth[0] = 0;
  for (let i = 1; i < at.length; i++) {
    let best = worth[i - 1] as number;
    let from = -2;
    for (let j = 0; j < steps.length; j++) {
      const rest = (steps[j] as Int32Array)[i] as number;
      if (rest < 0) continue;
      const total = (worths[j] as number) + (worth[rest] as number);
      if (total > best + GAIN) {
        best = total;
        from = indices[j] as number;
      }
    }
    worth[i] = best;
    last[i] = from;
  }
}

function priceRoom(nested: Nested, room: BoardRoom, caps: readonly number[]): void {
  const { segments, ripWorth, ripBest, ways } = room;
  const counts = room.patterns.map((p) => p.counts);
  const kinds = room.kinds.map((k, s) => ({
    worth: nested.kinds[k]?.worth as Float64Array,
    at: room.inKind[s] as Int32Array,
    cap: caps[k] as number,
  }));
  const sticks = new Float64Array(kinds.length);
  for (let i = 0; i < segments.length; i++) {
    const open = ways[i] as readonly number[];
    for (let s = 0; s < kinds.length; s++) {
      const kind = kinds[s] as (typeof kinds)[number];
      sticks[s] = kind.worth[kind.at[i] as number] as number;
    }
    let best = 0;
    let by = -1;
    for (let w = 0; w < open.length; w++) {
      const q = open[w] as number;
      const yields = counts[q] as readonly number[];
      let total = 0;
      for (let s = 0; s < yields.length; s++) {
        const n = yields[s] as number;
        if (n > 0) total += Math.min(n * (sticks[s] as number), (kinds[s] as (typeof kinds)[number]).cap);
      }
      if (total > best + GAIN) {
        best = total;
        by = q;
      }
    }
    ripWorth[i] = best;
    ripBest[i] = by;
  }
  priceLengths(room);
}

/** Sets what the boards of a room are worth: unbounded knapsack over segments that no sum of shorter ones equals. */
export function priceLengths(room: BoardRoom): void {
  const { at, worth, last, segments, ripWorth } = room;
  const useful: { index: number; size: number; worth: number; pointer: number }[] = [];
  let next = 0;
  worth[0] = 0;
  last[0] = -1;
  for (let i = 1; i < at.length; i++) {
    let best = worth[i - 1] as number;
    let from = -2;
    const here = at[i] as number;
    for (let j = 0; j < useful.length; j++) {
      const item = useful[j] as (typeof useful)[number];
      const rest = here - item.size;
      while ((at[item.pointer + 1] as number) <= rest) item.pointer++;
      const total = item.worth + (worth[item.pointer] as number);
      if (total > best + GAIN) {
        best = total;
        from = item.index;
      }
    }
    while (next < segments.length && (segments[next] as number) <= here) {
      const total = ripWorth[next] as number;
      if (total > best + GAIN) {
        best = total;
        from = next;
        useful.push({ index: next, size: segments[next] as number, worth: total, pointer: 0 });
      }
      next++;
    }
    worth[i] = best;
    last[i] = from;
  }
}

/** The best way to cut up one board under the prices last set. */
export function readBoard(nested: Nested, roomIndex: number, board: number): BoardPattern {
  const room = nested.rooms[roomIndex] as BoardRoom;
  const segments: Segment[] = [];
  let i = room.top[board] as number;
  while (i > 0) {
    const from = room.last[i] as number;
    if (from === -2) {
      i--;
      continue;
    }
    const size = room.segments[from] as number;
    segments.push(readSegment(nested, room, from));
    const rest = (room.at[i] as number) - size;
    while ((room.at[i] as number) > rest) i--;
  }
  return { room: roomIndex, board, segments };
}

function readSegment(nested: Nested, room: BoardRoom, index: number): Segment {
  const pattern = room.ripBest[index] as number;
  const counts = room.patterns[pattern]?.counts ?? [];
  const sticks = counts.map((n, s) => {
    if (n === 0) return [];
    const kind = nested.kinds[room.kinds[s] as number] as StickKind;
    const stick = readStick(kind, room.inKind[s]?.[index] as number);
    return Array.from({ length: n }, () => stick);
  });
  return { size: room.segments[index] as number, pattern, sticks };
}

/** The pieces of the best stick at a position of its kind. */
function readStick(kind: StickKind, position: number): Stick {
  const pieces: number[] = [];
  let i = position;
  while (i > 0) {
    const j = kind.last[i] as number;
    if (j === -2) {
      i--;
      continue;
    }
    const item = kind.items[j] as StickKind['items'][number];
    pieces.push(item.demand);
    i = item.steps[i] as number;
  }
  return pieces;
}

/** Pieces of each demand that a board pattern yields. */
export function yieldOf(pattern: BoardPattern, demands: number): Float64Array {
  const made = new Float64Array(demands);
  forEachPiece(pattern, (d) => {
    made[d] = (made[d] as number) + 1;
  });
  return made;
}

/** Tells the demand of every piece of a board pattern. */
export function forEachPiece(pattern: BoardPattern, tell: (demand: number) => void): void {
  for (const segment of pattern.segments) {
    for (const sticks of segment.sticks) {
      for (const stick of sticks) for (const d of stick) tell(d);
    }
  }
}
