import { isRip, type Shop, ticksOf } from './piece.ts';
import type { CutTree } from './plan.ts';
import type { Board } from './problem.ts';
import type { Sized } from './riprow.ts';
import { fromTicks, ticksUp } from './ticks.ts';
import { crosscut } from './tree.ts';

/** Less than this, mm, is no crosscut that trims an end square; common practice, no source. */
const TRIM = ticksUp(1.5);

/** A length of a board and the strips that it is ripped to, each with its pieces; ticks. */
interface Length extends Sized {
  readonly strips: readonly (readonly Sized[])[];
}

/**
 * A board's crosscuts, its segments no longer than what is made of them: what is over goes to the board's end, where it may
 * be long enough to keep. Where that end has wood that is not kept, a segment whose strips give several pieces is left
 * longer by up to a kerf, so that the last piece of a strip too is crosscut at its stop.
 */
export function settleLengths(tree: CutTree, board: Board, shop: Shop): CutTree {
  const { crossKerf } = shop.problem;
  const head = board.trimHead > 0 ? board.trimHead + crossKerf : 0;
  const body = head > 0 && tree !== null && 'cut' in tree ? tree.b : tree;
  const room = board.length - head;
  const lengths = piecesOf(body, room, crossKerf)
    .flatMap((one) => (isCross(one.tree) ? piecesOf(one.tree, one.size, crossKerf) : [one]))
    .map((one) => shortened(one, shop))
    .sort((a, b) => b.size - a.size);
  if (lengths.length === 0) return tree;
  const settled = lengthened(lengths, { room, board, flush: endsFlush(body, room, crossKerf) }, shop);
  const made = settled.map(({ size, tree, from }) => ({ size, tree: relength(tree, from, size, crossKerf) }));
  const { keepFrom } = shop.problem;
  const end = (length: number): CutTree => (length >= keepFrom ? { left: fromTicks(length) } : null);
  const cut = crosscut(made, room, crossKerf, end);
  return head > 0 ? { cut: 'cross', at: fromTicks(board.trimHead), a: null, b: cut } : cut;
}

function isCross(tree: CutTree): boolean {
  return tree !== null && 'cut' in tree && tree.cut === 'cross';
}

/** What is crosscut off a length one after the other, the end last where it is of use. */
function piecesOf(tree: CutTree, length: number, kerf: number): Sized[] {
  if (tree === null || 'left' in tree) return [];
  if ('part' in tree || tree.cut === 'rip') return [{ size: length, tree }];
  const at = ticksOf(tree.at);
  const first = tree.a === null ? [] : [{ size: at, tree: tree.a }];
  return [...first, ...piecesOf(tree.b, length - at - kerf, kerf)];
}

/** Whether no crosscut parts the last piece from the board's end. */
function endsFlush(tree: CutTree, length: number, kerf: number): boolean {
  if (tree === null || !('cut' in tree) || tree.cut === 'rip') return tree !== null && !('left' in tree);
  return endsFlush(tree.b, length - ticksOf(tree.at) - kerf, kerf);
}

/** Length of pieces one after the other with the kerfs between them. */
function used(pieces: readonly Sized[], kerf: number): number {
  return pieces.reduce((sum, { size }) => sum + size + kerf, -kerf);
}

function shortened({ size, tree }: Sized, { problem }: Shop): Length & { readonly from: number } {
  const strips = isRip(tree) ? stripsOf(tree, size, problem.crossKerf) : [];
  const longest = strips.reduce((most, pieces) => Math.max(most, used(pieces, problem.crossKerf)), 0);
  // A rip of a shorter piece than the saw allows is not made the shorter for it.
  const least = strips.length === 0 ? size : Math.min(size, Math.max(longest, problem.shortestRip));
  return { from: size, size: least, tree, strips };
}

/** The strips that a length becomes, each with the pieces crosscut off it. */
function stripsOf(tree: CutTree, length: number, kerf: number): Sized[][] {
  if (isRip(tree)) return [...stripsOf(tree.a, length, kerf), ...stripsOf(tree.b, length, kerf)];
  const pieces = piecesOf(tree, length, kerf);
  return pieces.length === 0 ? [] : [pieces];
}

/** The same rips of a piece of another length. */
function relength(tree: CutTree, from: number, to: number, kerf: number): CutTree {
  if (isRip(tree)) return { ...tree, a: relength(tree.a, from, to, kerf), b: relength(tree.b, from, to, kerf) };
  return crosscut(piecesOf(tree, from, kerf), to, kerf, () => null);
}

interface End {
  /** Length of the board behind its squared head, ticks. */
  readonly room: number;
  readonly board: Board;
  readonly flush: boolean;
}

/** Lengths made longer for their last pieces, those first that have most of them, as far as the board's end has wood. */
function lengthened<L extends Length>(
  lengths: readonly L[],
  { room, board, flush }: End,
  { problem }: Shop,
): readonly L[] {
  if (lengths.every(({ strips }) => strips.length === 0)) return lengths;
  const { crossKerf, keepFrom, display } = problem;
  const sum = (): number => sizes.reduce((all, size) => all + size + crossKerf, 0);
  const sizes = lengths.map(({ size }) => size);
  const free = room - sum();
  const least = free >= keepFrom ? keepFrom : board.trimTail > 0 ? board.trimTail : -crossKerf;
  const wants = lengths.map(({ size, strips }) => {
    const many = strips.filter((pieces) => pieces.length > 1).map((pieces) => used(pieces, crossKerf));
    const last = many.filter((end) => size - end < TRIM).length;
    return { last, end: many.reduce((a, b) => Math.max(a, b), 0) };
  });
  const order = lengths.map((_, i) => i).sort((a, b) => (wants[b]?.last ?? 0) - (wants[a]?.last ?? 0));
  const mark = display ? ticksOf(display.mark) : 1;
  let left = free - least;
  // First the least that is of use to as many as can have it, then a whole kerf; both on a mark where that can be.
  for (const whole of crossKerf < TRIM ? [] : [false, true]) {
    for (const i of order) {
      const { last, end } = wants[i] as (typeof wants)[number];
      const [low, high] = [end + TRIM, end + crossKerf];
      const even = whole ? Math.floor(high / mark) * mark : Math.ceil(low / mark) * mark;
      const to = even < low || even > high ? (whole ? high : low) : even;
      const more = to - (sizes[i] as number);
      if (last === 0 || more <= 0 || more > left) continue;
      left -= more;
      sizes[i] = to;
    }
  }
  const end = room - sum();
  // A board that was ripped to its very end is not crosscut for an end of no use.
  const last = sizes.length - 1;
  if (flush && end < keepFrom && board.trimTail === 0 && lengths[last]?.strips.some((pieces) => pieces.length > 1)) {
    sizes[last] = (sizes[last] as number) + end + crossKerf;
  }
  return lengths.map((one, i) => ({ ...one, size: sizes[i] as number }));
}
