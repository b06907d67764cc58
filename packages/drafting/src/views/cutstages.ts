import { type CutTree, isPlaned } from '@wattlewright/model';
import { type CrossCuts, crossCuts, lettersOf, NOTHING, namesOf, type RipTree, type SawLosses } from './cutcross.ts';

/** A rectangle in a board's section seen from the end: `x` along its width, `y` along its thickness, mm. */
export interface SectionBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
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
  /** The piece at the first rip of its row, or of the row before where it is not turned: it keeps lying as it lay then. */
  readonly lies: SectionBox;
  /** What the blade takes, planed faces beside it left out. */
  readonly blade: SectionBox;
  /** The piece between fence and blade, and what it is: letters of its parts, `keep` for the rack. */
  readonly off: SectionBox;
  readonly offIs: readonly string[] | 'waste' | 'more';
  /** Where `off` is ripped again: the rip that does it first. */
  readonly again?: number;
  /** Finished size of what remains beyond the blade, along the cut, waste or not. */
  readonly rest: number;
  /** What remains where it is a strip at last, as `offIs`; empty for waste, and where it is ripped on. */
  readonly restIs: readonly string[];
  /** Where what remains is ripped: the rip that does it first. */
  readonly next?: number;
  /** Set where less remains than the blade is thick, so that it runs half in the air. */
  readonly shaving: boolean;
  /** Thickness of the loose sliver that falls beyond the blade, mm. */
  readonly sliver?: number;
}

/** A length that is ripped, and what it is ripped into. */
export interface RippedLength {
  readonly length: number;
  readonly box: SectionBox;
  readonly rips: readonly Rip[];
  readonly strips: readonly Strip[];
  /** The whole length first, then what is ripped again. */
  readonly stages: readonly Stage[];
}

/** A piece brought to size by the plane: the side that becomes `at` mm. */
export interface Planed {
  readonly axis: 'width' | 'thickness';
  readonly at: number;
}

/** A piece that is ripped in a row, all one way: what it is before and what it becomes. */
export interface Stage {
  /** The piece before anything is planed off. */
  readonly from: SectionBox;
  readonly planed: readonly Planed[];
  /** The piece at its first rip. */
  readonly piece: SectionBox;
  readonly axis: 'width' | 'thickness';
  /** Indices among the length's rips, from the fence on. */
  readonly rips: readonly number[];
  readonly regions: readonly Region[];
}

/** How what remains lay at the rip before. */
interface Lying {
  readonly axis: Rip['axis'];
  readonly lies: SectionBox;
}

/** What lies between two blades of a stage. */
export interface Region {
  readonly box: SectionBox;
  /** Letters of a strip; empty for waste, a blank and a leftover. */
  readonly letters: readonly string[];
  /** What a strip is called by: its letters, and `keep` where some of it goes to the rack. */
  readonly names: readonly string[];
  /** What is planed off the strip. */
  readonly planed: readonly Planed[];
  /** Index of the stage that a blank becomes. */
  readonly stage?: number;
  /** Set where it is no part and no waste but a leftover to keep. */
  readonly kept?: true;
}

/** Reads a ripped length out of its tree: every rip, strip and blank in its place. A RangeError as for `boardCuts`. */
export function rippedLength(root: RipTree, length: number, box: SectionBox, saw: SawLosses): RippedLength {
  const rips: Rip[] = [];
  const strips: Strip[] = [];
  const stages: Stage[] = [];
  const strip = (tree: CutTree, at: SectionBox): void => {
    const cuts = crossCuts(tree, length, saw, () => {
      throw new RangeError('invalid plan: a strip is ripped again after its crosscuts');
    });
    strips.push({ box: at, letters: lettersOf(tree), cuts });
  };
  /** What a piece becomes: a strip, waste, or a blank for a stage of its own. */
  const become = (tree: CutTree, from: SectionBox, after: number | undefined, before?: Lying): Region | undefined => {
    if (from.width <= NOTHING || from.height <= NOTHING) return undefined;
    const { node, piece, planed } = planedFirst(tree, from, saw);
    if (!isRip(node)) {
      strip(node, piece);
      return {
        box: from,
        letters: lettersOf(node),
        names: namesOf(node),
        planed,
        ...(isKept(node) ? { kept: true } : {}),
      };
    }
    const at = stages.length;
    const stage = { from, planed, piece, axis: node.axis, rips: [] as number[], regions: [] as Region[] };
    stages.push(stage);
    row(node, piece, after, before?.axis === node.axis ? { ...stage, lies: before.lies } : { ...stage, lies: piece });
    return { box: from, letters: [], names: [], planed: [], stage: at };
  };
  /** The rips of a stage one after the other, and what remains at the end. */
  const row = (
    tree: RipTree,
    piece: SectionBox,
    after: number | undefined,
    stage: { readonly lies: SectionBox; readonly rips: number[]; readonly regions: Region[] },
  ): void => {
    const [off, blade, rest] = parted(piece, tree, saw);
    const side = tree.axis === 'width' ? 'width' : 'height';
    const becomes = planedFirst(tree.a, off, saw).node;
    const remains = planedFirst(tree.b, rest, saw).node;
    const offIs = becomes === null ? 'waste' : isRip(becomes) ? 'more' : namesOf(becomes);
    const index = rips.push({
      axis: tree.axis,
      at: tree.at,
      ...(after === undefined ? {} : { after }),
      piece,
      lies: stage.lies,
      blade,
      off,
      offIs,
      ...(offIs === 'more' ? { again: rips.length + 1 } : {}),
      rest: rest[side],
      restIs: isRip(remains) ? [] : namesOf(remains),
      shaving: blade[side] < saw.ripKerf - NOTHING,
      ...(tree.sliver === undefined ? {} : { sliver: tree.sliver }),
    });
    stage.rips.push(index - 1);
    const first = become(tree.a, off, index - 1);
    if (first) stage.regions.push(first);
    if (isRip(remains)) rips[index - 1] = { ...(rips[index - 1] as Rip), next: rips.length };
    const next = tree.b;
    if (isRip(next) && next.axis === tree.axis && !isPlaned(next, rest[side], saw)) row(next, rest, index - 1, stage);
    else {
      const last = become(next, rest, index - 1, { axis: tree.axis, lies: stage.lies });
      if (last) stage.regions.push(last);
    }
  };
  become(root, box, undefined);
  return { length, box, rips, strips, stages };
}

function isKept(tree: CutTree): boolean {
  return tree !== null && 'left' in tree;
}

function isRip(tree: CutTree): tree is RipTree {
  return tree !== null && 'cut' in tree && tree.cut === 'rip';
}

/** What is planed off a piece before its next cut, and the piece after it. */
function planedFirst(
  tree: CutTree,
  piece: SectionBox,
  saw: SawLosses,
): { readonly node: CutTree; readonly piece: SectionBox; readonly planed: readonly Planed[] } {
  const planed: Planed[] = [];
  let [node, box] = [tree, piece];
  while (isRip(node)) {
    const side = node.axis === 'width' ? 'width' : 'height';
    if (!isPlaned(node, box[side], saw)) break;
    planed.push({ axis: node.axis, at: node.at });
    box = { ...box, [side]: node.at };
    node = node.a;
  }
  return { node, piece: box, planed };
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
