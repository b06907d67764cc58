import { isKept } from './ends.ts';
import { fenceOrder } from './fenceorder.ts';
import {
  classOf,
  isRip,
  mayBeRipped,
  type Piece,
  parted,
  pieceOf,
  type RipTree,
  type Shop,
  settingsOf,
  ticksOf,
} from './piece.ts';
import type { CutTree, PlannedBoard } from './plan.ts';
import type { BoardClass } from './problem.ts';
import type { Sized } from './riprow.ts';
import { planedSliver } from './slivers.ts';
import { fromTicks } from './ticks.ts';

/** What trims are saved by: the job, the board's wood, and the fence settings that the plan has. */
interface Work {
  readonly shop: Shop;
  readonly of: BoardClass;
  readonly settings: ReadonlySet<number>;
}

/**
 * Boards whose pieces with one trim in common are trimmed as one block before they are sliced, and whose needless trims are
 * left out: fewer rips, the same parts, no fence setting more. Then slivers are planed off first.
 */
export function withSavedTrims(boards: readonly PlannedBoard[], shop: Shop): readonly PlannedBoard[] {
  if (!boards.some(({ tree }) => hasRip(tree))) return boards;
  const settings = new Set<number>();
  for (const board of boards) settingsOf(board.tree, pieceOf(board), shop, settings);
  const saved = boards.map((board): PlannedBoard => {
    const of = classOf(board, shop);
    return { ...board, tree: saving(board.tree, pieceOf(board), { shop, of, settings }) };
  });
  return chosen(boards, saved, shop).map((board) => ({
    ...board,
    tree: planedSliver(board.tree, pieceOf(board), shop),
  }));
}

function hasRip(tree: CutTree): boolean {
  return tree !== null && 'cut' in tree && (tree.cut === 'rip' || hasRip(tree.a) || hasRip(tree.b));
}

/** The saving boards as far as the fence is set no more often for them. */
function chosen(
  boards: readonly PlannedBoard[],
  saved: readonly PlannedBoard[],
  { problem, planing }: Shop,
): readonly PlannedBoard[] {
  const losses = { rip: fromTicks(problem.ripLoss), ...planing };
  const settings = (list: readonly PlannedBoard[]): number => fenceOrder(list, losses).length;
  const most = settings(boards);
  if (settings(saved) <= most) return saved;
  return saved.reduce<readonly PlannedBoard[]>((now, board, i) => {
    if (i >= MOST_TRIED || board.tree === boards[i]?.tree) return now;
    const next = now.map((one, j) => (i === j ? board : one));
    return settings(next) <= most ? next : now;
  }, boards);
}

/** Boards tried one by one. */
const MOST_TRIED = 60;

const other = (axis: RipTree['axis']): RipTree['axis'] => (axis === 'width' ? 'thickness' : 'width');

/** A tree with its trims saved; the same tree where there is none to save. */
function saving(tree: CutTree, piece: Piece, work: Work): CutTree {
  if (tree === null || !('cut' in tree)) return tree;
  if (isRip(tree)) {
    const less = withoutTrim(tree, piece, work) ?? inBlock(tree, piece, work);
    if (less !== undefined) return saving(less, piece, work);
  }
  const [a, b] = parted(tree, piece, work.shop);
  const [first, second] = [saving(tree.a, a, work), saving(tree.b, b, work)];
  return first === tree.a && second === tree.b ? tree : { ...tree, a: first, b: second };
}

/** The tree within a trim that no part of it needs; `undefined` where some does. */
function withoutTrim(tree: RipTree, piece: Piece, { shop, of }: Work): CutTree | undefined {
  if (tree.b !== null || tree.a === null || fills(tree.a, tree.axis) || !mayBeRipped(tree.a, piece, shop))
    return undefined;
  const off = parted(tree, piece, shop)[1];
  return isKept(off, of, shop.problem) ? undefined : tree.a;
}

/** Whether some part has the piece's own size along an axis. */
function fills(tree: CutTree, axis: RipTree['axis']): boolean {
  if (tree === null || 'left' in tree) return false;
  if ('part' in tree) return true;
  if (isRip(tree) && tree.axis === axis) return fills(tree.b, axis);
  return fills(tree.a, axis) || fills(tree.b, axis);
}

/** Pieces ripped one after the other along one axis, and what remains. */
interface Row {
  readonly pieces: readonly Sized[];
  readonly rest: Sized;
}

function rowOf(tree: RipTree, piece: Piece, shop: Shop): Row {
  const pieces: Sized[] = [];
  let [node, size]: [CutTree, number] = [tree, piece[tree.axis]];
  while (isRip(node) && node.axis === tree.axis) {
    const at = ticksOf(node.at);
    pieces.push({ size: at, tree: node.a });
    [node, size] = [node.b, size - at - shop.problem.ripLoss];
  }
  return { pieces, rest: { size, tree: node } };
}

/** Rips of pieces one after the other, the last of which has one of its own unless it `remains`. */
function rips(axis: RipTree['axis'], pieces: readonly Sized[], last: CutTree): CutTree {
  return pieces.reduceRight<CutTree>((b, { size, tree: a }) => ({ cut: 'rip', axis, at: fromTicks(size), a, b }), last);
}

/** A row with the pieces of its commonest trim last and trimmed at once; `undefined` where that saves nothing. */
function inBlock(tree: RipTree, piece: Piece, { shop, of, settings }: Work): CutTree | undefined {
  const { axis } = tree;
  const deep = other(axis);
  const { pieces, rest } = rowOf(tree, piece, shop);
  const all = rest.tree === null ? pieces : [...pieces, rest];
  if (all.some((one) => one.tree === null)) return undefined;
  const trimAt = ({ tree: node }: Sized): number | undefined =>
    isRip(node) && node.axis === deep && node.b === null ? node.at : undefined;
  const counts = new Map<number, number>();
  for (const one of all) {
    const at = trimAt(one);
    if (at !== undefined) counts.set(at, (counts.get(at) ?? 0) + 1);
  }
  const end = { ...piece, [axis]: rest.size };
  for (const [at] of [...counts].filter(([, n]) => n > 1).sort(([a, n], [b, m]) => m - n || a - b)) {
    const trimmed = all.filter((one) => trimAt(one) === at);
    const inner = trimmed.map(({ size, tree: node }) => ({ size, tree: (node as RipTree).a }));
    const spoils =
      rest.tree === null && isKept(end, of, shop.problem) && !isKept({ ...end, [deep]: ticksOf(at) }, of, shop.problem);
    if (spoils) continue;
    const before = all.filter((one) => trimAt(one) !== at);
    for (const row of rest.tree === null ? [inner] : withEachLast(inner)) {
      const block =
        rest.tree === null ? rips(axis, row, null) : rips(axis, row.slice(0, -1), (row.at(-1) as Sized).tree);
      const made = rips(axis, before, { cut: 'rip', axis: deep, at, a: block, b: null });
      if (mayBeRipped(made, piece, shop) && [...settingsOf(made, piece, shop)].every((one) => settings.has(one)))
        return made;
    }
  }
  return undefined;
}

/** A row in as many orders as it has sizes, each with another size last; as it stands first. */
function withEachLast(row: readonly Sized[]): Sized[][] {
  const sizes = [...new Set([...row].reverse().map(({ size }) => size))];
  return sizes.map((size) => {
    const i = row.findLastIndex((one) => one.size === size);
    return [...row.filter((_, j) => j !== i), row[i] as Sized];
  });
}
