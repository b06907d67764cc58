import { expect, test, vi } from 'vitest';
import { type CuttingInput, planCuts, planCutsQuick } from '../../src/index.ts';
import { saw, screens, shopJobs, yard } from './jobs.ts';
import { packing, packingSets } from './packings.ts';
import { sawUp } from './walker.ts';

vi.mock('../../src/cutting/solver.ts', async (original) => ({
  ...(await original<object>()),
  loadSolver: async () => undefined,
}));

const three: CuttingInput = {
  parts: screens([
    [52, 40, 2],
    [70.5, 44, 1],
  ]),
  stock: yard(),
  offcuts: [],
  saw: saw({ trimHead: 1 / 4 }),
};

// What is least for the first is proven by a solver of the complete model, and found by one for the second.
test.each([
  ['one screen', shopJobs.A(), 42.1],
  ['twelve screens and a rack', shopJobs.B(), 285.6],
  ['three screens', three, undefined],
])(
  'where no solver can be had %s is planned by the own core alone, at no more than its first plan costs',
  async (_, job, least) => {
    const quick = planCutsQuick(job);
    const told: number[] = [];
    const plan = await planCuts({ ...job, onProgress: ({ cost }) => told.push(cost) });
    sawUp(plan, job);
    expect(plan.cost).toBeLessThanOrEqual(quick.cost);
    expect(plan.bound).toBeGreaterThanOrEqual(quick.bound);
    if (least !== undefined) {
      expect(plan.cost).toBeGreaterThanOrEqual(least);
      expect(plan.bound).toBeLessThanOrEqual(least);
      expect(plan.cost).toBeLessThan(1.08 * least);
    }
    expect(told).toEqual([...told].sort((a, b) => b - a));
    expect(await planCuts(job)).toEqual(plan);
  },
);

test('where no solver can be had boards that are only crosscut are planned as well as with one', async () => {
  const bins =
    packingSets
      .find(({ name }) => name === 'triplets')
      ?.make(0.01)
      .slice(0, 2) ?? [];
  expect(bins).toHaveLength(2);
  for (const { room, sizes } of bins) {
    const plan = await planCuts(packing({ room, sizes }));
    sawUp(plan, packing({ room, sizes }));
    expect(plan.cost).toBe(sizes.length / 3);
  }
});
