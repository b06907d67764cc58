import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { textWidth } from '../src/lettering.ts';
import type { TextMark } from '../src/mark.ts';
import { toPdf } from '../src/pdf.ts';
import { toSvg } from '../src/svg.ts';
import { lacking } from './support/outside.ts';
import { readSvg } from './support/readers.ts';
import { sampleDrawing, sampleMarks, sampleSheet } from './support/samples.ts';

const path = '/usr/bin/chromium';
const missing = lacking(path);
/** CSS pixels to the millimetre: 96 to the inch (CSS Values 3, 6.2). */
const px = 96 / 25.4;

interface Size {
  readonly x: number;
  readonly width: number;
  readonly height: number;
}

describe.skipIf(missing)(`in a browser${missing ? ` (${missing})` : ''}`, () => {
  let browser: Browser;
  let page: Page;
  beforeAll(async () => {
    browser = await chromium.launch({ executablePath: path, args: ['--no-sandbox', '--disable-gpu'] });
    page = await browser.newPage();
  });
  afterAll(async () => await browser?.close());

  const show = async (svg: string): Promise<void> => {
    await page.setContent(`<!doctype html><body style="margin:0">${svg}`);
    await page.evaluate('document.fonts.ready.then(() => undefined)');
  };

  test('toSvg(sheet) is as large in CSS pixels as its millimetres', async () => {
    await show(toSvg(sampleSheet()));
    const size = await page.evaluate<Size>("document.querySelector('svg').getBoundingClientRect().toJSON()");
    // Browsers lay boxes out in 1/64 of a pixel, 0.004 mm.
    expect(Math.abs(size.width - 130 * px)).toBeLessThan(1 / 64);
    expect(Math.abs(size.height - 100 * px)).toBeLessThan(1 / 64);
  });

  test('toSvg(drawing, machine) measures its real size', async () => {
    await show(toSvg(sampleDrawing(), { machine: true }));
    const rail = await page.evaluate<Size>("document.querySelector('[data-part=A]').getBoundingClientRect().toJSON()");
    // The rail of the sample is 70 × 15 mm on paper at 1:10, 20 mm from the left.
    expect(rail.x).toBeCloseTo(200 * px, 1);
    expect(rail.width).toBeCloseTo(700 * px, 1);
    expect(rail.height).toBeCloseTo(150 * px, 1);
  });

  test('texts are as wide as textWidth says, to 0.5 %, by the embedded font alone', async () => {
    await show(toSvg(sampleSheet()));
    const widths = await page.evaluate<number[]>(
      "[...document.querySelectorAll('svg .figure text')].map((t) => t.getComputedTextLength())",
    );
    const texts = sampleMarks().filter((mark): mark is TextMark => mark.kind === 'text');
    texts.forEach((mark, i) => {
      const width = textWidth(mark.text, mark.height, mark.role === 'title' ? 'semibold' : 'regular');
      expect(Math.abs((widths[i] as number) / width - 1), mark.text).toBeLessThan(0.005);
    });
    expect(await page.evaluate('[...document.fonts].map(({ status }) => status)')).toEqual(['loaded', 'loaded']);
  });

  test('a fraction is shaped as one, not as full digits and a stroke', async () => {
    const [fraction = 0, plain = 0] = await page.evaluate<number[]>(`(() => {
      const text = document.querySelector('svg .label text');
      const whole = text.getComputedTextLength();
      text.textContent = '44 13/16';
      return [whole, text.getComputedTextLength()];
    })()`);
    expect(fraction).toBeCloseTo(textWidth('44 13⁄16', 2.5), 1);
    expect(plain).toBeGreaterThan(fraction * 1.1);
  });

  test('the drafting package bundled for a browser makes the same SVG and the same PDF', async () => {
    const bundle = await build({
      entryPoints: [fileURLToPath(new URL('support/page.ts', import.meta.url))],
      bundle: true,
      write: false,
      platform: 'browser',
      format: 'esm',
      conditions: ['@wattlewright/source'],
      // A solver that the model loads only when it plans cuts asks for these when it finds itself in Node.
      external: ['node:*'],
    });
    const faults: string[] = [];
    page.on('pageerror', (error) => faults.push(error.message));
    // A page with an address, as a bundled module has one; answered here, nothing goes over any wire.
    await page.route('http://localhost/**', async (route) => {
      const script = route.request().url().endsWith('.js');
      const body = script
        ? (bundle.outputFiles[0]?.text ?? '')
        : '<!doctype html><script type="module" src="page.js"></script>';
      await route.fulfill({ contentType: script ? 'text/javascript' : 'text/html', body });
    });
    await page.goto('http://localhost/', { waitUntil: 'load' });
    expect(faults).toEqual([]);
    const made = await page.evaluate<{ svg: string; pdf: number[] }>('make()');
    expect(Uint8Array.from(made.pdf)).toEqual(await toPdf([sampleSheet()], { title: 'Browser', compress: false }));
    const { paths, texts } = readSvg(made.svg);
    const here = readSvg(toSvg(sampleSheet()));
    expect(paths).toEqual(here.paths);
    expect(texts).toEqual(here.texts);
  });
});
