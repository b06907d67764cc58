import type { BoardClass, Demand, Problem } from './problem.ts';

/** Whether a demand may be cut from a board class, by wood and grade. */
export function serves(c: BoardClass, d: Demand): boolean {
  return c.wood === d.wood && (c.clear || !d.clear);
}

/** Whether a segment of this length (with one crosscut kerf) may be ripped at all. */
export function mayRip(problem: Problem, room: number): boolean {
  return room - problem.crossKerf >= problem.shortestRip;
}
