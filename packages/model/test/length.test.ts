import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  formatLength,
  INCH,
  LengthError,
  type Marks,
  parseLength,
  roundToMark,
  sizeMarks,
  type Unit,
} from '../src/length.ts';

const seed = 20261124;

describe('parseLength', () => {
  const cases: readonly [string | number, Unit, number][] = [
    [`5' 2 3/8"`, 'mm', 62.375 * INCH],
    ['62-3/8 in', 'mm', 62.375 * INCH],
    ['62.375"', 'mm', 62.375 * INCH],
    ['1584 mm', 'in', 1584],
    ['158.4cm', 'in', 1584],
    ['1.584 m', 'in', 1584],
    ['44 1/2', 'in', 44.5 * INCH],
    [52, 'in', 52 * INCH],
    [52, 'mm', 52],
    ['44½', 'in', 44.5 * INCH],
    ['5′ 2 3⁄8″', 'mm', 62.375 * INCH],
    ["6'", 'mm', 72 * INCH],
    ['6 ft', 'mm', 72 * INCH],
    ['5\'-2 1/2"', 'in', 62.5 * INCH],
    ['3/16', 'in', 0.1875 * INCH],
    ['.5', 'in', 0.5 * INCH],
    [`10''`, 'mm', 10 * INCH],
    ['-1/8', 'in', -0.125 * INCH],
    ['0', 'mm', 0],
  ];
  test.each(cases)('parseLength(%j, %j) is %d mm', (text, unit, mm) => {
    expect(parseLength(text, unit)).toBeCloseTo(mm, 9);
  });

  const refused = [
    '',
    ' ',
    'abc',
    '3/',
    '/4',
    '1/0',
    '4 4',
    '12,5',
    '1e3',
    'NaN',
    'Infinity',
    '5 mm 2',
    '3" 2\'',
    '--2',
    '2 km',
  ];
  test.each(refused)('parseLength(%j) is refused with the text that failed', (text) => {
    expect(() => parseLength(text, 'in')).toThrow(LengthError);
    expect(() => parseLength(text, 'in')).toThrow(JSON.stringify(text));
  });

  test('1 in is 25.4 mm exactly and 12 in is 1 ft (international agreement of 1959)', () => {
    expect(parseLength('1 in', 'mm')).toBe(25.4);
    expect(parseLength("1'", 'mm')).toBe(parseLength('12"', 'mm'));
  });
});

describe('formatLength', () => {
  const sixteenth = { unit: 'in', mark: INCH / 16 } as const;
  test.each([
    [62.375, '62 3/8'],
    [0.5, '1/2'],
    [0, '0'],
    [10.9375, '10 15/16'],
    [10.96875, '11'], // half of a sixteenth goes up
    [-1.25, '-1 1/4'],
    [44.6467, '44 5/8'],
  ])('formatLength(%d in) to 1/16 is %j', (inches, text) => {
    expect(formatLength(inches * INCH, sixteenth)).toBe(text);
  });
  test.each([
    [277.8125, 1, '278'],
    [277.8125, 0.5, '278'],
    [277.7, 0.5, '277.5'],
    [0.2, 1, '0'],
    [-0.2, 1, '0'],
  ])('formatLength(%d mm) to %d is %j', (mm, mark, text) => {
    expect(formatLength(mm, { unit: 'mm', mark })).toBe(text);
  });
  test('stacked fractions keep the same numbers with U+2044', () => {
    expect(formatLength(62.375 * INCH, sixteenth, { fractions: 'stacked', named: true })).toBe('62 3⁄8 in');
  });

  test('parseLength(formatLength(x)) is within half a mark, both units', () => {
    const marks = fc.constantFrom(
      { unit: 'in' as const, mark: INCH / 8 },
      { unit: 'in' as const, mark: INCH / 16 },
      { unit: 'in' as const, mark: INCH / 64 },
      { unit: 'mm' as const, mark: 1 },
      { unit: 'mm' as const, mark: 0.5 },
    );
    fc.assert(
      fc.property(fc.double({ min: -40000, max: 40000, noNaN: true }), marks, fc.boolean(), (x, m, named) => {
        const back = parseLength(formatLength(x, m, { named }), m.unit);
        expect(Math.abs(back - x)).toBeLessThanOrEqual(m.mark / 2 + 1e-5);
        expect(Math.abs(back - roundToMark(back, m.mark))).toBeLessThan(1e-6);
      }),
      { seed, numRuns: 2000 },
    );
  });
});

test('sizeMarks: what is under 2 in prints to 1/64 in or 0.1 mm, what is longer to the job’s mark', () => {
  const mm = { unit: 'mm', mark: 1 } as const;
  const inch = { unit: 'in', mark: 25.4 / 16 } as const;
  const shown = (length: number, display: Marks) => formatLength(length, sizeMarks(length, display));
  expect([22.5, 12.75, 6.9, 3.375, 120.4].map((length) => shown(length, mm))).toEqual([
    '22.5',
    '12.8',
    '6.9',
    '3.4',
    '120',
  ]);
  expect(shown(25.4 * (25 / 32), inch)).toBe('25/32');
  expect(shown(25.4 * (31 + 25 / 32), inch)).toBe('31 13/16');
});
