import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import {
  type Drawing,
  moved,
  printable,
  type Sheet,
  type TextMark,
  textStart,
  toPdf,
  toSvg,
} from '@wattlewright/drafting';
import { partsOf, planCutsQuick, readJob, solve } from '@wattlewright/model';
import { afterAll, describe, expect, test } from 'vitest';
import { inkOf, pathsOf } from '../packages/drafting/test/support/expected.ts';
import { lacking } from '../packages/drafting/test/support/outside.ts';
import { apart, pictureOfPdf, pictureOfSvg } from '../packages/drafting/test/support/pictures.ts';
import { readByMupdf, readByPdfjs, readSvg, type Seen } from '../packages/drafting/test/support/readers.ts';
import { drawingsOf } from '../packages/packet/src/sheets/views.ts';

const examples = ['tern-hollow-window', 'larch-deck-guard', 'wash-house-gate', 'studio-divider'] as const;
/** Nearness asked of every coordinate, mm. */
const near = 0.001;

/** Every view of an example; no view shows the cuts, so none are planned. */
function viewsOf(example: string): { readonly file: string; readonly drawing: Drawing }[] {
  const path = fileURLToPath(new URL(`../examples/${example}.yaml`, import.meta.url));
  const job = readJob(readFileSync(path, 'utf8'));
  const panels = solve(job);
  const parts = partsOf(panels, { spare: job.spare });
  const plan = planCutsQuick({ parts, stock: [], offcuts: [], saw: job.saw });
  return drawingsOf({ job, panels, parts, plan, findings: [], choices: [] });
}

/** A drawing alone on a sheet of its own size, in whole half inches so that every renderer has whole pixels. */
function sheetOf({ name, title, alt, marks, bounds }: Drawing): Sheet {
  const whole = (length: number) => Math.ceil((length + 4) / 12.7) * 12.7;
  const [width, height] = [whole(bounds.u1 - bounds.u0), whole(bounds.v1 - bounds.v0)];
  const by = { du: 2 - bounds.u0, dv: 2 - bounds.v0 };
  return {
    width,
    height,
    paper: 'none',
    title,
    label: '1',
    figures: [{ name, title, alt, marks: moved(marks, by) }],
    furniture: [],
    inside: { u0: 0, v0: 0, u1: width, v1: height },
    chains: [],
    fullSize: false,
  };
}

/** How far the farthest point that a reader saw lies from where it was drawn, mm. */
function pathsOff(seen: Seen, sheet: Sheet, how: { readonly twice?: boolean } = {}): number {
  const drawn = pathsOf(sheet, how).map(({ points }) => stepped(points));
  const read = seen.paths.map(stepped);
  expect(read.map(({ length }) => length)).toEqual(drawn.map(({ length }) => length));
  let most = 0;
  for (const [i, path] of drawn.entries())
    for (const [k, n] of path.entries()) most = Math.max(most, Math.abs(n - (read[i]?.[k] as number)));
  return most;
}

/** Points without those that repeat the one before them, which a reader may leave out. */
function stepped(points: readonly number[]): number[] {
  const out: number[] = [];
  for (let i = 0; i < points.length; i += 2) {
    const [u, v] = [points[i] as number, points[i + 1] as number];
    const still = Math.hypot(u - (out.at(-2) ?? Number.NaN), v - (out.at(-1) ?? Number.NaN)) < near / 10;
    if (!still) out.push(u, v);
  }
  return out;
}

/** How far the farthest text starts from where it was written, mm; a reader may give texts in another order. */
function textsOff(seen: Seen, sheet: Sheet): number {
  const written = textsOf(sheet);
  expect(seen.texts.length).toBe(written.length);
  const off = written.map((mark) => {
    const [u, v] = textStart(mark);
    const apartBy = seen.texts.map((text) => Math.max(Math.abs(text.u - u), Math.abs(text.v - v)));
    // A turned text passes through one rounded matrix in the PDF writer, which costs it up to a hundredth.
    return Math.min(...apartBy) * (mark.angle === 0 ? 1 : 0.1);
  });
  return Math.max(0, ...off);
}

function textsOf(sheet: Sheet): TextMark[] {
  return inkOf(sheet).filter((mark) => mark.kind === 'text');
}

describe.each(examples)('every view of %s', (example) => {
  const views = viewsOf(example);

  test('has its coordinates in SVG and in PDF to 0.001 mm, as two readers of PDF and one of SVG see them', async () => {
    for (const { file, drawing } of views) {
      const sheet = sheetOf(drawing);
      const pdf = await toPdf([sheet], { title: file });
      const svg = readSvg(toSvg(sheet));
      const byMupdf = readByMupdf(pdf);
      const byPdfjs = await readByPdfjs(pdf);
      expect(pathsOff(svg, sheet), file).toBeLessThan(near);
      expect(pathsOff(byMupdf, sheet, { twice: true }), file).toBeLessThan(near);
      expect(pathsOff(byPdfjs, sheet), file).toBeLessThan(near);
      expect(textsOff(byMupdf, sheet), file).toBeLessThan(near);
      expect(
        svg.texts.map(({ text }) => text),
        file,
      ).toEqual(textsOf(sheet).map(({ text }) => printable(text).text));
    }
  });
});

const missing = lacking('pdftoppm');
describe.skipIf(missing)(`pictures of views${missing ? ` (${missing})` : ''}`, () => {
  const folder = mkdtempSync(join(tmpdir(), 'views-'));
  afterAll(() => rmSync(folder, { recursive: true }));

  test.each(examples.flatMap((example) => ['elevation', 'picture'].map((name) => [name, example] as const)))(
    'the %s of %s looks the same in SVG and in PDF',
    async (name, example) => {
      const { drawing } = viewsOf(example).find((view) => view.drawing.name === name) as { drawing: Drawing };
      const sheet = sheetOf(drawing);
      const pdf = await pictureOfPdf(sheet, folder);
      // Fewer pixels than one numeral changes: where hundreds of lines meet, two renderers smooth one or two unlike.
      expect(apart(pdf, pictureOfSvg(toSvg(sheet), sheet, folder))).toBeLessThan(4);
    },
  );
});
