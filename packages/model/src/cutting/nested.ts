import { mayRip, serves } from './fit.ts';
import { floorIndex, normalPositions, type Positions, type Run, stepsDown } from './positions.ts';
import type { Board, BoardClass, Problem } from './problem.ts';
import type { SectionPattern } from './section.ts';
import { type StickKind, stickKind } from './sticks.ts';
import { type Ripped, ripped } from './supported.ts';

/**
 * The tables over which one board is priced, from the inside out: sticks of one section and grade are crosscut into
 * pieces, segments of one board class are ripped into sticks, boards are crosscut into segments. Sizes along the grain
 * are in ticks with one crosscut kerf added to piece and room alike, so that kerfs need no further thought.
 */
export interface Nested {
  readonly problem: Problem;
  readonly kinds: readonly StickKind[];
  readonly rooms: readonly BoardRoom[];
  /** Per knotty stick kind, the clear kind of the same section whose sticks may serve as well; -1 for none. */
  readonly clearTwin: readonly number[];
  /** False where some list was cut short: plans stay right, but bounds from the tables are not valid. */
  readonly complete: boolean;
  /** The same for lengths alone: whatever was cut short is how sections may be ripped. */
  readonly lengthsComplete: boolean;
}

/** One board class with its rip patterns and segment lengths. */
export interface BoardRoom {
  readonly class: number;
  readonly boards: readonly Board[];
  readonly patterns: readonly SectionPattern[];
  readonly ripped: Ripped;
  /** Stick kind of each entry of a pattern's counts. */
  readonly kinds: readonly number[];
  /** Segment lengths that are of use. */
  readonly segments: Int32Array;
  /** Per kind of `kinds`: index in its positions of each segment length. */
  readonly inKind: readonly Int32Array[];
  /** Per segment length the patterns of use there: those for which no shorter segment gives sticks as long. */
  readonly ways: readonly (readonly number[])[];
  /** Worth of each segment length ripped the best way, and that way; -1 for none. */
  readonly ripWorth: Float64Array;
  readonly ripBest: Int32Array;
  readonly at: Int32Array;
  /** Worth of each room crosscut the best way, and the segment taken last, or -1. */
  readonly worth: Float64Array;
  readonly last: Int32Array;
  /** Per board: index of its room among `at`. */
  readonly top: Int32Array;
}

/** Builds the tables of a problem. Classes that can make nothing wanted get no room. */
export function nest(problem: Problem): Nested {
  const kinds: StickKind[] = [];
  const kindAt = new Map<string, number>();
  const rooms: BoardRoom[] = [];
  let complete = true;
  let lengthsComplete = true;
  const longest = (c: number): number => problem.boards.reduce((l, b) => (b.class === c ? Math.max(l, b.room) : l), 0);
  const reach = new Map<string, number>();
  const sectionsOf = problem.classes.map((c, i) => sectionsFor(problem, c, longest(i)));
  problem.classes.forEach((c, i) => {
    for (const s of sectionsOf[i] ?? []) {
      const key = kindKey(c, s);
      reach.set(key, Math.max(reach.get(key) ?? 0, longest(i)));
    }
  });
  problem.classes.forEach((c, i) => {
    const sections = sectionsOf[i] ?? [];
    const boards = problem.boards.filter((b) => b.class === i);
    if (sections.length === 0 || boards.length === 0) return;
    const ways = ripped({
      ...c,
      sections,
      loss: problem.ripLoss,
      narrowest: problem.narrowestRip,
      deepest: problem.deepestRip,
      shaving: problem.shaving,
    });
    complete &&= ways.complete;
    const indices = sections.map((s) => {
      const key = kindKey(c, s);
      const known = kindAt.get(key);
      if (known !== undefined) return known;
      const made = stickKind(problem, c, s, reach.get(key) as number);
      lengthsComplete &&= made.complete;
      kindAt.set(key, kinds.length);
      return kinds.push(made.kind) - 1;
    });
    const room = boardRoom(problem, { class: i, boards, ripped: ways, indices, kinds });
    lengthsComplete &&= room.complete;
    if (room.room.patterns.length > 0) rooms.push(room.room);
  });
  return { problem, kinds, rooms, clearTwin: twins(kinds), complete: complete && lengthsComplete, lengthsComplete };
}

function twins(kinds: readonly StickKind[]): number[] {
  return kinds.map((k) =>
    k.clear
      ? -1
      : kinds.findIndex((o) => o.clear && o.wood === k.wood && o.width === k.width && o.thickness === k.thickness),
  );
}

function kindKey(c: BoardClass, s: { thickness: number; width: number }): string {
  return `${s.thickness}|${s.width}|${c.clear}|${c.wood}`;
}

/** Sections of the demands that a class may serve and that fit its section and its longest board. */
function sectionsFor(
  problem: Problem,
  c: BoardClass,
  longest: number,
): { thickness: number; width: number; most: number }[] {
  const found = new Map<string, { thickness: number; width: number; most: number }>();
  for (const d of problem.demands) {
    if (!serves(c, d) || d.thickness > c.thickness || d.width > c.width) continue;
    if (d.length + problem.crossKerf > longest) continue;
    const key = `${d.thickness}|${d.width}`;
    const entry = found.get(key) ?? { thickness: d.thickness, width: d.width, most: 0 };
    entry.most += d.need;
    found.set(key, entry);
  }
  return [...found.values()];
}

