import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contains, grown } from '../../src/layout/clearance.ts';
import { table, tablePages } from '../../src/layout/table.ts';
import { textBox } from '../../src/lettering.ts';
import { stroke } from '../../src/mark.ts';
import { rectangle } from '../../src/path.ts';
import { faultsOf, textsOf } from './faults.ts';

const columns = [{ title: 'Part' }, { title: 'Name' }, { title: 'Length', align: 'right' as const }];
const base = { name: 'parts', title: 'Parts list', alt: 'The parts.', columns };
const rows = Array.from({ length: 9 }, (_, i) => [String(i + 1), `Stave ${i + 1}`, '50 1⁄2']);

describe('table', () => {
  it('has no scale, and its upper left corner at the origin', () => {
    const { scale, scaleText, bounds } = table({ ...base, rows });
    expect([scale, scaleText, bounds.u0, bounds.v0]).toEqual([0, '', 0, 0]);
  });

  it('wraps texts to the width given', () => {
    const wide = [['A', 'Western redcedar, clear heart, vertical grain, planed all round', '44 1⁄2']];
    const { bounds, marks } = table({ ...base, rows: wide, width: 70 });
    expect(bounds.u1).toBeCloseTo(70, 6);
    expect(textsOf(marks).length).toBeGreaterThan(6);
    expect(faultsOf(marks)).toEqual([]);
  });

  it('refuses a width that its longest words exceed', () => {
    expect(() => table({ ...base, rows, width: 12 })).toThrow('Parts list does not fit');
  });

  it('sizes a row for its picture and puts the picture inside', () => {
    const box = { u0: 5, v0: -3, u1: 35, v1: 12 };
    const picture = { marks: [stroke('edge', rectangle(box))], bounds: box };
    const { bounds, marks } = table({ ...base, rows: [['A', 'Rail', picture]] });
    expect(bounds.v1).toBeGreaterThan(15 + 5);
    expect(marks.filter(({ role }) => role === 'edge')).toHaveLength(1);
    expect(faultsOf(marks)).toEqual([]);
  });

  it('right columns end at one line', () => {
    const { marks } = table({
      ...base,
      rows: [
        ['A', 'Rail', '5'],
        ['B', 'Stave', '1234'],
      ],
    });
    expect(
      new Set(
        textsOf(marks)
          .filter(({ anchor }) => anchor === 'end')
          .map(({ at }) => at[0]),
      ).size,
    ).toBe(1);
  });
});

describe('tablePages', () => {
  it('a table that fits is one page under its own name', () => {
    expect(tablePages({ ...base, rows, height: 200 }).map(({ name, title }) => [name, title])).toEqual([
      ['parts', 'Parts list'],
    ]);
  });

  it('repeats the header, numbers the pages, and puts the foot on the last', () => {
    const pages = tablePages({ ...base, rows, foot: ['', 'Total', '454 1⁄2'], height: 30 });
    expect(pages[0]).toMatchObject({ name: 'parts-1', title: `Parts list (1 of ${pages.length})` });
    pages.forEach(({ marks, bounds }, i) => {
      const texts = textsOf(marks).map(({ text }) => text);
      expect(texts).toContain('Length');
      expect(texts.includes('Total')).toBe(i === pages.length - 1);
      expect(bounds.v1).toBeLessThanOrEqual(30);
    });
  });

  it('refuses a row taller than a page', () => {
    expect(() => tablePages({ ...base, rows, height: 8 })).toThrow('row 1 of Parts list');
  });

  it('keeps every row once, in order, on pages that hold them, with no text on a line', () => {
    const cell = fc.constantFrom(
      'A',
      '12',
      '3 1⁄2',
      'Slat, straight-grained',
      'Cut from one board so that the colour agrees',
    );
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell, cell), { minLength: 1, maxLength: 20 }), (some) => {
        const marked = some.map(([a, b, c], i) => [`${i + 1}`, `${a} ${b}`, c]);
        const pages = tablePages({ ...base, rows: marked, width: 110, height: 60 });
        const firsts = pages.flatMap(({ marks }) =>
          textsOf(marks)
            .filter(({ at }) => at[0] < 2)
            .map(({ text }) => text),
        );
        expect(firsts.filter((text) => text !== 'Part')).toEqual(marked.map(([n]) => n));
        for (const { marks, bounds } of pages) {
          expect(bounds.v1).toBeLessThanOrEqual(60 + 1e-9);
          expect(faultsOf(marks)).toEqual([]);
          for (const text of textsOf(marks)) expect(contains(grown(bounds, 0.01), textBox(text))).toBe(true);
        }
      }),
      { seed: 20261124, numRuns: 60 },
    );
  });
});
