import PDFDocument from 'pdfkit';
import { askFullSize, type Catalogued, type Layers, labelPages, layersOf } from './catalog.ts';
import { features, fontBytes, sizeOf } from './font/face.ts';
import { printable, textStart } from './lettering.ts';
import type { Mark, Path, PathMark, Point, Role, Sheet, TextMark } from './mark.ts';
import { fillOf, pen } from './pen.ts';

/** What a PDF says of itself. */
export interface PdfMeta {
  /** Title, shown by viewers in place of the file's name. */
  readonly title: string;
  /** Language of the texts, as in `en` or `en-GB`; `en` when absent. */
  readonly language?: string;
  /** What it is about, in a line. */
  readonly subject?: string;
  /** Who made it. */
  readonly author?: string;
  /** Date of making, `YYYY-MM-DD`; 2000-01-01 when absent, so that the same sheets always make the same bytes. */
  readonly date?: string;
  /** `false` writes page contents that can be read as text. */
  readonly compress?: boolean;
}

/** Default user space of a page: 72 units to the inch. ISO 32000-1, 8.3.2.3. */
const point = 72 / 25.4;

type Doc = PDFKit.PDFDocument & Catalogued;

/**
 * The sheets as a PDF: one page a sheet, text that can be selected, layers, bookmarks, page labels, figures with
 * alternative text. Every coordinate is worked out here and drawn without scaling or turning, so that the page holds the
 * display list's own numbers. The same input gives the same bytes.
 *
 * @throws {RangeError} when there is no sheet, or the date isn't one.
 */
export async function toPdf(sheets: readonly Sheet[], meta: PdfMeta): Promise<Uint8Array> {
  if (sheets.length === 0) throw new RangeError('invalid sheets: none (expected at least one)');
  const doc = open(meta);
  const written = bytesOf(doc);
  const layers = layersOf(doc);
  for (const sheet of sheets) {
    doc.addPage({ size: [sheet.width * point, sheet.height * point], margin: 0 });
    layers.addToPage();
    bookmark(doc, sheet);
    drawSheet(doc, layers, sheet);
  }
  labelPages(
    doc,
    sheets.map(({ label }) => label),
  );
  if (sheets.some(({ fullSize }) => fullSize)) askFullSize(doc);
  layers.finish();
  doc.end();
  return await written;
}

function open(meta: PdfMeta): Doc {
  const date = new Date(`${meta.date ?? '2000-01-01'}T00:00:00Z`);
  if (Number.isNaN(date.getTime())) throw new RangeError(`invalid date: ${meta.date} (expected YYYY-MM-DD)`);
  const doc = new PDFDocument({
    autoFirstPage: false,
    pdfVersion: '1.7',
    lang: meta.language ?? 'en',
    tagged: true,
    displayTitle: true,
    compress: meta.compress ?? true,
    // No font but the lettering: pdfkit would load one of its own.
    font: null as unknown as string,
    info: {
      Title: meta.title,
      ...(meta.subject === undefined ? {} : { Subject: meta.subject }),
      ...(meta.author === undefined ? {} : { Author: meta.author }),
      Creator: 'Wattlewright',
      Producer: 'Wattlewright with pdfkit',
      CreationDate: date,
      ModDate: date,
    },
  }) as Doc;
  doc.registerFont('regular', fontBytes('regular') as Uint8Array<ArrayBuffer>);
  doc.registerFont('semibold', fontBytes('semibold') as Uint8Array<ArrayBuffer>);
  return doc;
}

function bytesOf(doc: Doc): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  return new Promise((resolve, reject) => {
    doc.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    doc.on('error', reject);
    doc.on('end', () => {
      const bytes = new Uint8Array(chunks.reduce((n, chunk) => n + chunk.length, 0));
      let at = 0;
      for (const chunk of chunks) {
        bytes.set(chunk, at);
        at += chunk.length;
      }
      resolve(bytes);
    });
  });
}

function bookmark(doc: Doc, sheet: Sheet): void {
  const page = doc.outline.addItem(`${sheet.label}  ${sheet.title}`);
  if (sheet.figures.length > 1) for (const { title } of sheet.figures) page.addItem(title);
}

