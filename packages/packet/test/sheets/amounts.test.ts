import type { HardwareLine } from '@wattlewright/model';
import { describe, expect, test } from 'vitest';
import { buyText } from '../../src/sheets/amounts.ts';

describe('buyText', () => {
  const line = (buy: number): HardwareLine => ({
    kind: 'finish',
    name: 'oil',
    material: '',
    count: buy,
    buy,
    unit: 'litres',
    where: [],
  });
  // A US quart is 0.9464 litres.
  test.each([
    [1.1, 'mm', '1.5 litres (1.1 used)'],
    [2.7, 'mm', '3 litres (2.7 used)'],
    [3, 'mm', '3.5 litres (3.0 used)'],
    [0.9464 * 0.4, 'in', '1 pint (0.4 US quarts used)'],
    [0.9464 * 0.8, 'in', '1 quart (0.8 US quarts used)'],
    [0.9464, 'in', '2 quarts (1.0 US quarts used)'],
    [0.9464 * 1.2, 'in', '2 quarts (1.2 US quarts used)'],
    [0.9464 * 4.2, 'in', '1 gallon and 1 quart (4.2 US quarts used)'],
  ] as const)('%d litres, %s: %s', (litres, unit, text) => {
    expect(buyText(line(litres), { display: { unit, mark: 1 } })).toBe(text);
  });

  test.each([
    [75.9375 * 25.4, 'in', '7 ft (75 15/16 in used)'],
    [1930, 'mm', '2.0 m (1930 mm used)'],
    [72 * 25.4, 'in', '6 ft (72 in used)'],
  ] as const)('%d mm of wire, %s: %s', (length, unit, text) => {
    const marks = { unit, mark: unit === 'in' ? 25.4 / 16 : 1 };
    expect(buyText({ ...line(length), unit: 'mm' }, { display: marks })).toBe(text);
  });

  test('pieces are counted', () => {
    expect(buyText({ ...line(24), unit: 'pieces' }, { display: { unit: 'in', mark: 1 } })).toBe('24');
  });
});
