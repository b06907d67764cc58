import type { Mixture, Rest } from './bound.ts';
import type { BoardRoom, Nested } from './nested.ts';
import { floorIndex } from './positions.ts';
import { price } from './pricing.ts';
import type { SectionPattern } from './section.ts';
import type { StickKind } from './sticks.ts';

/**
 * One whole-number choice of the model: a board bought, a segment crosscut off what is left of a board, a segment
 * ripped, a stick crosscut to pieces.
 */
export type Choice =
  | { readonly is: 'buy'; readonly room: number; readonly board: number }
  | {
      readonly is: 'split';
      readonly room: number;
      readonly from: number;
      readonly segment: number;
      readonly to: number;
    }
  | { readonly is: 'rip'; readonly room: number; readonly segment: number; readonly pattern: number }
  | { readonly is: 'cut'; readonly kind: number; readonly position: number; readonly pieces: readonly number[] };

/** The choices that a plan cheaper than the one in hand may use. */
export interface Flow {
  readonly nested: Nested;
  readonly rest: Rest;
  readonly choices: readonly Choice[];
  /** A plan that uses any choice left out costs at least this. */
  readonly bound: number;
  /** Whether no choice is left out that a plan costing at most `below` could use. */
  readonly complete: boolean;
}

/** Prices at which no board is worth more than is asked for it. */
interface Settled {
  readonly bound: number;
  readonly worth: Float64Array;
  /** Per room and board, what it costs over its worth. */
  readonly asked: readonly (readonly number[])[];
}

const GRAIN = 1e-6;

/** Prices the tables so that no board without limit is worth more than it costs; gives the bound of those prices. */
function settlePrices(nested: Nested, rest: Rest, mix: Mixture): Settled {
  price(nested, mix.worth);
  let scale = 1;
  const value = (room: BoardRoom, b: number): number => room.worth[room.top[b] as number] as number;
  nested.rooms.forEach((room, r) => {
    room.boards.forEach((board, b) => {
      if (rest.left[r]?.[b] !== Number.POSITIVE_INFINITY) return;
      if (value(room, b) > board.cost) scale = Math.min(scale, board.cost / value(room, b));
    });
  });
  const worth = mix.worth.map((w) => w * scale);
  price(nested, worth);
  let bound = rest.need.reduce((sum, need, d) => sum + need * (worth[d] as number), 0);
  const asked = nested.rooms.map((room, r) =>
    room.boards.map((board, b) => {
      const over = value(room, b) - board.cost;
      const left = rest.left[r]?.[b] as number;
      if (left < Number.POSITIVE_INFINITY) bound -= left * Math.max(0, over);
      return Math.max(0, -over);
    }),
  );
  return { bound, asked, worth };
}

/** Which choices a flow is made of. */
export interface FlowLimits {
  /** Those by which a plan may cost less than this. */
  readonly below: number;
  /** No more than so many. */
  readonly most: number;
  /** Each board is ripped before it is crosscut, as far along as its sticks are of use: fewer choices by far. */
  readonly ripFirst?: boolean;
}

/**
 * Every choice by which a plan may still cost less than `below`: its own reduced cost and that of the cheapest way to
 * come by its piece of wood do not reach the difference between `below` and the bound. Where that leaves more than
 * `most` choices the difference is narrowed, and the bound of what is left out comes down with it.
 */
export function flowBelow(nested: Nested, rest: Rest, mix: Mixture, limits: FlowLimits): Flow {
  const { below, most, ripFirst = false } = limits;
  const { bound, asked, worth } = settlePrices(nested, rest, mix);
  const grain = GRAIN * (1 + below * 1e-3);
  let room = Math.max(0, below - bound) + grain;
  for (let complete = !ripFirst; room > grain / 1000; complete = false) {
    const choices = choicesWithin({ nested, rest, worth, asked, slack: room, most, ripFirst });
    if (choices !== undefined) {
      return { nested, rest, choices, bound: ripFirst ? bound : bound + room - grain, complete };
    }
    room *= 0.7;
  }
  // Choices that tie at no cost at all are kept together, even if they are a few times too many.
  const ties = choicesWithin({ nested, rest, worth, asked, slack: grain, most: 6 * most, ripFirst });
  return { nested, rest, choices: ties ?? [], bound, complete: false };
}

interface Within {
  readonly nested: Nested;
  readonly rest: Rest;
  readonly worth: Float64Array;
  readonly asked: readonly (readonly number[])[];
  readonly slack: number;
  readonly most: number;
  readonly ripFirst: boolean;
}

function choicesWithin(of: Within): Choice[] | undefined {
  const { nested, slack } = of;
  const choices: Choice[] = [];
  const reach = nested.kinds.map((k) => new Float64Array(k.at.length).fill(Number.POSITIVE_INFINITY));
  for (let r = 0; r < nested.rooms.length; r++) {
    if (!roomChoices(of, r, reach, choices)) return undefined;
  }
  nested.kinds.forEach((kind, k) => {
    const to = reach[k] as Float64Array;
    for (let i = to.length - 2; i >= 0; i--) {
      const drop = (to[i + 1] as number) + (kind.worth[i + 1] as number) - (kind.worth[i] as number);
      to[i] = Math.min(to[i] as number, drop);
    }
  });
  // A clear stick may serve as a knotty one.
  nested.kinds.forEach((kind, k) => {
    const clear = nested.clearTwin[k];
    if (clear === undefined || clear < 0) return;
    const from = nested.kinds[clear] as StickKind;
    kind.at.forEach((size, i) => {
      const j = floorIndex(from.at, size);
      const via = (reach[clear]?.[j] as number) + (from.worth[j] as number) - (kind.worth[i] as number);
      if (from.at[j] === size) (reach[k] as Float64Array)[i] = Math.min(reach[k]?.[i] as number, via);
    });
  });
  for (let k = 0; k < nested.kinds.length; k++) {
    if (!cutChoices(of, k, reach[k] as Float64Array, choices)) return undefined;
  }
  return choices.length <= of.most && slack >= 0 ? choices : undefined;
}

