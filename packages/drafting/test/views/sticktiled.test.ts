import { type Panel, partsOf, readJob, solve } from '@wattlewright/model';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arbitraryJob } from '../../../../test/support/jobs.ts';
import type { Drawing, Mark, Sheet } from '../../src/mark.ts';
import { toPdf } from '../../src/pdf.ts';
import { proof } from '../../src/proofing/proof.ts';
import { tile } from '../../src/tiling/tile.ts';
import { courseStick } from '../../src/views/stickcourse.ts';
import { staveStick } from '../../src/views/stickstave.ts';
import { cornerTemplate } from '../../src/views/templatecorner.ts';
import { railEndTemplate } from '../../src/views/templaterail.ts';
import { stileEndTemplate } from '../../src/views/templatestile.ts';
import { pathsOf } from '../support/expected.ts';
import { readByMupdf, readByPdfjs } from '../support/readers.ts';

const panelsOf = (text: string): Panel[] => solve(readJob(text));

/** A panel 4 m one way, in inches so that hardly a place is a whole millimetre. */
const long = panelsOf(
  JSON.stringify({
    job: 'Long',
    unit: 'in',
    panels: [
      { name: 'Wide', size: { width: '4000 mm', height: 40 }, stave: { width: 0.75, depth: 0.5, count: 17 } },
      { name: 'Tall', size: { width: 36, height: '4000 mm' } },
    ],
  }),
);
const [wideOne, tallOne] = long as [Panel, Panel];
const parts = partsOf(long);
const letter = (role: string, panel: Panel): string =>
  parts.find((part) => part.role === role && part.where.some((place) => place.panel === panel.name))?.letter as string;

interface SeenPath {
  readonly mark: Mark;
  readonly at: readonly number[];
}

/** What a page shows as it comes out of a printer that errs by `scale` along the stick. */
async function printedPaths(of: {
  readonly reader: 'pdf.js' | 'MuPDF';
  readonly pdf: Uint8Array;
  readonly sheet: Sheet;
  readonly page: number;
  readonly scale: number;
}): Promise<SeenPath[]> {
  const { reader, pdf, sheet, page, scale } = of;
  const seen = reader === 'MuPDF' ? readByMupdf(pdf, page) : await readByPdfjs(pdf, page);
  const paths = pathsOf(sheet, { twice: reader === 'MuPDF' });
  expect(seen.paths.length).toBe(paths.length);
  return paths.map(({ mark }, i) => ({ mark, at: (seen.paths[i] ?? []).map((n) => n * scale) }));
}

/** Places of the register crosses along the stick: their arms across it. */
function crosses(paths: readonly SeenPath[], axis: 0 | 1): number[] {
  return paths.flatMap(({ mark, at }) =>
    mark.role === 'register' && at.length === 4 && at[axis] === at[axis + 2] && Math.abs(across(at, axis) - 8) < 0.5
      ? [at[axis] as number]
      : [],
  );
}
const across = (at: readonly number[], axis: 0 | 1): number =>
  Math.abs((at[1 - axis] as number) - (at[3 - axis] as number));

/** Every tick across the stick by its part, from the datum, after the pages have been joined by their register crosses. */
async function joined(
  drawing: Drawing,
  of: { axis: 0 | 1; paper: 'A4' | 'Letter'; reader: 'pdf.js' | 'MuPDF'; printed: { across: number; along: number } },
): Promise<{ readonly ticks: { readonly of: string | undefined; readonly at: number }[]; readonly pages: number }> {
  const { axis, paper, reader, printed } = of;
  const sheets = tile(drawing, { paper, printed });
  const pdf = await toPdf(sheets, { title: 'Stick' });
  const ticks: { of: string | undefined; at: number }[] = [];
  let last = 0;
  for (const [i, sheet] of sheets.entries()) {
    const isAlong = sheet.width > sheet.height === (axis === 0);
    const scale = (isAlong ? printed.along : printed.across) / 100;
    const paths = await printedPaths({ reader, pdf, sheet, page: i + 1, scale });
    const found = crosses(paths, axis);
    const shift = i === 0 ? 0 : last - Math.min(...found);
    last = Math.max(...found) + shift;
    const inFigure = new Set(sheet.figures.flatMap(({ marks }) => marks));
    for (const { mark, at } of paths)
      if (
        inFigure.has(mark) &&
        mark.role === 'tick' &&
        at.length === 4 &&
        Math.abs((at[axis] as number) - (at[axis + 2] as number)) < 1e-6
      )
        ticks.push({ of: mark.of, at: (at[axis] as number) + shift });
  }
  return { ticks, pages: sheets.length };
}

