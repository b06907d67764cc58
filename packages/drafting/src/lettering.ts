import { face, shape, sizeOf } from './font/face.ts';
import { boxOf } from './ink.ts';
import type { Box, Point, TextMark } from './mark.ts';
import { pen, type Weight } from './pen.ts';

/** A text as it can be printed, and what had to be replaced. */
export interface Printable {
  /** The text to print. */
  readonly text: string;
  /** Each character, or cluster of characters, that the lettering lacks, in the order met. */
  readonly replaced: readonly string[];
}

/** Stands where the lettering has no glyph for a letter, so that nothing is ever blank. */
const missing = '□';

/** What is printed for a character that the lettering lacks: of a sign its code, such as `[U+1FAB5]`, of a letter □. */
function standIn(segment: string): string {
  const code = segment.codePointAt(0) as number;
  return /^\p{S}/u.test(segment) ? `[U+${code.toString(16).toUpperCase().padStart(4, '0')}]` : missing;
}

/** Signs of drawing practice that the lettering lacks, and what it prints for them. */
const stand: Readonly<Record<string, string>> = {
  '⌀': 'Ø',
  '\t': ' ',
  '\n': ' ',
  '\r': ' ',
  '\u2028': ' ',
  '\u2029': ' ',
};
/** Characters that have no ink of their own: joiners, direction and variation marks. */
const inkless = /\p{Default_Ignorable_Code_Point}/gu;
const clusters = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** The text with every character that the lettering lacks replaced: by its plain equal where there is one, else by its code or □. */
export function printable(text: string): Printable {
  if (/^[ -~]*$/.test(text)) return { text, replaced: [] };
  const replaced: string[] = [];
  let out = '';
  for (const { segment } of clusters.segment(text.normalize('NFC'))) {
    const ink = stand[segment] ?? segment.replace(inkless, '');
    const plain = ink.normalize('NFKC');
    if (covers(ink)) out += ink;
    else if (covers(plain)) out += plain;
    else if (segment === '\r\n') out += ' ';
    else {
      out += standIn(segment);
      replaced.push(segment);
    }
  }
  return { text: out, replaced };
}

function covers(text: string): boolean {
  const font = face('regular');
  return [...text].every((c) => c >= ' ' && font.hasGlyphForCodePoint(c.codePointAt(0) as number));
}

/** The text with every fraction such as `3/16` set as a true fraction, numbers over one bar. Dates and ratios stay. */
export function fractions(text: string): string {
  return text.replace(/(?<![\d/.])(\d{1,3})\/(\d{1,3})(?![\d/.]*\d)/g, '$1\u2044$2');
}

/** Extent of a printed text from its start on the baseline, as parts of the font size. */
interface Extent {
  readonly width: number;
  readonly top: number;
  readonly bottom: number;
}

// Shaping is the costly step of measuring, and the same few hundred texts are measured over and over.
const measured: Record<Weight, Map<string, Extent>> = { regular: new Map(), semibold: new Map() };
const mostMeasured = 20_000;

function extent(text: string, weight: Weight): Extent {
  const known = measured[weight].get(text);
  if (known) return known;
  const run = shape(printable(text).text, weight);
  const { unitsPerEm } = face(weight);
  const { minY, maxY } = run.bbox;
  const inked = Number.isFinite(minY) && Number.isFinite(maxY);
  const found = {
    width: run.advanceWidth / unitsPerEm,
    top: inked ? maxY / unitsPerEm : 0,
    bottom: inked ? minY / unitsPerEm : 0,
  };
  if (measured[weight].size >= mostMeasured) measured[weight].clear();
  measured[weight].set(text, found);
  return found;
}

/** Width of a text as printed, mm, with capitals `height` mm high. Measured from the embedded font with its kerning. */
export function textWidth(text: string, height: number, weight: Weight = 'regular'): number {
  return extent(text, weight).width * sizeOf(height, weight);
}

/** The four corners of the ink of a text, mm on paper: from its start below the baseline, anticlockwise. */
export function textCorners(mark: TextMark): readonly [Point, Point, Point, Point] {
  const { weight } = pen(mark.role);
  const size = sizeOf(mark.height, weight);
  const { width, top, bottom } = extent(mark.text, weight);
  const start = -shareBefore[mark.anchor] * width * size;
  const turn = (mark.angle * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const at = (along: number, up: number): Point => [
    mark.at[0] + along * cos - up * sin,
    mark.at[1] - along * sin - up * cos,
  ];
  const [end, low, high] = [start + width * size, bottom * size, top * size];
  return [at(start, low), at(end, low), at(end, high), at(start, high)];
}

/** Share of a text's width that lies before its `at` point. */
const shareBefore = { start: 0, middle: 0.5, end: 1 } as const;

/** Where the text starts on its baseline, mm on paper, whatever its anchor. */
export function textStart(mark: TextMark): Point {
  const { weight } = pen(mark.role);
  const back = shareBefore[mark.anchor] * textWidth(mark.text, mark.height, weight);
  const turn = (mark.angle * Math.PI) / 180;
  return [mark.at[0] - back * Math.cos(turn), mark.at[1] + back * Math.sin(turn)];
}

/** The smallest upright box round the ink of a text, mm on paper. */
export function textBox(mark: TextMark): Box {
  return boxOf(textCorners(mark));
}

/** The text, or as much of its start as fits in `width` mm with `…` after it; `…` alone where nothing fits. */
export function fitText(text: string, width: number, height: number, weight: Weight = 'regular'): string {
  if (textWidth(text, height, weight) <= width) return text;
  const pieces = [...clusters.segment(text)].map(({ segment }) => segment);
  let [fits, over] = [0, pieces.length];
  while (over - fits > 1) {
    const half = Math.floor((fits + over) / 2);
    const cut = `${pieces.slice(0, half).join('').trimEnd()}…`;
    if (textWidth(cut, height, weight) <= width) fits = half;
    else over = half;
  }
  return `${pieces.slice(0, fits).join('').trimEnd()}…`;
}

/** More than the share of a line by which its width differs from the sum of its words: measured, less than rounding. */
const DOUBT = 0.03;

/** The text in lines no wider than `width` mm, broken between words; a word that is wider than a line is broken itself. */
export function wrapText(text: string, width: number, height: number, weight: Weight = 'regular'): string[] {
  const fits = (line: string): boolean => textWidth(line, height, weight) <= width;
  const space = textWidth(' ', height, weight);
  const lines: string[] = [];
  let line = '';
  let sum = 0;
  for (const word of text.split(/[ \n\t]+/).filter((w) => w !== '')) {
    const longer = line === '' ? word : `${line} ${word}`;
    sum = (line === '' ? 0 : sum + space) + textWidth(word, height, weight);
    // Words are measured again and again, lines are not: a line is measured only where the sum of its words leaves doubt.
    if (sum < width * (1 - DOUBT) || (sum < width * (1 + DOUBT) && fits(longer))) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    line = '';
    for (const { segment } of clusters.segment(word)) {
      if (line !== '' && !fits(line + segment)) {
        lines.push(line);
        line = '';
      }
      line += segment;
    }
    sum = textWidth(line, height, weight);
  }
  if (line !== '' || lines.length === 0) lines.push(line);
  return lines;
}
