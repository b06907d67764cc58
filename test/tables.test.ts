import { type Part, partsOf, readJob, solve } from '@wattlewright/model';
import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { csv, partsCsv } from '../packages/packet/src/tables.ts';

/** Rows as an independent reader of RFC 4180 sees them. */
function read(text: string): string[][] {
  const { data, errors } = Papa.parse<string[]>(text.replace(/\r\n$/, ''), { newline: '\r\n' });
  expect(errors).toEqual([]);
  return data;
}

describe('csv(rows)', () => {
  test.each([
    ['plain cells', [['a', 1]], 'a,1\r\n'],
    ['a comma', [['a,b', 2]], '"a,b",2\r\n'],
    ['quotes, doubled', [['5" wide']], '"5"" wide"\r\n'],
    ['a line end', [['a\r\nb']], '"a\r\nb"\r\n'],
    ['a formula, disarmed', [['=1+1']], "'=1+1\r\n"],
    ['a call, disarmed', [['@SUM(A1)']], "'@SUM(A1)\r\n"],
  ])('writes %s', (_, rows, text) => {
    expect(csv(rows)).toBe(text);
  });

  test('is read back cell by cell by another parser, whatever the text', () => {
    const cell = fc.string({ unit: 'grapheme', minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell, cell), { minLength: 1, maxLength: 5 }), (rows) => {
        const back = read(csv([['a', 'b', 'c'], ...rows]));
        const disarmed = (text: string) => (/^[=+\-@\t\r\uFF1D\uFF0B\uFF0D\uFF20]/u.test(text) ? `'${text}` : text);
        expect(back).toEqual([['a', 'b', 'c'], ...rows.map((row) => row.map(disarmed))]);
      }),
      { seed: 20261124, numRuns: 500 },
    );
  });
});

describe('partsCsv(parts, job)', () => {
  const job = readJob(
    '{ job: Bench, unit: in, panels: [{ name: "Screen, left", size: { width: 44 1/2, height: 52 } }] }',
  );
  const parts = partsOf(solve(job), { spare: job.spare });
  const [head = [], ...rows] = read(partsCsv(parts, job));
  const cell = (row: readonly string[], title: string) => row[head.indexOf(title)];

  test('has one row a part, in the order of the parts list', () => {
    expect(rows.map((row) => cell(row, 'part'))).toEqual(parts.map(({ letter }) => letter));
    for (const row of rows) expect(row.length).toBe(head.length);
  });
  test('counts and exact millimetres are numbers that sum to the parts', () => {
    const sum = (of: (part: Part) => number) => parts.reduce((total, part) => total + of(part), 0);
    const summed = (title: string) => rows.reduce((total, row) => total + Number(cell(row, title)), 0);
    expect(summed('count')).toBe(sum(({ count }) => count));
    expect(summed('length mm')).toBeCloseTo(
      sum(({ length }) => length),
      2,
    );
  });
  test('a rail of a frame 44 1/2 in wide is 44 1/2 in, 1130.3 mm (44.5 × 25.4), long', () => {
    const rail = rows.find((row) => cell(row, 'name')?.includes('rail')) as string[];
    expect(cell(rail, 'length')).toBe('44 1/2');
    expect(cell(rail, 'unit')).toBe('in');
    expect(cell(rail, 'length mm')).toBe('1130.3');
  });
  test('what is to be cut is count and spare less what is in hand', () => {
    const done = readJob(
      '{ job: B, unit: in, panels: [{ name: A, size: { width: 44, height: 52 }, measured: { stack: 48.5, broken: 5 } }] }',
    );
    const [titles = [], ...lines] = read(partsCsv(partsOf(solve(done), done), done));
    const slat = lines.find((line) => line[titles.indexOf('name')] === 'slat');
    expect(['count', 'spare', 'in hand', 'to cut'].map((title) => slat?.[titles.indexOf(title)])).toEqual([
      '32',
      '4',
      '31',
      '5',
    ]);
    for (const row of rows)
      expect(cell(row, 'to cut')).toBe(`${Number(cell(row, 'count')) + Number(cell(row, 'spare'))}`);
  });
  test('says which panel each piece goes to, commas and all', () => {
    for (const row of rows) expect(cell(row, 'where')).toMatch(/^Screen, left: \d+$/);
  });
});
