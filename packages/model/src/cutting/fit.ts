import type { BoardRoom, Nested } from './nested.ts';
import type { BoardClass, Demand, Problem } from './problem.ts';

/** Whether a demand may be cut from a board class, by wood and grade. */
export function serves(c: BoardClass, d: Demand): boolean {
  return c.wood === d.wood && (c.clear || !d.clear);
}

/** Whether a segment of this length (with one crosscut kerf) may be ripped at all. */
export function mayRip(problem: Problem, room: number): boolean {
  return room - problem.crossKerf >= problem.shortestRip;
}

/** Whether one board of a room can be made to yield a piece of a demand. */
export function canMake(nested: Nested, room: BoardRoom, board: number, demand: number): boolean {
  const length = room.boards[board]?.room as number;
  const ripped = mayRip(nested.problem, length);
  return room.kinds.some(
    (k, s) =>
      nested.kinds[k]?.items.some((item) => item.demand === demand && item.size <= length) === true &&
      room.patterns.some((p) => (p.counts[s] as number) > 0 && (ripped || p.rips === 0)),
  );
}
