import type { CutPlan, Part } from '@wattlewright/model';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pointsOf } from '../../src/ink.ts';
import type { Mark } from '../../src/mark.ts';
import { shoppingTable } from '../../src/views/shopping.ts';
import { yieldBar } from '../../src/views/yieldbar.ts';
import { faultsOf, textsOf } from '../layout/faults.ts';
import { planOf } from './arbitraryplan.ts';

const page = { display: { unit: 'in', mark: 25.4 / 16 }, currency: 'USD', width: 183, height: 204 } as const;
const texts = (marks: readonly Mark[]): string[] => textsOf(marks).map(({ text }) => text.replaceAll('\u00a0', ' '));
const board = { stock: 0, name: '2x4', count: 2, length: 2438.4, width: 88.9, thickness: 38.1, tree: { part: 'A' } };
const bought: CutPlan = planOf(
  [
    { ...board, from: 'stock' },
    { ...board, from: 'offcuts', name: 'lath', length: 1270 },
  ],
  {
    cost: 36.95,
    bound: 36.95,
    shopping: [
      { stock: 0, name: '2x4', length: 2438.4, count: 2, each: 11.5, total: 23 },
      { stock: 1, name: '2x6', length: 3048, count: 1, each: 13.95, total: 13.95 },
    ],
    leftovers: [{ name: '2x4', length: 704.85, width: 88.9, thickness: 38.1, count: 2 }],
  },
);

describe('shoppingTable', () => {
  it('is boards with prices and their sum, the rack, hardware, and leftovers', () => {
    const hardware = [{ item: 'No. 8 x 2 1/2 in', count: '24' }];
    const drawn = shoppingTable(bought, { ...page, hardware });
    expect(drawn.map(({ name }) => name)).toEqual(['shopping', 'rack', 'hardware', 'leftovers']);
    const [boards, rack, screws, left] = drawn.map(({ marks }) => texts(marks));
    expect(boards).toEqual(
      expect.arrayContaining(['2x4', '96', '2', '11.50', '23.00', '13.95', '3', '36.95', 'Total USD']),
    );
    expect(rack).toEqual(expect.arrayContaining(['lath', '50', '2']));
    expect(screws).toEqual(expect.arrayContaining(['No. 8 x 2 1\u20442 in', '24']));
    expect(left).toEqual(expect.arrayContaining(['1 1\u20442 × 3 1\u20442', '27 3\u20444', '2']));
    for (const { marks } of drawn) expect(faultsOf(marks)).toEqual([]);
  });

  it('names wood, grade and section of what is bought and taken from the rack', () => {
    const one = { name: '2x4', length: 2438.4, width: 88.9, thickness: 38.1, wood: 'white oak' } as const;
    const stock = [{ ...one, grade: 'clear', surface: 'rough' } as const];
    const [boards, rack] = shoppingTable(bought, { ...page, stock, offcuts: stock }).map(({ marks }) => texts(marks));
    for (const list of [boards, rack])
      expect(list).toEqual(expect.arrayContaining(['white oak, clear', '1 1\u20442 × 3 1\u20442 rough']));
  });

  it('has no prices where the stock has none, but the wood', () => {
    const shopping = bought.shopping.map((line) => ({ ...line, each: undefined, total: undefined }));
    const [boards] = shoppingTable({ ...bought, costIs: 'wood', cost: 23597372.16, shopping }, page);
    expect(texts(boards?.marks ?? [])).toContain('All boards: 10.0 board feet');
    expect(texts(boards?.marks ?? [])).not.toContain('Total USD');
  });

  it('names the parts that the boards do not give, in the sum and in a table with what to buy', () => {
    const refusal = {
      reason: 'minRip',
      part: 'E',
      text: 'part E, strut: it needs a cut 3 1/2 in deep: buy a thinner board',
      proven: true,
      each: [{ part: 'E', why: 'it needs a cut 3 1/2 in deep', buy: 'buy a thinner board' }],
    } as const;
    const parts = [{ letter: 'E', name: 'strut', count: 1, spare: 0 }] as unknown as readonly Part[];
    const drawn = shoppingTable({ ...bought, status: 'impossible', refusal }, { ...page, parts });
    expect(texts(drawn[0]?.marks ?? []).join(' ')).toContain('All boards, without wood for E');
    expect(drawn[1]?.name).toBe('left-out');
    expect(texts(drawn[1]?.marks ?? [])).toEqual(
      expect.arrayContaining(['E, strut', '1', 'It needs a cut 3 1\u20442 in deep', 'Buy a thinner board']),
    );
  });

  it('warns beside a board whose name says another wood than it counts as', () => {
    const stock = [
      {
        name: 'ash 35 x 100',
        length: 1500,
        width: 100,
        thickness: 35,
        wood: 'western redcedar',
        grade: 'clear',
        surface: 'surfaced',
      } as const,
    ];
    const [boards] = shoppingTable(bought, { ...page, stock });
    expect(texts(boards?.marks ?? []).join(' ')).toContain('the name says ash');
  });

  it('is empty for a plan that buys, takes and leaves nothing', () => {
    expect(shoppingTable(planOf([]), page)).toEqual([]);
  });
});

