import type { Mixture, Rest } from './bound.ts';
import { type Filling, type Lengthwise, worthsBySize } from './fillings.ts';
import { levelsOf, worthsOf } from './fillmix.ts';
import { type Draft, draftFrom } from './greedy.ts';
import type { Nested } from './nested.ts';
import type { Packing } from './packing.ts';
import { floorIndex } from './positions.ts';
import type { BoardPattern } from './pricing.ts';
import type { StickItem, StickKind } from './sticks.ts';

/** The lengthwise job of some tables; `undefined` where any of their boards may be ripped or several sections are wanted. */
export function lengthwise({ kinds, rooms, problem, complete }: Nested): Lengthwise | undefined {
  const [kind, room] = [kinds[0], rooms[0]];
  if (kinds.length !== 1 || rooms.length !== 1 || kind === undefined || room === undefined || !complete)
    return undefined;
  const [pattern] = room.patterns;
  if (room.patterns.length !== 1 || pattern?.rips !== 0 || kind.items.length !== problem.demands.length)
    return undefined;
  const boards = room.boards.map(({ cost, most, room: size }) => ({ top: floorIndex(kind.at, size), cost, most }));
  return { at: kind.at, items: kind.items, boards, step: problem.costStep };
}

/** What is known of a lengthwise job, told as a mixture of board patterns. */
export function mixtureOf(nested: Nested, { job, bound, mix }: Packing): Mixture {
  const worths = mix ? worthsOf(mix) : worthsBySize(job);
  const worth = new Float64Array(nested.problem.demands.length);
  job.items.forEach(({ demand }, j) => {
    worth[demand] = worths[j] as number;
  });
  const taken = (mix ? levelsOf(mix) : []).map(({ filling, level }) => ({
    pattern: patternOf(nested, filling),
    level,
  }));
  taken.sort((a, b) => b.level - a.level);
  const known = (mix?.fillings ?? []).flatMap((filling) => (filling ? [patternOf(nested, filling)] : []));
  return { taken, known, worth, bound, short: 0 };
}

/** The boards of some fillings. */
export function draftOf(nested: Nested, rest: Rest, fillings: readonly Filling[]): Draft | undefined {
  return draftFrom(
    rest,
    fillings.map((filling) => ({ pattern: patternOf(nested, filling), count: filling.times })),
  );
}

function patternOf({ kinds }: Nested, { board, items, counts }: Filling): BoardPattern {
  const { items: sizes } = kinds[0] as StickKind;
  const stick: number[] = [];
  let size = 0;
  items.forEach((j, x) => {
    const item = sizes[j] as StickItem;
    for (let n = counts[x] as number; n > 0; n--) stick.push(item.demand);
    size += (counts[x] as number) * item.size;
  });
  return { room: 0, board, segments: [{ size, pattern: 0, sticks: [[stick]] }] };
}
