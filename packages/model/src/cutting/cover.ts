import type { Way } from './ways.ts';

/** Ways that make just what is needed, or as much of it as was found. */
export interface Cover {
  readonly ways: readonly Way[];
  /** Whether they make all. */
  readonly all: boolean;
  readonly work: number;
}

export interface CoverOptions {
  /** Boards to be filled, and what they waste in all. */
  readonly count: number;
  readonly slack: number;
  /** Work of the search; with none the ways are gone through once. */
  readonly work: number;
  readonly chance: () => number;
}

/** Share of a choice that is left to chance, and weight of its waste, in wastes that each board may have. */
const [NOISE, WASTE] = [0.1, 0.03];

/**
 * Takes ways until they make just what is needed: for the item that has the fewest ways left, the way whose items have the
 * fewest others. First once through, leaving out items that have no way left; then, where some were left out, depth first
 * until the work is done.
 */
export function cover(need: Float64Array, ways: readonly Way[], options: CoverOptions): Cover {
  const open = openAll(need, ways, options);
  const all = sweep(open) || search(open, options.slack);
  return { ways: open.best.map((way) => ways[way] as Way), all, work: open.spent };
}

interface Maker {
  readonly way: number;
  readonly count: number;
}

/** Ways that may still be taken, and those that are. */
interface Open extends CoverOptions {
  readonly ways: readonly Way[];
  readonly need: Float64Array;
  /** Per item the ways that make it. */
  readonly makers: readonly (readonly Maker[])[];
  /** Ways by waste, the most first. */
  readonly wasteful: readonly number[];
  readonly alive: Uint8Array;
  /** Ways left per item. */
  readonly has: Int32Array;
  /** Ways closed, in order. */
  readonly gone: number[];
  readonly taken: number[];
  /** The most that was taken. */
  best: readonly number[];
  spent: number;
}

function openAll(needed: Float64Array, ways: readonly Way[], options: CoverOptions): Open {
  const need = needed.slice();
  const makers = Array.from(need, (): Maker[] => []);
  ways.forEach(({ items, counts }, way) => {
    items.forEach((j, x) => {
      makers[j]?.push({ way, count: counts[x] as number });
    });
  });
  const wasteful = [...ways.keys()].sort((a, b) => (ways[b] as Way).waste - (ways[a] as Way).waste);
  const alive = new Uint8Array(ways.length).fill(1);
  const has = Int32Array.from(makers, (list) => list.length);
  const spent = 4 * ways.length;
  return { ...options, ways, need, makers, wasteful, alive, has, gone: [], taken: [], best: [], spent };
}

/** Takes ways one after the other, and leaves out items that have none; false, with none taken, where some were. */
function sweep(open: Open): boolean {
  const { ways, need, has, taken } = open;
  const left = need.slice();
  let { slack } = open;
  let all = true;
  for (let next = fewestWays(open); next >= 0; next = fewestWays(open)) {
    if (has[next] === 0) {
      need[next] = 0;
      all = false;
      continue;
    }
    const [way] = choices(open, next).reduce((a, b) => (b[1] > a[1] ? b : a));
    slack -= (ways[way] as Way).waste;
    take(open, way, slack);
  }
  if (all) return true;
  taken.length = 0;
  reopen(open, 0);
  need.set(left);
  return false;
}

/** The first ways found that make all still needed and waste what is left of the slack. */
function search(open: Open, slack: number): boolean {
  const next = fewestWays(open);
  if (next < 0) return true;
  const before = open.gone.length;
  for (const [way] of choices(open, next).sort((a, b) => b[1] - a[1])) {
    if (open.spent > open.work) break;
    const mark = open.gone.length;
    const left = slack - (open.ways[way] as Way).waste;
    take(open, way, left);
    if (search(open, left)) return true;
    putBack(open, mark);
    // All with it was tried.
    close(open, way);
  }
  reopen(open, before);
  return false;
}

/** The item needed that has the fewest ways; -1 where nothing is needed. */
function fewestWays({ need, has }: Open): number {
  let next = -1;
  for (let j = 0; j < need.length; j++) {
    if ((need[j] as number) > 0 && (next < 0 || (has[j] as number) < (has[next] as number))) next = j;
  }
  return next;
}

/** The ways left that make an item, each with how good it is to take. */
function choices(open: Open, item: number): [way: number, by: number][] {
  const { ways, makers, need, has, alive, chance, count, slack } = open;
  const found: [number, number][] = [];
  for (const { way } of makers[item] as readonly Maker[]) {
    if (alive[way] === 0) continue;
    const { items, counts, waste } = ways[way] as Way;
    let rare = 0;
    for (let x = 0; x < items.length; x++) {
      const j = items[x] as number;
      rare += ((counts[x] as number) * (need[j] as number)) / (has[j] as number);
    }
    found.push([way, rare * (1 - NOISE * chance()) - (waste > 0 ? (WASTE * count * waste) / slack : 0)]);
  }
  open.spent += need.length + 10 * found.length;
  return found;
}

/** Takes a way, and closes those that make too much or waste more than is left. */
function take(open: Open, way: number, slack: number): void {
  const { ways, need, makers, wasteful, gone, taken } = open;
  const before = gone.length;
  const { items, counts } = ways[way] as Way;
  items.forEach((j, x) => {
    const left = (need[j] as number) - (counts[x] as number);
    need[j] = left;
    for (const maker of makers[j] as readonly Maker[]) if (maker.count > left) close(open, maker.way);
  });
  for (const other of wasteful) {
    if ((ways[other] as Way).waste <= slack) break;
    close(open, other);
  }
  taken.push(way);
  if (taken.length > open.best.length) open.best = [...taken];
  open.spent += 4 * (gone.length - before);
}

/** Puts the way that was taken last back, and opens those closed since so many were. */
function putBack(open: Open, mark: number): void {
  const { ways, need, taken } = open;
  reopen(open, mark);
  const { items, counts } = ways[taken.pop() as number] as Way;
  items.forEach((j, x) => {
    need[j] = (need[j] as number) + (counts[x] as number);
  });
}

function close({ ways, alive, has, gone }: Open, way: number): void {
  if (alive[way] === 0) return;
  alive[way] = 0;
  gone.push(way);
  for (const j of (ways[way] as Way).items) has[j] = (has[j] as number) - 1;
}

function reopen({ ways, alive, has, gone }: Open, mark: number): void {
  while (gone.length > mark) {
    const way = gone.pop() as number;
    alive[way] = 1;
    for (const j of (ways[way] as Way).items) has[j] = (has[j] as number) + 1;
  }
}
