import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pointsOf } from '../../src/ink.ts';
import { textBox } from '../../src/lettering.ts';
import type { Drawing, Mark, Sheet } from '../../src/mark.ts';
import { stroke, write } from '../../src/mark.ts';
import type { TilePaperName } from '../../src/paper.ts';
import { line, rectangle } from '../../src/path.ts';
import { toPdf } from '../../src/pdf.ts';
import { proof } from '../../src/proofing/proof.ts';
import { numberPages } from '../../src/tiling/number.ts';
import { tile } from '../../src/tiling/tile.ts';
import { pathsOf } from '../support/expected.ts';
import { readByMupdf, readByPdfjs, type Seen } from '../support/readers.ts';

/** A stick with a tick and its number at each position. */
function stick(length: number, positions: readonly number[], upright = false): Drawing {
  const at = (along: number, across: number): [number, number] => (upright ? [across, along] : [along, across]);
  const [u, v] = at(length, 60);
  return {
    name: 'stick',
    title: 'Stave stick: Long run',
    scale: 1,
    scaleText: '1:1',
    marks: [
      stroke('tick', rectangle({ u0: 0, v0: 0, u1: u, v1: v }), 'A'),
      ...positions.flatMap((p, i): Mark[] => [
        stroke('tick', line(at(p, 0), at(p, 25)), 'B'),
        write('label', `${i + 1}`, at(p + 1, 20), { height: 2.5 }),
      ]),
    ],
    bounds: { u0: 0, v0: 0, u1: u, v1: v },
    alt: 'A stick.',
  };
}

const long = Array.from({ length: 107 }, (_, i) => 37.123456 * (i + 0.5));

/** The paths of a page, each with what a reader saw of it. */
function pathsSeen(sheet: Sheet, seen: Seen, twice: boolean): { mark: Mark; at: readonly number[] }[] {
  const paths = pathsOf(sheet, { twice });
  expect(seen.paths.length).toBe(paths.length);
  return paths.map(({ mark }, i) => ({ mark, at: seen.paths[i] ?? [] }));
}

/** Middles of register crosses along the stick, from their level or upright arms. */
function crosses(paths: ReturnType<typeof pathsSeen>, axis: 0 | 1): number[] {
  return paths
    .filter(({ mark, at }) => mark.role === 'register' && at.length === 4 && Math.abs(length(at) - 8) < 0.5)
    .map(({ at }) => ((at[axis] as number) + (at[axis + 2] as number)) / 2);
}
const length = (at: readonly number[]): number =>
  Math.hypot((at[2] as number) - (at[0] as number), (at[3] as number) - (at[1] as number));

test('tile says so on a page that carries no mark', () => {
  const sheets = tile(stick(900, [20, 860]), { paper: 'A4' });
  const said = sheets.map(({ furniture }) =>
    furniture
      .flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
      .join(' ')
      .includes('No mark falls on this page'),
  );
  expect(said.length).toBeGreaterThan(2);
  expect(said).toEqual(said.map((_, i) => i > 0 && i < said.length - 1));
});

describe('pages joined by their register crosses make the stick again', () => {
  const cases = [
    { name: 'pdf.js', paper: 'A4', upright: false },
    { name: 'pdf.js', paper: 'Letter', upright: true },
    { name: 'MuPDF', paper: 'Letter', upright: false },
    { name: 'MuPDF', paper: 'A4', upright: true },
  ] as const;
  test.each(cases)('tile on $paper read by $name, upright $upright: 107 ticks over 4 m within 0.01 mm', async (of) => {
    const { name, paper, upright } = of;
    const read = name === 'MuPDF' ? readByMupdf : readByPdfjs;
    const axis = upright ? 1 : 0;
    const sheets = tile(stick(4000, long, upright), { paper });
    const pdf = await toPdf(sheets, { title: 'Stick' });
    const found = new Map<number, number>();
    let origin: number | undefined;
    let lastCross = 0;
    for (const [i, sheet] of sheets.entries()) {
      const paths = pathsSeen(sheet, await read(pdf, i + 1), name === 'MuPDF');
      const middles = crosses(paths, axis);
      const shift = i === 0 ? 0 : lastCross - Math.min(...middles);
      lastCross = Math.max(...middles) + shift;
      for (const { mark, at } of paths) {
        const across = axis === 0 ? 1 : 0;
        if (mark.role !== 'tick' || mark.of === undefined || at.length !== 4) continue;
        if (mark.of === 'B') found.set(Math.round((at[axis] as number) + shift), (at[axis] as number) + shift);
        else if (at[across] !== at[across + 2]) origin ??= at[axis];
      }
      const outline = paths.find(({ mark }) => mark.of === 'A');
      if (i === 0) origin = Math.min(...(outline?.at.filter((_, k) => k % 2 === axis) ?? []));
    }
    const positions = [...found.values()].sort((a, b) => a - b).map((p) => p - (origin as number));
    // A tick within an overlap is on both pages; both must say the same.
    const merged = positions.filter((p, i) => i === 0 || p - (positions[i - 1] as number) > 5);
    expect(merged.length).toBe(long.length);
    expect(Math.max(...merged.map((p, i) => Math.abs(p - (long[i] as number))))).toBeLessThan(0.01);
  });
});

