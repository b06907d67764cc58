import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxOf, pointsOf } from '../../src/ink.ts';
import { contains, overlaps } from '../../src/layout/clearance.ts';
import { dimensionRows } from '../../src/layout/dimension.ts';
import { prosePages } from '../../src/layout/prose.ts';
import { table } from '../../src/layout/table.ts';
import { textBox } from '../../src/lettering.ts';
import type { Box, Drawing, Mark, Sheet } from '../../src/mark.ts';
import { stroke } from '../../src/mark.ts';
import { rectangle } from '../../src/path.ts';
import {
  type ArrangeOptions,
  arrange,
  arrangeLayouts,
  SHEET_PAPERS,
  type SheetPaperName,
} from '../../src/sheet/arrange.ts';
import type { ViewMaker } from '../../src/sheet/fit.ts';
import { frame } from '../../src/sheet/frame.ts';
import { compose, finish, lay, paneBox } from '../../src/sheet/layout.ts';
import { view, viewBox } from '../../src/view.ts';
import { faultsOf, textsOf } from '../layout/faults.ts';

const meta = { owner: 'Alder Lane Woodshop', title: 'Tern Hollow wash house', number: 'TH-014', unit: 'mm' };

/** A rectangle of the given real size with its width and height stated. */
function slab(name: string, width: number, height: number, more: Partial<ViewMaker> = {}): ViewMaker {
  const make = ({ ratio, text }: { ratio: number; text: string }): Drawing => {
    const outline = viewBox(view(ratio), [0, 0], [width, height]);
    const wide = dimensionRows({
      side: 'below',
      outline,
      sizes: [{ from: outline.u0, to: outline.u1, text: `${width}`, value: width }],
    });
    const tall = dimensionRows({
      side: 'left',
      outline,
      sizes: [{ from: outline.v0, to: outline.v1, text: `${height}`, value: height }],
    });
    const marks = [stroke('edge', rectangle(outline)), ...wide.marks, ...tall.marks];
    return {
      name,
      title: `View ${name}`,
      scale: ratio,
      scaleText: text,
      marks,
      bounds: boxOf([
        [tall.bounds.u0, Math.min(tall.bounds.v0, wide.bounds.v0)],
        [Math.max(tall.bounds.u1, wide.bounds.u1), Math.max(wide.bounds.v1, tall.bounds.v1)],
      ]),
      alt: `Slab ${name}.`,
    };
  };
  return { name, real: { width, height }, make, ...more };
}

function inkBox(marks: readonly Mark[]): Box {
  return boxOf(
    marks.flatMap((mark) => {
      if (mark.kind === 'path') return pointsOf(mark.path);
      const { u0, v0, u1, v1 } = textBox(mark);
      return [
        [u0, v0],
        [u1, v1],
      ] as const;
    }),
  );
}

/** Holds every law of a finished sheet: ink inside, figures apart from each other and from the title block. */
function holds(sheet: Sheet): void {
  const boxes = sheet.figures.map(({ marks }) => inkBox(marks));
  const { block } = frame(
    SHEET_PAPERS[sheet.paper as SheetPaperName],
    sheet.width > sheet.height ? 'landscape' : 'portrait',
  );
  boxes.forEach((box, i) => {
    expect(contains(sheet.inside, box)).toBe(true);
    expect(overlaps(box, block)).toBe(false);
    for (const other of boxes.slice(i + 1)) expect(overlaps(box, other)).toBe(false);
  });
  expect(contains(sheet.inside, inkBox(sheet.furniture))).toBe(true);
}

