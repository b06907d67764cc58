import { describe, expect, test } from 'vitest';
import { fenceOrder } from '../../src/cutting/fenceorder.ts';
import { boundGroup, planGroup } from '../../src/cutting/group.ts';
import type { Piece, Shop } from '../../src/cutting/piece.ts';
import { mayBeRipped, pieceOf } from '../../src/cutting/piece.ts';
import type { CutTree, PlannedBoard } from '../../src/cutting/plan.ts';
import { problemOf } from '../../src/cutting/problem.ts';
import { openJob } from '../../src/cutting/quick.ts';
import { finishPlan } from '../../src/cutting/result.ts';
import { tidied } from '../../src/cutting/tidy.ts';
import { plannedBoards } from '../../src/cutting/tree.ts';
import { leftoversOf, tally } from '../../src/cutting/walk.ts';
import { checkPlan, type Part, planCutsQuick, type Saw, type Stock } from '../../src/index.ts';
import { shopJobs } from './jobs.ts';
import { sawUp } from './walker.ts';

const saw: Saw = {
  ripKerf: 3,
  crossKerf: 3,
  planing: 0,
  shaving: 1.5,
  trimHead: 0,
  trimTail: 0,
  shortestRip: 300,
  narrowestRip: 12,
  deepest: 75,
  keepFrom: 600,
};
const wood = { wood: 'larch', grade: 'clear' } as const;
const stock = (length: number, width: number, thickness: number): Stock => ({
  ...wood,
  name: 'larch',
  surface: 'surfaced',
  length,
  width,
  thickness,
});
const part = (letter: string, [thickness, width, length]: readonly [number, number, number], count: number): Part => ({
  ...wood,
  letter,
  name: letter,
  role: 'slat',
  thickness,
  width,
  length,
  over: 0,
  count,
  spare: 0,
  grain: 'length',
  where: [],
  made: 'as given',
});

const A: CutTree = { part: 'A' };
const cross = (at: number, a: CutTree, b: CutTree): CutTree => ({ cut: 'cross', at, a, b });
const rip = (axis: 'width' | 'thickness', at: number, a: CutTree, b: CutTree): CutTree => ({
  cut: 'rip',
  axis,
  at,
  a,
  b,
});

/** Nothing is long enough to keep. */
const none = { keepFrom: 2000 };

/** One board of a job tidied. */
function tidy(of: Stock, parts: readonly Part[], tree: CutTree, more: Partial<Saw> = {}): CutTree {
  const { shop, board } = shopOf(of, parts, tree, more);
  return tidied([board], shop)[0]?.tree ?? null;
}

function shopOf(of: Stock, parts: readonly Part[], tree: CutTree, more: Partial<Saw> = {}) {
  const own = { ...saw, ...more };
  const shop: Shop = { problem: problemOf({ parts, stock: [of], offcuts: [], saw: own }), planing: own };
  const board: PlannedBoard = { ...of, from: 'stock', stock: 0, count: 1, tree };
  return { shop, board };
}

describe('lengths of a board', () => {
  const cap = part('A', [31, 100, 1200], 2);

  // 2899 = 1448 + 3 + 1448 of other boards; here the longest strip is 2403 = 1200 + 3 + 1200, and 3600 - 2403 - 3 = 1194.
  test('are no longer than the longest strip: what is over lengthens the leftover at the end', () => {
    const strip = cross(1200, A, cross(1200, A, null));
    const tree = cross(2899, rip('width', 100, strip, null), { left: 698 });
    const body = tidy(stock(3600, 104, 31), [cap], tree, { trimHead: 0 });
    // With a kerf more, so that the second of the two is crosscut at its stop as well: 3600 - 2406 - 3 = 1191.
    expect(body).toEqual(cross(2406, rip('width', 100, strip, null), { left: 1191 }));
  });

  test('a length of full section is crosscut to its parts at once', () => {
    const tree = cross(2403, cross(1200, A, A), null);
    expect(tidy(stock(3000, 100, 31), [cap], tree)).toEqual(cross(1200, A, cross(1200, A, null)));
  });

  test('the last piece of a strip is left as it is where the board has no end to give, and that is told', () => {
    const strip = cross(1200, A, A);
    const tree = rip('width', 100, strip, null);
    const told = cross(1200, A, { part: 'A', unstopped: true });
    expect(tidy(stock(2403, 104, 31), [cap], tree)).toEqual(rip('width', 100, told, null));
  });

  test('a kept leftover is not made too short to be kept, nor a trim too small, for a last piece', () => {
    const strip = cross(1200, A, A);
    const tree = (left: number): CutTree => cross(2403, rip('width', 100, strip, null), { left });
    const told = rip('width', 100, cross(1200, A, { part: 'A', unstopped: true }), null);
    expect(tidy(stock(3007, 104, 31), [cap], tree(601))).toEqual(cross(2403, told, { left: 601 }));
    // 2403 + 3 + 10 to be trimmed; one millimetre more is no use, three are.
    const trims = { trimTail: 10 };
    expect(tidy(stock(2417, 104, 31), [cap], cross(2403, rip('width', 100, strip, null), null), trims)).toEqual(
      cross(2403, told, null),
    );
    expect(tidy(stock(2419, 104, 31), [cap], cross(2403, rip('width', 100, strip, null), null), trims)).toEqual(
      cross(2406, rip('width', 100, cross(1200, A, cross(1200, A, null)), null), null),
    );
  });
});