/** Largest distance from a solved place to the nearest tick, and from a tick to the nearest solved place. */
function worst(ticks: readonly number[], solved: readonly number[]): number {
  const far = (from: readonly number[], to: readonly number[]): number =>
    Math.max(...from.map((a) => Math.min(...to.map((b) => Math.abs(a - b)))));
  return Math.max(far(solved, ticks), far(ticks, solved));
}

const right = { across: 100, along: 100 };
const wrong = { across: 99.7, along: 100.4 };

describe('sticks 4 m long, joined from printed pages', () => {
  test.each([
    { paper: 'Letter', reader: 'pdf.js', printed: right },
    { paper: 'A4', reader: 'MuPDF', printed: right },
    { paper: 'A4', reader: 'pdf.js', printed: wrong },
    { paper: 'Letter', reader: 'MuPDF', printed: wrong },
  ] as const)('staveStick on $paper read by $reader, printed at $printed: faces within 0.01 mm', async (how) => {
    const { staves, clear } = wideOne;
    const { ticks, pages } = await joined(staveStick(wideOne, { parts }), { ...how, axis: 0 });
    expect(pages).toBeGreaterThan(10);
    const faces = staves.lefts.flatMap((left) => [left, left + staves.width]);
    // The rail's end cannot be read as a tick, so places count from the left stile's inner face.
    const stile = ticks.filter(({ of }) => of === letter('stile', wideOne)).map(({ at }) => at);
    const start = Math.min(...stile) - clear.left;
    const mine = ticks.filter(({ of }) => of === letter('stave', wideOne)).map(({ at }) => at - start);
    const inner = faces.filter((face) => face > clear.left + 1e-6 && face < clear.left + clear.width - 1e-6);
    expect(worst(mine, inner)).toBeLessThan(0.01);
    expect(Math.abs(Math.max(...stile) - start - clear.left - clear.width)).toBeLessThan(0.01);
  });

  test.each([
    { paper: 'A4', reader: 'pdf.js', printed: right },
    { paper: 'Letter', reader: 'MuPDF', printed: wrong },
  ] as const)('courseStick on $paper read by $reader, printed at $printed: courses within 0.01 mm', async (how) => {
    const { courses, clear } = tallOne;
    const { ticks, pages } = await joined(courseStick(tallOne, { parts }), { ...how, axis: 1 });
    expect(pages).toBeGreaterThan(10);
    const mine = ticks.filter(({ of }) => of === letter('slat', tallOne)).map(({ at }) => at);
    const solved = [...courses.bottoms.slice(1).map((y) => y - clear.bottom), courses.stack].map((y) => -y);
    // Counted from the top of the stack, the uppermost tick on paper.
    const start = Math.min(...mine) + courses.stack;
    expect(
      worst(
        mine.map((at) => at - start),
        solved,
      ),
    ).toBeLessThan(0.01);
  });
});

describe('stave sticks of narrow panels', () => {
  test.each([11.8125, 12, 12.5, 13, 14, 15, 16, 18])(
    'staveStick, %d in wide with two staves: instructions and words of the bay leave room for a joint',
    (width) => {
      const [panel] = panelsOf(
        JSON.stringify({
          job: 'Narrow',
          unit: 'in',
          panels: [
            {
              name: 'Gate',
              use: 'gate',
              size: { width, height: 12.875 },
              rail: { height: 2.4375, depth: 2.125 },
              stile: { width: 2.625, depth: 2.125 },
              stave: { width: 1.125, depth: 0.4375, count: 2 },
            },
          ],
        }),
      ) as [Panel];
      for (const paper of ['A4', 'Letter'] as const)
        expect(proof(tile(staveStick(panel, { parts: partsOf([panel]) }), { paper }))).toEqual([]);
    },
  );
});

describe('full-size sheets of arbitrary jobs', () => {
  test('proof of tiled sticks and templates finds nothing', () => {
    fc.assert(
      fc.property(arbitraryJob({ panels: 1, to: 2500 }), fc.constantFrom('A4', 'Letter', 'A3'), (data, paper) => {
        const panels = panelsOf(JSON.stringify(data));
        const list = partsOf(panels);
        for (const panel of panels)
          for (const view of [staveStick, courseStick, railEndTemplate, stileEndTemplate, cornerTemplate])
            expect(proof(tile(view(panel, { parts: list }), { paper: paper as 'A4' }))).toEqual([]);
      }),
      { seed: 20261124, numRuns: 12 },
    );
  });
});