/** Boards, splits and rips of one room; false where there are too many. */
function roomChoices(of: Within, r: number, reach: Float64Array[], choices: Choice[]): boolean {
  const { nested, rest, slack } = of;
  const room = nested.rooms[r] as BoardRoom;
  const ways = of.ripFirst ? longestWays(room) : room.ways;
  const toBar = new Float64Array(room.at.length).fill(Number.POSITIVE_INFINITY);
  const toSegment = new Float64Array(room.segments.length).fill(Number.POSITIVE_INFINITY);
  room.boards.forEach((_, board) => {
    const asked = of.asked[r]?.[board] as number;
    if ((rest.left[r]?.[board] as number) <= 0 || asked > slack) return;
    choices.push({ is: 'buy', room: r, board });
    const top = room.top[board] as number;
    toBar[top] = Math.min(toBar[top] as number, asked);
  });
  // Longer segments come off a board first: any other order only says the same again.
  for (let s = room.segments.length - 1; s >= 0; s--) {
    if ((ways[s] as readonly number[]).length === 0) continue;
    const size = room.segments[s] as number;
    let to = room.at.length - 1;
    for (let i = room.at.length - 1; i > 0 && (room.at[i] as number) >= size; i--) {
      if ((toBar[i] as number) > slack) continue;
      while ((room.at[to] as number) > (room.at[i] as number) - size) to--;
      const spent = (room.worth[i] as number) - (room.ripWorth[s] as number) - (room.worth[to] as number);
      const cost = (toBar[i] as number) + spent;
      if (cost > slack) continue;
      choices.push({ is: 'split', room: r, from: i, segment: s, to });
      if (!of.ripFirst) toBar[to] = Math.min(toBar[to] as number, cost);
      toSegment[s] = Math.min(toSegment[s] as number, cost);
    }
    if (choices.length > of.most) return false;
  }
  ways.forEach((list, s) => {
    if ((toSegment[s] as number) > slack) return;
    for (const q of list) {
      const { counts } = room.patterns[q] as SectionPattern;
      let cost = (toSegment[s] as number) + (room.ripWorth[s] as number);
      counts.forEach((n, c) => {
        if (n > 0) cost -= n * (nested.kinds[room.kinds[c] as number]?.worth[room.inKind[c]?.[s] as number] as number);
      });
      if (cost > slack) continue;
      choices.push({ is: 'rip', room: r, segment: s, pattern: q });
      counts.forEach((n, c) => {
        const to = reach[room.kinds[c] as number] as Float64Array;
        const at = room.inKind[c]?.[s] as number;
        if (n > 0) to[at] = Math.min(to[at] as number, cost);
      });
    }
  });
  return choices.length <= of.most;
}

/** Per segment length the patterns by which a whole board is ripped at once: the longest of use to them on some board. */
function longestWays({ segments, ways, at, top, patterns }: BoardRoom): number[][] {
  const found = Array.from(segments, () => new Set<number>());
  for (const t of new Set(top)) {
    const open = new Set(patterns.keys());
    for (let s = segments.length - 1; s >= 0; s--) {
      if ((segments[s] as number) > (at[t] as number)) continue;
      for (const q of ways[s] as readonly number[]) if (open.delete(q)) found[s]?.add(q);
    }
  }
  return found.map((set) => [...set]);
}

/** Length patterns of one kind of stick; false where there are too many. */
function cutChoices(of: Within, k: number, reach: Float64Array, choices: Choice[]): boolean {
  const { nested, rest, worth, slack } = of;
  const kind = nested.kinds[k] as StickKind;
  const hasTwin = nested.clearTwin.includes(k);
  const longest = reach.findLastIndex((cost) => cost <= slack);
  const most = longest < 0 ? 0 : (kind.at[longest] as number);
  const pieces: number[] = [];
  let nodes = 0;
  // A clear stick cut to knotty pieces alone is dropped to a knotty stick instead.
  const needsClear = (): boolean => !hasTwin || pieces.some((d) => nested.problem.demands[d]?.clear === true);
  const search = (j: number, size: number, sum: number): boolean => {
    const at = floorIndex(kind.at, size);
    const cost = (kind.worth[at] as number) - sum;
    if (cost > slack) return true;
    if (++nodes > 20 * of.most + 10_000) return false;
    if (pieces.length > 0 && (reach[at] as number) + cost <= slack && needsClear()) {
      choices.push({ is: 'cut', kind: k, position: at, pieces: [...pieces] });
      if (choices.length > of.most) return false;
    }
    for (let i = j; i < kind.items.length; i++) {
      const item = kind.items[i] as StickKind['items'][number];
      const used = pieces.reduce((n, d) => (d === item.demand ? n + 1 : n), 0);
      if (size + item.size > most || used >= (rest.need[item.demand] as number)) continue;
      pieces.push(item.demand);
      const ok = search(i, size + item.size, sum + (worth[item.demand] as number));
      pieces.pop();
      if (!ok) return false;
    }
    return true;
  };
  return search(0, 0, 0);
}
