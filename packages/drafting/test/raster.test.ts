import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import pixelmatch from 'pixelmatch';
import { PNG } from 'pngjs';
import { afterAll, describe, expect, test } from 'vitest';
import { family, subsetFont } from '../src/font/subset.ts';
import { printable } from '../src/lettering.ts';
import type { Sheet } from '../src/mark.ts';
import { toPdf } from '../src/pdf.ts';
import { pen } from '../src/pen.ts';
import { toSvg } from '../src/svg.ts';
import { inkOf } from './support/expected.ts';
import { lacking } from './support/outside.ts';
import { sampleSheet } from './support/samples.ts';

const missing = lacking('pdftoppm');
const dpi = 400;
const shrink = 4;
/** A sheet of whole pixels, so that neither renderer shifts its picture by part of one. */
const inches = { width: 6 * 25.4, height: 4 * 25.4 };

describe.skipIf(missing)(`pictures of both outputs${missing ? ` (${missing})` : ''}`, () => {
  const folder = mkdtempSync(join(tmpdir(), 'pictures-'));
  afterAll(() => rmSync(folder, { recursive: true }));

  /** The PDF as poppler draws it. */
  async function pictureOfPdf(sheet: Sheet): Promise<PNG> {
    const file = join(folder, 'sheet.pdf');
    writeFileSync(file, await toPdf([sheet], { title: 'Picture' }));
    const done = spawnSync('pdftoppm', ['-r', `${dpi}`, '-png', '-singlefile', file, join(folder, 'pdf')]);
    expect(done.status).toBe(0);
    return PNG.sync.read(readFileSync(join(folder, 'pdf.png')));
  }

  /** The SVG as resvg draws it, with no font of the machine's. */
  function pictureOfSvg(svg: string, sheet: Sheet): PNG {
    // resvg reads no fonts from a style sheet: it is given the same subset as a file.
    const fontFiles = (['regular', 'semibold'] as const).map((weight) => {
      const texts = inkOf(sheet).flatMap((m) => (m.kind === 'text' && pen(m.role).weight === weight ? [m.text] : []));
      const file = join(folder, `${weight}.ttf`);
      writeFileSync(
        file,
        subsetFont(
          texts.map((text) => printable(text).text),
          weight,
        ),
      );
      return file;
    });
    const font = { loadSystemFonts: false, fontFiles, defaultFontFamily: family };
    const picture = new Resvg(svg, { fitTo: { mode: 'zoom', value: dpi / 96 }, background: '#ffffff', font }).render();
    return PNG.sync.read(Buffer.from(picture.asPng()));
  }

  /** A picture at a quarter of the size, each pixel the mean of sixteen: what an eye sees, without each renderer's edges. */
  function smaller({ width, height, data }: PNG): PNG {
    const out = new PNG({ width: width / shrink, height: height / shrink });
    for (let y = 0; y < out.height; y++) {
      for (let x = 0; x < out.width; x++) {
        let sum = 0;
        for (let k = 0; k < shrink * shrink; k++) {
          const [px, py] = [x * shrink + (k % shrink), y * shrink + Math.floor(k / shrink)];
          sum += data[4 * (py * width + px)] as number;
        }
        const mean = Math.round(sum / (shrink * shrink));
        out.data.set([mean, mean, mean, 255], 4 * (y * out.width + x));
      }
    }
    return out;
  }

  /** How many pixels of the two differ plainly, edges among them; under 0.4 the renderers' own smoothing shows. */
  function apart(a: PNG, b: PNG): number {
    const [one, other] = [smaller(a), smaller(b)];
    expect([one.width, one.height]).toEqual([other.width, other.height]);
    return pixelmatch(one.data, other.data, undefined, one.width, one.height, { threshold: 0.4, includeAA: true });
  }

  test.each(['font', 'outlines'] as const)('toSvg with %s looks like toPdf', async (text) => {
    const sheet = sampleSheet(inches);
    const pdf = await pictureOfPdf(sheet);
    const svg = pictureOfSvg(toSvg(sheet, { text }), sheet);
    expect(Math.abs(svg.height - pdf.height)).toBeLessThanOrEqual(1);
    expect(apart(pdf, svg)).toBe(0);
  });

  test('the comparison sees one numeral changed', async () => {
    const sheet = sampleSheet(inches);
    const furniture = sheet.furniture.map((mark) => (mark.kind === 'text' ? { ...mark, text: 'Sheet 7 of 1' } : mark));
    const pdf = await pictureOfPdf(sheet);
    expect(apart(pdf, pictureOfSvg(toSvg({ ...sheet, furniture }, { text: 'outlines' }), sheet))).toBeGreaterThan(3);
  });

  test('the comparison sees one line moved by 0.4 mm', async () => {
    const sheet = sampleSheet(inches);
    const furniture = sheet.furniture.map((mark) =>
      mark.kind === 'path'
        ? { ...mark, path: mark.path.map((s) => (s[0] === 'L' ? (['L', s[1] - 0.4, s[2]] as const) : s)) }
        : mark,
    );
    const pdf = await pictureOfPdf(sheet);
    const svg = pictureOfSvg(toSvg({ ...sheet, furniture }, { text: 'outlines' }), sheet);
    expect(apart(pdf, svg)).toBeGreaterThan(100);
  });
});
