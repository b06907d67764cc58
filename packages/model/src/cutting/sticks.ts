import { serves } from './fit.ts';
import { normalPositions, stepsDown } from './positions.ts';
import type { BoardClass, Problem } from './problem.ts';

/** Sticks of one section from wood of one grade, and the pieces they may be crosscut into. */
export interface StickKind {
  readonly thickness: number;
  readonly width: number;
  readonly clear: boolean;
  readonly wood: string;
  readonly items: readonly StickItem[];
  readonly at: Int32Array;
  /** Best worth of a stick at each position under the prices last set, and the item that came last, or -1. */
  readonly worth: Float64Array;
  readonly last: Int32Array;
}

/** One demand among the pieces of a stick. */
export interface StickItem {
  readonly demand: number;
  readonly size: number;
  readonly need: number;
  readonly steps: Int32Array;
}

/** The sticks of a section, no longer than `max`, that boards of a class are ripped to; and whether their lengths are all listed. */
export function stickKind(
  problem: Problem,
  c: BoardClass,
  s: { thickness: number; width: number },
  max: number,
): { kind: StickKind; complete: boolean } {
  const wantedHere = problem.demands
    .map((d, demand) => ({ d, demand, size: d.length + problem.crossKerf, need: d.need }))
    .filter(({ d, size }) => serves(c, d) && d.thickness === s.thickness && d.width === s.width && size <= max);
  const { at, complete } = normalPositions(
    wantedHere.map(({ size, need }) => ({ size, most: need })),
    max,
  );
  const items = wantedHere.map(({ demand, size, need }) => stickItem({ demand, size, need }, at));
  const [worth, last] = [new Float64Array(at.length), new Int32Array(at.length).fill(-1)];
  return {
    kind: { thickness: s.thickness, width: s.width, clear: c.clear, wood: c.wood, items, at, worth, last },
    complete,
  };
}

/** Many jobs are planned without a look at the steps of their items. */
function stickItem(item: Omit<StickItem, 'steps'>, at: Int32Array): StickItem {
  let steps: Int32Array | undefined;
  return {
    ...item,
    get steps() {
      steps ??= stepsDown(at, item.size);
      return steps;
    },
  };
}
