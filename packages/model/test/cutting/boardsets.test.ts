import { describe, expect, test } from 'vitest';
import { searchSets } from '../../src/cutting/boardsets.ts';
import { flowBelow } from '../../src/cutting/flow.ts';
import { boundGroup, type Group, planGroup } from '../../src/cutting/group.ts';
import type { CuttingInput } from '../../src/cutting/problem.ts';
import { openJob } from '../../src/cutting/quick.ts';
import { loadSolver, searchFlow } from '../../src/cutting/solver.ts';
import { saw, screens, shopJobs, yard } from './jobs.ts';

const ENDLESS = { iterations: Number.POSITIVE_INFINITY, stopped: () => false, told: () => undefined };

async function solver() {
  const highs = await loadSolver();
  if (highs === undefined) throw new Error('no solver');
  return highs;
}

function groupOf(job: CuttingInput): Group {
  const opened = openJob(job);
  if ('refusal' in opened) throw new Error(opened.refusal.text);
  return planGroup(boundGroup(opened.nested[0] as Group['nested']));
}

/** Cost of the boards that a search bought, hundredths. */
function costOf({ nested }: Group, tallied: ReturnType<typeof searchSets>['tallied']): number {
  return [...(tallied?.values() ?? [])].reduce(
    (sum, { choice, count }) =>
      choice.is === 'buy' ? sum + count * (nested.rooms[choice.room]?.boards[choice.board]?.cost as number) : sum,
    0,
  );
}

describe('searchSets', () => {
  test('finds the proven plan of one screen of 60 x 48 from a dearer one, and none below it', async () => {
    const highs = await solver();
    const group = groupOf(shopJobs.A());
    const found = searchSets(highs, group, 4465, ENDLESS);
    expect([costOf(group, found.tallied), found.bound]).toEqual([4210, 4210]);
    const none = searchSets(highs, group, 4205, ENDLESS);
    expect(none.tallied).toBeUndefined();
    expect(none.infeasible).toBe(true);
    expect(none.bound).toBeGreaterThanOrEqual(4210);
  });

  // The general solver on the complete model judges from outside.
  test.each([
    [44, 40],
    [33.5, 60],
    [72, 36],
    [51, 51],
  ])('screen of %d x %d costs what the complete model of all choices costs', async (width, height) => {
    const highs = await solver();
    const { price: _, ...bare } = yard()[0] as ReturnType<typeof yard>[number];
    const offcuts = [{ ...bare, length: 30 * 25.4, count: 2 }];
    const group = groupOf({ parts: screens([[width, height, 1]]), stock: yard(), offcuts, saw: saw() });
    const step = group.nested.problem.costStep;
    const flow = flowBelow(group.nested, group.rest, group.mix, { below: group.cost, most: 20_000 });
    expect(flow.complete).toBe(true);
    const whole = searchFlow(highs, flow, new Map(), ENDLESS);
    const sets = searchSets(highs, group, group.cost, ENDLESS);
    expect(costOf(group, sets.tallied)).toBe(costOf(group, whole.tallied));
    expect(sets.bound).toBeGreaterThan(costOf(group, whole.tallied) - step);
  });

  test('ends at once when told to, with a bound that holds', async () => {
    const highs = await solver();
    const group = groupOf(shopJobs.A());
    const ended = searchSets(highs, group, 4465, { ...ENDLESS, stopped: () => true });
    expect(ended.tallied).toBeUndefined();
    expect(ended.bound).toBeLessThanOrEqual(4210);
  });
});
