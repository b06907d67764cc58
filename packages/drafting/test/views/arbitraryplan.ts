import type { CutPlan, CutTree, PlannedBoard, Saw } from '@wattlewright/model';
import fc from 'fast-check';

/** A saw with these losses, mm, and no other rules. */
export function sawOf(ripKerf: number, crossKerf: number, planing: number): Saw {
  return { ripKerf, crossKerf, planing, trimHead: 0, trimTail: 0, shortestRip: 0, narrowestRip: 0, keepFrom: 300 };
}

/** A plan of some boards, whatever it costs. */
export function planOf(boards: readonly PlannedBoard[], more: Partial<CutPlan> = {}): CutPlan {
  return {
    status: 'optimal',
    boards,
    cost: 0,
    costIs: 'price',
    bound: 0,
    boundKind: 'complete',
    gap: 0,
    shares: { parts: 0.6, dust: 0.2, kept: 0.1, waste: 0.1 },
    fences: [],
    rips: 0,
    crosscuts: 0,
    shopping: [],
    leftovers: [],
    ...more,
  };
}

/** Random choices as a stream of numbers from 0 to 1, so that a tree can be grown step by step. */
type Next = () => number;

const LETTERS = ['A', 'B', 'C', 'D', 'E', 'AB'];

function pieces(length: number, next: Next, leaf: (length: number) => CutTree, kerf: number): CutTree {
  const at = Math.round(length * (0.08 + 0.7 * next()));
  if (at < 20 || next() < 0.25) return leaf(length);
  return {
    cut: 'cross',
    at,
    a: leaf(at),
    b: length - at - kerf > 0 ? pieces(length - at - kerf, next, leaf, kerf) : null,
  };
}

/** Trees of crosscut, rip, crosscut as a planner makes them; sizes are whole millimetres. */
function treeOf(board: { length: number; width: number; thickness: number }, saw: Saw, next: Next): CutTree {
  const part = (): CutTree => ({ part: LETTERS[Math.floor(next() * LETTERS.length)] ?? 'A' });
  const strip = (length: number): CutTree =>
    next() < 0.15 ? null : pieces(length, next, () => (next() < 0.2 ? null : part()), saw.crossKerf);
  const ripped = (width: number, thickness: number, length: number, deep: number): CutTree => {
    const axis = next() < 0.6 ? ('width' as const) : ('thickness' as const);
    const size = axis === 'width' ? width : thickness;
    if (saw.shaving !== undefined && size > 8 && next() < 0.4) {
      const less = { ...{ width, thickness }, [axis]: size - saw.shaving };
      return { cut: 'rip', axis, at: size - saw.shaving, a: ripped(less.width, less.thickness, length, deep), b: null };
    }
    const any = Math.max(3, Math.round(size * (0.06 + 0.6 * next())));
    // With a plane sizes repeat, so that a setting's own rips want it between them.
    const at = saw.shaving === undefined ? any : any < 15 ? 6 : 15;
    const rest = size - at - saw.ripKerf - 2 * saw.planing;
    if (deep === 0 || at >= size) return strip(length);
    const [aw, at2] = axis === 'width' ? [at, thickness] : [width, at];
    const [bw, bt] = axis === 'width' ? [rest, thickness] : [width, rest];
    return {
      cut: 'rip',
      axis,
      at,
      a: ripped(aw, at2, length, next() < 0.5 ? 0 : deep - 1),
      b: rest > 0 ? ripped(bw, bt, length, deep - 1) : null,
    };
  };
  const segment = (length: number): CutTree => {
    const dice = next();
    if (dice < 0.1) return null;
    if (dice < 0.2) return { left: length };
    if (dice < 0.3) return part();
    return ripped(board.width, board.thickness, length, 1 + Math.floor(next() * 7));
  };
  const body = pieces(board.length - 10 - saw.crossKerf, next, segment, saw.crossKerf);
  return { cut: 'cross', at: 10, a: null, b: body };
}

/** A plan with its saw. */
export interface ArbitraryPlan {
  readonly plan: CutPlan;
  readonly saw: Saw;
}

/** Plans of one to five boards, from laths to planks, a few of each. */
export const arbitraryPlans: fc.Arbitrary<ArbitraryPlan> = plansBy(fc.constantFrom(0, 0.5), {});

/** The same where the plane takes up to 1.5 mm, on pieces in between and on strips. */
export const arbitraryPlanedPlans: fc.Arbitrary<ArbitraryPlan> = plansBy(fc.constant(0.5), { shaving: 1.5 });

function plansBy(planing: fc.Arbitrary<number>, more: Partial<Saw>): fc.Arbitrary<ArbitraryPlan> {
  return fc
    .record({
      kerf: fc.constantFrom(0, 2, 3),
      planing,
      boards: fc.array(
        fc.record({
          length: fc.integer({ min: 400, max: 6000 }),
          width: fc.integer({ min: 20, max: 240 }),
          thickness: fc.integer({ min: 10, max: 60 }),
          count: fc.integer({ min: 1, max: 12 }),
          choices: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 40, maxLength: 40 }),
        }),
        { minLength: 1, maxLength: 5 },
      ),
    })
    .map(({ kerf, planing, boards }) => {
      const saw = { ...sawOf(kerf, kerf, planing), ...more };
      const planned = boards.map(({ choices, count, ...size }, i): PlannedBoard => {
        let turn = 0;
        const next = (): number => choices[turn++ % choices.length] as number;
        const board = {
          length: size.length,
          width: Math.max(size.width, size.thickness),
          thickness: Math.min(size.width, size.thickness),
        };
        return {
          from: i % 3 === 2 ? 'offcuts' : 'stock',
          stock: i,
          name: `board ${i + 1}`,
          count,
          ...board,
          tree: treeOf(board, saw, next),
        };
      });
      return { plan: planOf(planned), saw };
    });
}

/** Parts that a tree cuts, by letter, counted without regard to sizes. */
export function partsIn(tree: CutTree, found: Map<string, number> = new Map()): Map<string, number> {
  if (tree === null || 'left' in tree) return found;
  if ('part' in tree) return found.set(tree.part, (found.get(tree.part) ?? 0) + 1);
  return partsIn(tree.b, partsIn(tree.a, found));
}