function drawSheet(doc: Doc, layers: Layers, sheet: Sheet): void {
  const section = doc.struct('Sect', { title: sheet.title });
  doc.addStructure(section);
  for (const { title, alt, marks } of sheet.figures) {
    section.add(doc.struct('Figure', { title, alt }, () => drawMarks(doc, layers, marks)));
  }
  const { furniture } = sheet;
  // Ruling is no content for a reader who listens; the words of the title block are.
  doc.markContent('Artifact', { type: 'Layout' });
  drawMarks(
    doc,
    layers,
    furniture.filter(({ kind }) => kind === 'path'),
  );
  doc.endMarkedContent();
  const words = furniture.filter(({ kind }) => kind === 'text');
  if (words.length > 0) section.add(doc.struct('P', {}, () => drawMarks(doc, layers, words)));
  section.end();
}

function drawMarks(doc: Doc, layers: Layers, marks: readonly Mark[]): void {
  for (let i = 0; i < marks.length; ) {
    const { layer } = pen((marks[i] as Mark).role);
    let end = i + 1;
    while (end < marks.length && pen((marks[end] as Mark).role).layer === layer) end++;
    const run = marks.slice(i, end);
    layers.on(layer, () => drawRun(doc, run));
    i = end;
  }
}

function drawRun(doc: Doc, run: readonly Mark[]): void {
  let role: Role | undefined;
  for (const mark of run) {
    if (mark.kind === 'text') {
      drawText(doc, mark);
      role = undefined;
      continue;
    }
    if (mark.role !== role) takeUp(doc, mark.role);
    role = mark.role;
    drawPath(doc, mark);
  }
}

function takeUp(doc: Doc, role: Role): void {
  const { width, dash, stroke } = pen(role);
  if (width === 0) return;
  doc
    .lineWidth(width * point)
    .strokeColor(grey(stroke))
    .lineJoin('round');
  if (dash.length === 0) doc.undash().lineCap('round');
  // pdfkit takes an array of dashes; its published types know one length only.
  else doc.dash(dash.map((d) => d * point) as unknown as number, {}).lineCap('butt');
}

function drawPath(doc: Doc, mark: PathMark): void {
  const stroked = pen(mark.role).width > 0;
  const fill = fillOf(mark);
  if (!stroked && fill === undefined) return;
  trace(doc, mark.path);
  if (fill === undefined) {
    doc.stroke();
    return;
  }
  doc.fillColor(grey(fill));
  if (stroked) doc.fillAndStroke();
  else doc.fill();
}

function trace(doc: Doc, path: Path): void {
  for (const step of path) {
    if (step[0] === 'Z') doc.closePath();
    else if (step[0] === 'M') doc.moveTo(step[1] * point, step[2] * point);
    else if (step[0] === 'L') doc.lineTo(step[1] * point, step[2] * point);
    else {
      const [, a, b, c, d, e, f] = step;
      doc.bezierCurveTo(a * point, b * point, c * point, d * point, e * point, f * point);
    }
  }
}

function drawText(doc: Doc, mark: TextMark): void {
  const { weight, stroke } = pen(mark.role);
  const { text } = printable(mark.text);
  if (text.trim() === '') return;
  const [x, y] = textStart(mark).map((n) => n * point) as unknown as Point;
  doc
    .font(weight)
    .fontSize(sizeOf(mark.height, weight) * point)
    .fillColor(grey(stroke));
  // An object of features, as the shaper takes them; the published types know only a list of those to switch on.
  const how = { lineBreak: false, baseline: 'alphabetic', features: { ...features } as never } as const;
  if (mark.angle === 0) {
    doc.text(text, x, y, how);
    return;
  }
  doc.save().rotate(-mark.angle, { origin: [x, y] });
  doc.text(text, x, y, how).restore();
}

function grey(shade: number): string {
  const level = Math.round(255 * Math.min(1, Math.max(0, shade)))
    .toString(16)
    .padStart(2, '0');
  return `#${level}${level}${level}`;
}
