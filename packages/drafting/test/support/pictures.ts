import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import pixelmatch from 'pixelmatch';
import { PNG } from 'pngjs';
import { family, subsetFont } from '../../src/font/subset.ts';
import { printable } from '../../src/lettering.ts';
import type { Sheet } from '../../src/mark.ts';
import { toPdf } from '../../src/pdf.ts';
import { pen } from '../../src/pen.ts';
import { inkOf } from './expected.ts';

const dpi = 400;
const shrink = 4;

/** The PDF as poppler draws it. */
export async function pictureOfPdf(sheet: Sheet, folder: string): Promise<PNG> {
  const file = join(folder, 'sheet.pdf');
  writeFileSync(file, await toPdf([sheet], { title: 'Picture' }));
  const done = spawnSync('pdftoppm', ['-r', `${dpi}`, '-png', '-singlefile', file, join(folder, 'pdf')]);
  if (done.status !== 0) throw new Error(`pdftoppm failed: ${done.stderr}`);
  return PNG.sync.read(readFileSync(join(folder, 'pdf.png')));
}

/** The SVG as resvg draws it, with no font of the machine's. */
export function pictureOfSvg(svg: string, sheet: Sheet, folder: string): PNG {
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
export function apart(a: PNG, b: PNG): number {
  const [one, other] = [smaller(a), smaller(b)];
  return pixelmatch(one.data, other.data, undefined, one.width, one.height, { threshold: 0.4, includeAA: true });
}
