import type { CutPlan, PlannedBoard } from '@wattlewright/model';
import { type CrossCuts, crossCuts, type SawLosses } from './cutcross.ts';
import { type RippedLength, rippedLength } from './cutstages.ts';

/** How one board is cut, read out of its tree. */
export interface BoardCuts {
  readonly board: PlannedBoard;
  readonly cuts: CrossCuts;
  readonly ripped: readonly RippedLength[];
}

/**
 * A plan's boards with every cut in its place. The saw must be the one that the plan was made for. A RangeError where a
 * strip is ripped again after it was crosscut: plans are of crosscut, rip, crosscut.
 */
export function boardCuts({ boards }: Pick<CutPlan, 'boards'>, saw: SawLosses): BoardCuts[] {
  return boards.map((board) => {
    const ripped: RippedLength[] = [];
    const box = { x: 0, y: 0, width: board.width, height: board.thickness };
    const cuts = crossCuts(
      board.tree,
      board.length,
      saw,
      (tree, length) => ripped.push(rippedLength(tree, length, box, saw)) - 1,
    );
    return { board, cuts, ripped };
  });
}
