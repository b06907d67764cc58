import type { Choice } from './flow.ts';
import type { Take } from './greedy.ts';
import type { BoardRoom, Nested } from './nested.ts';
import { floorIndex } from './positions.ts';
import type { BoardPattern, Segment } from './pricing.ts';
import type { StickKind } from './sticks.ts';

/** How often each choice is made. */
export type Tallied = ReadonlyMap<string, { readonly choice: Choice; readonly count: number }>;

/** Name of a choice, the same for the same choice. */
export function choiceKey(choice: Choice): string {
  if (choice.is === 'buy') return `b${choice.room} ${choice.board}`;
  if (choice.is === 'split') return `s${choice.room} ${choice.from} ${choice.segment}`;
  if (choice.is === 'rip') return `r${choice.room} ${choice.segment} ${choice.pattern}`;
  return `c${choice.kind} ${[...choice.pieces].sort((a, b) => a - b).join()}`;
}

/** The choices that boards cut by patterns are made of. */
export function choicesOf(nested: Nested, takes: readonly Take[]): Tallied {
  const found = new Map<string, { choice: Choice; count: number }>();
  const add = (choice: Choice, count: number): void => {
    const key = choiceKey(choice);
    const entry = found.get(key) ?? { choice, count: 0 };
    entry.count += count;
    found.set(key, entry);
  };
  for (const { pattern, count } of takes) {
    const room = nested.rooms[pattern.room] as BoardRoom;
    add({ is: 'buy', room: pattern.room, board: pattern.board }, count);
    let from = room.top[pattern.board] as number;
    // Longest first, as the flow has them.
    for (const segment of [...pattern.segments].sort((a, b) => b.size - a.size)) {
      const index = floorIndex(room.segments, segment.size);
      const to = floorIndex(room.at, (room.at[from] as number) - segment.size);
      add({ is: 'split', room: pattern.room, from, segment: index, to }, count);
      from = to;
      add({ is: 'rip', room: pattern.room, segment: index, pattern: segment.pattern }, count);
      segment.sticks.forEach((sticks, s) => {
        for (const pieces of sticks) {
          if (pieces.length > 0) add(cutOf(nested, room.kinds[s] as number, pieces), count);
        }
      });
    }
  }
  return found;
}

function cutOf(nested: Nested, kind: number, pieces: readonly number[]): Choice {
  const clear = pieces.some((d) => nested.problem.demands[d]?.clear === true);
  const twin = nested.clearTwin.indexOf(kind);
  const into = !clear && twin >= 0 ? twin : kind;
  const { items, at } = nested.kinds[into] as StickKind;
  const size = pieces.reduce((sum, d) => sum + (items.find((i) => i.demand === d)?.size as number), 0);
  return { is: 'cut', kind: into, position: floorIndex(at, size), pieces };
}

type OpenSegment = { size: number; pattern: number; sticks: number[][][] };
type OpenStick = { fill: (pieces: readonly number[]) => void };

