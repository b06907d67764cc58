import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Chain, Mark, Sheet } from '../../src/mark.ts';
import { stroke, write } from '../../src/mark.ts';
import { circle, line, rectangle } from '../../src/path.ts';
import { proof } from '../../src/proofing/proof.ts';

function sheet(marks: readonly Mark[], chains: readonly Chain[] = []): Sheet {
  return {
    width: 210,
    height: 297,
    paper: 'A4',
    title: 'Front',
    label: '2',
    figures: [{ name: 'front', title: 'Front', alt: 'Front', marks }],
    furniture: [stroke('frame', rectangle({ u0: 10, v0: 10, u1: 200, v1: 287 }))],
    inside: { u0: 10, v0: 10, u1: 200, v1: 287 },
    chains,
    fullSize: false,
  };
}
const note = (text: string, u: number, v: number, more: { height?: number; angle?: number } = {}): Mark =>
  write('note', text, [u, v], { height: 2.5, ...more });
const box = (u0: number, v0: number, u1: number, v1: number) => rectangle({ u0, v0, u1, v1 });

describe('proof finds', () => {
  const rows: [string, Mark[], string[]][] = [
    ['nothing on a clean sheet', [note('Rail', 50, 50), note('Rail', 50, 56)], []],
    ['text on text', [note('Rail', 50, 50), note('Stile', 52, 50.5)], ['text-on-text']],
    ['turned text on text', [note('Long words here', 50, 50), note('Up', 60, 52, { angle: 90 })], ['text-on-text']],
    [
      'no clash of slanting texts whose boxes overlap',
      [note('Slanting', 50, 50, { angle: 45 }), note('Under', 55, 52.5)],
      [],
    ],
    ['text on a wide line', [stroke('edge', line([40, 49], [80, 49])), note('Rail', 50, 50)], ['text-on-line']],
    ['text under a wide line', [note('Rail', 50, 50), stroke('edge', line([40, 49], [80, 49]))], ['text-on-line']],
    ['text on a wide curve', [stroke('edge', circle([60, 49], 9)), note('Rail and stile', 50, 50)], ['text-on-line']],
    ['nothing where a thin line passes', [stroke('dimension', line([40, 49], [80, 49])), note('Rail', 50, 50)], []],
    ['nothing where a wide line only passes by', [stroke('edge', line([40, 51], [80, 51])), note('Rail', 50, 50)], []],
    [
      'nothing where paper hides the line under the text',
      [stroke('edge', line([40, 49], [80, 49])), stroke('paper', box(49, 46, 60, 52)), note('Rail', 50, 50)],
      [],
    ],
    ['text under a face', [note('Rail', 50, 50), stroke('wood', box(45, 45, 60, 60))], ['text-hidden']],
    ['nothing for text on a face', [stroke('wood', box(45, 45, 60, 60)), note('Rail', 50, 50)], []],
    ['text outside', [note('A long note that runs out', 180, 50)], ['ink-outside', 'text-on-line']],
    ['a line outside', [stroke('edge', line([50, 50], [50, 290]))], ['ink-outside']],
    [
      'nothing for a curve inside whose handles lie outside',
      [
        stroke('edge-light', [
          ['M', 20, 20],
          ['C', 8, 60, 8, 60, 20, 100],
        ]),
      ],
      [],
    ],
    ['text under 2.5 mm', [note('Rail', 50, 50, { height: 2 })], ['text-small']],
    ['a replaced character', [note('Fir 🌲', 50, 50)], ['glyph-replaced']],
  ];
  test.each(rows)('%s', (_, marks, codes) => {
    expect([...new Set(proof([sheet(marks)]).map(({ code }) => code))].sort()).toEqual(codes);
  });
  test('where it is, on which sheet', () => {
    const [found] = proof([sheet([note('Rail', 50, 50), note('Stile', 52, 50.5)])]);
    expect(found).toMatchObject({
      where: 'sheet 2, Front',
      text: '“Rail” lies on “Stile”.',
      figure: '50 mm from the left, 50 mm from the top',
    });
  });
  const chains: [string, Chain, number][] = [
    ['a chain that adds up', { what: 'bays', parts: [10, 20.5], total: 30.5 }, 0],
    ['a chain that does not', { what: 'bays', parts: [10, 20], total: 30.5 }, 1],
    ['a chain that does not and says so', { what: 'bays', parts: [10, 20], total: 30.5, saidSo: true }, 0],
  ];
  test.each(chains)('%s', (_, chain, count) => {
    expect(proof([sheet([], [chain])]).filter(({ code }) => code === 'chain-sum').length).toBe(count);
  });
  test('parts drawn and not listed, listed and not drawn', () => {
    const drawn = sheet([stroke('edge', line([20, 20], [30, 30]), 'A'), stroke('edge', line([20, 20], [30, 30]), 'X')]);
    const parts = [
      { letter: 'A', name: 'rail' },
      { letter: 'B', name: 'stile' },
    ];
    expect(proof([drawn], { parts }).map(({ code, figure }) => [code, figure])).toEqual([
      ['part-unlisted', 'X'],
      ['part-undrawn', 'B'],
    ]);
  });
});

describe('proof over arbitrary sheets', () => {
  test('texts in a grid with room between them never clash, and one put on another always does', () => {
    const cells = fc.uniqueArray(fc.integer({ min: 0, max: 89 }), { minLength: 2, maxLength: 60 });
    fc.assert(
      fc.property(cells, fc.constantFrom(0, 90), (spots, angle) => {
        const marks = spots.map((n) => note('1234', 20 + (n % 9) * 18, 30 + Math.floor(n / 9) * 18, { angle }));
        expect(proof([sheet(marks)])).toEqual([]);
        const [first] = marks as [Mark];
        expect(proof([sheet([...marks, first])]).map(({ code }) => code)).toEqual(['text-on-text']);
      }),
      { seed: 20261124, numRuns: 100 },
    );
  });
});