describe('trims', () => {
  const D: CutTree = { part: 'D' };
  const slat = part('D', [4, 30, 1000], 4);
  const stave = part('C', [8, 38, 1000], 1);
  const C: CutTree = { part: 'C' };
  const each = (b: CutTree): CutTree => rip('width', 4, rip('thickness', 30, D, null), b);
  const rips = (tree: CutTree): number =>
    tree && 'cut' in tree ? Number(tree.cut === 'rip') + rips(tree.a) + rips(tree.b) : 0;

  test('one trim in common is made before the slicing, behind the pieces that want none', () => {
    const tree = each(each(rip('width', 8, C, each(each(null)))));
    const made = tidy(stock(1000, 60, 38), [slat, stave], tree, none);
    const row = [1, 2, 3].reduce<CutTree>((b) => rip('width', 4, stopless(D), b), rip('width', 4, stopless(D), null));
    expect(made).toEqual(rip('width', 8, stopless(C), rip('thickness', 30, row, null)));
    expect([rips(tree), rips(made)]).toEqual([9, 6]);
  });

  test('strips are trimmed one by one where the block is too high for the saw', () => {
    const tree = each(each(each(null)));
    expect(rips(tidy(stock(1000, 60, 38), [slat], tree, { deepest: 50 }))).toBe(6);
  });

  test('strips are trimmed one by one where the block would want a fence setting more', () => {
    // The stave comes last and remains, 11 wide; first, it would have to be ripped to 11.
    const last = part('C', [11, 38, 1000], 1);
    const tree = each(each(each(C)));
    expect(rips(tidy(stock(1000, 32, 38), [slat, last], tree))).toBe(6);
  });

  test('a trim that no part needs is left out', () => {
    const tree = rip('thickness', 37, rip('width', 4, rip('thickness', 30, D, null), null), null);
    expect(tidy(stock(1000, 20, 38), [slat], tree, none)).toEqual(
      rip('width', 4, rip('thickness', 30, stopless(D), null), null),
    );
  });
});

/** A part as long as its board: no stop gave it its length. */
function stopless(tree: CutTree): CutTree {
  return { ...(tree as { part: string }), unstopped: true };
}

describe('slivers', () => {
  const slat = part('A', [4, 30, 1000], 2);
  // 33.4 - 30 - 3 = 0.4 loose; 1 mm off first (0.4 + 0.5 on a mark of 1/2) and the blade runs 0.6 clear of the wood.
  const sliced = rip('thickness', 4, stopless(A), rip('thickness', 4, stopless(A), null));

  test('are planed off before the rip where that serves several strips', () => {
    const tree = rip('width', 30, rip('thickness', 4, A, rip('thickness', 4, A, null)), null);
    expect(tidy(stock(1000, 33.4, 25), [slat], tree, none)).toEqual(
      rip('width', 32.4, rip('width', 30, sliced, null), null),
    );
  });

  test('are told where they are not planed off', () => {
    const tree = rip('width', 30, A, null);
    expect(tidy(stock(1000, 33.4, 4), [slat], tree)).toMatchObject({ at: 30, sliver: expect.closeTo(0.4, 6) });
    // All that is left turns to dust.
    expect(tidy(stock(1000, 33, 4), [slat], tree)).not.toHaveProperty('sliver');
    // Beyond the blade the planing allowance of 0.3 is not off yet: 34.0 - 30.3 - 3 = 0.7.
    const planed = tidy(stock(1000, 34, 4), [slat], tree, { planing: 0.3 });
    expect(planed).toMatchObject({ at: 30, sliver: expect.closeTo(0.7, 6) });
    expect(tidy(stock(1000, 32, 4), [slat], tree)).not.toHaveProperty('sliver');
    const several = rip('width', 30, rip('thickness', 4, A, rip('thickness', 4, A, null)), null);
    expect(tidy(stock(1000, 33.4, 25), [slat], several, { shaving: 0 })).toHaveProperty('sliver');
  });
});

