import { describe, expect, test } from 'vitest';
import { fenceOrder } from '../../src/cutting/fenceorder.ts';
import type { CutTree, PlannedBoard } from '../../src/cutting/plan.ts';
import { ripRow } from '../../src/cutting/riprow.ts';

const A: CutTree = { part: 'A' };
const B: CutTree = { part: 'B' };
const rip = (at: number, a: CutTree, b: CutTree): CutTree => ({ cut: 'rip', axis: 'width', at, a, b });
/** Ticks of whole millimetres. */
const mm = (size: number): number => size * 640;
const rules = { ripLoss: mm(3), narrowestRip: mm(12) };

describe('ripRow', () => {
  // 60 wide: 20 of A, 3 lost, 14 not wanted, 3 lost, 20 of B remain. Without the waste B is ripped off 37, 14 fall away.
  test('rips off nothing that is not wanted: B is brought to size instead', () => {
    const row = [
      { size: mm(20), tree: A },
      { size: mm(14), tree: null },
    ];
    const rest = { size: mm(20), tree: B };
    expect(ripRow({ axis: 'width', whole: mm(60), row, rest }, rules)).toEqual(rip(20, A, rip(20, B, null)));
  });

  test('leaves out the rips before waste, and makes none of all waste', () => {
    const row = [{ size: mm(20), tree: null }];
    const none = { size: mm(37), tree: null };
    expect(
      ripRow({ axis: 'width', whole: mm(60), row: [...row, { size: mm(20), tree: A }], rest: none }, rules),
    ).toEqual(rip(20, A, null));
    expect(ripRow({ axis: 'width', whole: mm(60), row, rest: none }, rules)).toBe(null);
  });

  // 40 wide: 2 not wanted, 3 lost, 28 of A, 3 lost, 4 of B remain. A first would leave 9 to rip, under 12; B first leaves 33.
  test('takes the smallest first where what is left would be too narrow to rip', () => {
    const row = [
      { size: mm(2), tree: null },
      { size: mm(28), tree: A },
    ];
    const rest = { size: mm(4), tree: B };
    expect(ripRow({ axis: 'width', whole: mm(40), row, rest }, rules)).toEqual(rip(4, B, rip(28, A, null)));
  });

  test('keeps its rips where nothing is wasted', () => {
    const row = [{ size: mm(20), tree: A }];
    const rest = { size: mm(37), tree: B };
    expect(ripRow({ axis: 'width', whole: mm(60), row, rest }, rules)).toEqual(rip(20, A, B));
  });
});

describe('fenceOrder', () => {
  const board = (tree: CutTree, count = 1): PlannedBoard => ({
    from: 'stock',
    stock: 0,
    name: 'board',
    count,
    length: 1000,
    width: 100,
    thickness: 40,
    tree,
  });

  // Taking the 20 of the first board at once would want them again once 30 has freed that of the second.
  test('waits with a setting that comes back: 30 and then 20, three boards', () => {
    const boards = [board(rip(20, A, A), 2), board(rip(30, rip(20, A, B), B))];
    expect(fenceOrder(boards)).toEqual([
      { at: 30, rips: 1, boards: [1] },
      { at: 20, rips: 3, boards: [0, 1] },
    ]);
  });

  test('comes back to a setting where the rips leave no other way', () => {
    const boards = [board(rip(20, rip(10, A, B), rip(30, rip(20, A, B), B)))];
    expect(fenceOrder(boards).map(({ at }) => at)).toEqual([20, 30, 20, 10]);
  });
});
