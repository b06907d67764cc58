import { type Container, SVG, withWindow } from '@svgdotjs/svg.js';
import { emptyWindow } from '#window';
import { sizeOf } from './font/face.ts';
import { textOutline } from './font/outline.ts';
import { family, subsetFont } from './font/subset.ts';
import { printable } from './lettering.ts';
import { forMachine } from './machine.ts';
import type { Box, Drawing, Mark, Path, Role, Sheet, TextMark } from './mark.ts';
import { fillOf, pen, type Weight } from './pen.ts';

/** How `toSvg` writes a drawing. */
export interface SvgOptions {
  /** `font` keeps text as text, in an embedded font; `outlines` turns letters into paths. Machine drawings default to outlines. */
  readonly text?: 'font' | 'outlines';
  /** For a cutter: real size, only edges and ticks, each edge one closed path where it closes, one group per role. */
  readonly machine?: boolean;
}

/** What the writer needs to know of a drawing or a sheet. */
interface Picture {
  readonly title: string;
  readonly desc: string;
  readonly box: Box;
  readonly groups: readonly { readonly id: string; readonly title: string; readonly marks: readonly Mark[] }[];
}

/** Room round a drawing that has no paper of its own, mm, so that the outermost lines keep their whole width. */
const room = 1;

/**
 * A drawing or a sheet as an SVG document, one unit to the millimetre. The same input gives the same text.
 * Text that the lettering lacks is printed as □.
 */
export function toSvg(what: Drawing | Sheet, options: SvgOptions = {}): string {
  const machine = options.machine === true;
  const picture = 'figures' in what ? sheetPicture(what) : drawingPicture(machine ? forMachine(what) : what, machine);
  const outlines = (options.text ?? (machine ? 'outlines' : 'font')) === 'outlines';
  const window = emptyWindow();
  return withWindow(window as never, () => write(picture, outlines)) as string;
}

function drawingPicture(drawing: Drawing, machine: boolean): Picture {
  const { u0, v0, u1, v1 } = drawing.bounds;
  const around = machine ? 0 : room;
  return {
    title: drawing.title,
    desc: drawing.alt,
    box: { u0: u0 - around, v0: v0 - around, u1: u1 + around, v1: v1 + around },
    groups: [{ id: drawing.name, title: drawing.title, marks: drawing.marks }],
  };
}

function sheetPicture(sheet: Sheet): Picture {
  const desc = sheet.figures.map(({ alt }) => alt).join(' ');
  return {
    title: sheet.title,
    desc: desc === '' ? sheet.title : desc,
    box: { u0: 0, v0: 0, u1: sheet.width, v1: sheet.height },
    groups: [
      ...sheet.figures.map(({ name, title, marks }) => ({ id: name, title, marks })),
      { id: 'sheet', title: 'Sheet', marks: sheet.furniture },
    ],
  };
}

function write(picture: Picture, outlines: boolean): string {
  const { u0, v0, u1, v1 } = picture.box;
  const root = SVG().attr({
    width: `${number(u1 - u0)}mm`,
    height: `${number(v1 - v0)}mm`,
    viewBox: [u0, v0, u1 - u0, v1 - v0].map(number).join(' '),
    role: 'img',
    'aria-labelledby': 'drawing-title drawing-desc',
    'text-rendering': 'geometricPrecision',
    fill: 'none',
    'stroke-linecap': 'round',
    'stroke-linejoin': 'round',
  });
  root.element('title').id('drawing-title').words(legal(picture.title));
  root.element('desc').id('drawing-desc').words(legal(picture.desc));
  const texts = picture.groups.flatMap(({ marks }) => marks.filter((mark) => mark.kind === 'text'));
  if (!outlines && texts.length > 0) root.element('style').words(fontRules(texts));
  const taken = new Set(['drawing-title', 'drawing-desc']);
  for (const { id, title, marks } of picture.groups) {
    const figure = root.group().id(freeId(id, taken)).addClass('figure');
    figure.element('title').words(legal(title));
    for (const run of runs(marks)) writeRun(figure, run, outlines);
  }
  return root.svg();
}

/** Marks in order, cut where the role or the kind changes, so that each group has one look and the order of ink stays. */
function runs(marks: readonly Mark[]): Mark[][] {
  const out: Mark[][] = [];
  for (const mark of marks) {
    const run = out.at(-1);
    if (run?.[0]?.role === mark.role && run[0].kind === mark.kind) run.push(mark);
    else out.push([mark]);
  }
  return out;
}