describe('tile corrects the printer', () => {
  const printed = { across: 99.2, along: 100.6 };
  const distance = (sheets: Sheet[], role: string, axis: 0 | 1): number[] =>
    sheets.flatMap(({ furniture }) =>
      furniture.flatMap((mark) => {
        if (mark.kind !== 'path' || mark.role !== role) return [];
        const [a, b] = pointsOf(mark.path);
        return a && b && a[1 - axis] === b[1 - axis] ? [Math.abs(a[axis] - b[axis])] : [];
      }),
    );
  test('tile(…, printed) draws bars that come out at 4 in once the printer has erred', () => {
    const sheets = tile(stick(300, []), { paper: 'A4', printed });
    for (const sheet of sheets) {
      const lying = sheet.width > sheet.height;
      const [u, v] = lying ? [printed.along, printed.across] : [printed.across, printed.along];
      expect((Math.max(...distance([sheet], 'tick', 0)) * u) / 100).toBeCloseTo(101.6, 9);
      expect((Math.max(...distance([sheet], 'tick', 1)) * v) / 100).toBeCloseTo(101.6, 9);
    }
  });
  test('tile(…, printed) keeps the height of lettering', () => {
    const heights = tile(stick(300, [10, 50]), { paper: 'A4', printed }).flatMap(({ figures }) =>
      figures.flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.height] : []))),
    );
    expect(new Set(heights)).toEqual(new Set([2.5]));
  });
});

describe('tile says how to print and join', () => {
  const sheets = tile(stick(900, long.slice(0, 20)), { paper: 'Letter' });
  const wordsOn = ({ furniture }: Sheet): string => furniture.map((m) => (m.kind === 'text' ? m.text : '')).join(' ');
  test('every page carries its label, both bars and the instruction', () => {
    for (const sheet of sheets) {
      expect(wordsOn(sheet)).toContain(`${sheet.label} `);
      expect(wordsOn(sheet).match(/100 mm/g)?.length).toBe(2);
      expect(wordsOn(sheet).match(/4 in/g)?.length).toBe(2);
      expect(wordsOn(sheet)).toContain('Print at actual size');
      expect(sheet.fullSize).toBe(true);
    }
  });
  test('pages of a row are A-1, A-2 … and each names its neighbours', () => {
    expect(sheets.map(({ label }) => label)).toEqual(sheets.map((_, i) => `A-${i + 1}`));
    expect(wordsOn(sheets[0] as Sheet)).toContain('A-2');
    expect(wordsOn(sheets[1] as Sheet)).toContain('A-3');
  });
  test('pages of the second drawing of a file are 2A-1, 2A-2 …, and numberPages counts them through', () => {
    const pages = numberPages(tile(stick(900, long.slice(0, 20)), { paper: 'Letter', series: 2 }));
    expect(pages.map(({ label }) => label)).toEqual(pages.map((_, i) => `2A-${i + 1}`));
    expect(wordsOn(pages[0] as Sheet)).toContain('2A-2');
    pages.forEach((page, i) => {
      expect(wordsOn(page)).toContain(`Page ${i + 1} of ${pages.length} in this file`);
    });
    expect(proof(pages)).toEqual([]);
  });
  test('the title is whole on every page, however many pages and whatever its length', () => {
    const title = 'Course stick: Orchard leaf beside the old wash house, Bay 1, 2, 3 and 4';
    const printed = { across: 99.2, along: 99.7 };
    for (const upright of [false, true]) {
      const pages = tile({ ...stick(900, [], upright), title }, { paper: 'A4', series: 12, printed });
      for (const page of pages) expect(wordsOn(page)).toContain(title);
      expect(proof(pages)).toEqual([]);
    }
    const pages = tile({ ...stick(900, []), title }, { paper: 'A4', series: 12 });
    expect(wordsOn(pages[0] as Sheet)).toContain('Cut on the dashes');
    const [alone] = tile({ ...stick(100, []), title }, { paper: 'A4' }) as [Sheet];
    expect(wordsOn(alone)).not.toMatch(/dashes|page before/);
  });
  test.each([1, 12, 112])('the joining map of drawing %i names every page', (series) => {
    for (const upright of [false, true]) {
      const pages = tile(stick(1200, [], upright), { paper: 'A4', series });
      expect(pages.length).toBeGreaterThan(3);
      for (const page of pages)
        for (const { label } of pages)
          expect(page.furniture.some((mark) => mark.kind === 'text' && mark.text === label)).toBe(true);
    }
  });
  test('no page shows more than a hair of what lies past a joint', () => {
    const pages = tile(stick(1200, long.slice(0, 30)), { paper: 'A4' });
    const [first, second] = pages as [Sheet, Sheet];
    const end = (sheet: Sheet): number[] =>
      sheet.figures.flatMap(({ marks }) =>
        marks.flatMap((mark) => (mark.kind === 'path' ? pointsOf(mark.path).map(([u]) => u) : [])),
      );
    const crossOf = (sheet: Sheet): number[] =>
      sheet.furniture.flatMap((mark) => {
        const [a, b] = mark.kind === 'path' && mark.role === 'register' ? pointsOf(mark.path) : [];
        return a && b && a[0] === b[0] && Math.abs(Math.abs(a[1] - b[1]) - 8) < 1e-6 ? [a[0]] : [];
      });
    expect(Math.max(...end(first)) - Math.max(...crossOf(first))).toBeLessThanOrEqual(1 + 1e-9);
    expect(Math.min(...crossOf(second)) - Math.min(...end(second))).toBeLessThanOrEqual(1 + 1e-9);
  });
  test('proof of the pages finds nothing', () => expect(proof(sheets)).toEqual([]));
  test.each([
    [{ paper: 'A4', margin: -1 }, 'invalid margin: -1'],
    [{ paper: 'A4', margin: Number.NaN }, 'invalid margin: NaN'],
    [{ paper: 'A4', overlap: 200 }, 'invalid overlap: 200'],
    [{ paper: 'A4', printed: { across: 89, along: 100 } }, 'invalid printed size: 89'],
  ] as const)('tile(stick, %j) is refused: %s', (options, message) => {
    expect(() => tile(stick(900, []), options)).toThrow(message);
  });
});

