import { describe, expect, test } from 'vitest';
import { type CutPlan, checkPlan, planCutsQuick } from '../../src/index.ts';
import { board, part, saw } from './jobs.ts';

const input = {
  parts: [part('R', [1.5, 2.5, 58], 1), part('A', [3 / 16, 1.5, 58], 14)],
  stock: [board([1.5, 3.5, 120], 100), board([1.5, 3.5, 120], 100, { wood: 'oak' })],
  offcuts: [],
  saw: saw({ trimHead: 1 / 4 }),
};
const plan = planCutsQuick(input);

/** The plan with the first board changed. */
const with0 = (change: Partial<CutPlan['boards'][number]>): CutPlan => ({
  ...plan,
  boards: plan.boards.map((b, i) => (i === 0 ? { ...b, ...change } : b)),
});

describe('checkPlan on plans spoilt by hand', () => {
  test('checkPlan finds nothing wrong with the plan as made', () => {
    expect(checkPlan(plan, input)).toEqual([]);
  });

  const spoilt: [string, CutPlan, string][] = [
    ['one board more', with0({ count: (plan.boards[0]?.count ?? 0) + 1 }), 'pieces cut'],
    ['the wrong wood', with0({ stock: 1 }), 'is cut from oak'],
    ['no such stock', with0({ stock: 7 }), 'no such stock'],
    ['a head left rough', with0({ tree: { part: 'R' } }), 'the head is not squared'],
    ['another length', with0({ length: 1 }), "length 1 is not the stock's"],
    ['a cost too low', { ...plan, cost: plan.cost - 1 }, 'list'],
    ['a bound too high', { ...plan, bound: plan.cost + 1 }, 'above cost'],
    ['shares that do not add up', { ...plan, shares: { ...plan.shares, dust: 0.9 } }, 'shares do not make 1'],
  ];
  test.each(spoilt)('checkPlan names %s', (_, bad, text) => {
    expect(checkPlan(bad, input).join('\n')).toContain(text);
  });
});
