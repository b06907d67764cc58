import { placesOf } from './places.ts';
import { floorIndex } from './positions.ts';

/** A division of a board's section by rips: a stick of a part's section, waste, or two pieces either side of a cut. */
export type SectionTree =
  | { readonly stick: number }
  | {
      readonly axis: 'width' | 'thickness';
      /** Size of `a` in ticks: what stands between fence and blade. */
      readonly at: number;
      readonly a: SectionTree;
      readonly b: SectionTree;
    }
  | null;

/** Sticks that one way of ripping yields, per section of the class's list, with its cuts. */
export interface SectionPattern {
  readonly counts: readonly number[];
  readonly tree: SectionTree;
  /** Different fence settings, ticks; what is planed needs none. */
  readonly fences: readonly number[];
  /** Cuts, planed ones among them. */
  readonly rips: number;
}

/** Sides of a stick that is wanted, `thickness` not above `width`, and how many could be of use. */
interface StickSection {
  readonly thickness: number;
  readonly width: number;
  readonly most: number;
}

/** What limits the ripping of one board section. Sizes in ticks. */
export interface Ripping {
  readonly thickness: number;
  readonly width: number;
  readonly sections: readonly StickSection[];
  readonly loss: number;
  readonly narrowest: number;
  /** Infinity where there is no limit. */
  readonly deepest: number;
  /** What a plane takes off a side instead of a rip; it knows no deepest cut. Absent: nothing. */
  readonly shaving?: number;
}

const PIECE_CAP = 120;

/** Comparisons after which only plain grids are still looked at. */
const WORK_CAP = 4_000_000;

/** Whether a piece may be ripped that is `along` wide across the cut and `across` deep through the blade. */
export function mayPart(rip: Ripping, along: number, across: number): boolean {
  return along >= rip.narrowest && across <= rip.deepest;
}

/** Whether such a piece may be brought to `at` along the cut with nothing beyond: by plane or saw. */
export function mayTrim(rip: Ripping, at: number, along: number, across: number): boolean {
  return along - at <= (rip.shaving ?? 0) || mayPart(rip, along, across);
}

/**
 * The undominated ways to rip a board's section into sticks, every cut at a normal position; each with the tree of
 * fewest fence settings, then fewest rips. `complete` is false where the list was cut short.
 */
export function sectionPatterns(rip: Ripping): { patterns: readonly SectionPattern[]; complete: boolean } {
  const memo = new Map<number, SectionPattern[]>();
  const nothing: SectionPattern = { counts: rip.sections.map(() => 0), tree: null, fences: [], rips: 0 };
  const smallest = rip.sections.reduce((least, s) => Math.min(least, s.thickness), Number.POSITIVE_INFINITY);
  const state = { complete: true, work: 0 };
  const { shaving = 0 } = rip;

  const { places, isPlace, complete } = placesOf(rip);

  // Where the saw has no rule a piece is as good as the next smaller normal one; else pieces keep their true size.
  const ruled = rip.narrowest > 0 || rip.deepest < Math.max(rip.width, rip.thickness);
  const trim = (along: number, across: number): number => {
    if (along < smallest) return 0;
    if (ruled) return along;
    const at = places(across);
    return Math.max(0, (at[floorIndex(at, along + rip.loss)] as number) - rip.loss);
  };

  // A side under the narrowest stays as it is but for a plane: it is of use only where that makes it a stick's side.
  const sides = [...new Set(rip.sections.flatMap((s) => [s.thickness, s.width]))].sort((a, b) => b - a);
  const frozen = (side: number): number =>
    side >= rip.narrowest ? side : (sides.find((s) => s <= side && side - s <= shaving) ?? 0);
  const planed = (axis: 'width' | 'thickness', at: number, of: readonly SectionPattern[]): SectionPattern[] =>
    of
      .filter((p) => !isPlanedAlong(p.tree, axis, at, shaving))
      .map((p) => (p.tree === null ? p : { ...p, tree: { axis, at, a: p.tree, b: null }, rips: p.rips + 1 }));

  const solve = (w: number, t: number): SectionPattern[] => {
    if (Math.min(w, t) < smallest) return [nothing];
    const [width, thickness] = [frozen(w), frozen(t)];
    if (width === 0 || thickness === 0) return [nothing];
    if (width < w) return planed('width', width, solve(width, t));
    if (thickness < t) return planed('thickness', thickness, solve(w, thickness));
    const key = w * 4_194_304 + t;
    const known = memo.get(key);
    if (known) return known;
    const found: SectionPattern[] = [nothing];
    rip.sections.forEach((s, i) => {
      if ((s.width === w && s.thickness === t) || (s.width === t && s.thickness === w)) {
        const counts = nothing.counts.map((_, j) => (i === j ? 1 : 0));
        found.push({ counts, tree: { stick: i }, fences: [], rips: 0 });
      }
    });
    for (const axis of ['width', 'thickness'] as const) {
      const [along, across] = axis === 'width' ? [w, t] : [t, w];
      // Where the saw may not part a piece a plane may still bring it to size.
      const least = mayPart(rip, along, across) ? 1 : Math.max(1, along - shaving);
      for (const place of places(across)) {
        const at = place - rip.loss;
        if (at < least) continue;
        if (at >= along || ++state.work > WORK_CAP) break;
        const rest = trim(along - at - rip.loss, across);
        // The mirrored cut, where there is one, is looked at instead.
        if (rest > 0 && at > rest && (!ruled || isPlace(across, rest))) continue;
        const [first, second] = axis === 'width' ? [solve(at, t), solve(rest, t)] : [solve(w, at), solve(w, rest)];
        for (const a of first) {
          if (a.tree === null || (along - at <= shaving && isPlanedAlong(a.tree, axis, at, shaving))) continue;
          state.work += second.length * found.length;
          for (const b of second) insert(found, { axis, at, a, b, planed: along - at <= shaving }, rip.sections);
        }
      }
    }
    if (state.work > WORK_CAP) {
      state.complete = false;
      for (const p of grids(rip, w, t)) insertPattern(found, p, rip.sections);
    }
    if (found.length > PIECE_CAP) {
      found.length = PIECE_CAP;
      state.complete = false;
    }
    memo.set(key, found);
    return found;
  };

  const exact = rip.sections.some((s) => s.width === rip.width && s.thickness === rip.thickness);
  const width = exact ? rip.width : trim(rip.width, rip.thickness);
  const all = solve(width, exact ? rip.thickness : trim(rip.thickness, width));
  return { patterns: all.filter((p) => p.tree !== null), complete: state.complete && complete() };
}