function boardRoom(
  problem: Problem,
  of: {
    class: number;
    boards: readonly Board[];
    ripped: Ripped;
    indices: readonly number[];
    kinds: readonly StickKind[];
  },
): { room: BoardRoom; complete: boolean } {
  const max = of.boards.reduce((m, b) => Math.max(m, b.room), 0);
  const kinds = of.indices.map((k) => of.kinds[k] as StickKind);
  // Patterns with rips may be added later to a list that was cut short.
  const mayBeRipped = !of.ripped.complete || of.ripped.patterns.some(({ rips }) => rips > 0);
  const ripped = mayBeRipped && problem.shortestRip > 0;
  const { segments, at, complete } = lengthsOf(kinds, max, ripped ? problem.shortestRip + problem.crossKerf : 0);
  // A pattern without a rip is the whole section; it comes first, so that short segments can be kept to it.
  const patterns = [...of.ripped.patterns].sort((a, b) => Math.sign(a.rips) - Math.sign(b.rips));
  const top = Int32Array.from(of.boards, (b) => stepsDown(at, 0, Int32Array.of(b.room))[0] as number);
  const room = withWays(problem, of.kinds, {
    class: of.class,
    boards: of.boards,
    patterns,
    ripped: of.ripped,
    kinds: of.indices,
    segments,
    inKind: kinds.map((kind) => stepsDown(kind.at, 0, segments)),
    ripWorth: new Float64Array(segments.length),
    ripBest: new Int32Array(segments.length).fill(-1),
    at,
    worth: new Float64Array(at.length),
    last: new Int32Array(at.length).fill(-1),
    top,
  });
  return { room, complete };
}

/** Lengths of the segments of boards that yield some kinds of stick, and the positions that those add up to. */
function lengthsOf(kinds: readonly StickKind[], max: number, shortest: number): Positions & { segments: Int32Array } {
  const [only] = kinds;
  if (kinds.length === 1 && only !== undefined && shortest === 0) {
    const at = only.at.slice(0, floorIndex(only.at, max) + 1);
    return { segments: at.slice(1), at, complete: true };
  }
  const lengths = new Set<number>();
  const runs = new Map<number, Run>();
  for (const kind of kinds) {
    for (const a of kind.at) if (a > 0 && a <= max) lengths.add(a);
    for (const item of kind.items) {
      runs.set(item.size, { size: item.size, most: (runs.get(item.size)?.most ?? 0) + item.need });
    }
  }
  // A short piece that must be ripped may need a segment as long as the shortest rip.
  if (shortest > 0 && shortest <= max && [...lengths].some((l) => l < shortest)) {
    lengths.add(shortest);
    runs.set(shortest, { size: shortest, most: Math.floor(max / shortest) });
  }
  return { segments: Int32Array.from(lengths).sort(), ...normalPositions([...runs.values()], max) };
}

function withWays(problem: Problem, kinds: readonly StickKind[], room: Omit<BoardRoom, 'ways'>): BoardRoom {
  const shortest = problem.shortestRip + problem.crossKerf;
  const sticks = new Float64Array(room.kinds.length);
  const ways = Array.from(room.segments, (size, i) => {
    const ripped = mayRip(problem, size);
    for (let s = 0; s < sticks.length; s++) {
      sticks[s] = kinds[room.kinds[s] as number]?.at[room.inKind[s]?.[i] as number] as number;
    }
    const of: number[] = [];
    for (let q = 0; q < room.patterns.length; q++) {
      const { rips, counts } = room.patterns[q] as SectionPattern;
      if (rips > 0 && !ripped) continue;
      let most = 0;
      for (let s = 0; s < counts.length; s++) if ((counts[s] as number) > 0) most = Math.max(most, sticks[s] as number);
      if (most > 0 && size <= Math.max(most, rips > 0 ? shortest : 0)) of.push(q);
    }
    return of;
  });
  return { ...room, ways };
}

/** The same tables with further patterns of each room; those known keep their places. */
export function withPatterns(nested: Nested, added: readonly (readonly SectionPattern[])[]): Nested {
  const rooms = nested.rooms.map((room, r) => {
    const known = new Set(room.patterns.map((p) => p.counts.join()));
    const more = (added[r] ?? []).filter((p) => p.rips > 0 && known.size < known.add(p.counts.join()).size);
    return withWays(nested.problem, nested.kinds, { ...room, patterns: [...room.patterns, ...more] });
  });
  return { ...nested, rooms };
}

/** Whether one board of a room can be made to yield a piece of a demand. */
export function canMake(nested: Nested, room: BoardRoom, board: number, demand: number): boolean {
  const length = room.boards[board]?.room as number;
  const ripped = mayRip(nested.problem, length);
  return room.kinds.some(
    (k, s) =>
      nested.kinds[k]?.items.some((item) => item.demand === demand && item.size <= length) === true &&
      room.patterns.some((p) => (p.counts[s] as number) > 0 && (ripped || p.rips === 0)),
  );
}
