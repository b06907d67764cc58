import type { Divisions } from './division.ts';
import { type Layout, layoutFrom } from './layout.ts';
import type { Ripping } from './section.ts';

/** Pairs of yields joined over all cuts. */
const WORK = 800_000;

/** One yield of a rectangle: sticks per section, none above what is of use, and how it is come by. */
interface Yield {
  readonly counts: Int16Array;
  readonly sum: number;
  /** As `by` of a valued division, with the yields of the two rectangles either side of a cut. */
  readonly by: number;
  readonly a?: Yield;
  readonly b?: Yield;
}

/** Layouts of a board that yield different sticks. */
export interface Yields {
  readonly layouts: readonly { readonly counts: Int16Array; readonly layout: Layout }[];
  /** False where some rectangle has more undominated yields than were kept. */
  readonly complete: boolean;
}

/**
 * The undominated yields of a board's section, rectangle by rectangle; of each only as many are kept as the number of
 * cuts lets be joined. Whatever the saw's rules say.
 */
export function yieldsOf(rip: Ripping, division: Divisions): Yields {
  const { cuts, a, b, fits, sticks } = division;
  const most = rip.sections.map((s) => Math.min(s.most, 30_000));
  const areas = rip.sections.map((s) => (s.thickness + rip.loss) * (s.width + rip.loss));
  const keep = Math.min(60, Math.floor(Math.sqrt(WORK / (a.length + 1))));
  if (keep < 4) return { layouts: [], complete: false };
  const nodes: Yield[][] = [];
  const counts = new Int16Array(most.length);
  let complete = true;
  for (let i = 0; i < cuts.length - 1; i++) {
    const found: Yield[] = [];
    for (let k = fits[i] as number; k < (fits[i + 1] as number); k++) {
      counts.fill(0);
      counts[sticks[k] as number] = 1;
      insert(found, counts, areas, { by: -1 - (sticks[k] as number) });
    }
    for (let by = cuts[i] as number; by < (cuts[i + 1] as number); by++) {
      for (const one of nodes[a[by] as number] as Yield[]) {
        for (const other of nodes[b[by] as number] as Yield[]) {
          for (let s = 0; s < most.length; s++) {
            counts[s] = Math.min(most[s] as number, (one.counts[s] as number) + (other.counts[s] as number));
          }
          insert(found, counts, areas, { by, a: one, b: other });
        }
      }
    }
    if (found.length > keep) complete = false;
    nodes.push(found.length > keep ? chosen(found, keep) : found);
  }
  const top = cuts.length - 2;
  const layouts = (nodes[top] as Yield[]).flatMap((y) => {
    const layout = layoutFrom(rip, division, { node: top, turned: division.turned, pick: y }, (_, pick) => pick);
    return layout === undefined ? [] : [{ counts: y.counts, layout }];
  });
  return { layouts, complete };
}

/** Adds a yield unless one as good is there; takes out those it beats. */
function insert(
  found: Yield[],
  counts: Int16Array,
  areas: readonly number[],
  from: Pick<Yield, 'by'> & Partial<Pick<Yield, 'a' | 'b'>>,
): void {
  let sum = 0;
  for (let s = 0; s < counts.length; s++) sum += (counts[s] as number) * (areas[s] as number);
  for (const other of found) if (other.sum >= sum && atLeast(other.counts, counts)) return;
  for (let i = found.length - 1; i >= 0; i--) {
    const other = found[i] as Yield;
    if (other.sum < sum && atLeast(counts, other.counts)) found.splice(i, 1);
  }
  found.push({ counts: counts.slice(), sum, ...from });
}

function atLeast(a: Int16Array, b: Int16Array): boolean {
  for (let s = 0; s < a.length; s++) if ((a[s] as number) < (b[s] as number)) return false;
  return true;
}

/** Of too many yields those of most wood, and those with most sticks of each section. */
function chosen(found: readonly Yield[], keep: number): Yield[] {
  const sorted = [...found].sort((x, y) => y.sum - x.sum);
  const picked = new Set<Yield>();
  const sections = sorted[0]?.counts.length ?? 0;
  for (let s = 0; s < sections && picked.size < keep / 2; s++) {
    picked.add(sorted.reduce((best, y) => ((y.counts[s] as number) > (best.counts[s] as number) ? y : best)));
  }
  for (const y of sorted) {
    if (picked.size >= keep) break;
    picked.add(y);
  }
  return [...picked];
}