function writeRun(figure: Container, run: readonly Mark[], outlines: boolean): void {
  const [first] = run;
  if (!first) return;
  const group = figure.group().addClass(first.role);
  if (first.kind === 'text')
    group.attr({ fill: grey(pen(first.role).stroke), ...(outlines ? {} : lettering(first.role)) });
  else group.attr(look(first.role));
  for (const mark of run) {
    if (mark.kind === 'text' && !outlines) writeText(group, mark);
    else {
      const data = pathData(mark.kind === 'text' ? textOutline(mark) : mark.path);
      const drawn = group.element('path').attr({ d: data });
      if (mark.kind === 'path' && mark.shade !== undefined) drawn.attr({ fill: grey(fillOf(mark) as number) });
      if (mark.of !== undefined) drawn.attr({ 'data-part': legal(mark.of) });
    }
  }
}

function look(role: Role): Record<string, string> {
  const { width, dash, stroke, fill } = pen(role);
  return {
    ...(fill === undefined ? {} : { fill: grey(fill) }),
    ...(width === 0 ? {} : { stroke: grey(stroke), 'stroke-width': number(width) }),
    ...(dash.length === 0 ? {} : { 'stroke-dasharray': dash.map(number).join(' '), 'stroke-linecap': 'butt' }),
  };
}

function lettering(role: Role): Record<string, string> {
  return { 'font-family': `'${family}', sans-serif`, 'font-weight': cssWeight[pen(role).weight] };
}

const cssWeight: Readonly<Record<Weight, string>> = { regular: '400', semibold: '600' };

function writeText(group: Container, mark: TextMark): void {
  const { text } = printable(mark.text);
  const [u, v] = mark.at.map(number) as [string, string];
  const element = group.element('text').words(text);
  element.attr({ x: u, y: v, 'font-size': number(sizeOf(mark.height, pen(mark.role).weight)) });
  if (mark.anchor !== 'start') element.attr({ 'text-anchor': mark.anchor });
  if (mark.angle !== 0) element.attr({ transform: `rotate(${number(-mark.angle)} ${u} ${v})` });
  if (/^ | $| {2}/.test(text)) element.attr({ 'xml:space': 'preserve' });
  if (mark.of !== undefined) element.attr({ 'data-part': legal(mark.of) });
}

function fontRules(texts: readonly TextMark[]): string {
  const weights: readonly Weight[] = ['regular', 'semibold'];
  return weights
    .flatMap((weight) => {
      const used = texts.filter(({ role }) => pen(role).weight === weight).map(({ text }) => printable(text).text);
      if (used.length === 0) return [];
      const source = `url(data:font/ttf;base64,${base64(subsetFont(used, weight))}) format('truetype')`;
      return [`@font-face{font-family:'${family}';font-weight:${cssWeight[weight]};src:${source}}`];
    })
    .join('\n');
}

function base64(bytes: Uint8Array): string {
  let letters = '';
  for (const byte of bytes) letters += String.fromCharCode(byte);
  return btoa(letters);
}

function pathData(path: Path): string {
  return path.map(([letter, ...numbers]) => letter + numbers.map(number).join(' ')).join('');
}

/** The one way numbers leave for an SVG: ten thousandths of a millimetre, no exponent, no negative zero. */
function number(n: number): string {
  return String(Math.round(n * 1e4) / 1e4 + 0);
}

function grey(shade: number): string {
  const level = Math.round(255 * Math.min(1, Math.max(0, shade)))
    .toString(16)
    .padStart(2, '0');
  return `#${level}${level}${level}`;
}

/** Text without the characters that XML does not allow at all. */
function legal(text: string): string {
  return text.replace(/[\p{Cc}\p{Cs}\uFFFE\uFFFF]/gu, (c) => ('\t\n\r'.includes(c) ? c : '□'));
}

function freeId(name: string, taken: Set<string>): string {
  const plain = name.replace(/[^A-Za-z0-9_-]+/g, '-').replace(/^(?![A-Za-z])/, 'd-');
  let id = plain;
  for (let n = 2; taken.has(id); n++) id = `${plain}-${n}`;
  taken.add(id);
  return id;
}