/** Whether a piece is next planed along an axis: one planing after another would take more than a plane should. */
function isPlanedAlong(tree: SectionTree, axis: 'width' | 'thickness', size: number, shaving: number): boolean {
  return tree !== null && 'axis' in tree && tree.axis === axis && tree.b === null && size - tree.at <= shaving;
}

interface Cut {
  readonly axis: 'width' | 'thickness';
  readonly at: number;
  readonly a: SectionPattern;
  readonly b: SectionPattern;
  readonly planed: boolean;
}

function join({ axis, at, a, b, planed }: Cut, counts: readonly number[]): SectionPattern {
  const fences = [...new Set([...(planed ? [] : [at]), ...a.fences, ...b.fences])].sort((x, y) => x - y);
  return { counts, tree: { axis, at, a: a.tree, b: b.tree }, fences, rips: 1 + a.rips + b.rips };
}

/** Adds what a cut yields unless a pattern as good is there; takes out those it beats. */
function insert(found: SectionPattern[], cut: Cut, sections: readonly StickSection[]): void {
  const counts = cut.a.counts.map((n, i) => n + (cut.b.counts[i] as number));
  let made: SectionPattern | undefined;
  for (const other of found) {
    if (!covers(other.counts, counts, sections)) continue;
    if (!covers(counts, other.counts, sections)) return;
    made ??= join(cut, counts);
    if ((other.fences.length - made.fences.length || other.rips - made.rips) <= 0) return;
  }
  insertPattern(found, made ?? join(cut, counts), sections);
}

/** Adds a pattern and takes out those it beats; the first, which yields nothing, stays. */
function insertPattern(found: SectionPattern[], p: SectionPattern, sections: readonly StickSection[]): void {
  for (let i = found.length - 1; i > 0; i--) {
    if (covers(p.counts, (found[i] as SectionPattern).counts, sections)) found.splice(i, 1);
  }
  found.push(p);
}

/** One section over and over: columns across the width, each parted through the thickness; both ways of laying it. */
function grids(rip: Ripping, w: number, t: number): SectionPattern[] {
  return rip.sections.flatMap((s, i) =>
    [
      [s.width, s.thickness],
      [s.thickness, s.width],
    ].flatMap(([across, deep]) => {
      const column = row(rip, 'thickness', [t, across as number], deep as number, leafOf(rip, i));
      const all = column && row(rip, 'width', [w, t], across as number, column);
      return all ? [all] : [];
    }),
  );
}

function leafOf(rip: Ripping, i: number): SectionPattern {
  return { counts: rip.sections.map((_, j) => Number(i === j)), tree: { stick: i }, fences: [], rips: 0 };
}

/** As many equal pieces of `size` as come out of a piece `along` by `across`, each cut up as `each` says. */
function row(
  rip: Ripping,
  axis: 'width' | 'thickness',
  [along, across]: readonly [number, number],
  size: number,
  each: SectionPattern,
): SectionPattern | undefined {
  if (along < size) return undefined;
  if (along === size) return each;
  if (!mayTrim(rip, size, along, across)) return undefined;
  const nothing = { counts: each.counts.map(() => 0), tree: null, fences: [], rips: 0 };
  const b = row(rip, axis, [along - size - rip.loss, across], size, each) ?? nothing;
  const counts = each.counts.map((n, i) => n + (b.counts[i] as number));
  return join({ axis, at: size, a: each, b, planed: along - size <= (rip.shaving ?? 0) }, counts);
}

/** The patterns that no other beats, the first of those that yield the same. */
export function undominated(patterns: readonly SectionPattern[], sections: readonly StickSection[]): SectionPattern[] {
  const found: SectionPattern[] = [];
  for (const p of patterns) {
    if (found.some((o) => covers(o.counts, p.counts, sections))) continue;
    for (let i = found.length - 1; i >= 0; i--) {
      if (covers(p.counts, (found[i] as SectionPattern).counts, sections)) found.splice(i, 1);
    }
    found.push(p);
  }
  return found;
}

/** Whether `a` has as many sticks as `b` of every section; more than are of use count for nothing. */
function covers(a: readonly number[], b: readonly number[], sections: readonly StickSection[]): boolean {
  for (let i = 0; i < a.length; i++) {
    if ((a[i] as number) < Math.min(b[i] as number, (sections[i] as StickSection).most)) return false;
  }
  return true;
}
