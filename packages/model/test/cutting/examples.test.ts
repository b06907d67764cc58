import { describe, expect, test } from 'vitest';
import { type CutPlan, checkPlan, type Part, planCuts, type Saw, type Stock } from '../../src/index.ts';
import { board, part, saw } from './jobs.ts';
import { sawUp } from './walker.ts';

interface Case {
  readonly id: string;
  readonly parts: readonly Part[];
  readonly stock: readonly Stock[];
  readonly offcuts?: readonly Stock[];
  readonly saw?: Saw;
  readonly cost: number;
}

async function plan({ parts, stock, offcuts = [], saw: s = saw() }: Omit<Case, 'id' | 'cost'>): Promise<CutPlan> {
  const input = { parts, stock, offcuts, saw: s };
  const made = await planCuts(input);
  if (made.status !== 'impossible') {
    sawUp(made, input);
    expect(checkPlan(made, input)).toEqual([]);
  }
  return made;
}

const stick = (length: number, count: number): Part[] => [part('A', [1.5, 3.5, length], count)];
const eight = board([1.5, 3.5, 96], 100);
/** Strips 3/16 x 1 1/2 of the board's whole length out of one board side of 1 1/2 by `width`. */
const strips = (count: number): Part[] => [part('A', [3 / 16, 1.5, 96], count, { grade: 'clear' })];
const clear = (width: number, amount = 100): Stock => board([1.5, width, 96], amount, { grade: 'clear' });
const rail = (count: number): Part => part('R', [1.5, 2.5, 96], count);

