import type { Choice } from './flow.ts';
import type { Tallied } from './gather.ts';
import type { BoardRoom, Nested } from './nested.ts';
import type { BoardClass } from './problem.ts';
import { fromTicks } from './ticks.ts';

/**
 * What a plan is judged by: `cost` of the boards; `waste`, volume opened less leftovers kept, mm³; different `fences`;
 * `cuts`.
 */
export type Measure = 'cost' | 'waste' | 'fences' | 'cuts';

/** What is to be least, and what may not be more than it is. */
export interface Aim {
  readonly least: Measure;
  readonly most: Partial<Readonly<Record<Measure, number>>>;
}

/** What one choice adds to each measure. */
export function spentOn(nested: Nested, choice: Choice): Partial<Record<Measure, number>> {
  if (choice.is === 'buy') {
    const board = nested.rooms[choice.room]?.boards[choice.board];
    return { cost: board?.cost ?? 0, waste: board?.volume ?? 0 };
  }
  if (choice.is === 'split') return { cuts: 1 };
  if (choice.is === 'cut') return { cuts: choice.pieces.length };
  return { cuts: nested.rooms[choice.room]?.patterns[choice.pattern]?.rips ?? 0 };
}

/** Fence distances that a choice sets, ticks. */
export function fencesOf(nested: Nested, choice: Choice): readonly number[] {
  return choice.is === 'rip' ? (nested.rooms[choice.room]?.patterns[choice.pattern]?.fences ?? []) : [];
}

/** What is kept of a board's end, mm³; 0 where it is too short. */
export function keptAt(nested: Nested, room: number, position: number): number {
  const { keepFrom, crossKerf, classes } = nested.problem;
  const { at, class: index } = nested.rooms[room] as BoardRoom;
  if (position <= 0 || keepFrom === 0) return 0;
  const kept = (at[position] as number) - crossKerf;
  const c = classes[index] as BoardClass;
  if (kept < keepFrom) return 0;
  return fromTicks(kept) * fromTicks(c.thickness) * fromTicks(c.width);
}

/** What the choices of a plan come to. */
export function amountsOf(nested: Nested, tallied: Tallied): Record<Measure, number> {
  const sums = { cost: 0, waste: 0, fences: 0, cuts: 0 };
  const ends = new Map<string, { room: number; position: number; count: number }>();
  const end = (room: number, position: number, count: number): void => {
    const key = `${room} ${position}`;
    const entry = ends.get(key) ?? { room, position, count: 0 };
    ends.set(key, { ...entry, count: entry.count + count });
  };
  const fences = new Set<number>();
  for (const { choice, count } of tallied.values()) {
    const spent = spentOn(nested, choice);
    sums.cost += count * (spent.cost ?? 0);
    sums.waste += count * (spent.waste ?? 0);
    sums.cuts += count * (spent.cuts ?? 0);
    for (const f of fencesOf(nested, choice)) fences.add(f);
    if (choice.is === 'split') {
      end(choice.room, choice.from, -count);
      end(choice.room, choice.to, count);
    }
  }
  for (const { room, position, count } of ends.values()) {
    if (count > 0) sums.waste -= count * keptAt(nested, room, position);
  }
  return { ...sums, fences: fences.size };
}
