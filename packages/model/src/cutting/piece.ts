import type { CutTree, PlannedBoard } from './plan.ts';
import { isPlaned, type Planing } from './plane.ts';
import type { Board, BoardClass, Problem } from './problem.ts';
import { fromTicks } from './ticks.ts';

/** A cut along the grain, in a tree. */
export type RipTree = Extract<CutTree, { readonly cut: 'rip' }>;

/** Sizes of a piece of wood as it stands, ticks. */
export interface Piece {
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
}

/** What decides how a piece may be cut: the job in whole numbers, and what is planed. */
export interface Shop {
  readonly problem: Problem;
  readonly planing: Planing;
}

/** Ticks of a size that lies on the grid, as those in trees do. */
export function ticksOf(size: number): number {
  return Math.round(size * 640);
}

/** A planned board before its first cut. */
export function pieceOf({ length, width, thickness }: PlannedBoard): Piece {
  return { length: ticksOf(length), width: ticksOf(width), thickness: ticksOf(thickness) };
}

/** The kind of board that a planned board is cut from. */
export function boardOf({ from, stock }: PlannedBoard, { problem }: Shop): Board {
  return problem.boards.find((b) => b.rack === (from === 'offcuts') && b.index === stock) as Board;
}

/** Its section, wood and grade. */
export function classOf(board: PlannedBoard, shop: Shop): BoardClass {
  return shop.problem.classes[boardOf(board, shop).class] as BoardClass;
}

/** Whether a node is a cut along the grain. */
export function isRip(tree: CutTree): tree is RipTree {
  return tree !== null && 'cut' in tree && tree.cut === 'rip';
}

/** Whether the plane does it. */
export function planes(tree: RipTree, piece: Piece, { planing }: Shop): boolean {
  return isPlaned(tree, fromTicks(piece[tree.axis]), planing);
}

/** The two pieces of a cut; the second has nothing or less along the cut where the cut takes all there is. */
export function parted(
  tree: Extract<CutTree, { readonly cut: string }>,
  piece: Piece,
  { problem }: Shop,
): [Piece, Piece] {
  const along = tree.cut === 'cross' ? 'length' : tree.axis;
  const lost = tree.cut === 'cross' ? problem.crossKerf : problem.ripLoss;
  const at = ticksOf(tree.at);
  return [
    { ...piece, [along]: at },
    { ...piece, [along]: piece[along] - at - lost },
  ];
}

/** Whether the saw's rules allow every rip of a tree. */
export function mayBeRipped(tree: CutTree, piece: Piece, shop: Shop): boolean {
  if (tree === null || !('cut' in tree)) return true;
  if (tree.cut === 'rip') {
    const { narrowestRip, deepestRip, shortestRip } = shop.problem;
    const across = piece[tree.axis === 'width' ? 'thickness' : 'width'];
    const along = piece[tree.axis];
    if (ticksOf(tree.at) >= along) return false;
    const allowed = along >= narrowestRip && across <= deepestRip && piece.length >= shortestRip;
    if (!allowed && !planes(tree, piece, shop)) return false;
  }
  const [a, b] = parted(tree, piece, shop);
  return mayBeRipped(tree.a, a, shop) && mayBeRipped(tree.b, b, shop);
}

/** Fence settings that a tree's rips ask for, ticks. */
export function settingsOf(tree: CutTree, piece: Piece, shop: Shop, found: Set<number> = new Set()): Set<number> {
  if (tree === null || !('cut' in tree)) return found;
  if (tree.cut === 'rip' && !planes(tree, piece, shop)) found.add(ticksOf(tree.at));
  const [a, b] = parted(tree, piece, shop);
  settingsOf(tree.a, a, shop, found);
  return settingsOf(tree.b, b, shop, found);
}