describe('yieldBar', () => {
  it('prints four shares that make 100, under a bar as wide as they truly are, no text on a text or a line', () => {
    const some = fc.double({ min: 0.001, max: 1, noNaN: true });
    fc.assert(
      fc.property(some, some, some, some, fc.constantFrom(60, 90, 183, 386), (...[a, b, c, d, width]) => {
        const all = a + b + c + d;
        const shares = { parts: a / all, dust: b / all, kept: c / all, waste: d / all };
        const { marks, bounds } = yieldBar({ ...bought, shares }, { ...page, width });
        const printed = texts(marks).flatMap((text) => (/^\d+ %$/.test(text) ? [Number.parseInt(text, 10)] : []));
        expect(printed).toHaveLength(4);
        expect(printed.reduce((x, y) => x + y, 0)).toBe(100);
        const bar = marks.filter((mark) => mark.kind === 'path' && mark.role === 'wood-shade')[0];
        const us = bar?.kind === 'path' ? pointsOf(bar.path).map(([u]) => u) : [];
        expect(Math.max(...us)).toBeCloseTo(shares.parts * width, 6);
        expect(faultsOf(marks)).toEqual([]);
        expect(bounds.u1).toBe(width);
      }),
      { seed: 20261124, numRuns: 60 },
    );
  });

  it('tells the bound, and what other blades would give', () => {
    const blades = [
      { kerf: '1\u20448 in', plan: bought },
      { kerf: '1\u204416 in', plan: { ...bought, cost: 25.45 } },
      { kerf: '1\u20442 in', plan: planOf([], { status: 'impossible' }) },
    ];
    const told = texts(yieldBar(bought, { ...page, blades }).marks);
    expect(told.join(' ')).toContain('The least any plan could cost with this blade is 36.95 USD: this is the best');
    expect(told).toEqual(expect.arrayContaining(['25.45 USD', '11.50 USD', 'this plan', 'cannot be cut']));
  });

  it('never makes a thinner blade dearer: the plan in hand can be cut with it', () => {
    const dearer = { ...bought, cost: 50 };
    const blades = [
      { kerf: '3 mm', plan: bought },
      { kerf: '2.4 mm', plan: { ...bought, cost: 25.45 } },
      { kerf: '1.8 mm', plan: dearer },
    ];
    const told = texts(yieldBar(bought, { ...page, blades }).marks);
    expect(told).toContain('nothing: the same boards do');
    expect(told.join(' ')).not.toContain('50.00');
  });

  it('says in a line where no blade saves anything', () => {
    const blades = ['3 mm', '2.4 mm', '1.8 mm'].map((kerf) => ({ kerf, plan: bought }));
    const told = texts(yieldBar(bought, { ...page, blades }).marks);
    expect(told.join(' ')).toContain('A blade that takes 2.4 mm or 1.8 mm instead of 3 mm saves nothing');
    expect(told).not.toContain('this plan');
  });

  it('has the leftovers under it where they have room', () => {
    const kept = { stock: 0, name: 'oak offcut', length: 700, width: 40, thickness: 20, count: 3 };
    const plan = { ...bought, leftovers: [kept] } as typeof bought;
    const [bare, low, all] = [undefined, 40, 230].map((height) => yieldBar(plan, { ...page, height: height ?? 0 }));
    expect(texts(all?.marks ?? [])).toEqual(
      expect.arrayContaining(['Leftovers to keep', 'oak offcut', '27 9\u204416']),
    );
    expect(faultsOf(all?.marks ?? [])).toEqual([]);
    expect(all?.bounds.v1).toBeGreaterThan((bare?.bounds.v1 ?? 0) + 12);
    expect(texts(low?.marks ?? [])).not.toContain('Leftovers to keep');
  });

  it('is the reason alone for a plan that is impossible', () => {
    const refusal = { reason: 'species', text: 'No board is of oak.', proven: true } as const;
    const { marks } = yieldBar(planOf([], { status: 'impossible', refusal }), page);
    expect(texts(marks)).toEqual(['No board is of oak.']);
  });
});
