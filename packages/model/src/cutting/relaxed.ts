import { boundAt, type Mixture, mixture, type Rest } from './bound.ts';
import { valued } from './division.ts';
import { mayRip } from './fit.ts';
import { type Layout, layoutOf, patternOf } from './layout.ts';
import { type BoardRoom, type Nested, withPatterns } from './nested.ts';
import { priceKind, priceLengths } from './pricing.ts';
import type { Problem } from './problem.ts';
import type { SectionPattern } from './section.ts';
import { bestPattern } from './supported.ts';

/** Cuts of divisions looked at in one pricing of all segment lengths. */
const WORK = 3_000_000;

/** Lengths that the longest board is parted into where its true ones are too many. */
const GRID = 3000;

/** What the relaxed rules of ripping give: a bound, and per room the patterns that came with it, as the saw allows. */
export interface Relaxed {
  readonly bound: number;
  readonly patterns: readonly (readonly SectionPattern[])[];
}

/**
 * The bound where section patterns are not all known: column generation as for a {@link mixture}, but with each segment
 * priced by the best division of its section, with no rule on the size of a piece that is ripped. No plan of the family
 * costs less than what these prices bound. `undefined` where some section has too many divisions.
 */
export function relaxedBound(nested: Nested, rest: Rest, rounds: number): Relaxed | undefined {
  if (!nested.lengthsComplete || nested.rooms.some((room) => !room.ripped.complete && !room.ripped.division)) return;
  const costOf = (room: BoardRoom, b: number): number => room.boards[b]?.cost as number;
  const found = nested.rooms.map(() => new Map<string, SectionPattern>());
  let bound = 0;
  let known: Mixture['known'] = [];
  // Tables of their own: what is found here need not be allowed by the saw.
  let loose = nested;
  for (let round = 0; round < rounds; round++) {
    const mix = mixture(loose, rest, { known, rounds: 60 });
    known = mix.known;
    for (const kind of loose.kinds) priceKind(kind, mix.worth);
    const added = loose.rooms.map((room, r) => priceDivided(loose, room, found[r] as Map<string, SectionPattern>));
    bound = Math.max(bound, boundAt(loose, rest, mix.worth, costOf));
    if (added.every((list) => list.length === 0)) break;
    loose = withPatterns(loose, added);
  }
  return { bound, patterns: found.map((map) => [...map.values()]) };
}

/**
 * Prices a room by the best division at each segment length. Gives the divisions worth more than any pattern known,
 * and adds to `found` what the saw can make of them.
 */
function priceDivided(nested: Nested, room: BoardRoom, found: Map<string, SectionPattern>): SectionPattern[] {
  const { division } = room.ripped;
  const known = room.patterns;
  const added: SectionPattern[] = [];
  const whole = known.filter((p) => p.rips === 0);
  const worthsAt = (i: number): number[] =>
    room.kinds.map((k, s) => nested.kinds[k]?.worth[room.inKind[s]?.[i] as number] as number);
  const most = division === undefined ? room.segments.length : Math.max(8, WORK / division.a.length);
  for (const { from, to } of stepsOf(room, worthsAt, most)) {
    // Prices of the longest segment of a step hold for the shorter ones as well: they can only be too high.
    const worths = worthsAt(to);
    let worth = bestOf(known, worths);
    if (division !== undefined && mayRip(nested.problem, room.segments[to] as number)) {
      const best = valued(division, worths, false);
      const top = best.worth[best.worth.length - 1] as number;
      if (top > worth * (1 + 1e-9) + 1e-9) {
        const layout = layoutOf(room.ripped.rip, division, best);
        if (layout !== undefined) learn(room, { layout, worths, worth }, found, added);
        worth = top;
      }
    }
    for (let i = from; i <= to; i++) {
      room.ripWorth[i] = mayRip(nested.problem, room.segments[i] as number) ? worth : bestOf(whole, worths);
    }
  }
  priceLengths(room);
  return added;
}

