import { moved } from '../ink.ts';
import { textWidth } from '../lettering.ts';
import type { Drawing, Mark, Point } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { line } from '../path.ts';
import { type FigureRow, figureLines } from './figurelist.ts';
import { balanced, columnsOf, type Line, wholeSteps } from './fill.ts';
import { lines } from './lines.ts';
import { ASCENT, DESCENT, LINE_STEP, TEXT, TEXT_LARGE } from './style.ts';

/**
 * A piece of running text. Steps are numbered in order through all pages; one that is a title, without a stop at its end,
 * is lettered heavier and stays with what follows. A caution has a heavy bar beside it and begins with its name, a stop a
 * heavy frame round it; `more` is said further of the bullet or caution before it, indented with it, and stays with it.
 */
export interface Block {
  readonly kind: 'heading' | 'paragraph' | 'step' | 'bullet' | 'caution' | 'stop' | 'more' | 'figures';
  readonly text: string;
  /** Whether the next block must start in the same column. */
  readonly keep?: boolean;
  /** Of `figures`, which has no text: a short table. */
  readonly rows?: readonly FigureRow[];
}

/** What `prosePages` needs to know. */
export interface ProseOptions {
  readonly name: string;
  readonly title: string;
  readonly alt: string;
  readonly blocks: readonly Block[];
  /** Width and height of a page, mm. */
  readonly width: number;
  readonly height: number;
  /** Columns on a page; 1 unless given. */
  readonly columns?: number;
  /** Whether a step with its cautions, text and figures moves to the next column as a whole, where one holds it and that costs no page. */
  readonly together?: boolean;
  /** Whether the columns of the last page are about equally long, so that what follows has the room under them. */
  readonly balanced?: boolean;
}

/** Between columns, mm. */
const GUTTER = 8;

/** Lines of a bullet that is not broken. Common practice, no source. */
const SHORT = 8;

/** Hanging indent of steps, bullets and cautions, mm. */
const INDENT = 7;

/**
 * Running text in columns on as many pages as it takes; the upper left corner of each is at the origin. A heading stays with
 * what follows, no block leaves its first or last line alone in a column, and neither a bullet of a few lines nor a caution
 * with what is said further of it is broken. A short table stands with the text before it. Where a step, or what a heading is over, goes on in another
 * column, its title is said again: `7. Mark the rails, continued`.
 */
export function prosePages(options: ProseOptions): Drawing[] {
  const { name, title, alt, blocks, width, height, columns = 1 } = options;
  const measure = (width - (columns - 1) * GUTTER) / columns;
  let step = 0;
  let over: readonly Line[] = [];
  const all = blocks.flatMap((block, i) => {
    if (block.kind === 'step') step += 1;
    const titles = isTitled(block);
    if (titles) over = [];
    const next = blocks[i + 1]?.kind;
    const laid = linesOf(block, measure, step);
    const isWhole =
      block.kind === 'caution' ||
      (block.kind === 'more' && blocks[i - 1]?.kind === 'caution') ||
      (block.kind === 'bullet' && laid.length <= SHORT);
    const own = laid.map((one, k, { length }) => ({
      ...one,
      keep: one.keep || block.keep === true || next === 'more' || (k < length - 1 ? isWhole : next === 'figures'),
      again: [...over, ...(one.again ?? [])],
    }));
    if (titles) over = linesOf({ ...block, text: `${block.text}, continued` }, measure, step);
    return own;
  });
  const { full, lost } = options.together
    ? wholeSteps(all, { height, columns })
    : { full: columnsOf(all, { height, lost: 0 }), lost: 0 };
  const filled = options.balanced ? balanced(full, all, { height, columns, lost }) : full;
  const pages = Array.from({ length: Math.max(1, Math.ceil(filled.length / columns)) }, (_, p) =>
    filled.slice(p * columns, (p + 1) * columns),
  );
  return pages.map((page, p) => {
    const many = pages.length > 1;
    return {
      name: many ? `${name}-${p + 1}` : name,
      title: many && title !== '' ? `${title} (${p + 1} of ${pages.length})` : title,
      scale: 0,
      scaleText: '',
      marks: page.flatMap((column, c) => moved(column.marks, { du: c * (measure + GUTTER), dv: 0 })),
      // Columns left empty are free for what comes next.
      bounds: {
        u0: 0,
        v0: 0,
        u1: page.length * (measure + GUTTER) - GUTTER,
        v1: Math.max(0, ...page.map((column) => column.height)),
      },
      alt,
    };
  });
}

/** Whether a block is a title: a heading, or a step whose text is not a sentence. */
function isTitled({ kind, text }: Block): boolean {
  return kind === 'heading' || (kind === 'step' && !/[.:;]$/.test(text));
}