describe('arrange', () => {
  const options: ArrangeOptions = { paper: 'A3', unit: 'mm', meta };

  // Room on A3 landscape: 390 - 8 = 382 wide, 277 - 41 - 8 = 228 high above the title block, or 202 wide, 269 high beside.
  // 1000 × 1200 with 12 mm rows and 7.5 mm of title: at 1:5 it takes 212 × 259.6, too large for either; at 1:10 it fits.
  // Upright A3 has room for 267 - 8 = 259 by 400 - 41 - 8 = 351: at 1:5 it fits, so the sheet is turned.
  it('lies the way that gives the larger view', () => {
    const [sheet] = arrange([slab('A', 1000, 1200)], options);
    expect([sheet?.width, sheet?.height]).toEqual([297, 420]);
    expect(textsOf(sheet?.figures[0]?.marks ?? []).map(({ text }) => text)).toContain('1:5');
    const [flat] = arrange([slab('A', 1000, 1200)], { ...options, orientation: 'landscape' });
    expect(textsOf(flat?.figures[0]?.marks ?? []).map(({ text }) => text)).toContain('1:10');
  });

  it('a detail goes where there is room, and another sheet is opened only when there is none', () => {
    const sheets = arrange([slab('A', 1000, 1200), slab('B', 20, 30), slab('C', 1500, 1000)], {
      ...options,
      orientation: 'landscape',
    });
    expect(sheets.map(({ figures }) => figures.map(({ name }) => name))).toEqual([['A', 'B'], ['C']]);
  });

  it('sheets are numbered from 1, and each says the scale of its views', () => {
    const sheets = arrange([slab('A', 1000, 1200), slab('C', 1500, 1000)], { ...options, orientation: 'landscape' });
    expect(sheets.map(({ label }) => label)).toEqual(['1', '2']);
    expect(textsOf(sheets[1]?.furniture ?? []).map(({ text }) => text)).toEqual(
      expect.arrayContaining(['2 of 2', '1:5']),
    );
  });

  it('several scales on a sheet are said as shown beside each view (ISO 5455)', () => {
    const [sheet] = arrange([slab('A', 1000, 1200), slab('B', 20, 30)], { ...options, orientation: 'landscape' });
    expect(textsOf(sheet?.furniture ?? []).map(({ text }) => text)).toContain('as shown');
  });

  it('fit takes the smallest paper on which every view can be read', () => {
    const least = slab('A', 1000, 1200, { atLeast: 0.1 });
    expect(arrange([least], { ...options, paper: 'fit' })[0]?.paper).toBe('A4');
    expect(arrange([{ ...least, atLeast: 0.2 }], { ...options, paper: 'fit' })[0]?.paper).toBe('A3');
    expect(arrange([least], { ...options, unit: 'in', paper: 'fit' })[0]?.paper).toBe('Letter');
  });

  it('what fits no sheet is refused with its name and the room there is', () => {
    expect(() => arrange([slab('A', 90_000, 10)], { ...options, paper: 'A4' })).toThrow(/A at 1:100 does not fit A4/);
  });

  it('tables keep their order and their titles stand over them', () => {
    const list = (name: string, n: number): Drawing =>
      table({
        name,
        title: name,
        alt: name,
        columns: [{ title: 'Part' }],
        rows: Array.from({ length: n }, (_, i) => [`${i}`]),
      });
    const sheets = arrange([list('one', 20), list('two', 33), list('three', 2)], {
      ...options,
      orientation: 'landscape',
    });
    expect(sheets.flatMap(({ figures }) => figures.map(({ name }) => name))).toEqual(['one', 'two', 'three']);
    const marks = sheets[0]?.figures[0]?.marks ?? [];
    expect(textsOf(marks).find(({ text }) => text === 'one')?.at[1]).toBeLessThan(
      inkBox(marks.filter((one) => one.kind === 'path')).v0,
    );
  });

  it('a view at any scale keeps its text heights', () => {
    const heights = (paper: SheetPaperName): number[] =>
      textsOf(arrange([slab('A', 1400, 900)], { ...options, paper })[0]?.figures[0]?.marks ?? []).map(
        ({ height }) => height,
      );
    expect(heights('A4')).toEqual(heights('A2'));
  });

  it('whatever is arranged, nothing overlaps and all ink is inside', () => {
    const side = fc.integer({ min: 10, max: 4000 });
    const anyView = fc.tuple(side, side, fc.constantFrom(0.5, 1)).map(([w, h, share]) => ({ w, h, share }));
    const paper = fc.constantFrom<SheetPaperName | 'fit'>('A4', 'A3', 'A2', 'Letter', 'Tabloid', 'ARCH C', 'fit');
    fc.assert(
      fc.property(
        fc.array(anyView, { minLength: 1, maxLength: 7 }),
        paper,
        fc.constantFrom('mm' as const, 'in' as const),
        (views, on, unit) => {
          const items = views.map(({ w, h, share }, i) =>
            slab(`V${i}`, w, h, { share: { width: share, height: share } }),
          );
          const sheets = arrange(items, { paper: on, unit, meta });
          expect(sheets.flatMap(({ figures }) => figures.map(({ name }) => name)).sort()).toEqual(
            items.map(({ name }) => name).sort(),
          );
          for (const sheet of sheets) holds(sheet);
        },
      ),
      { seed: 20261124, numRuns: 60 },
    );
  });
});

