import type { BoardCuts } from './cutboard.ts';
import type { Rip, RippedLength, Stage } from './cutstages.ts';
import type { PlacedRip } from './cutsteps.ts';

/** Rips of a setting that are told in one row, and what is planed right before them. */
export interface WorkRow {
  readonly rips: readonly PlacedRip[];
  /** Blanks that the plane brings to size before these rips: those that they want, and what later rows want of what is free. */
  readonly blanks: readonly PlacedBlank[];
}

/** A blank with its place: index of the board, and of the ripped length on it. */
interface PlacedBlank {
  readonly board: number;
  readonly ripped: number;
  readonly stage: Stage;
}

/**
 * The rips of one setting in rows that can be worked one after the other: a rip whose blank is freed and then planed comes
 * in a row after that which frees it, so that a row may come in two. `sort` tells which rips may share a row. All rips of
 * earlier settings are taken as done.
 */
export function workRows(
  rips: readonly PlacedRip[],
  boards: readonly Pick<BoardCuts, 'ripped'>[],
  sort: (rip: Rip) => string,
): WorkRow[] {
  const lengthOf = ({ board, ripped }: PlacedRip): RippedLength => boards[board]?.ripped[ripped] as RippedLength;
  const blanks = new Map<PlacedRip, PlacedBlank>();
  const freedBy = new Map<PlacedRip, Rip>();
  for (const placed of rips) {
    const { rips: all, stages } = lengthOf(placed);
    const stage = stages.find(({ rips: own }) => all[own[0] as number] === placed.rip);
    if (stage !== undefined && stage.planed.length > 0)
      blanks.set(placed, { board: placed.board, ripped: placed.ripped, stage });
    if (placed.rip.after !== undefined) freedBy.set(placed, all[placed.rip.after] as Rip);
  }
  const planed = new Set<PlacedRip>();
  const rows: WorkRow[] = [];
  const waiting = new Map(rips.map((placed) => [placed.rip, placed]));
  while (waiting.size > 0) {
    const left = [...waiting.values()];
    const sorts = [...new Set(left.map(({ rip }) => sort(rip)))];
    const found = sorts.map((key) => {
      const alike = left.filter(({ rip }) => sort(rip) === key);
      const taken = takenAtOnce(alike, (placed, done) => {
        const first = freedBy.get(placed);
        if (first === undefined || !waiting.has(first)) return true;
        return done.has(first) && !blanks.has(placed);
      });
      return { taken, whole: taken.length === alike.length };
    });
    const next = found.find(({ whole }) => whole) ?? found.find(({ taken }) => taken.length > 0);
    if (next === undefined) throw new RangeError('invalid plan: a rip waits for one of a later setting');
    // One walk to the plane for all blanks that are free by then.
    const due: PlacedBlank[] = [];
    if (next.taken.some((placed) => blanks.has(placed) && !planed.has(placed)))
      for (const [placed, blank] of blanks) {
        const first = freedBy.get(placed);
        if (planed.has(placed) || (first !== undefined && waiting.has(first))) continue;
        planed.add(placed);
        due.push(blank);
      }
    for (const { rip } of next.taken) waiting.delete(rip);
    rows.push({ rips: next.taken, blanks: due });
  }
  return rows;
}

/** Those that are free, and those that they free in turn; in the order given. */
function takenAtOnce(
  alike: readonly PlacedRip[],
  isFree: (placed: PlacedRip, done: ReadonlySet<Rip>) => boolean,
): PlacedRip[] {
  const done = new Set<Rip>();
  for (let before = -1; before < done.size; ) {
    before = done.size;
    for (const placed of alike) if (!done.has(placed.rip) && isFree(placed, done)) done.add(placed.rip);
  }
  return alike.filter(({ rip }) => done.has(rip));
}
