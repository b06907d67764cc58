import { type CutPlan, type CutTree, fineMarks, formatLength, isPlaned, type Job } from '@wattlewright/model';
import { csv } from './tables.ts';

/** Stages of the work at the saw, in their order; a piece waits for the one that cuts it next. */
const STAGES = ['crosscut the board', 'rip', 'crosscut the strip'] as const;

type Stage = 0 | 1 | 2;

/** A piece of wood under its name. */
interface Piece {
  readonly tree: CutTree;
  readonly name: string;
  readonly stage: Stage;
  /** Fence setting that freed it, counted from 0. */
  readonly after: number;
}

/** Section of a piece, mm. */
interface Sides {
  readonly width: number;
  readonly thickness: number;
}

interface Row {
  readonly stage: Stage;
  readonly setting: number;
  readonly cells: readonly (string | number)[];
}

const HEAD = [
  'stage',
  'setting',
  'board',
  'boards alike',
  'stock',
  'piece',
  'cut at',
  'unit',
  'cut at mm',
  'fence or stop',
  'comes off',
  'remains',
];

/**
 * `cuts.csv`: one row a cut in the order of work at the saw: boards crosscut one after the other, then all rips by fence
 * setting (numbered as on the cut sheets), then the strips crosscut. What comes off a piece and what remains of it is a
 * part's letter, a piece with a name of its own, `keep` or `waste`. A board that is a part as it is has a row without a cut.
 */
export function cutsCsv(plan: CutPlan, job: Pick<Job, 'display' | 'saw'>): string {
  const rows = plan.boards.flatMap((_, board) => boardRows(plan, board, job));
  rows.sort((a, b) => a.stage - b.stage || a.setting - b.setting);
  return csv([HEAD, ...rows.map(({ cells }) => cells)]);
}

function boardRows({ boards, fences }: CutPlan, index: number, { display, saw }: Pick<Job, 'display' | 'saw'>): Row[] {
  const { count, name, tree: root } = boards[index] as CutPlan['boards'][number];
  const show = (size: number): string => formatLength(size, fineMarks(display));
  const rows: Row[] = [];
  const named = pieceNames(`board ${index + 1}`, show);
  const board = [index + 1, count, name];
  const loss = saw.ripKerf + 2 * saw.planing;
  const walk = ({ tree, name: piece, stage, after }: Piece, size: Sides): void => {
    if (tree === null || !('cut' in tree)) return;
    const { cut, at, a, b } = tree;
    const setting =
      tree.cut === 'rip' && !isPlaned(tree, size[tree.axis], saw)
        ? fences.findIndex((fence, i) => i >= after && fence.at === at)
        : after;
    const planed = tree.cut === 'rip' && isPlaned(tree, size[tree.axis], saw);
    const from = { name: piece, stage, after: planed ? after : setting };
    const [off, rest] = [named(a, from), named(b, from, true)];
    rows.push({
      stage,
      setting: cut === 'rip' ? from.after : 0,
      cells: [
        planed ? 'plane' : STAGES[stage],
        cut === 'rip' && !planed ? setting + 1 : '',
        ...board,
        piece,
        show(at),
        display.unit,
        Math.round(at * 1000) / 1000,
        // A sawn face is planed after the cut, so what is set stands off the finished size by as much.
        cut === 'rip' && !planed ? show(at + saw.planing) : '',
        off.name,
        rest.name,
      ],
    });
    const sides = (next: number): Sides => (tree.cut === 'rip' ? { ...size, [tree.axis]: next } : size);
    walk(off, sides(at));
    walk(rest, tree.cut === 'rip' ? sides(size[tree.axis] - at - loss) : size);
  };
  const first = named(root, { name: `board ${index + 1}`, stage: 0, after: 0 });
  if (root !== null && 'cut' in root) walk(first, boards[index] as CutPlan['boards'][number]);
  else
    rows.push({
      stage: 0,
      setting: 0,
      cells: ['no cut', '', ...board, `board ${index + 1}`, '', display.unit, '', '', first.name, ''],
    });
  return rows;
}

/** Names pieces as they are freed: lengths of a board in the order of the cut sheets, blanks to rip again, strips. */
function pieceNames(
  board: string,
  show: (size: number) => string,
): (tree: CutTree, from: Omit<Piece, 'tree'>, rest?: boolean) => Piece {
  const counts = { length: 0, blank: 0, strip: 0 };
  const next = (kind: keyof typeof counts): string => `${kind} ${++counts[kind]} of ${board}`;
  return (tree, { name, stage, after }, rest = false) => {
    if (tree === null) return { tree, name: 'waste', stage, after };
    if ('part' in tree) return { tree, name: tree.part, stage, after };
    if ('left' in tree) return { tree, name: `keep ${show(tree.left)}`, stage, after };
    if (tree.cut === 'rip') {
      if (stage === 0) return { tree, name: next('length'), stage: 1, after };
      return { tree, name: rest ? name : next('blank'), stage: 1, after };
    }
    return stage === 1 ? { tree, name: next('strip'), stage: 2, after } : { tree, name, stage, after };
  };
}
