import { markEnds } from './ends.ts';
import { settleLengths } from './lengths.ts';
import { boardOf, classOf, parted, pieceOf, type Shop } from './piece.ts';
import type { CutTree, PlannedBoard } from './plan.ts';
import { treeKey } from './tree.ts';
import { withSavedTrims } from './trims.ts';

/**
 * The same boards with the same parts, cut as a carpenter would: no length is cut longer than it is used, last pieces are
 * trimmed where there is wood for it, pieces with one trim in common are trimmed before they are sliced, slivers are
 * planed off first, and what is large enough is kept. Boards that are then cut alike are one entry.
 */
export function tidied(boards: readonly PlannedBoard[], shop: Shop): PlannedBoard[] {
  const settled = boards.map((board) => ({ ...board, tree: settleLengths(board.tree, boardOf(board, shop), shop) }));
  const trimmed = withSavedTrims(settled, shop);
  const marked = trimmed.map((board) => ({ ...board, tree: endsOf(board, shop) }));
  const found = new Map<string, PlannedBoard & { count: number }>();
  for (const board of marked) {
    const key = `${board.from}|${board.stock}|${treeKey(board.tree)}`;
    const same = found.get(key);
    if (same) same.count += board.count;
    else found.set(key, { ...board });
  }
  return [...found.values()];
}

function endsOf(board: PlannedBoard, shop: Shop): CutTree {
  const { tree } = board;
  const [piece, of] = [pieceOf(board), classOf(board, shop)];
  if (boardOf(board, shop).trimHead === 0 || tree === null || !('cut' in tree))
    return markEnds(tree, { piece, of, shop });
  // What squares the head is never kept.
  return { ...tree, b: markEnds(tree.b, { piece: parted(tree, piece, shop)[1], of, shop }) };
}