/** Costs worked by hand: boards needed times 100 unless prices are told; sums in the comments, inches. */
const cases: Case[] = [
  { id: 'A1: 4 x 23 7/8 + 3 x 1/8 = 95 7/8', parts: stick(23 + 7 / 8, 8), stock: [eight], cost: 200 },
  { id: 'A2: 4 x 23 29/32 + 3/8 = 96 exactly', parts: stick(23 + 29 / 32, 8), stock: [eight], cost: 200 },
  { id: 'A3: 4 x 23 59/64 + 3/8 = 96 1/16, too long', parts: stick(23 + 59 / 64, 8), stock: [eight], cost: 300 },
  {
    id: 'A4: 96 - 1/4 - 1/8 = 95 5/8 = 4 x 23 13/16 + 3/8',
    parts: stick(23 + 13 / 16, 8),
    stock: [eight],
    saw: saw({ trimHead: 1 / 4 }),
    cost: 200,
  },
  {
    id: 'A5: 4 x 23 7/8 + 3/8 = 95 7/8, over 95 5/8',
    parts: stick(23 + 7 / 8, 8),
    stock: [eight],
    saw: saw({ trimHead: 1 / 4 }),
    cost: 300,
  },
  {
    id: 'A6: 22 7/8 cut 1 in long is 23 7/8',
    parts: [part('A', [1.5, 3.5, 22 + 7 / 8], 8, { over: 1 })],
    stock: [eight],
    cost: 200,
  },
  {
    id: 'A7: one sixteenth more is 4 x 23 15/16 + 3/8 = 96 1/8, too long',
    parts: [part('A', [1.5, 3.5, 22 + 7 / 8], 8, { over: 17 / 16 })],
    stock: [eight],
    cost: 300,
  },
  { id: 'B1: floor(3.625 / 0.3125) = 11', parts: strips(11), stock: [clear(3.5)], cost: 100 },
  { id: 'B1: the twelfth strip needs another board', parts: strips(12), stock: [clear(3.5)], cost: 200 },
  { id: 'B2: floor(1.625 / 0.3125) = 5', parts: strips(5), stock: [clear(1.5)], cost: 100 },
  { id: 'B2: the sixth', parts: strips(6), stock: [clear(1.5)], cost: 200 },
  { id: 'B3: 23 of 7 1/4', parts: strips(23), stock: [clear(7.25)], cost: 100 },
  { id: 'B3: the twenty-fourth', parts: strips(24), stock: [clear(7.25)], cost: 200 },
  {
    id: 'B4: K = 1/8 + 2/64: floor(3.65625 / 0.34375) = 10',
    parts: strips(10),
    stock: [clear(3.5)],
    saw: saw({ planing: 1 / 64 }),
    cost: 100,
  },
  { id: 'B4: the eleventh', parts: strips(11), stock: [clear(3.5)], saw: saw({ planing: 1 / 64 }), cost: 200 },
  {
    id: 'B5: floor(3.5625 / 0.25) = 14',
    parts: strips(14),
    stock: [clear(3.5)],
    saw: saw({ ripKerf: 1 / 16 }),
    cost: 100,
  },
  { id: 'B5: the fifteenth', parts: strips(15), stock: [clear(3.5)], saw: saw({ ripKerf: 1 / 16 }), cost: 200 },
  {
    id: 'B6: 11, nothing under 1/2 ripped',
    parts: strips(11),
    stock: [clear(3.5)],
    saw: saw({ narrowestRip: 1 / 2 }),
    cost: 100,
  },
  {
    id: 'B7: 10, nothing under 5/8 ripped',
    parts: strips(10),
    stock: [clear(3.5)],
    saw: saw({ narrowestRip: 5 / 8 }),
    cost: 100,
  },
  { id: 'B7: the eleventh', parts: strips(11), stock: [clear(3.5)], saw: saw({ narrowestRip: 5 / 8 }), cost: 200 },
  {
    id: 'B8: 3 of 3/8 x 3 1/2, floor(1.625 / 0.5), ripped 3 1/2 deep',
    parts: [part('A', [3 / 8, 3.5, 96], 3)],
    stock: [eight],
    saw: saw({ deepest: 3.5 }),
    cost: 100,
  },
  {
    id: 'B9: 11 still, all ripped 1 1/2 deep',
    parts: strips(11),
    stock: [clear(3.5)],
    saw: saw({ deepest: 1.5 }),
    cost: 100,
  },
  {
    id: 'C1: (3 1/2 - 1/8) / 2 = 1 11/16, 5 in each half',
    parts: [part('A', [3 / 16, 1 + 11 / 16, 96], 10, { grade: 'clear' })],
    stock: [clear(3.5)],
    cost: 100,
  },
  {
    id: 'C1: the eleventh of 1 11/16',
    parts: [part('A', [3 / 16, 1 + 11 / 16, 96], 11, { grade: 'clear' })],
    stock: [clear(3.5)],
    cost: 200,
  },
  { id: 'C3: a rail leaves 7/8: 3 slats', parts: [rail(1), ...strips(3)], stock: [clear(3.5)], cost: 100 },
  { id: 'C3: the fourth slat', parts: [rail(1), ...strips(4)], stock: [clear(3.5)], cost: 200 },
  { id: 'C4: 5 x (rail + 3) + 11 = 26 slats', parts: [rail(5), ...strips(26)], stock: [clear(3.5)], cost: 600 },
  { id: 'C4: 27 slats', parts: [rail(5), ...strips(27)], stock: [clear(3.5)], cost: 700 },
  { id: 'C5: 2 x 4 staves', parts: [part('A', [5 / 8, 5 / 8, 96], 8)], stock: [eight], cost: 100 },
  { id: 'C5: the ninth stave', parts: [part('A', [5 / 8, 5 / 8, 96], 9)], stock: [eight], cost: 200 },
  {
    id: 'D1: one segment of rail + 3, one of 11',
    parts: [part('R', [1.5, 2.5, 58], 1), part('A', [3 / 16, 1.5, 58], 14)],
    stock: [board([1.5, 3.5, 120], 100)],
    cost: 100,
  },
  {
    id: 'E1: 2 + 3 pieces from one of each',
    parts: stick(45, 5),
    stock: [board([1.5, 3.5, 96], 600), board([1.5, 3.5, 144], 870)],
    cost: 1470,
  },
  {
    id: 'F1: 2 clear (11; rail + 3) and 1 knotty',
    parts: [...strips(14), rail(2)],
    stock: [clear(3.5, 900), board([1.5, 3.5, 96], 400)],
    cost: 2200,
  },
  {
    id: 'G1: the rack gives one of five',
    parts: stick(40, 5),
    stock: [board([1.5, 3.5, 96], 600)],
    offcuts: [board([1.5, 3.5, 41], 0, { count: 1 })],
    cost: 1200,
  },
];

