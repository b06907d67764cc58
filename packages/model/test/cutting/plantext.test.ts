import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boundText, type CutPlan, planText, sharePercents, sharesText, volumeText } from '../../src/index.ts';

const inch = { display: { unit: 'in', mark: 25.4 / 16 }, currency: 'USD' } as const;
const metric = { display: { unit: 'mm', mark: 1 }, currency: '' } as const;
const tree = { part: 'A' };
const board = {
  from: 'stock',
  stock: 0,
  name: '2x4',
  count: 2,
  length: 2438.4,
  width: 88.9,
  thickness: 38.1,
  tree,
} as const;

function plan(more: Partial<CutPlan>): CutPlan {
  return {
    status: 'within',
    boards: [board],
    cost: 118,
    costIs: 'price',
    bound: 118,
    boundKind: 'linear',
    gap: 0,
    shares: { parts: 0.6, dust: 0.2, kept: 0.1, waste: 0.1 },
    fences: [
      { at: 5, rips: 6, boards: [0] },
      { at: 40, rips: 1, boards: [0] },
      { at: 5, rips: 1, boards: [0] },
    ],
    rips: 8,
    crosscuts: 1,
    shopping: [{ stock: 0, name: '2x4', length: 2438.4, count: 2, each: 59, total: 118 }],
    leftovers: [{ name: '2x4', length: 704.85, width: 88.9, thickness: 38.1, count: 1 }],
    ...more,
  };
}

describe('sharePercents', () => {
  // 33.4 + 33.3 + 33.3: rounded each by itself they make 99; the one left over goes to 33.4.
  it.each([
    [
      [0.334, 0.333, 0.333, 0],
      [34, 33, 33, 0],
    ],
    [
      [0.545, 0.237, 0, 0.218],
      [54, 24, 0, 22],
    ],
    [
      [1, 0, 0, 0],
      [100, 0, 0, 0],
    ],
    [
      [0, 0, 0, 0],
      [0, 0, 0, 0],
    ],
  ])('%j in print: %j', ([parts = 0, dust = 0, kept = 0, waste = 0], [p, d, k, w]) => {
    expect(sharePercents({ parts, dust, kept, waste })).toEqual({ parts: p, dust: d, kept: k, waste: w });
  });

  it('makes 100 of any shares, none off by a percent or more', () => {
    const some = fc.double({ min: 0.001, max: 1, noNaN: true });
    fc.assert(
      fc.property(some, some, some, some, (...given) => {
        const all = given.reduce((a, b) => a + b, 0);
        const [parts, dust, kept, waste] = given.map((one) => one / all) as [number, number, number, number];
        const percent = sharePercents({ parts, dust, kept, waste });
        expect(percent.parts + percent.dust + percent.kept + percent.waste).toBe(100);
        expect(Math.abs(percent.parts - parts * 100)).toBeLessThan(1);
        expect(
          sharesText({ parts, dust, kept, waste })
            .match(/\d+(?= %)/g)
            ?.map(Number),
        ).toEqual(Object.values(percent));
      }),
      { seed: 20261124, numRuns: 300 },
    );
  });
});

describe('boundText', () => {
  it.each([
    [
      'optimal',
      plan({ status: 'optimal' }),
      'The least any plan could cost with this blade is 118.00 USD: this is the best there is.',
    ],
    [
      'within 1.5 %',
      plan({ cost: 119.71, gap: 119.71 / 118 - 1 }),
      'The least any plan could cost with this blade is 118.00 USD; this one costs 119.71 USD, at most 1.5 % more.',
    ],
    [
      'a bound by a whole search',
      plan({ cost: 120, gap: 120 / 118 - 1, boundKind: 'complete' }),
      'The least any plan could cost with this blade is 118.00 USD; this one costs 120.00 USD, at most 1.7 % more.',
    ],
    [
      'all from the rack',
      plan({ cost: 0, bound: 0 }),
      'All comes from the rack and nothing is to be bought: this is the best there is.',
    ],
    ['nothing to cut', plan({ boards: [], cost: 0 }), 'Nothing is to be cut.'],
    [
      'impossible',
      plan({ status: 'impossible', boards: [], refusal: { reason: 'length', text: 'Too long.', proven: true } }),
      'Too long.',
    ],
  ])('%s', (_, given, text) => {
    expect(boundText(given, inch)).toBe(text);
  });

  it('tells wood instead of money, in the unit of the job', () => {
    // 23 597 372 mm3 are 10 board feet of 2 359 737.216 mm3.
    const wood = plan({ status: 'optimal', costIs: 'wood', cost: 23597372.16, bound: 23597372.16 });
    expect(boundText(wood, inch)).toBe(
      'The least wood any plan could open with this blade is 10.0 board feet: this is the best there is.',
    );
    expect(boundText(wood, metric)).toContain('23.6 litres');
  });

  it('rounds the distance up, so that it never promises too much', () => {
    expect(boundText(plan({ cost: 118.13, gap: 118.13 / 118 - 1 }), inch)).toContain('at most 0.2 % more');
  });
});

describe('planText', () => {
  it('tells boards, bound, shares, cuts, what to buy and what to keep', () => {
    expect(planText(plan({ status: 'optimal' }), inch)).toEqual([
      'Cut from 2 boards: 2 to buy for 118.00 USD.',
      'The least any plan could cost with this blade is 118.00 USD: this is the best there is.',
      'Of the wood: parts 60 %, dust 20 %, leftovers to keep 10 %, waste 10 %.',
      '8 rips at 2 fence distances, 1 crosscut.',
      'Buy 2 × 2x4 at 59.00: 118.00 USD',
      'Keep 1 × 27 3/4 in of 2x4, 1 1/2 × 3 1/2',
    ]);
  });

  it('says what falls short where there is no plan', () => {
    const refusal = {
      reason: 'supply',
      text: 'Boards run out.',
      short: [{ part: 'D', count: 3 }],
      proven: true,
    } as const;
    expect(planText(plan({ status: 'impossible', boards: [], refusal }), inch)).toEqual([
      'This cannot be cut: Boards run out.',
      'Short of D: 3 pieces.',
    ]);
  });
});

describe('volumeText', () => {
  it.each([
    [2359737.216, 'in', '1.0 board feet'],
    [5e7, 'mm', '50.0 litres'],
    [2.5e8, 'mm', '0.250 m³'],
  ] as const)('%d mm3 in %s: %s', (volume, unit, text) => {
    expect(volumeText(volume, { unit })).toBe(text);
  });
});