describe('compose', () => {
  const sheet = frame(SHEET_PAPERS.A3, 'landscape');
  const beside = { left: 0.66, top: 0, width: 0.34, height: 1 };

  it('an elevation at the left and notes at the right of one sheet, numbered with the arranged ones', () => {
    const box = paneBox(sheet, beside);
    const [notes] = prosePages({
      name: 'notes',
      title: 'Notes',
      alt: 'n',
      blocks: [{ kind: 'paragraph', text: 'Oiled twice.' }],
      width: box.u1 - box.u0,
      height: 100,
    });
    const client = compose(
      [
        { item: slab('A', 1000, 1200), left: 0, top: 0, width: 0.66, height: 1 },
        { item: notes as Drawing, ...beside, align: 'top-left' },
      ],
      sheet,
      { unit: 'mm', subject: 'For the client' },
    );
    const sheets = finish([client, ...arrangeLayouts([slab('B', 300, 200)], { paper: 'A3', unit: 'mm' })], meta);
    expect(sheets.map(({ title }) => title)).toEqual(['For the client', 'View B']);
    expect(inkBox(sheets[0]?.figures[1]?.marks ?? []).u0).toBeGreaterThanOrEqual(box.u0);
    for (const one of sheets) {
      holds(one);
      for (const { marks } of one.figures) expect(faultsOf(marks)).toEqual([]);
    }
  });

  it('a pane clear of the title block reaches down beside it, and no other does', () => {
    const half = { left: 0, top: 0, width: 0.5, height: 1 };
    expect(paneBox(sheet, half).v1).toBe(sheet.border.v1 - 4);
    expect(paneBox(sheet, { ...half, left: 0.5 }).v1).toBe(sheet.block.v0 - 4);
    expect(paneBox(sheet, { ...half, height: 0.5 }).v1).toBeLessThan(sheet.block.v0);
  });

  it('an item that fits not its pane is refused', () => {
    expect(() =>
      compose([{ item: slab('A', 9000, 12_000), left: 0, top: 0, width: 0.2, height: 0.2 }], sheet, { unit: 'mm' }),
    ).toThrow('does not fit A3');
  });
});

describe('lay', () => {
  const on = frame(SHEET_PAPERS.A4, 'portrait');
  const room = on.rooms[0] as Box;
  const high = room.v1 - room.v0;
  /** A view that is as tall as a share of the room, whatever its scale. */
  const view = (name: string, share: number): ViewMaker => {
    const box = { u0: 0, v0: 0, u1: room.u1 - room.u0, v1: share * high };
    const drawing = {
      name,
      title: '',
      scale: 1,
      scaleText: '1:1',
      marks: [stroke('edge', rectangle(box))],
      bounds: box,
    };
    return { name, real: { width: 1, height: 1 }, make: () => ({ ...drawing, alt: name }) };
  };
  const namesOf = (views: readonly ViewMaker[]): string[][] =>
    lay(views, on, 'mm').map(({ drawings }) => drawings.map(({ name }) => name));

  it('views stand in their order', () => {
    expect(namesOf([view('a', 0.3), view('b', 0.6), view('c', 0.5)])).toEqual([['a', 'b'], ['c']]);
  });
  it('views are placed tallest first where that takes fewer sheets, and still shown by their order', () => {
    // First come, first placed: a and b, c, then d alone.
    expect(namesOf([view('a', 0.4), view('b', 0.3), view('c', 0.65), view('d', 0.5)])).toEqual([
      ['a', 'd'],
      ['b', 'c'],
    ]);
  });
  it('views come nearer to each other where that saves a sheet', () => {
    const share = (1 - 8 / high) / 2;
    expect(namesOf([view('a', share), view('b', share)])).toEqual([['a', 'b']]);
    const more = (1 - 4 / high) / 2;
    expect(namesOf([view('a', more), view('b', more)])).toEqual([['a'], ['b']]);
  });
  it('a long title of a narrow view goes on in lines, so that another view stands beside it', () => {
    const title = 'Panel in its opening, seen from outside, gaps wider than drawn';
    const narrow = { ...view('a', 0.3), make: () => ({ ...thin, title }) };
    const thin: Drawing = {
      name: 'thin',
      title,
      scale: 1,
      scaleText: '1:1',
      marks: [],
      bounds: { u0: 0, v0: 0, u1: 20, v1: 50 },
      alt: 'Thin.',
    };
    const [sheet] = lay([narrow, narrow], on, 'mm');
    const [one, other] = sheet?.drawings ?? [];
    expect(one?.bounds.v0).toBeCloseTo(other?.bounds.v0 ?? 0, 6);
  });
});
