import type { CutTree, FenceSetting, PlannedBoard } from './plan.ts';

/** A rip whose piece is free. */
interface Ready {
  readonly tree: Extract<CutTree, { cut: 'rip' }>;
  readonly board: number;
}

/** One setting worked: the rips done, on all boards alike, and the rips that are free after it. */
interface Worked {
  readonly setting: FenceSetting;
  readonly ready: readonly Ready[];
  /** Rips of the same size that are not free yet and need the setting once more. */
  readonly behind: number;
}

/** Which of two settings to work first; below 0 for the first. */
type Rule = (a: Worked, b: Worked) => number;

const most: Rule = (a, b) => b.setting.rips - a.setting.rips || b.setting.at - a.setting.at;

/** Rules for the next setting. None gives the fewest settings for every plan, so that each is tried. */
const RULES: readonly Rule[] = [
  most,
  (a, b) => a.behind - b.behind || most(a, b),
  (a, b) => Math.sign(a.behind) - Math.sign(b.behind) || most(a, b),
  (a, b) => Math.sign(a.behind) - Math.sign(b.behind) || b.setting.at - a.setting.at,
];

/**
 * Fence settings in an order that can be worked: a rip comes after the rips that free its piece, and everything that can
 * be ripped at a setting is. The same size comes back as seldom as the rules found.
 */
export function fenceOrder(boards: readonly PlannedBoard[]): FenceSetting[] {
  const ready = boards.flatMap(({ tree }, board) => freed(tree, board));
  const orders = RULES.map((rule) => orderBy(rule, ready, boards));
  return orders.reduce((best, order) => (order.length < best.length ? order : best));
}

function orderBy(rule: Rule, start: readonly Ready[], boards: readonly PlannedBoard[]): FenceSetting[] {
  const settings: FenceSetting[] = [];
  for (let ready = start; ready.length > 0; ) {
    const sizes = [...new Set(ready.map(({ tree }) => tree.at))];
    const next = sizes.map((at) => work(at, ready, boards)).sort(rule)[0] as Worked;
    settings.push(next.setting);
    ready = next.ready;
  }
  return settings;
}

/** Everything that can be ripped at one setting. */
function work(at: number, ready: readonly Ready[], boards: readonly PlannedBoard[]): Worked {
  const touched = new Set<number>();
  const after: Ready[] = [];
  let [rips, behind] = [0, 0];
  const open = [...ready];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    const { tree, board } = next;
    const count = boards[board]?.count ?? 0;
    if (tree.at === at) {
      rips += count;
      touched.add(board);
      open.push(...freed(tree.a, board), ...freed(tree.b, board));
    } else {
      after.push(next);
      behind += count * (ripsAt(at, tree.a) + ripsAt(at, tree.b));
    }
  }
  return { setting: { at, rips, boards: [...touched].sort((a, b) => a - b) }, ready: after, behind };
}

/** The rips of a tree that wait for no other rip. */
function freed(tree: CutTree, board: number): Ready[] {
  if (tree === null || !('cut' in tree)) return [];
  return tree.cut === 'rip' ? [{ tree, board }] : [...freed(tree.a, board), ...freed(tree.b, board)];
}

function ripsAt(at: number, tree: CutTree): number {
  if (tree === null || !('cut' in tree)) return 0;
  return Number(tree.cut === 'rip' && tree.at === at) + ripsAt(at, tree.a) + ripsAt(at, tree.b);
}
