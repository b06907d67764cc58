import type { CutPlan } from '@wattlewright/model';
import type { BoardCuts } from './cutboard.ts';
import type { Rip } from './cutstages.ts';

/** A rip with its place: index of the board, and of the ripped length on it. */
export interface PlacedRip {
  readonly board: number;
  readonly ripped: number;
  readonly rip: Rip;
}

/** One setting of the fence and all that is ripped at it, in the order of work. */
export interface RipSetting {
  /** Counted from 1. */
  readonly number: number;
  /** Finished size between fence and blade, mm. */
  readonly at: number;
  readonly rips: readonly PlacedRip[];
}

/** Sizes closer than this, mm, are one fence setting. */
const SAME = 1e-6;

/**
 * Every rip of a plan under the fence setting that it is made at: the plan's settings in their order, each with all rips
 * of its size whose pieces are free by then.
 */
export function ripSettings(plan: Pick<CutPlan, 'fences'>, boards: readonly BoardCuts[]): RipSetting[] {
  const waiting = new Map<Rip, PlacedRip & { readonly first: Rip | undefined }>();
  boards.forEach(({ ripped }, board) => {
    ripped.forEach(({ rips }, r) => {
      for (const rip of rips)
        waiting.set(rip, { board, ripped: r, rip, first: rip.after === undefined ? undefined : rips[rip.after] });
    });
  });
  const settings: RipSetting[] = [];
  const work = (at: number): void => {
    const done: PlacedRip[] = [];
    for (let more = true; more; ) {
      more = false;
      for (const { first, ...placed } of [...waiting.values()]) {
        if (Math.abs(placed.rip.at - at) > SAME || (first && waiting.has(first))) continue;
        waiting.delete(placed.rip);
        done.push(placed);
        more = true;
      }
    }
    if (done.length > 0) settings.push({ number: settings.length + 1, at, rips: done });
  };
  for (const { at } of plan.fences) work(at);
  for (let next = free(waiting); next; next = free(waiting)) work(next.at);
  return settings;
}

function free(waiting: ReadonlyMap<Rip, { readonly first: Rip | undefined }>): Rip | undefined {
  return [...waiting].find(([, { first }]) => first === undefined || !waiting.has(first))?.[0];
}
