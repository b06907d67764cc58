import { describe, expect, test } from 'vitest';
import { lettersCut, planCutsQuick, planWhatCanBeCut } from '../../src/index.ts';
import { board, part, saw } from './jobs.ts';

const inch = { unit: 'in', mark: 25.4 / 16 } as const;
const shop = { offcuts: [], saw: saw({ deepest: 3, narrowestRip: 1 / 2, shaving: 1 / 16 }), display: inch };
const stock = [board([1.5, 5.5, 96], 10)];

describe('planWhatCanBeCut', () => {
  test('plans the other parts where two cannot be cut, and names both', async () => {
    const parts = [
      part('A', [1.5, 1.5, 40], 2),
      part('B', [1, 4, 61.5], 1),
      part('C', [1.5, 1.5, 20], 1, { wood: 'oak' }),
    ];
    const plan = await planWhatCanBeCut({ parts, stock, ...shop });
    expect(plan.status).toBe('impossible');
    expect(plan.refusal).toMatchObject({ reason: 'species', part: 'C' });
    expect(plan.refusal?.text).toContain('part C, piece C: no stock of oak');
    expect(plan.refusal?.text).toContain('part B, piece B: it needs a cut 4 in deep, and the saw cuts 3 in');
    expect(plan.refusal?.each).toEqual([
      { part: 'C', why: 'no stock of oak', buy: 'buy boards of it' },
      {
        part: 'B',
        why: 'it needs a cut 4 in deep, and the saw cuts 3 in',
        buy: 'buy a board 1 in thick, planed, or rip from both faces',
      },
    ]);
    expect([...lettersCut(plan)]).toEqual(['A']);
    expect(plan.cost).toBe(10);
  });

  test('is the plan itself where all can be cut, or where nothing can', async () => {
    expect((await planWhatCanBeCut({ parts: [part('A', [1.5, 1.5, 40], 2)], stock, ...shop })).status).toBe('optimal');
    const none = await planWhatCanBeCut({ parts: [part('A', [1.5, 1.5, 100], 1)], stock, ...shop });
    expect([none.status, none.boards]).toEqual(['impossible', []]);
  });
});

describe('refusals in the unit of the job', () => {
  test.each([
    [
      'depth',
      part('A', [1, 4, 61.5], 1),
      'part A, piece A: it needs a cut 4 in deep, and the saw cuts 3 in: buy a board 1 in thick, planed, or rip from both faces',
    ],
    [
      'section',
      part('A', [2, 2, 10], 1),
      'part A, piece A: no cedar is 2 x 2 in or more; the largest is 1 1/2 x 5 1/2 in when planed: buy thicker or wider boards',
    ],
    [
      'length',
      part('A', [1.5, 1.5, 100], 1),
      'part A, piece A: it is cut 100 in long, and the longest board that fits gives 96 in between its trims: buy a longer board',
    ],
  ])('%s', (_, one, text) => {
    expect(planCutsQuick({ parts: [one], stock, ...shop }).refusal?.text).toBe(text);
  });
});
