import type { CutPlan, CutTree, PlannedBoard, Saw } from '@wattlewright/model';

/** What the saw and the plane take. */
export type SawLosses = Pick<Saw, 'ripKerf' | 'crossKerf' | 'planing'>;

/** A rectangle in a board's section seen from the end: `x` along its width, `y` along its thickness, mm. */
export interface SectionBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A stretch between two crosscuts, mm from the end of the wood that it was cut from. */
export interface Stretch {
  readonly start: number;
  readonly length: number;
  readonly kind: 'part' | 'keep' | 'waste' | 'ripped';
  /** Letter of a part. */
  readonly letter?: string;
  /** Index among the board's ripped lengths. */
  readonly ripped?: number;
}

/** The wood that the blade takes in one crosscut, mm. */
interface Kerf {
  readonly at: number;
  readonly width: number;
}

/** One length of wood with its crosscuts, from the left end on. */
export interface CrossCuts {
  readonly length: number;
  /** Where the squared end is: 0, or what a trim took off with its kerf. */
  readonly datum: number;
  readonly stretches: readonly Stretch[];
  readonly kerfs: readonly Kerf[];
}

/** A strip that a ripped length is made into, and how it is crosscut. */
export interface Strip {
  readonly box: SectionBox;
  /** Letters of its parts, each once, in their order; empty for waste. */
  readonly letters: readonly string[];
  readonly cuts: CrossCuts;
}

/** One rip. Indices are those of the ripped length's lists. */
export interface Rip {
  readonly axis: 'width' | 'thickness';
  /** Finished size between fence and blade, mm. */
  readonly at: number;
  /** The rip that freed the piece; absent for the first. */
  readonly after?: number;
  /** The piece before the rip. */
  readonly piece: SectionBox;
  /** What the blade takes, planed faces beside it left out. */
  readonly blade: SectionBox;
  /** The piece between fence and blade, and what it is. */
  readonly off: SectionBox;
  readonly offIs: readonly string[] | 'waste' | 'more';
  /** Where `off` is ripped again: the rip that does it first. */
  readonly again?: number;
  /** Finished size of what remains beyond the blade, along the cut, waste or not. */
  readonly rest: number;
  /** Set where less remains than the blade is thick, so that it runs half in the air. */
  readonly shaving: boolean;
}

/** A length that is ripped, and what it is ripped into. */
export interface RippedLength {
  readonly length: number;
  readonly box: SectionBox;
  readonly rips: readonly Rip[];
  readonly strips: readonly Strip[];
}

/** How one board is cut, read out of its tree. */
export interface BoardCuts {
  readonly board: PlannedBoard;
  readonly cuts: CrossCuts;
  readonly ripped: readonly RippedLength[];
}

/**
 * A plan's boards with every cut in its place. The saw must be the one that the plan was made for. A RangeError where a
 * strip is ripped again after it was crosscut: plans are of crosscut, rip, crosscut.
 */
export function boardCuts({ boards }: Pick<CutPlan, 'boards'>, saw: SawLosses): BoardCuts[] {
  return boards.map((board) => {
    const ripped: RippedLength[] = [];
    const box = { x: 0, y: 0, width: board.width, height: board.thickness };
    const cuts = crossCuts(
      board.tree,
      board.length,
      saw,
      (tree, length) => ripped.push(rippedLength(tree, length, box, saw)) - 1,
    );
    return { board, cuts, ripped };
  });
}

type RipTree = Extract<CutTree, { readonly cut: 'rip' }>;

/** Follows the crosscuts of a tree down to what is not crosscut further. */
function crossCuts(
  tree: CutTree,
  length: number,
  { crossKerf }: SawLosses,
  rip: (tree: RipTree, length: number) => number,
): CrossCuts {
  const stretches: Stretch[] = [];
  const kerfs: Kerf[] = [];
  const walk = (node: CutTree, start: number, size: number): void => {
    if (size <= NOTHING) return;
    const here = { start, length: size };
    if (node === null) stretches.push({ ...here, kind: 'waste' });
    else if ('part' in node) stretches.push({ ...here, kind: 'part', letter: node.part });
    else if ('left' in node) stretches.push({ ...here, kind: 'keep' });
    else if (node.cut === 'rip') stretches.push({ ...here, kind: 'ripped', ripped: rip(node, size) });
    else {
      const width = Math.min(crossKerf, size - node.at);
      walk(node.a, start, node.at);
      kerfs.push({ at: start + node.at, width });
      walk(node.b, start + node.at + width, size - node.at - width);
    }
  };
  walk(tree, 0, length);
  const [first, second] = stretches;
  return { length, datum: first?.kind === 'waste' && second ? second.start : 0, stretches, kerfs };
}

function rippedLength(root: RipTree, length: number, box: SectionBox, saw: SawLosses): RippedLength {
  const rips: Rip[] = [];
  const strips: Strip[] = [];
  const strip = (tree: CutTree, at: SectionBox): void => {
    const cuts = crossCuts(tree, length, saw, () => {
      throw new RangeError('invalid plan: a strip is ripped again after its crosscuts');
    });
    strips.push({ box: at, letters: lettersOf(tree), cuts });
  };
  const walk = (node: CutTree, piece: SectionBox, after?: number): void => {
    if (piece.width <= NOTHING || piece.height <= NOTHING) return;
    if (node === null || !('cut' in node) || node.cut === 'cross') {
      strip(node, piece);
      return;
    }
    const { axis, at, a } = node;
    const [off, blade, rest] = parted(piece, node, saw);
    const offIs = a === null ? 'waste' : 'cut' in a && a.cut === 'rip' ? 'more' : lettersOf(a);
    const side = axis === 'width' ? 'width' : 'height';
    const index =
      rips.push({
        axis,
        at,
        ...(after === undefined ? {} : { after }),
        piece,
        blade,
        off,
        offIs,
        ...(offIs === 'more' ? { again: rips.length + 1 } : {}),
        rest: rest[side],
        shaving: blade[side] < saw.ripKerf - NOTHING,
      }) - 1;
    walk(node.a, off, index);
    walk(node.b, rest, index);
  };
  walk(root, box);
  return { length, box, rips, strips };
}

/** The piece by the fence, what the blade takes, and what remains beyond it. The fence is at the left or below. */
function parted(
  piece: SectionBox,
  { axis, at }: RipTree,
  { ripKerf, planing }: SawLosses,
): [SectionBox, SectionBox, SectionBox] {
  const size = axis === 'width' ? piece.width : piece.height;
  const part = (from: number, to: number): SectionBox => {
    const [low, high] = [Math.min(from, size), Math.min(to, size)];
    return axis === 'width'
      ? { ...piece, x: piece.x + low, width: high - low }
      : { ...piece, y: piece.y + low, height: high - low };
  };
  const sawn = at + planing;
  return [part(0, at), part(sawn, sawn + ripKerf), part(sawn + ripKerf + planing, size)];
}

function lettersOf(tree: CutTree): string[] {
  if (tree === null || 'left' in tree) return [];
  if ('part' in tree) return [tree.part];
  return [...new Set([...lettersOf(tree.a), ...lettersOf(tree.b)])];
}

/** Less than this, mm, is no wood: rounding of doubles. */
const NOTHING = 1e-6;
