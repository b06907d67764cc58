import * as mupdf from 'mupdf';
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { SaxesParser } from 'saxes';

/** What an outside reader saw on a page: each path's points in order, and where each text starts; mm, `v` down. */
export interface Seen {
  readonly paths: readonly (readonly number[])[];
  readonly texts: readonly { readonly text: string; readonly u: number; readonly v: number }[];
}

const millimetre = 25.4 / 72;

type Matrix = [number, number, number, number, number, number];
const times = (m: Matrix, n: Matrix): Matrix => [
  m[0] * n[0] + m[2] * n[1],
  m[1] * n[0] + m[3] * n[1],
  m[0] * n[2] + m[2] * n[3],
  m[1] * n[2] + m[3] * n[3],
  m[0] * n[4] + m[2] * n[5] + m[4],
  m[1] * n[4] + m[3] * n[5] + m[5],
];

/** Reads a page with pdf.js. */
export async function readByPdfjs(pdf: Uint8Array, pageNumber = 1): Promise<Seen> {
  const document = await getDocument({ data: pdf.slice(), verbosity: 0 }).promise;
  const page = await document.getPage(pageNumber);
  const height = (page.view[3] as number) - (page.view[1] as number);
  const { fnArray, argsArray } = await page.getOperatorList();
  let ctm: Matrix = [1, 0, 0, 1, 0, 0];
  const stack: Matrix[] = [];
  const paths: number[][] = [];
  fnArray.forEach((fn, i) => {
    const args = argsArray[i];
    if (fn === OPS.save) stack.push(ctm);
    else if (fn === OPS.restore) ctm = stack.pop() as Matrix;
    else if (fn === OPS.transform) ctm = times(ctm, args as Matrix);
    else if (fn === OPS.constructPath) paths.push(mapped(args[1][0] as ArrayLike<number>, ctm, height));
  });
  const content = await page.getTextContent();
  const texts = content.items.flatMap((item) =>
    'str' in item && item.str.trim() !== ''
      ? [{ text: item.str, u: item.transform[4] * millimetre, v: (height - item.transform[5]) * millimetre }]
      : [],
  );
  await document.destroy();
  return { paths, texts };
}

/** pdf.js packs a path as codes 0 move, 1 line, 2 curve, 4 close, each followed by its numbers. */
function mapped(data: ArrayLike<number>, m: Matrix, height: number): number[] {
  const out: number[] = [];
  const sizes: Record<number, number> = { 0: 1, 1: 1, 2: 3, 3: 2, 4: 0 };
  for (let i = 0; i < data.length; ) {
    const count = sizes[data[i++] as number] as number;
    for (let k = 0; k < count; k++, i += 2) {
      const [x, y] = [data[i] as number, data[i + 1] as number];
      out.push((m[0] * x + m[2] * y + m[4]) * millimetre, (height - (m[1] * x + m[3] * y + m[5])) * millimetre);
    }
  }
  return out;
}

/** Reads a page with MuPDF. A path that is filled and stroked comes twice. */
export function readByMupdf(pdf: Uint8Array, pageNumber = 1): Seen {
  const document = mupdf.Document.openDocument(pdf, 'application/pdf');
  const page = document.loadPage(pageNumber - 1);
  const paths: number[][] = [];
  const texts: { text: string; u: number; v: number }[] = [];
  const take = (path: mupdf.Path, ctm: mupdf.Matrix): void => {
    const out: number[] = [];
    const put = (...points: number[]): void => {
      for (let i = 0; i < points.length; i += 2) {
        const [x, y] = [points[i] as number, points[i + 1] as number];
        out.push((ctm[0] * x + ctm[2] * y + ctm[4]) * millimetre, (ctm[1] * x + ctm[3] * y + ctm[5]) * millimetre);
      }
    };
    path.walk({ moveTo: put, lineTo: put, curveTo: put, closePath() {} });
    paths.push(out);
  };
  const device = new mupdf.Device({
    fillPath: (path, _evenOdd, ctm) => take(path, ctm),
    strokePath: (path, _stroke, ctm) => take(path, ctm),
    fillText(text, ctm) {
      let [first, letters] = [undefined as mupdf.Matrix | undefined, ''];
      text.walk({
        showGlyph(_font, trm, _glyph, unicode) {
          first ??= trm;
          letters += unicode > 0 ? String.fromCodePoint(unicode) : '';
        },
      });
      const [, , , , x, y] = first ?? ctm;
      const u = (ctm[0] * x + ctm[2] * y + ctm[4]) * millimetre;
      texts.push({ text: letters, u, v: (ctm[1] * x + ctm[3] * y + ctm[5]) * millimetre });
    },
  });
  page.run(device, mupdf.Matrix.identity);
  device.close();
  return { paths, texts };
}

/** Reads an SVG with an XML parser and a path parser of its own; texts as they are anchored. */
export function readSvg(svg: string): Seen & { readonly attributes: Record<string, string> } {
  const paths: number[][] = [];
  const texts: { text: string; u: number; v: number }[] = [];
  let attributes: Record<string, string> = {};
  let open: { text: string; u: number; v: number } | undefined;
  const parser = new SaxesParser();
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', ({ name, attributes: found }) => {
    const at = found as Record<string, string>;
    if (name === 'svg') attributes = at;
    if (name === 'path') paths.push((at.d ?? '').match(/-?\d+(\.\d+)?/g)?.map(Number) ?? []);
    if (name === 'text') open = { text: '', u: Number(at.x), v: Number(at.y) };
  });
  parser.on('text', (text) => {
    if (open) open.text += text;
  });
  parser.on('closetag', ({ name }) => {
    if (name === 'text' && open) texts.push(open);
    if (name === 'text') open = undefined;
  });
  parser.write(svg).close();
  return { paths, texts, attributes };
}
