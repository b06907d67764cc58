import { type CutPlan, type CutTree, formatLength, type Job } from '@wattlewright/model';
import { csv } from './tables.ts';

/** `cuts.csv`: one row a cut or piece, board by board, in the order of cutting; `step` tells which piece each comes from. */
export function cutsCsv(plan: CutPlan, { display, saw }: Pick<Job, 'display' | 'saw'>): string {
  const fine = { unit: display.unit, mark: Math.min(display.mark, display.unit === 'in' ? 25.4 / 64 : 0.1) };
  const rows: (string | number)[][] = [];
  plan.boards.forEach((board, i) => {
    const write = (step: string, what: string, at: number | undefined, part: string) =>
      rows.push([
        i + 1,
        board.count,
        board.name,
        step,
        what,
        at === undefined ? '' : formatLength(at, fine),
        display.unit,
        at === undefined ? '' : Math.round(at * 1000) / 1000,
        // A sawn face is planed after the cut, so the fence stands off the finished size by as much.
        what.startsWith('rip') && at !== undefined ? formatLength(at + saw.planing, fine) : '',
        part,
      ]);
    const walk = (tree: CutTree, step: string): void => {
      if (tree === null) return void write(step, 'waste', undefined, '');
      if ('part' in tree) return void write(step, 'part', undefined, tree.part);
      if ('left' in tree) return void write(step, 'keep', tree.left, '');
      write(step, tree.cut === 'cross' ? 'crosscut' : `rip the ${tree.axis}`, tree.at, '');
      walk(tree.a, `${step}.1`);
      walk(tree.b, `${step}.2`);
    };
    walk(board.tree, '1');
  });
  return csv([['board', 'boards alike', 'name', 'step', 'what', 'at', 'unit', 'at mm', 'fence', 'part'], ...rows]);
}
