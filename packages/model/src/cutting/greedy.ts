import type { Rest } from './bound.ts';
import type { BoardRoom, Nested } from './nested.ts';
import { type BoardPattern, forEachPiece, price, readBoard, type Segment, type Stick, yieldOf } from './pricing.ts';
import type { StickKind } from './sticks.ts';

/** A board pattern and how many boards are cut so. */
export interface Take {
  readonly pattern: BoardPattern;
  readonly count: number;
}

/** What some boards make and what is then still needed. */
export interface Draft {
  readonly takes: readonly Take[];
  readonly rest: Rest;
}

/** Cost of boards taken. */
export function costOfTakes(nested: Nested, takes: readonly Take[]): number {
  return takes.reduce((sum, { pattern, count }) => sum + count * (boardOf(nested, pattern)?.cost ?? 0), 0);
}

/** The board that a pattern is for. */
export function boardOf(nested: Nested, pattern: BoardPattern): BoardRoom['boards'][number] | undefined {
  return nested.rooms[pattern.room]?.boards[pattern.board];
}

/** Whether nothing is needed any more. */
export function isDone(rest: Rest): boolean {
  return rest.need.every((n) => n <= 0);
}

/** Takes `count` boards cut by a pattern off what is needed and what is left. */
export function takeOff(rest: Rest, pattern: BoardPattern, count: number): Rest {
  const made = yieldOf(pattern, rest.need.length);
  const left = rest.left.map((boards, r) =>
    r === pattern.room ? boards.map((n, b) => (b === pattern.board ? n - count : n)) : boards,
  );
  return { need: rest.need.map((n, d) => Math.max(0, n - count * (made[d] as number))), left };
}

/** A draft of takes walked from the start; `undefined` where they ask for more boards than there are. */
export function draftFrom(rest: Rest, takes: readonly Take[]): Draft | undefined {
  const need = [...rest.need];
  const left = rest.left.map((boards) => [...boards]);
  for (const { pattern, count } of takes) {
    const boards = left[pattern.room] ?? [];
    if ((boards[pattern.board] ?? 0) < count) return undefined;
    boards[pattern.board] = (boards[pattern.board] as number) - count;
    forEachPiece(pattern, (d) => {
      need[d] = Math.max(0, (need[d] as number) - count);
    });
  }
  return { takes, rest: { need, left } };
}

/** How often a pattern can be repeated before it makes a piece too many. */
export function repeats(rest: Rest, pattern: BoardPattern): number {
  let most = rest.left[pattern.room]?.[pattern.board] ?? 0;
  yieldOf(pattern, rest.need.length).forEach((n, d) => {
    if (n > 0) most = Math.min(most, Math.floor((rest.need[d] as number) / n));
  });
  return most;
}

/** The same cuts with sticks filled anew so that no piece is made beyond the need. */
export function fitToNeed(
  nested: Nested,
  pattern: BoardPattern,
  need: readonly number[],
  worth: Float64Array,
): BoardPattern {
  const made = yieldOf(pattern, need.length);
  if (made.every((n, d) => n <= (need[d] as number))) return pattern;
  const open = [...need];
  const room = nested.rooms[pattern.room] as BoardRoom;
  const segments = pattern.segments.map((segment): Segment => {
    const sticks = segment.sticks.map((list, s) => {
      const kind = nested.kinds[room.kinds[s] as number] as StickKind;
      return list.map(() => fillStick(kind, segment.size, open, worth));
    });
    return { ...segment, sticks };
  });
  return { ...pattern, segments: segments.filter((s) => s.sticks.some((list) => list.some((p) => p.length > 0))) };
}

/** The stick of most worth that makes no piece beyond the need, by a bounded search; takes its pieces off `open`. */
function fillStick(kind: StickKind, size: number, open: number[], worth: Float64Array): Stick {
  const items = kind.items
    .filter((item) => (open[item.demand] as number) > 0 && item.size <= size)
    .sort((a, b) => (worth[b.demand] as number) / b.size - (worth[a.demand] as number) / a.size || b.size - a.size);
  let best: number[] = [];
  let bestWorth = -1;
  let nodes = 0;
  const chosen: number[] = [];
  const search = (j: number, room: number, sum: number): void => {
    if (sum > bestWorth + 1e-9) {
      bestWorth = sum;
      best = [...chosen];
    }
    const item = items[j];
    if (item === undefined || nodes++ > 400) return;
    const density = (worth[item.demand] as number) / item.size;
    if (sum + density * room <= bestWorth + 1e-9) return;
    const most = Math.min(open[item.demand] as number, Math.floor(room / item.size));
    for (let n = most; n >= 0; n--) {
      for (let k = 0; k < n; k++) chosen.push(item.demand);
      search(j + 1, room - n * item.size, sum + n * (worth[item.demand] as number));
      chosen.length -= n;
    }
  };
  search(0, size, 0);
  for (const d of best) open[d] = (open[d] as number) - 1;
  return best;
}

/**
 * Board by board, each time the one that yields the most worth for its cost and makes nothing beyond the need. Ends
 * early, with something still needed, only where boards run out.
 */
export function greedy(nested: Nested, rest: Rest, worth: Float64Array, most = 5000): Draft {
  const takes: Take[] = [];
  let now = rest;
  for (let n = 0; n < most && !isDone(now); n++) {
    const take = bestBoard(nested, now, worth);
    if (take === undefined) break;
    takes.push(take);
    now = takeOff(now, take.pattern, take.count);
  }
  return { takes, rest: now };
}

function bestBoard(nested: Nested, rest: Rest, worth: Float64Array): Take | undefined {
  const open = worth.map((w, d) => ((rest.need[d] as number) > 0 ? Math.max(w, 1e-6) : 0));
  price(nested, open, rest.need);
  const found: { room: number; board: number; score: number }[] = [];
  nested.rooms.forEach((room, r) => {
    room.boards.forEach((board, b) => {
      const value = room.worth[room.top[b] as number] as number;
      if ((rest.left[r]?.[b] ?? 0) > 0 && value > 0)
        found.push({ room: r, board: b, score: value / (board.cost + FREE) });
    });
  });
  found.sort((a, b) => b.score - a.score || a.room - b.room || a.board - b.board);
  let best: { pattern: BoardPattern; score: number } | undefined;
  for (const { room, board, score } of found) {
    if (best !== undefined && score <= best.score) break;
    const pattern = fitToNeed(nested, readBoard(nested, room, board), rest.need, open);
    const made = yieldOf(pattern, rest.need.length).reduce((sum, n, d) => sum + n * (open[d] as number), 0);
    const real = made / ((boardOf(nested, pattern)?.cost as number) + FREE);
    if (made > 0 && (best === undefined || real > best.score)) best = { pattern, score: real };
  }
  return best && { pattern: best.pattern, count: Math.max(1, repeats(rest, best.pattern)) };
}

/** Stands in for the cost of a free offcut in a ratio. */
const FREE = 1e-3;
