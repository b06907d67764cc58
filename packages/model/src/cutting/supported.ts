import { type Divisions, divisionsOf, valued } from './division.ts';
import { layoutOf, patternOf } from './layout.ts';
import { type Ripping, type SectionPattern, sectionPatterns, undominated } from './section.ts';
import { yieldsOf } from './vectors.ts';

/** The ways to rip one board section. */
export interface Ripped {
  readonly rip: Ripping;
  readonly patterns: readonly SectionPattern[];
  /** False where the list was cut short. */
  readonly complete: boolean;
  /** Where the list was cut short: all divisions, for prices; absent where there are too many. */
  readonly division?: Divisions;
}

/** Cuts looked at over all worths tried. */
const WORK = 2_000_000;

/** Undominated patterns kept. */
const MOST = 100;

/**
 * The undominated ways to rip a board's section or, where a short search does not end, those that are best at one of
 * many different worths of sticks.
 */
export function ripped(rip: Ripping): Ripped {
  const { patterns, complete } = sectionPatterns(rip);
  if (complete) return { rip, patterns, complete };
  const division = divisionsOf(rip);
  if (division === undefined) return { rip, patterns, complete };
  const all = yieldsOf(rip, division);
  const made = all.layouts.map(({ layout }) => patternOf(rip, layout));
  const kept = made.filter((p) => p !== undefined);
  // Where the saw can make every one of them, the list is whole.
  const whole = (p: SectionPattern | undefined, i: number): boolean =>
    p !== undefined && (all.layouts[i]?.counts.every((n, s) => (p.counts[s] as number) >= n) ?? false);
  if (all.complete && made.every(whole)) return { rip, patterns: undominated(kept, rip.sections), complete: true };
  const found = undominated([...patterns, ...kept, ...supported(rip, division)], rip.sections);
  // Those of most wood first, so that the ones left out are the poorest.
  const wood = (p: SectionPattern): number => p.counts.reduce((sum, n, s) => sum + n * areaOf(rip, s), 0);
  found.sort((a, b) => wood(b) - wood(a));
  return { rip, patterns: found.slice(0, MOST), complete, division };
}

/** Room that a stick takes up, with its losses. */
function areaOf(rip: Ripping, s: number): number {
  const { thickness, width } = rip.sections[s] as Ripping['sections'][number];
  return (thickness + rip.loss) * (width + rip.loss);
}

/** The pattern of most worth that the saw's rules allow; `undefined` where none is found. */
export function bestPattern(rip: Ripping, division: Divisions, worths: ArrayLike<number>): SectionPattern | undefined {
  const layout = layoutOf(rip, division, valued(division, worths, true));
  return layout && patternOf(rip, layout);
}

function supported(rip: Ripping, division: Divisions): SectionPattern[] {
  const made: SectionPattern[] = [];
  const areas = rip.sections.map((_, s) => areaOf(rip, s));
  const keep = (layout: ReturnType<typeof layoutOf>): void => {
    const pattern = layout && patternOf(rip, layout);
    if (pattern !== undefined) made.push(pattern);
  };
  const lists = worthsOf(areas);
  const tries = Math.max(8, Math.floor(WORK / division.a.length));
  for (const worths of lists.slice(0, tries)) keep(layoutOf(rip, division, valued(division, worths, true)));
  // Every first rip of the board, with the best on either side of it.
  const best = valued(division, areas, true);
  const top = division.cuts.length - 2;
  for (let cut = division.cuts[top] as number; cut < (division.cuts[top + 1] as number); cut++) {
    if (((division.how[cut] as number) & 8) === 0) keep(layoutOf(rip, division, best, cut));
  }
  return made;
}

/** Worths by area, then each section alone, each favoured, and two at a time in several ratios. */
function worthsOf(areas: readonly number[]): number[][] {
  const lists = [[...areas]];
  areas.forEach((_, s) => {
    lists.push(areas.map((a, i) => (i === s ? a : 0)));
  });
  for (const by of [1.1, 1.3, 1.7, 3]) {
    areas.forEach((_, s) => {
      lists.push(areas.map((a, i) => (i === s ? by * a : a)));
    });
  }
  for (const by of [1, 1.25, 0.8, 1.6, 0.6]) {
    areas.forEach((x, s) => {
      areas.slice(0, s).forEach((y, r) => {
        lists.push(areas.map((_, i) => (i === s ? by * x : i === r ? y : 0)));
      });
    });
  }
  return lists;
}
