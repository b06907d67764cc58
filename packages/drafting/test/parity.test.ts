import { describe, expect, test } from 'vitest';
import { printable, textStart } from '../src/lettering.ts';
import type { Mark, Sheet } from '../src/mark.ts';
import { toPdf } from '../src/pdf.ts';
import { toSvg } from '../src/svg.ts';
import { inkOf, pathsOf } from './support/expected.ts';
import { readByMupdf, readByPdfjs, readSvg, type Seen } from './support/readers.ts';
import { sampleSheet } from './support/samples.ts';

/** Nearness asked of every coordinate, mm. */
const near = 0.001;

function expectPaths(sheet: Sheet, seen: Seen, how: { twice?: boolean } = {}): void {
  const drawn = pathsOf(sheet, how).map(({ points }) => points);
  expect(seen.paths.map((p) => p.length)).toEqual(drawn.map((p) => p.length));
  const off = drawn.flatMap((path, i) => path.map((n, k) => Math.abs(n - (seen.paths[i]?.[k] ?? Number.NaN))));
  expect(Math.max(...off)).toBeLessThan(near);
}

function expectTexts(sheet: Sheet, seen: Seen): void {
  const written = inkOf(sheet).flatMap((mark) => (mark.kind === 'text' ? [mark] : []));
  expect(seen.texts.length).toBe(written.length);
  for (const mark of written) {
    const [u, v] = textStart(mark);
    const nearest = Math.min(...seen.texts.map((t) => Math.max(Math.abs(t.u - u), Math.abs(t.v - v))));
    // A turned text passes through one rounded matrix in the PDF writer, which costs it up to a hundredth.
    expect(nearest, mark.text).toBeLessThan(mark.angle === 0 ? near : 0.01);
  }
}

describe('both outputs carry the display list', () => {
  const sheet = sampleSheet();
  test('toPdf read by pdf.js: every point within 0.001 mm', async () => {
    const seen = await readByPdfjs(await toPdf([sheet], { title: 'Parity' }));
    expectPaths(sheet, seen);
    expectTexts(sheet, seen);
  });
  test('toPdf read by MuPDF: every point within 0.001 mm', async () => {
    const seen = readByMupdf(await toPdf([sheet], { title: 'Parity' }));
    expectPaths(sheet, seen, { twice: true });
    expectTexts(sheet, seen);
  });
  test('toSvg read by an XML parser: every point within 0.001 mm, every text whole', () => {
    const seen = readSvg(toSvg(sheet));
    expectPaths(sheet, seen);
    const words = (marks: readonly Mark[]): string[] =>
      marks.flatMap((mark) => (mark.kind === 'text' ? [printable(mark.text).text] : []));
    expect(seen.texts.map(({ text }) => text)).toEqual(words(inkOf(sheet)));
  });
  test('a sheet 4 m long keeps 0.001 mm in both', async () => {
    const long: Sheet = sampleSheet({
      width: 914,
      height: 4100,
      figures: [
        {
          name: 'far',
          title: 'Far',
          alt: 'Far',
          marks: [
            {
              kind: 'path',
              role: 'tick',
              path: [
                ['M', 3.123456, 4050.98765],
                ['L', 900.5, 4050.98765],
              ],
            },
          ],
        },
      ],
      furniture: [],
    });
    const pdf = await toPdf([long], { title: 'Long' });
    expectPaths(long, await readByPdfjs(pdf));
    expectPaths(long, readByMupdf(pdf));
    expectPaths(long, readSvg(toSvg(long)));
  });
});