/** Per room, patterns that the saw allows and that beat all known ones at some segment length, at these worths of pieces. */
export function betterPatterns(nested: Nested, worth: Float64Array): SectionPattern[][] {
  for (const kind of nested.kinds) priceKind(kind, worth);
  return nested.rooms.map((room) => {
    const { rip, division } = room.ripped;
    if (division === undefined) return [];
    const worthsAt = (i: number): number[] =>
      room.kinds.map((k, s) => nested.kinds[k]?.worth[room.inKind[s]?.[i] as number] as number);
    return stepsOf(room, worthsAt, Math.max(8, WORK / division.a.length)).flatMap(({ to }) => {
      const worths = worthsAt(to);
      const pattern = mayRip(nested.problem, room.segments[to] as number) && bestPattern(rip, division, worths);
      return pattern && bestOf([pattern], worths) > bestOf(room.patterns, worths) * (1 + 1e-9) ? [pattern] : [];
    });
  });
}

/** Keeps a layout worth more than all patterns known: as it is for the bound, as the saw allows for plans. */
function learn(
  room: BoardRoom,
  of: { readonly layout: Layout; readonly worths: readonly number[]; readonly worth: number },
  found: Map<string, SectionPattern>,
  added: SectionPattern[],
): void {
  const { rip } = room.ripped;
  const loose = patternOf({ ...rip, narrowest: 0, deepest: Number.POSITIVE_INFINITY }, of.layout);
  if (
    loose !== undefined &&
    bestOf([loose], of.worths) > of.worth * (1 + 1e-9) &&
    ![...room.patterns, ...added].some((p) => same(p, loose))
  )
    added.push(loose);
  const allowed = patternOf(rip, of.layout);
  if (allowed !== undefined) found.set(allowed.counts.join(), allowed);
}

/** The worth of the best of some patterns. */
function bestOf(patterns: readonly SectionPattern[], worths: readonly number[]): number {
  const worthOf = (p: SectionPattern): number => p.counts.reduce((sum, n, s) => sum + n * (worths[s] as number), 0);
  return patterns.reduce((most, p) => Math.max(most, worthOf(p)), 0);
}

/**
 * The problem on a grid along the grain, so that its lengths can all be listed: pieces are rounded down, boards up, and
 * any length may be ripped. No plan of the problem itself costs less than what it is bounded by. `undefined` where some
 * piece is shorter than the grid.
 */
export function coarseLengths(problem: Problem): Problem | undefined {
  const longest = problem.boards.reduce((most, b) => Math.max(most, b.room), 0);
  const unit = Math.max(1, Math.ceil(longest / GRID));
  if (problem.demands.some((d) => d.length + problem.crossKerf < unit)) return undefined;
  const down = (room: number): number => Math.floor(room / unit) * unit;
  return {
    ...problem,
    shortestRip: 0,
    demands: problem.demands.map((d) => ({ ...d, length: down(d.length + problem.crossKerf) - problem.crossKerf })),
    boards: problem.boards.map((b) => ({ ...b, room: Math.ceil(b.room / unit) * unit })),
  };
}

function same(a: SectionPattern, b: SectionPattern): boolean {
  return a.counts.every((n, s) => n === b.counts[s]);
}

/** Runs of segment lengths at which sticks are worth the same, or, where there are over `most`, nearly the same. */
function stepsOf(room: BoardRoom, worthAt: (i: number) => number[], most: number): { from: number; to: number }[] {
  const totals = Array.from(room.segments, (_, i) => worthAt(i).reduce((sum, w) => sum + w, 0));
  const steps: { from: number; to: number }[] = [];
  const grain = Math.max(1e-12, (totals[totals.length - 1] ?? 0) / most);
  const exact = new Set(totals).size <= most;
  totals.forEach((total, i) => {
    const last = steps[steps.length - 1];
    const near = last !== undefined && total - (totals[last.from] as number) <= (exact ? 1e-12 : grain);
    if (near) last.to = i;
    else steps.push({ from: i, to: i });
  });
  return steps;
}
