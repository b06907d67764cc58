import { isRip, mayBeRipped, type Piece, parted, planes, type RipTree, type Shop, ticksOf } from './piece.ts';
import type { CutTree } from './plan.ts';
import { fromTicks, ticksUp } from './ticks.ts';

/** A loose strip thinner than this, mm, goes down beside the blade or is thrown; common practice, no source. */
const SLIVER = ticksUp(1);

/** How far the blade of a last rip runs clear of the wood at least, mm: less, and it leaves a feather. Derived. */
const CLEAR = ticksUp(0.5);

/** What is planed off is a whole multiple of this, so that a rule has the size: 1/2 mm, 1/32 in. */
const MARK = ticksUp(0.5);
const INCH_MARK = ticksUp(25.4 / 32);

/**
 * A tree without rips that leave a loose sliver: before the first rip of such a row the piece is planed, where that takes no
 * more than the shop planes off a side and serves several strips at once. Elsewhere the rip says how thick its sliver is. A
 * rip that turns all that is left to dust leaves none.
 */
export function planedSliver(tree: CutTree, piece: Piece, shop: Shop, planed?: RipTree['axis']): CutTree {
  if (tree === null || !('cut' in tree)) return tree;
  if (isRip(tree)) {
    const thin = sliverOf(tree, piece, shop);
    const off = thin === undefined ? 0 : planedOff(thin, shop);
    if (off > 0 && planed !== tree.axis && strips(tree) > 1) {
      const at = piece[tree.axis] - off;
      const made: RipTree = { cut: 'rip', axis: tree.axis, at: fromTicks(at), a: tree, b: null };
      if (mayBeRipped(made, piece, shop)) return planedSliver(made, piece, shop);
    }
  }
  const own = isRip(tree) && planes(tree, piece, shop) ? tree.axis : undefined;
  const [a, b] = parted(tree, piece, shop);
  return marked(tree, piece, shop, {
    a: planedSliver(tree.a, a, shop, own),
    // The rest of a row is planed with its first piece or not at all.
    b: planedSliver(tree.b, b, shop, isRip(tree) ? tree.axis : undefined),
  });
}

/** What is planed off for a sliver, ticks; 0 where a plane should not, or the last rip would be planed as well for it. */
function planedOff(thin: number, { problem }: Shop): number {
  const { shaving, ripLoss, display } = problem;
  const mark = display?.unit === 'in' ? INCH_MARK : MARK;
  const off = Math.ceil((thin + CLEAR) / mark) * mark;
  return off <= shaving && ripLoss + thin - off > shaving ? off : 0;
}

/** Strips that a piece becomes, waste left out. */
function strips(tree: CutTree): number {
  if (isRip(tree)) return strips(tree.a) + strips(tree.b);
  return tree === null ? 0 : 1;
}

function marked(
  tree: Extract<CutTree, { readonly cut: string }>,
  piece: Piece,
  shop: Shop,
  of: { readonly a: CutTree; readonly b: CutTree },
): CutTree {
  const thin = tree.cut === 'rip' ? ownSliver(tree, piece, shop) : undefined;
  return { ...tree, ...of, ...(thin === undefined ? {} : { sliver: fromTicks(thin) }) };
}

/** Thickness of what the last rip of a row leaves beyond the blade, ticks, where it is a sliver. */
function sliverOf(tree: RipTree, piece: Piece, shop: Shop): number | undefined {
  const next = tree.b;
  if (!isRip(next) || next.axis !== tree.axis) return ownSliver(tree, piece, shop);
  return sliverOf(next, parted(tree, piece, shop)[1], shop);
}

/** Beyond the blade nothing is planed yet: of the loss that a rip has there, only its kerf is gone. */
function ownSliver(tree: RipTree, piece: Piece, shop: Shop): number | undefined {
  if (tree.b !== null || planes(tree, piece, shop)) return undefined;
  const { ripLoss, planing } = shop.problem;
  const left = piece[tree.axis] - ticksOf(tree.at) - ripLoss + planing;
  return left > 0 && left < SLIVER ? left : undefined;
}