/** Boards cut up as the choices say; pieces of wood that no choice uses stay waste. */
export function takesOf(nested: Nested, tallied: Tallied): Take[] {
  const boards: { room: number; board: number; segments: OpenSegment[] }[] = [];
  const segments = new Map<string, OpenSegment[]>();
  const each = <K extends Choice['is']>(is: K, visit: (c: Extract<Choice, { is: K }>, count: number) => void): void => {
    for (const { choice, count } of tallied.values()) {
      if (choice.is === is && count > 0) visit(choice as Extract<Choice, { is: K }>, count);
    }
  };
  const bars = new Map<string, typeof boards>();
  each('buy', ({ room, board }, count) => {
    for (let n = 0; n < count; n++) {
      const made = { room, board, segments: [] };
      boards.push(made);
      push(bars, `${room} ${nested.rooms[room]?.top[board]}`, made);
    }
  });
  const splits: [Extract<Choice, { is: 'split' }>, number][] = [];
  each('split', (choice, count) => splits.push([choice, count]));
  splits.sort(([a], [b]) => b.from - a.from || b.segment - a.segment);
  for (const [{ room, from, segment, to }, count] of splits) {
    for (let n = 0; n < count; n++) {
      const board = bars.get(`${room} ${from}`)?.pop();
      if (board === undefined) break;
      const open = { size: nested.rooms[room]?.segments[segment] as number, pattern: -1, sticks: [] };
      board.segments.push(open);
      push(segments, `${room} ${segment}`, open);
      push(bars, `${room} ${to}`, board);
    }
  }
  const sticks = nested.kinds.map(() => new Map<number, OpenStick[]>());
  each('rip', ({ room, segment, pattern }, count) => {
    const { kinds, inKind, patterns } = nested.rooms[room] as BoardRoom;
    for (let n = 0; n < count; n++) {
      const open = segments.get(`${room} ${segment}`)?.pop();
      if (open === undefined) break;
      open.pattern = pattern;
      open.sticks = (patterns[pattern]?.counts ?? []).map(() => []);
      patterns[pattern]?.counts.forEach((m, s) => {
        for (let i = 0; i < m; i++) {
          const fill = (pieces: readonly number[]): void => {
            open.sticks[s]?.push([...pieces]);
          };
          const size = nested.kinds[kinds[s] as number]?.at[inKind[s]?.[segment] as number] as number;
          push(sticks[kinds[s] as number] as Map<number, OpenStick[]>, size, { fill });
        }
      });
    }
  });
  fillSticks(nested, sticks, each);
  return boards.map(({ room, board, segments: open }) => ({
    count: 1,
    pattern: boardPattern(nested, room, board, open),
  }));
}

/** Longest cuts first: every stick long enough for one is long enough for all that follow. */
function fillSticks(
  nested: Nested,
  sticks: readonly Map<number, OpenStick[]>[],
  each: (is: 'cut', visit: (c: Extract<Choice, { is: 'cut' }>, count: number) => void) => void,
): void {
  const cuts: { kind: number; size: number; pieces: readonly number[]; count: number }[] = [];
  each('cut', ({ kind, position, pieces }, count) => {
    cuts.push({ kind, size: nested.kinds[kind]?.at[position] as number, pieces, count });
  });
  cuts.sort((a, b) => b.size - a.size || a.kind - b.kind || a.pieces.length - b.pieces.length);
  const sizes = sticks.map((map) => [...map.keys()].sort((a, b) => b - a));
  const longEnough = (kind: number, size: number): OpenStick | undefined => {
    // The shortest stick that is long enough.
    const fit = sizes[kind]?.findLast((s) => s >= size && (sticks[kind]?.get(s)?.length ?? 0) > 0);
    return fit === undefined ? undefined : sticks[kind]?.get(fit)?.pop();
  };
  for (const { kind, size, pieces, count } of cuts) {
    const clear = nested.clearTwin[kind] as number;
    for (let n = 0; n < count; n++) {
      const stick = longEnough(kind, size) ?? (clear >= 0 ? longEnough(clear, size) : undefined);
      stick?.fill(pieces);
    }
  }
}

function boardPattern(nested: Nested, room: number, board: number, open: readonly OpenSegment[]): BoardPattern {
  const patterns = nested.rooms[room]?.patterns;
  const segments = open
    .filter((s) => s.pattern >= 0 && s.sticks.some((list) => list.length > 0))
    .map(({ size, pattern, sticks }): Segment => {
      // Fullest sticks first, and an empty one for every stick that no choice uses.
      const counts = patterns?.[pattern]?.counts ?? [];
      const full = sticks.map((list, s) => [
        ...[...list].sort((a, b) => b.length - a.length || (a.join() < b.join() ? -1 : 1)),
        ...Array.from({ length: (counts[s] as number) - list.length }, () => []),
      ]);
      return { size, pattern, sticks: full };
    })
    .sort((a, b) => b.size - a.size);
  return { room, board, segments };
}

function push<K, V>(map: Map<K, V[]>, key: K, value: V): void {
  const list = map.get(key);
  if (list) list.push(value);
  else map.set(key, [value]);
}