function linesOf(block: Block, measure: number, step: number): Line[] {
  const { kind, text, rows = [] } = block;
  if (kind === 'figures') return figuresOf(rows, measure);
  if (kind === 'stop') return framed(text, measure);
  const size = kind === 'heading' ? TEXT_LARGE : TEXT;
  const indent = kind === 'heading' || kind === 'paragraph' ? 0 : INDENT;
  const isTitle = isTitled(block);
  const weight = isTitle ? 'semibold' : 'regular';
  const name = kind === 'caution' ? (LEVEL.exec(text)?.[0] ?? 'CAUTION') : '';
  const words = name === '' || text.startsWith(name) ? text : `${name} ${text}`;
  const wrapped = lines(words, measure - indent - (name === '' ? 0 : NAME_ROOM), { height: size, weight });
  const height = LINE_STEP * size;
  return wrapped.map((one, i) => {
    const base = ASCENT * size;
    const sign = kind === 'step' ? `${step}.` : kind === 'bullet' ? '•' : '';
    const marks: Mark[] =
      i === 0 && name !== ''
        ? namedLine(name, one.slice(name.length), [indent, base])
        : [write(isTitle ? 'title' : 'note', one, [indent, base], { height: size })];
    if (i === 0 && sign) marks.unshift(write(kind === 'step' ? 'title' : 'note', sign, [0, base], { height: size }));
    if (kind === 'caution')
      marks.unshift(
        stroke('accent', line([1, 0], [1, i < wrapped.length - 1 ? height + 0.1 : (ASCENT + DESCENT) * size])),
      );
    const alone = wrapped.length > 1 && (i === 0 || i === wrapped.length - 2);
    const starts = kind === 'step' && i === 0;
    return { marks, height, above: i > 0 ? 0 : spaceAbove(kind), keep: isTitle || alone, starts };
  });
}

/** As many figures of one name, or of none, stay together as can be taken in at a glance. Common practice, no source. */
const FEW = 6;

/** Figures: those of one name stay with it, and together where they are few; of many at least two stand in a column. */
function figuresOf(rows: readonly FigureRow[], measure: number): Line[] {
  const laid = figureLines(rows, INDENT, measure);
  let [head, first]: [Line | undefined, number] = [undefined, 0];
  return laid.map(({ marks, height, heads }, i) => {
    const above = i === 0 ? spaceAbove('figures') : 0;
    if (heads) [head, first] = [undefined, i + 1];
    const end = laid.findIndex((one, k) => k > i && one.heads);
    const last = (end < 0 ? laid.length : end) - 1;
    const isFew = last - first < FEW || i === first || i === last - 1;
    const again = head && i > first ? [head] : [];
    const one: Line = { marks, height, above, keep: heads || (i < last && isFew), again };
    if (heads) head = one;
    return one;
  });
}

/** From the frame of a stop to its text, mm. */
const FRAME_GAP = 2;

/** A stop in its frame, which is never broken. */
function framed(text: string, measure: number): Line[] {
  const name = LEVEL.exec(text)?.[0] ?? 'STOP';
  const words = text.startsWith(name) ? text : `${name} ${text}`;
  const wrapped = lines(words, measure - 2 * FRAME_GAP - NAME_ROOM);
  const last = wrapped.length - 1;
  return wrapped.map((one, i) => {
    const top = i === 0 ? FRAME_GAP : 0;
    const height = top + LINE_STEP * TEXT + (i === last ? FRAME_GAP / 2 : 0);
    const at: Point = [FRAME_GAP, top + ASCENT * TEXT];
    const edge = (u: number): Mark => stroke('accent', line([u, 0], [u, i < last ? height + 0.1 : height]));
    return {
      marks: [
        edge(0),
        edge(measure),
        ...(i === 0 ? [stroke('accent', line([0, 0], [measure, 0]))] : []),
        ...(i === last ? [stroke('accent', line([0, height], [measure, height]))] : []),
        ...(i === 0 ? namedLine(name, one.slice(name.length), at) : [write('note', one, at, { height: TEXT })]),
      ],
      height: i === last ? height + 1 : height,
      above: i === 0 ? spaceAbove('stop') : 0,
      keep: i < last,
    };
  });
}

/** How a finding's caution begins. */
const LEVEL = /^(?:CAUTION|STOP)\b/;

/** How much wider the name of a caution is in the heavier weight, with the room after it, mm. */
const NAME_ROOM = 2;

/** The first line of a caution: its name heavier, then the rest. */
function namedLine(name: string, rest: string, [u, v]: Point): Mark[] {
  const after = u + textWidth(name, TEXT, 'semibold') + (rest.startsWith(' ') ? 1 : 0);
  const words = rest.trimStart();
  return [
    write('title', name, [u, v], { height: TEXT }),
    ...(words === '' ? [] : [write('note', words, [after, v], { height: TEXT })]),
  ];
}

function spaceAbove(kind: Block['kind']): number {
  if (kind === 'more') return 0.3;
  return kind === 'heading' ? 5 : kind === 'step' || kind === 'stop' ? 3 : 1.5;
}
