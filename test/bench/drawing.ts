import { Readable } from 'node:stream';
import { SVG, withWindow } from '@svgdotjs/svg.js';
import {
  elevationMaker,
  fillOf,
  type Mark,
  type Path,
  pen,
  type Sheet,
  standardScale,
  toPdf,
  toSvg,
} from '@wattlewright/drafting';
import type { Panel, Part } from '@wattlewright/model';
import PDFDocument from 'pdfkit';
import { fontBytes } from '../../packages/drafting/src/font/face.ts';
import { emptyWindow } from '../../packages/drafting/src/window/node.ts';
import type { Work } from './timing.ts';

/** Points to the millimetre. */
const POINT = 72 / 25.4;

const grey = (shade: number): string => {
  const level = Math.round(255 * shade)
    .toString(16)
    .padStart(2, '0');
  return `#${level}${level}${level}`;
};

/** A drawing as the display list that both a backend of ours and a bare one are fed. */
export function elevationOf(
  panel: Panel,
  parts: readonly Part[],
): ReturnType<ReturnType<typeof elevationMaker>['make']> {
  return elevationMaker(panel, { parts }).make(standardScale(1 / 10, 'mm'));
}

/** The drawing alone on a sheet of its own size. */
function sheetOf({ name, title, alt, marks, bounds }: ReturnType<typeof elevationOf>): Sheet {
  const [width, height] = [bounds.u1 - bounds.u0, bounds.v1 - bounds.v0];
  const figures = [{ name, title, alt, marks }];
  const page = { width, height, paper: 'its own', title, label: '1' };
  return {
    ...page,
    figures,
    furniture: [],
    inside: { u0: 0, v0: 0, u1: width, v1: height },
    chains: [],
    fullSize: false,
  };
}

/** svg.js itself: one element a mark, its attributes on it, text in a font that is on the machine. */
function bareSvg(marks: readonly Mark[]): string {
  const window = emptyWindow();
  return withWindow(window as never, () => {
    const root = SVG();
    for (const mark of marks) {
      const { width, stroke } = pen(mark.role);
      if (mark.kind === 'text') {
        const text = root.plain(mark.text).attr({ x: mark.at[0], y: mark.at[1], 'font-size': mark.height * 1.4 });
        if (mark.angle !== 0) text.attr({ transform: `rotate(${-mark.angle} ${mark.at[0]} ${mark.at[1]})` });
        continue;
      }
      const fill = fillOf(mark);
      root.path(dataOf(mark.path)).attr({
        fill: fill === undefined ? 'none' : grey(fill),
        stroke: width === 0 ? 'none' : grey(stroke),
        'stroke-width': width,
      });
    }
    return root.svg();
  }) as unknown as string;
}

function dataOf(path: Path): string {
  return path.map(([letter, ...numbers]) => letter + numbers.join(' ')).join('');
}

/** pdfkit itself: every mark with its pen, text in the same font; no tags, no layers. */
async function barePdf(marks: readonly Mark[], { width, height }: Sheet): Promise<Uint8Array> {
  const doc = new PDFDocument({ size: [width * POINT, height * POINT], margin: 0 });
  doc.registerFont('lettering', fontBytes('regular') as Uint8Array<ArrayBuffer>).font('lettering');
  doc.scale(POINT);
  for (const mark of marks) {
    const { width: line, stroke } = pen(mark.role);
    if (mark.kind === 'text') {
      const [u, v] = mark.at;
      doc
        .save()
        .rotate(-mark.angle, { origin: [u, v] })
        .fontSize(mark.height * 1.4)
        .fillColor(grey(stroke));
      doc.text(mark.text, u, v, { lineBreak: false, baseline: 'alphabetic' }).restore();
      continue;
    }
    for (const [letter, ...n] of mark.path) {
      if (letter === 'Z') doc.closePath();
      else if (letter === 'M') doc.moveTo(n[0] as number, n[1] as number);
      else if (letter === 'L') doc.lineTo(n[0] as number, n[1] as number);
      else doc.bezierCurveTo(...(n as [number, number, number, number, number, number]));
    }
    const fill = fillOf(mark);
    doc
      .lineWidth(line)
      .strokeColor(grey(stroke))
      .fillColor(grey(fill ?? 0));
    if (fill === undefined) doc.stroke();
    else if (line > 0) doc.fillAndStroke();
    else doc.fill();
  }
  doc.end();
  const chunks: Buffer[] = [];
  for await (const chunk of Readable.from(doc as unknown as AsyncIterable<Buffer>)) chunks.push(chunk);
  return Buffer.concat(chunks);
}

/** Ours and the bare libraries, all fed the same marks. */
export function drawingWorks(panel: Panel, parts: readonly Part[]): readonly Work[] {
  const drawing = elevationOf(panel, parts);
  const sheet = sheetOf(drawing);
  return [
    { name: 'SVG', run: () => toSvg(drawing) },
    { name: 'SVG, letters as outlines', run: () => toSvg(drawing, { text: 'outlines' }) },
    { name: 'SVG by bare svg.js, no font', run: () => bareSvg(drawing.marks) },
    { name: 'PDF', run: () => toPdf([sheet], { title: drawing.title }) },
    { name: 'PDF by bare pdfkit, same font', run: () => barePdf(drawing.marks, sheet) },
  ];
}