describe('planCuts on jobs worked by hand', () => {
  test.each(cases)('planCuts $id costs $cost and is proven', async ({ cost, ...input }) => {
    const made = await plan(input);
    expect({ cost: made.cost, bound: made.bound, status: made.status }).toEqual({
      cost,
      bound: cost,
      status: 'optimal',
    });
  });

  test('planCuts C2: 23 courses of 1 1/2 or 21 of 1 5/8 take 3 boards, 20 of 1 11/16 take 2', async () => {
    const at = (height: number, count: number): Promise<CutPlan> =>
      plan({ parts: [part('A', [3 / 16, height, 96], count, { grade: 'clear' })], stock: [clear(3.5)] });
    expect((await at(1.5, 23)).cost).toBe(300);
    expect((await at(1.625, 21)).cost).toBe(300);
    expect((await at(1 + 11 / 16, 20)).cost).toBe(200);
  });

  test('planCuts H1: spare pieces are cut as well, 20 + 3', async () => {
    const made = await plan({ parts: [{ ...(stick(20, 20)[0] as Part), spare: 3 }], stock: [eight] });
    expect(made.cost).toBe(600); // 4 a board: 4 x 20 + 3/8 = 80 3/8; 23 pieces
  });
});

describe('planCuts on jobs that cannot be cut', () => {
  const none: [string, string, Omit<Case, 'id' | 'cost'>, string | undefined][] = [
    ['I1', 'length', { parts: stick(95.5, 1), stock: [eight], saw: saw({ trimHead: 1 / 4, trimTail: 1 / 4 }) }, 'A'],
    ['I2', 'grade', { parts: strips(1), stock: [eight] }, 'A'],
    ['I3', 'supply', { parts: stick(50, 3), stock: [{ ...eight, count: 2 }] }, 'A'],
    ['no such wood', 'species', { parts: [part('A', [1, 1, 10], 1, { wood: 'oak' })], stock: [eight] }, 'A'],
    ['too thick', 'section', { parts: [part('A', [1.625, 2, 10], 1)], stock: [eight] }, 'A'],
    [
      'rip too short',
      'minRip',
      { parts: [part('A', [1, 1, 10], 1)], stock: [eight], saw: saw({ shortestRip: 100 }) },
      'A',
    ],
    [
      'rip too deep',
      'minRip',
      { parts: [part('A', [3 / 8, 3.5, 96], 1)], stock: [eight], saw: saw({ deepest: 3 }) },
      'A',
    ],
    ['kerf below 0', 'input', { parts: stick(10, 1), stock: [eight], saw: saw({ ripKerf: -1 }) }, undefined],
    ['length not a number', 'input', { parts: stick(Number.NaN, 1), stock: [eight] }, 'A'],
    ['cut too short at first', 'input', { parts: [part('A', [1, 1, 10], 1, { over: -1 })], stock: [eight] }, 'A'],
    ['half a piece', 'input', { parts: stick(10, 1.5), stock: [eight] }, 'A'],
    ['a million pieces', 'size', { parts: stick(10, 1_000_000), stock: [eight] }, 'A'],
    ['no stock', 'species', { parts: stick(10, 1), stock: [] }, 'A'],
  ];
  test.each(none)('planCuts %s: impossible by %s', async (_, reason, input, letter) => {
    const made = await plan(input);
    expect(made.status).toBe('impossible');
    expect(made.refusal).toMatchObject({ reason, proven: true, ...(letter && { part: letter }) });
    expect(made.refusal?.text).not.toBe('');
  });

  test('planCuts I3 says which pieces are short in the fullest plan', async () => {
    const made = await plan({ parts: stick(50, 3), stock: [{ ...eight, count: 2 }] });
    expect(made.refusal?.short).toEqual([{ part: 'A', count: 1 }]);
  });
});
