import type { CutTree, Saw } from '@wattlewright/model';

/** What the saw and the plane take. */
export type SawLosses = Pick<Saw, 'ripKerf' | 'crossKerf' | 'planing' | 'shaving'>;

/** A stretch between two crosscuts, mm from the end of the wood that it was cut from. */
export interface Stretch {
  readonly start: number;
  readonly length: number;
  readonly kind: 'part' | 'keep' | 'waste' | 'ripped';
  /** Letter of a part. */
  readonly letter?: string;
  /** Set on a part that no stop gave its length: it is the last of its wood. */
  readonly unstopped?: boolean;
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

/** A cut along the grain, in a tree. */
export type RipTree = Extract<CutTree, { readonly cut: 'rip' }>;

/** Follows the crosscuts of a tree down to what is not crosscut further. */
export function crossCuts(
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
    else if ('part' in node)
      stretches.push({ ...here, kind: 'part', letter: node.part, ...(node.unstopped && { unstopped: true }) });
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

/** Letters of the parts that a tree makes, each once. */
export function lettersOf(tree: CutTree): string[] {
  if (tree === null || 'left' in tree) return [];
  if ('part' in tree) return [tree.part];
  return [...new Set([...lettersOf(tree.a), ...lettersOf(tree.b)])];
}

/** What a strip is called by: the letters of its parts, and `keep` where some of it goes to the rack. */
export function namesOf(tree: CutTree): string[] {
  return [...lettersOf(tree), ...(keepsAny(tree) ? [KEEP] : [])];
}

/** The word for wood that goes to the rack. */
export const KEEP = 'keep';

function keepsAny(tree: CutTree): boolean {
  if (tree === null || 'part' in tree) return false;
  return 'left' in tree || keepsAny(tree.a) || keepsAny(tree.b);
}

/** Less than this, mm, is no wood: rounding of doubles. */
export const NOTHING = 1e-6;
