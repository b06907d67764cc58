import { boardOf, type Take } from './greedy.ts';
import type { BoardRoom, Nested } from './nested.ts';
import type { CutTree, PlannedBoard } from './plan.ts';
import type { BoardPattern, Segment } from './pricing.ts';
import type { Board, BoardClass, Demand } from './problem.ts';
import { ripRow, type Sized } from './riprow.ts';
import type { SectionTree } from './section.ts';
import type { StickKind } from './sticks.ts';
import { fromTicks } from './ticks.ts';

/** Letters still to be given out, per demand. */
type Pool = { letter: string; left: number }[][];

/** Boards cut up by a draft's patterns, each piece with its letter; boards cut the same way are one entry. */
export function plannedBoards(nested: Nested, takes: readonly Take[]): PlannedBoard[] {
  const pool: Pool = nested.problem.demands.map((d) => d.parts.map((p) => ({ letter: p.letter, left: p.need })));
  const found = new Map<string, PlannedBoard & { count: number }>();
  const sorted = takes
    .map(({ pattern, count }) => ({ pattern, count, board: boardOf(nested, pattern) as Board }))
    .sort((a, b) => order(a.board) - order(b.board) || a.pattern.board - b.pattern.board);
  for (const { pattern, count, board } of sorted) {
    const section = nested.problem.classes[board.class] as BoardClass;
    for (let n = 0; n < count; n++) {
      const tree = boardTree(nested, pattern, pool);
      if (tree === null) continue;
      const key = `${board.rack}|${board.index}|${treeKey(tree)}`;
      const same = found.get(key);
      if (same) same.count++;
      else {
        found.set(key, {
          from: board.rack ? 'offcuts' : 'stock',
          stock: board.index,
          name: board.name,
          count: 1,
          length: fromTicks(board.length),
          width: fromTicks(section.width),
          thickness: fromTicks(section.thickness),
          tree,
        });
      }
    }
  }
  return [...found.values()];
}

/** Text that is the same for boards cut alike into the same parts, and for no others. */
export function treeKey(tree: CutTree): string {
  if (tree === null) return '-';
  if ('part' in tree) return `${tree.part.length}${tree.unstopped ? '!' : ':'}${tree.part}`;
  if ('left' in tree) return `l${tree.left}`;
  return `${tree.cut === 'cross' ? 'x' : tree.axis}${tree.at}(${treeKey(tree.a)},${treeKey(tree.b)})`;
}

/** The rack comes first. */
function order({ index, rack }: Board): number {
  return index - (rack ? 1e9 : 0);
}

function boardTree(nested: Nested, pattern: BoardPattern, pool: Pool): CutTree {
  const { problem } = nested;
  const room = nested.rooms[pattern.room] as BoardRoom;
  const board = room.boards[pattern.board] as Board;
  const pieces = [...pattern.segments]
    .sort((a, b) => b.size - a.size)
    .map((segment) => ({ size: segment.size - problem.crossKerf, tree: segmentTree(nested, room, segment, pool) }))
    .filter(({ tree }) => tree !== null);
  if (pieces.length === 0) return null;
  const rest = (length: number): CutTree => (length >= problem.keepFrom ? { left: fromTicks(length) } : null);
  const head = board.trimHead > 0 ? board.trimHead + problem.crossKerf : 0;
  // The tail is squared by the last piece's own cut: the room leaves the trim and its kerf beyond it.
  const body = crosscut(pieces, board.length - head, problem.crossKerf, rest);
  return head > 0 ? { cut: 'cross', at: fromTicks(board.trimHead), a: null, b: body } : body;
}

/** Pieces cut off one after the other from the head; what is beyond the last is `rest`. */
export function crosscut(
  pieces: readonly Sized[],
  length: number,
  kerf: number,
  rest: (length: number) => CutTree,
): CutTree {
  const [first, ...others] = pieces;
  if (first === undefined) return length > 0 ? rest(length) : null;
  if (first.size === length) return first.tree;
  const b = crosscut(others, length - first.size - kerf, kerf, rest);
  return { cut: 'cross', at: fromTicks(first.size), a: first.tree, b };
}

function segmentTree(nested: Nested, room: BoardRoom, segment: Segment, pool: Pool): CutTree {
  const { problem } = nested;
  const section = problem.classes[room.class] as BoardClass;
  const length = segment.size - problem.crossKerf;
  const next = segment.sticks.map(() => 0);
  const leaf = (s: number): CutTree => {
    const stick = segment.sticks[s]?.[next[s] as number] ?? [];
    next[s] = (next[s] as number) + 1;
    const pieces: Sized[] = [];
    for (const d of stick) {
      const letter = takeLetter(pool[d] ?? []);
      if (letter !== undefined) pieces.push({ size: (problem.demands[d] as Demand).length, tree: { part: letter } });
    }
    return pieces.length === 0 ? null : crosscut(pieces, length, problem.crossKerf, () => null);
  };
  const walk = (tree: SectionTree, width: number, thickness: number): CutTree => {
    if (tree === null) return null;
    if ('stick' in tree) {
      const cut = leaf(tree.stick);
      return cut && trimmed(cut, nested.kinds[room.kinds[tree.stick] as number] as StickKind, width, thickness);
    }
    const { axis } = tree;
    const become = (piece: SectionTree, along: number): CutTree =>
      axis === 'width' ? walk(piece, along, thickness) : walk(piece, width, along);
    const whole = axis === 'width' ? width : thickness;
    const row: Sized[] = [];
    let [rest, size]: [SectionTree, number] = [tree, whole];
    while (rest !== null && 'axis' in rest && rest.axis === axis) {
      row.push({ size: rest.at, tree: become(rest.a, rest.at) });
      size -= rest.at + problem.ripLoss;
      rest = rest.b;
    }
    return ripRow({ axis, whole, row, rest: { size, tree: become(rest, size) } }, problem);
  };
  return walk(room.patterns[segment.pattern]?.tree ?? null, section.width, section.thickness);
}

/** The rips that bring a piece a little larger than its stick to size. */
function trimmed(tree: CutTree, kind: StickKind, width: number, thickness: number): CutTree {
  const flat = kind.width <= width && kind.thickness <= thickness;
  const turned = kind.thickness <= width && kind.width <= thickness;
  const exact = (w: number, t: number): number => Number(w === width) + Number(t === thickness);
  const lies = flat && (!turned || exact(kind.width, kind.thickness) >= exact(kind.thickness, kind.width));
  const [w, t] = lies ? [kind.width, kind.thickness] : [kind.thickness, kind.width];
  const thin: CutTree = t === thickness ? tree : { cut: 'rip', axis: 'thickness', at: fromTicks(t), a: tree, b: null };
  return w === width ? thin : { cut: 'rip', axis: 'width', at: fromTicks(w), a: thin, b: null };
}

function takeLetter(pool: Pool[number]): string | undefined {
  const open = pool.find((p) => p.left > 0);
  if (open === undefined) return undefined;
  open.left--;
  return open.letter;
}
