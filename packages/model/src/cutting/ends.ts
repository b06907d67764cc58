import { serves } from './fit.ts';
import { isRip, type Piece, parted, planes, type Shop } from './piece.ts';
import type { CutTree } from './plan.ts';
import type { BoardClass, Problem } from './problem.ts';
import { fromTicks } from './ticks.ts';

/**
 * Whether a piece of a board's wood is kept for another day: at least `saw.keep` long, and of a section that some part of
 * the job could be ripped from.
 */
export function isKept(
  piece: Piece,
  of: BoardClass,
  { demands, keepFrom }: Pick<Problem, 'demands' | 'keepFrom'>,
): boolean {
  if (piece.length <= 0 || piece.length < keepFrom) return false;
  const [thin, wide] = [Math.min(piece.width, piece.thickness), Math.max(piece.width, piece.thickness)];
  return demands.some((d) => serves(of, d) && d.thickness <= thin && d.width <= wide);
}

interface Of {
  readonly piece: Piece;
  readonly of: BoardClass;
  readonly shop: Shop;
  /** Whether the piece's far end was crosscut at a stop. */
  readonly stopped?: boolean;
}

/** A tree whose ends are kept where they are large enough, and whose parts say where no stop gave them their length. */
export function markEnds(tree: CutTree, { piece, of, shop, stopped = false }: Of): CutTree {
  if (tree === null) return isKept(piece, of, shop.problem) ? { left: fromTicks(piece.length) } : null;
  if ('left' in tree) return tree;
  if ('part' in tree) return stopped ? tree : { ...tree, unstopped: true };
  const [a, b] = parted(tree, piece, shop);
  const planed = isRip(tree) && planes(tree, piece, shop);
  const cross = tree.cut === 'cross';
  return {
    ...tree,
    a: markEnds(tree.a, { piece: a, of, shop, stopped: cross || stopped }),
    b: planed ? tree.b : markEnds(tree.b, { piece: b, of, shop, stopped: !cross && stopped }),
  };
}