describe('ends', () => {
  const rail = part('A', [38, 38, 1000], 1);

  test('of strips and of blanks are kept where they are long enough and a part could be ripped from them', () => {
    const tree = rip('width', 38, rip('thickness', 38, cross(1000, A, null), null), null);
    const made = (width: number): CutTree => tidy(stock(1700, width, 50), [rail], cross(1650, tree, null));
    // The board is crosscut at 1000 first: nothing of a strip is over, and the blank beside it is as long, not longer.
    expect(made(84)).toEqual(
      cross(1000, rip('width', 38, rip('thickness', 38, A, null), { left: 1000 }), { left: 697 }),
    );
    // 78 - 38 - 3 = 37: a rail cannot be ripped from it.
    expect(made(78)).toEqual(cross(1000, rip('width', 38, rip('thickness', 38, A, null), null), { left: 697 }));
  });

  test('of short strips in a long length are kept at their own section, and counted so', () => {
    const long = part('B', [38, 38, 1700], 1);
    const tree = rip('width', 38, cross(1000, A, null), rip('width', 38, { part: 'B' }, null));
    const { shop, board } = shopOf(stock(1700, 79, 38), [rail, long], tree);
    const made = tidied([board], shop);
    expect(leftoversOf(made, { rip: 3 })).toEqual([{ name: 'larch', length: 697, width: 38, thickness: 38, count: 1 }]);
    const sum = tally(made, { cross: 3, rip: 3, planing: 0 });
    expect(sum.kept).toBeCloseTo(697 * 38 * 38, 3);
  });

  test('a squared head is never kept', () => {
    const tree = cross(2, null, cross(1000, A, null));
    const made = tidy(stock(1100, 38, 38), [rail], tree, { trimHead: 2, keepFrom: 0 });
    expect(made).toMatchObject({ at: 2, a: null });
  });
});

test('boards that are cut alike once tidied are one entry', () => {
  const rail = part('A', [31, 100, 1200], 2);
  const { shop, board } = shopOf(stock(1400, 104, 31), [rail], null);
  const ripped = rip('width', 100, A, null);
  const long = { ...board, tree: cross(1300, rip('width', 100, cross(1200, A, null), null), null) };
  const made = tidied([{ ...board, tree: cross(1200, ripped, null) }, long], shop);
  expect(made).toEqual([{ ...board, count: 2, tree: cross(1200, ripped, null) }]);
});

test('a plan of strips longer than its boards asks is checked and sawn up as before', () => {
  const input = {
    parts: [part('A', [4, 30, 900], 12), part('B', [38, 38, 700], 4), part('C', [10, 20, 400], 7)],
    stock: [{ ...stock(2400, 95, 45), price: { amount: 20, per: 'board' as const } }],
    offcuts: [],
    saw: { ...saw, trimHead: 5, trimTail: 5 },
  };
  const plan = planCutsQuick(input);
  expect(checkPlan(plan, input)).toEqual([]);
  sawUp(plan, input);
  const { parts, dust, kept, waste } = plan.shares;
  expect(parts + dust + kept + waste).toBeCloseTo(1, 9);
  const shop: Shop = { problem: problemOf(input), planing: input.saw };
  for (const board of plan.boards) {
    const piece: Piece = pieceOf(board);
    expect(mayBeRipped(board.tree, piece, shop)).toBe(true);
  }
});

test.each(['A', 'B'] as const)('shop job %s tidied: the same boards, no setting and no rip more', (name) => {
  const job = shopJobs[name]();
  const opened = openJob(job);
  if ('refusal' in opened) throw new Error(opened.refusal.text);
  const groups = opened.nested.map((nested) => planGroup(boundGroup(nested)));
  const before = groups.flatMap(({ nested, draft }) => plannedBoards(nested, draft.takes));
  const losses = { cross: job.saw.crossKerf, rip: job.saw.ripKerf, planing: 0 };
  const plan = finishPlan(opened.problem, job, groups);
  const count = (boards: readonly PlannedBoard[]): number => boards.reduce((sum, board) => sum + board.count, 0);
  expect(count(plan.boards)).toBe(count(before));
  expect(plan.fences.length).toBeLessThanOrEqual(fenceOrder(before, losses).length);
  expect(plan.rips).toBeLessThanOrEqual(tally(before, losses).rips);
  sawUp(plan, job);
});
