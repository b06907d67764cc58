import { describe, expect, test } from 'vitest';
import { checkPlan, isPlaned, planCutsQuick } from '../../src/index.ts';
import { board, part, saw } from './jobs.ts';
import { sawUp } from './walker.ts';

const IN = 25.4;

describe('isPlaned', () => {
  const shop = { shaving: 1.5, planing: 0.5 };
  test.each([
    ['1.5 off: planed', 40, 38.5, null, shop, true],
    ['1.6 off: ripped', 40, 38.4, null, shop, false],
    ['something beyond the blade: ripped', 40, 38.5, { part: 'B' }, shop, false],
    ['thinner than the fence stands, 1.8 off and 2 planed: planed', 40, 38.2, null, { shaving: 1.5, planing: 2 }, true],
    ['no word of shavings: ripped', 40, 38.5, null, { planing: 0.5 }, false],
  ] as const)('%s', (_, size, at, b, rules, planed) => {
    expect(isPlaned({ at, b }, size, rules)).toBe(planed);
  });
});

describe('planCutsQuick with a plane', () => {
  // 2 x 7 slit to slats 5/32 x 1 61/64: 23 rips leave 17/32, still wide enough to
  // rip the 24th off. Each would be shaved by 3/64; the board is, once.
  const input = {
    parts: [part('A', [5 / 32, 1 + 61 / 64, 96], 24)],
    stock: [board([2, 7, 96], 100)],
    offcuts: [],
    saw: saw({ deepest: 3, narrowestRip: 1 / 2, shaving: 1 / 16 }),
  };

  test('planes the board to the slats’ height before it is slit, though a saw could not reach so deep', () => {
    const plan = planCutsQuick(input);
    expect(plan.cost).toBe(100);
    expect(plan.boards[0]?.tree).toMatchObject({ cut: 'rip', axis: 'thickness', at: (1 + 61 / 64) * IN, b: null });
    expect(checkPlan(plan, input)).toEqual([]);
    sawUp(plan, input);
    expect(plan.rips).toBe(24);
    expect(new Set(plan.fences.map(({ at }) => at))).toEqual(new Set([(5 / 32) * IN]));
  });

  test('rips and counts all as before where the saw knows no plane', () => {
    const { shaving: _, ...without } = input.saw;
    const plan = planCutsQuick({ ...input, saw: without });
    expect(plan.rips).toBeGreaterThan(35);
    expect(plan.fences.map(({ at }) => at)).toContain((1 + 61 / 64) * IN);
  });

  test('what is planed is shavings in the shares, all of it', () => {
    const one = { ...input, parts: [part('A', [2, 6.95, 96], 1)] };
    const { shares, rips, fences } = planCutsQuick(one);
    expect([rips, fences]).toEqual([0, []]);
    expect(shares.dust).toBeCloseTo(0.05 / 7, 3);
    expect(shares.waste).toBeCloseTo(0, 9);
  });
});

describe('planCutsQuick of rough boards', () => {
  const job = (dressing?: number) => ({
    parts: [part('A', [1.875, 6.875, 96], 1)],
    stock: [board([2, 7, 96], 100, { surface: 'rough' })],
    offcuts: [],
    saw: saw({ planing: 1 / 64, ...(dressing !== undefined && { dressing }) }),
  });

  // 1/16 a face: 2 x 7 becomes 1 7/8 x 6 7/8, the part itself.
  test('takes the dressing off every face: 2 x 7 to 1 7/8 x 6 7/8', () => {
    const plan = planCutsQuick(job(1 / 16));
    expect(plan.boards[0]).toMatchObject({ thickness: 1.875 * IN, width: 6.875 * IN, tree: { part: 'A' } });
    expect(checkPlan(plan, job(1 / 16))).toEqual([]);
    expect(planCutsQuick(job(1 / 8)).refusal?.reason).toBe('section');
  });

  test('takes the planing where no dressing is told: 2 to 1 31/32', () => {
    const [made] = planCutsQuick(job()).boards;
    expect(made?.thickness).toBeCloseTo((1 + 31 / 32) * IN, 9);
    expect(made?.tree).toMatchObject({ cut: 'rip' });
  });
});
