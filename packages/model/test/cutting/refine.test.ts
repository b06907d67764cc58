import { describe, expect, test } from 'vitest';
import { choicesOf } from '../../src/cutting/gather.ts';
import { boundGroup, type Group, planGroup } from '../../src/cutting/group.ts';
import { amountsOf, type Measure } from '../../src/cutting/measure.ts';
import { openJob } from '../../src/cutting/quick.ts';
import { refine } from '../../src/cutting/refine.ts';
import { saw, screens, yard } from './jobs.ts';

const amounts = ({ nested, draft }: Group): Record<Measure, number> =>
  amountsOf(nested, choicesOf(nested, draft.takes));

describe('refine: cost, then waste, then fence settings, then cuts', () => {
  test.each([
    [72, 36],
    [47.25, 36],
  ])('a screen of %d x %d is tidied, nothing that comes first made worse', async (width, height) => {
    const opened = openJob({ parts: screens([[width, height, 1]]), stock: yard(), offcuts: [], saw: saw() });
    if ('refusal' in opened) throw new Error('refused');
    let tidied = 0;
    for (const nested of opened.nested) {
      const group = planGroup(boundGroup(nested));
      const next = await refine(group, () => false);
      const [before, after] = [amounts(group), amounts(next)];
      const first = (['cost', 'waste', 'fences', 'cuts'] as const).find((m) => Math.abs(before[m] - after[m]) > 1);
      if (first !== undefined) {
        expect(after[first]).toBeLessThan(before[first]);
        tidied++;
      }
      expect(next.done).toBe(true);
      expect(next.bound).toBeLessThanOrEqual(next.cost);
    }
    expect(tidied).toBeGreaterThan(0);
  });

  test('nothing is done where the search is stopped', async () => {
    const opened = openJob({ parts: screens([[60, 48, 1]]), stock: yard(), offcuts: [], saw: saw() });
    if ('refusal' in opened) throw new Error('refused');
    const group = planGroup(boundGroup(opened.nested[0] as never));
    expect(await refine(group, () => true)).toBe(group);
  });
});