describe('tile on a roll', () => {
  test.each([false, true])('a 4 m stick is one page as wide as the roll, upright %s', (upright) => {
    const sheets = tile(stick(4000, long, upright), { paper: 'roll 610' });
    expect(sheets.length).toBe(1);
    expect(Math.min(sheets[0]?.width ?? 0, sheets[0]?.height ?? 0)).toBe(610);
    expect(proof(sheets)).toEqual([]);
  });
  test('a drawing wider than the roll both ways is refused', () => {
    const wide = { ...stick(1000, []), bounds: { u0: 0, v0: 0, u1: 1000, v1: 1000 } };
    expect(() => tile(wide, { paper: 'roll 914' })).toThrow('invalid paper: roll 914 has no room for stick');
  });
});

describe('tile over arbitrary drawings', () => {
  const papers: TilePaperName[] = ['A4', 'A3', 'Letter', 'Legal', 'Tabloid'];
  test('every text is whole somewhere, no ink leaves the printable area, every line is all there', () => {
    fc.assert(
      fc.property(
        fc.record({
          width: fc.double({ min: 20, max: 1500, noNaN: true }),
          height: fc.double({ min: 20, max: 900, noNaN: true }),
          paper: fc.constantFrom(...papers),
          margin: fc.double({ min: 3, max: 15, noNaN: true }),
          at: fc.array(
            fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true })),
            {
              maxLength: 25,
            },
          ),
        }),
        ({ width, height, paper, margin, at }) => {
          const spots = at.map(([u, v]): [number, number] => [u * (width - 20), 3 + v * (height - 6)]);
          const drawing: Drawing = {
            ...stick(10, []),
            bounds: { u0: 0, v0: 0, u1: width, v1: height },
            marks: [
              stroke('edge', line([0, 0], [width, height])),
              ...spots.map((p, i) => write('note', `text ${i}`, p, { height: 2.5 })),
            ],
          };
          const sheets = tile(drawing, { paper, margin });
          const figures = sheets.map(({ figures, inside }) => ({
            marks: figures.flatMap(({ marks }) => marks),
            inside,
          }));
          for (const { marks, inside } of figures) {
            for (const mark of marks) {
              const points =
                mark.kind === 'text'
                  ? [textBox(mark)].flatMap((b) => [
                      [b.u0, b.v0],
                      [b.u1, b.v1],
                    ])
                  : pointsOf(mark.path); // corners
              for (const [u, v] of points as [number, number][]) {
                expect(u >= inside.u0 - 1e-6 && u <= inside.u1 + 1e-6).toBe(true);
                expect(v >= inside.v0 - 1e-6 && v <= inside.v1 + 1e-6).toBe(true);
              }
            }
          }
          const printed = new Set(
            figures.flatMap(({ marks }) => marks.flatMap((m) => (m.kind === 'text' ? [m.text] : []))),
          );
          expect(printed.size).toBe(spots.length);
          const drawn = figures
            .flatMap(({ marks }) => marks.flatMap((m) => (m.kind === 'path' ? [pointsOf(m.path).flat()] : [])))
            .reduce((sum, piece) => sum + length(piece), 0);
          expect(drawn).toBeGreaterThanOrEqual(Math.hypot(width, height) - 1e-6);
        },
      ),
      { seed: 20261124, numRuns: 40 },
    );
  });
});
