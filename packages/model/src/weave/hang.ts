import { changesOfSide, type Side } from './pattern.ts';

/** Courses and staves that cannot be lifted off one another, counted from 1 at the bottom and at the left. */
export interface Layer {
  readonly courses: readonly number[];
  readonly staves: readonly number[];
}

/** Whether a weave stays together, and which courses do not. */
export interface Hanging {
  readonly holds: boolean;
  /** Courses that come off: not in the frame's layer with tied staves, else not in the largest layer. From 1. */
  readonly looseCourses: readonly number[];
  /** What the weave falls into, front layer first; a single one if it holds. */
  readonly layers: readonly Layer[];
  /** For each course, whether its own bending holds it: at least two changes of side. */
  readonly gripped: readonly boolean[];
}

/**
 * Tells whether a weave hangs together or can be lifted apart into layers. From each crossing draw an arc from the
 * strand in front to the one behind: the weave holds exactly when every strand can be reached from every other one
 * along arcs, and falls into the sets of strands that can. Staves in the rails' grooves are tied: they are joined to
 * the frame, and then the weave holds exactly when each course passes some stave in front and some stave behind.
 *
 * Source: the published criterion (Clapham 1980, When a fabric hangs together, from memory); checked against brute
 * force over all splittings of all 3 × 4 weaves.
 *
 * @param rows A side for each stave, course by course from the bottom; all courses, or one repeat of the weave.
 * @param frame `stavesTied`: whether the stave ends sit in grooves.
 * @throws RangeError for no rows, or rows that are empty or differ in length.
 */
export function hangsTogether(
  rows: readonly (readonly Side[])[],
  { stavesTied }: { readonly stavesTied: boolean },
): Hanging {
  const staves = rows[0]?.length ?? 0;
  if (staves === 0 || rows.some((row) => row.length !== staves))
    throw new RangeError('invalid rows (expected at least one course, with as many sides in each as there are staves)');
  const courses = rows.length;
  const frame = courses + staves;
  const behind = strandsBehind(rows, staves, stavesTied);
  // The layer found first has no strand behind it.
  const sets = strongComponents(behind).reverse();
  const kept = stavesTied ? sets.find((set) => set.includes(frame)) : largest(sets);
  const layers = sets.map((set) => layerOf(set, courses, frame));
  return {
    holds: sets.length === 1,
    looseCourses: rows.flatMap((_, course) => (kept?.includes(course) ? [] : [course + 1])),
    layers,
    gripped: rows.map((row) => changesOfSide(row).length >= 2),
  };
}

/** For each strand (courses, then staves, then the frame if staves are tied) the strands just behind it. */
function strandsBehind(rows: readonly (readonly Side[])[], staves: number, stavesTied: boolean): number[][] {
  const courses = rows.length;
  const frame = courses + staves;
  const behind: number[][] = Array.from({ length: stavesTied ? frame + 1 : frame }, () => []);
  for (const [course, row] of rows.entries())
    for (const [j, side] of row.entries())
      if (side === 1) behind[course]?.push(courses + j);
      else behind[courses + j]?.push(course);
  if (stavesTied)
    for (let stave = courses; stave < frame; stave++) {
      behind[stave]?.push(frame);
      behind[frame]?.push(stave);
    }
  return behind;
}

/**
 * Sets of nodes that reach one another along arcs, each set before the sets with arcs into it. Tarjan's algorithm
 * (1972): depth first, a node's `low` the oldest node still open that it reaches.
 */
function strongComponents(arcs: readonly (readonly number[])[]): number[][] {
  const order = new Array<number>(arcs.length).fill(-1);
  const low = new Array<number>(arcs.length).fill(-1);
  const open: number[] = [];
  const isOpen = new Array<boolean>(arcs.length).fill(false);
  const found: number[][] = [];
  let visited = 0;
  const visit = (node: number): number => {
    order[node] = visited;
    low[node] = visited++;
    open.push(node);
    isOpen[node] = true;
    for (const next of arcs[node] ?? []) {
      const reach = order[next] === -1 ? visit(next) : isOpen[next] ? (order[next] ?? 0) : Number.POSITIVE_INFINITY;
      low[node] = Math.min(low[node] ?? 0, reach);
    }
    if (low[node] === order[node]) {
      const component = open.splice(open.indexOf(node));
      for (const member of component) isOpen[member] = false;
      found.push(component);
    }
    return low[node] ?? 0;
  };
  for (let node = 0; node < arcs.length; node++) if (order[node] === -1) visit(node);
  return found;
}

function largest(sets: readonly number[][]): number[] | undefined {
  return sets.reduce<number[] | undefined>((best, set) => (best && best.length >= set.length ? best : set), undefined);
}

function layerOf(set: readonly number[], courses: number, frame: number): Layer {
  const strands = [...set].sort((a, b) => a - b);
  return {
    courses: strands.filter((strand) => strand < courses).map((strand) => strand + 1),
    staves: strands.filter((strand) => strand >= courses && strand < frame).map((strand) => strand - courses + 1),
  };
}
