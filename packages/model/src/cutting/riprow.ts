import type { CutTree } from './plan.ts';
import type { Problem } from './problem.ts';
import { fromTicks } from './ticks.ts';

/** A piece between fence and blade, or what remains, and what becomes of it; in ticks. */
export interface Sized {
  readonly size: number;
  readonly tree: CutTree;
}

/** Pieces ripped one after the other off a piece that is `whole` wide across the cuts, and what remains at the end. */
export interface RipRow {
  readonly axis: 'width' | 'thickness';
  readonly whole: number;
  readonly row: readonly Sized[];
  readonly rest: Sized;
}

/**
 * The rips of a row. Where pieces of it are not wanted nothing is ripped off only to be thrown away: what remains at the
 * end is brought to size instead, as far as the saw may still rip it then.
 */
export function ripRow(
  { axis, whole, row, rest }: RipRow,
  { ripLoss, narrowestRip }: Pick<Problem, 'ripLoss' | 'narrowestRip'>,
): CutTree {
  const cut = (pieces: readonly Sized[], last: CutTree): CutTree =>
    pieces.reduceRight<CutTree>((b, { size, tree: a }) => ({ cut: 'rip', axis, at: fromTicks(size), a, b }), last);
  const wanted = row.filter(({ tree }) => tree !== null);
  if (wanted.length === row.length) return cut(row, rest.tree);
  if (rest.tree === null) return cut(wanted, null);
  const all = [...wanted, rest];
  const orders = [all, [...all].sort((a, b) => a.size - b.size)];
  const allowed = orders.find((order) => {
    const before = order.slice(0, -1).reduce((left, { size }) => left - size - ripLoss, whole);
    return before >= narrowestRip;
  });
  return allowed === undefined ? cut(row, rest.tree) : cut(allowed, null);
}
