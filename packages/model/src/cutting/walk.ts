import type { CutTree, Leftover, PlannedBoard, Shares } from './plan.ts';
import { isPlaned, type Planing } from './plane.ts';
import { fromTicks } from './ticks.ts';

/** Sizes of a piece of wood as it stands, mm. */
interface Piece {
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
}

/** What the cuts of a plan add up to. */
export interface Tally {
  readonly parts: number;
  readonly dust: number;
  readonly kept: number;
  readonly opened: number;
  readonly rips: number;
  readonly crosscuts: number;
}

/** What cuts lose, mm, and what is planed. */
interface Losses extends Planing {
  readonly cross: number;
  readonly rip: number;
}

/** Walks every board of a plan and adds up wood (mm3) and cuts; what is planed is no rip and all shavings. */
export function tally(boards: readonly PlannedBoard[], loss: Losses): Tally {
  const sum = { parts: 0, dust: 0, kept: 0, opened: 0, rips: 0, crosscuts: 0 };
  const walk = (tree: CutTree, piece: Piece, count: number): void => {
    const volume = piece.length * piece.width * piece.thickness;
    if (tree === null) return;
    if ('part' in tree) sum.parts += volume * count;
    else if ('left' in tree) sum.kept += volume * count;
    else {
      const along = tree.cut === 'cross' ? 'length' : tree.axis;
      const size = piece[along];
      const planed = tree.cut === 'rip' && isPlaned(tree, size, loss);
      const most = size - tree.at;
      const lost = planed ? most : Math.min(tree.cut === 'cross' ? loss.cross : loss.rip, most);
      sum.dust += (volume / size) * lost * count;
      if (!planed) sum[tree.cut === 'cross' ? 'crosscuts' : 'rips'] += count;
      walk(tree.a, { ...piece, [along]: tree.at }, count);
      walk(tree.b, { ...piece, [along]: size - tree.at - lost }, count);
    }
  };
  for (const board of boards) {
    sum.opened += board.length * board.width * board.thickness * board.count;
    walk(board.tree, board, board.count);
  }
  return sum;
}

/** Shares of the wood opened; `planed` is what rough stock lost before the first cut, mm3. */
export function sharesOf(t: Tally, planed: number): Shares {
  const all = t.opened + planed || 1;
  const [parts, dust, kept] = [t.parts / all, (t.dust + planed) / all, t.kept / all];
  return { parts, dust, kept, waste: t.opened > 0 ? Math.max(0, 1 - parts - dust - kept) : 0 };
}

/** Leftovers that are kept, longest first, then those of the largest section; `rip` is lost between neighbours, mm. */
export function leftoversOf(boards: readonly PlannedBoard[], loss: Pick<Losses, 'rip'>): Leftover[] {
  const found = new Map<string, Leftover & { count: number }>();
  const walk = (tree: CutTree, board: PlannedBoard, sides: Omit<Piece, 'length'>): void => {
    if (tree === null) return;
    if ('left' in tree) {
      const width = onGrid(Math.max(sides.width, sides.thickness));
      const thickness = onGrid(Math.min(sides.width, sides.thickness));
      const key = `${board.name}|${tree.left}|${width}|${thickness}`;
      const entry = found.get(key) ?? { name: board.name, length: tree.left, width, thickness, count: 0 };
      entry.count += board.count;
      found.set(key, entry);
    } else if ('cut' in tree) {
      const rest = (axis: 'width' | 'thickness') => ({ ...sides, [axis]: sides[axis] - tree.at - loss.rip });
      walk(tree.a, board, tree.cut === 'rip' ? { ...sides, [tree.axis]: tree.at } : sides);
      walk(tree.b, board, tree.cut === 'rip' ? rest(tree.axis) : sides);
    }
  };
  for (const board of boards) walk(board.tree, board, board);
  const area = ({ width, thickness }: Leftover): number => width * thickness;
  return [...found.values()].sort((a, b) => b.length - a.length || area(b) - area(a) || (a.name < b.name ? -1 : 1));
}

/** Loses the noise of doubles. */
function onGrid(size: number): number {
  return fromTicks(Math.round(size * 640));
}
