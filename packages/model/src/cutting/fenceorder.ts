import type { CutTree, FenceSetting, PlannedBoard } from './plan.ts';
import { isPlaned, type Planing } from './plane.ts';

/** A rip, and the rips that it frees. */
interface RipNode {
  readonly at: number;
  readonly then: readonly RipNode[];
}

/** A rip whose piece is free. */
interface Ready {
  readonly rip: RipNode;
  readonly board: number;
}

/** What a rip loses beside the piece at the fence, mm, and what is planed. */
interface RipLosses extends Planing {
  readonly rip: number;
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
 * be ripped at a setting is. The same size comes back as seldom as the rules found. What is planed needs no setting.
 */
export function fenceOrder(
  boards: readonly PlannedBoard[],
  losses: RipLosses = { rip: 0, planing: 0 },
): FenceSetting[] {
  const ready = boards.flatMap((of, board) => ripsIn(of.tree, of, losses).map((rip) => ({ rip, board })));
  const orders = RULES.map((rule) => orderBy(rule, ready, boards));
  return orders.reduce((best, order) => (order.length < best.length ? order : best));
}

function orderBy(rule: Rule, start: readonly Ready[], boards: readonly PlannedBoard[]): FenceSetting[] {
  const settings: FenceSetting[] = [];
  for (let ready = start; ready.length > 0; ) {
    const sizes = [...new Set(ready.map(({ rip }) => rip.at))];
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
    const { rip, board } = next;
    const count = boards[board]?.count ?? 0;
    if (rip.at === at) {
      rips += count;
      touched.add(board);
      open.push(...rip.then.map((more) => ({ rip: more, board })));
    } else {
      after.push(next);
      behind += count * ripsAt(at, rip.then);
    }
  }
  return { setting: { at, rips, boards: [...touched].sort((a, b) => a - b) }, ready: after, behind };
}

/** The rips of a tree that wait for no other rip; a piece that is planed is planed at once. */
function ripsIn(
  tree: CutTree,
  piece: { readonly width: number; readonly thickness: number },
  losses: RipLosses,
): RipNode[] {
  if (tree === null || !('cut' in tree)) return [];
  if (tree.cut === 'cross') return [...ripsIn(tree.a, piece, losses), ...ripsIn(tree.b, piece, losses)];
  const { axis, at } = tree;
  const size = piece[axis];
  const then = [
    ...ripsIn(tree.a, { ...piece, [axis]: at }, losses),
    ...ripsIn(tree.b, { ...piece, [axis]: size - at - losses.rip }, losses),
  ];
  return isPlaned(tree, size, losses) ? then : [{ at, then }];
}

function ripsAt(at: number, rips: readonly RipNode[]): number {
  return rips.reduce((sum, rip) => sum + Number(rip.at === at) + ripsAt(at, rip.then), 0);
}
