import type { Marks, Saw } from '@wattlewright/model';
import { moved } from '../ink.ts';
import { ASCENT, DESCENT, LINE_STEP, TEXT, TEXT_HEADING, TEXT_LARGE } from '../layout/style.ts';
import type { Picture } from '../layout/table.ts';
import { fitText, textWidth } from '../lettering.ts';
import type { Mark } from '../mark.ts';
import { write } from '../mark.ts';
import { cutBar } from './cutbar.ts';
import type { BoardCuts } from './cutboard.ts';
import type { CrossCuts, Stretch } from './cutcross.ts';
import { stageView } from './cutend.ts';
import { ripTable } from './cutrips.ts';
import { lengthText, sectionText } from './cutsize.ts';
import type { Rip, RippedLength, Stage, Strip } from './cutstages.ts';

/** Ink that stays together, from v = 0 down; `above` is space left out at the top of a page. */
export interface CutBlock {
  readonly marks: Mark[];
  readonly height: number;
  readonly above: number;
  readonly thinned?: boolean;
  /** Set where another may stand beside it, mm. */
  readonly wide?: number;
}

/** What a board's drawing needs to know beside the board. */
export interface CutInk {
  readonly display: Marks;
  readonly saw: Saw;
  /** Room on a page, paper mm. */
  readonly width: number;
  readonly height: number;
  /** Paper over real length along the boards, and across their ends. */
  readonly along: number;
  readonly ends: number;
  readonly numberOf: (rip: Rip) => number;
  /** Ends drawn already, and where: what is ripped alike is not drawn twice. */
  readonly drawn: Map<string, string>;
}

/** Column of names left of the bars, mm. */
export const NAMES = 30;

/** Height of the bar of a strip, and least height of a board's, mm. */
const BAR = 6.5;

/** Between two end views abreast, mm. */
const GUTTER = 10;

/** The blocks of one board: its head with the long view, a row for each sort of strip, the end of each ripped length. */
export function boardBlocks(cuts: BoardCuts, number: number, ink: CutInk): CutBlock[] {
  const groups = groupsOf(cuts.ripped);
  return [
    longView(cuts, number, ink),
    ...groups.flatMap((group) => stripRows(group, cuts, ink)),
    ...abreast(
      groups.flatMap((group) => rippingOnce(group, number, ink)),
      ink.width,
    ),
  ];
}

/** Lengths of a board that are ripped and crosscut the same way. */
interface Group {
  readonly numbers: readonly number[];
  readonly ripped: RippedLength;
}

function groupsOf(ripped: readonly RippedLength[]): Group[] {
  const groups = new Map<string, { numbers: number[]; ripped: RippedLength }>();
  ripped.forEach((one, i) => {
    const key = JSON.stringify([one.length, one.rips.map(({ axis, at, blade }) => [axis, at, blade]), one.strips]);
    const group = groups.get(key) ?? { numbers: [], ripped: one };
    group.numbers.push(i + 1);
    groups.set(key, group);
  });
  return [...groups.values()];
}

function longView({ board, cuts, ripped }: BoardCuts, number: number, ink: CutInk): CutBlock {
  const { display, along, width } = ink;
  const [head, base] = [`Pattern ${number}`, ASCENT * TEXT_HEADING];
  const marks: Mark[] = [write('title', head, [0, base], { height: TEXT_HEADING })];
  const name = `${board.count} ${board.count === 1 ? 'board' : 'boards'}  ${board.name}`;
  const u = textWidth(head, TEXT_HEADING, 'semibold') + 4;
  marks.push(write('note', fitText(name, width - u, TEXT_LARGE), [u, base], { height: TEXT_LARGE }));
  const facts = factsOf({ board, cuts, ripped }, display);
  marks.push(write('note', facts, [0, base + LINE_STEP * TEXT_LARGE], { height: TEXT }));
  const v0 = base + LINE_STEP * TEXT_LARGE + DESCENT * TEXT + 4;
  const height = Math.max(BAR, board.width * along);
  const at = (x: number): number => NAMES + x * along;
  const bar = cutBar({ cuts, at, v0, height, display, across: [NAMES, width] });
  marks.push(...bar.marks, ...rowName('whole', sectionText(board.width, board.thickness, display), v0, height));
  return { marks, height: bar.v1, above: 8, thinned: bar.thinned };
}

function factsOf({ board, cuts, ripped }: BoardCuts, display: Marks): string {
  const size = `${sectionText(board.width, board.thickness, display)} × ${lengthText(board.length, display)}`;
  const squared =
    cuts.datum > 0 ? `square the left end first: ${lengthText(cuts.kerfs[0]?.at ?? 0, display)} and a blade go` : '';
  const then =
    ripped.length === 0
      ? 'crosscut only'
      : cuts.kerfs.length > (cuts.datum > 0 ? 1 : 0)
        ? 'crosscut, then rip'
        : 'rip its whole length';
  const from = board.from === 'offcuts' ? 'from the rack' : '';
  return [size, from, squared, then].filter((text) => text !== '').join('  ·  ');
}

function rowName(big: string, small: string, v0: number, height: number): Mark[] {
  const v = v0 + height / 2;
  return [
    write('title', big, [0, v - 0.4], { height: TEXT_LARGE }),
    write('note', small, [0, v + 0.8 + ASCENT * TEXT], { height: TEXT }),
  ];
}

/** A row for each sort of strip: how many, their section, and how one is crosscut. */
function stripRows({ ripped, numbers }: Group, { cuts }: BoardCuts, ink: CutInk): CutBlock[] {
  const { display, along, width } = ink;
  const sorts = new Map<string, { strip: Strip; count: number }>();
  for (const strip of ripped.strips) {
    if (strip.letters.length === 0) continue;
    const sides = [strip.box.width, strip.box.height].sort((a, b) => a - b);
    const key = JSON.stringify([sides.map((side) => Math.round(side * 1e4)), strip.cuts]);
    const sort = sorts.get(key) ?? { strip, count: 0 };
    sort.count += 1;
    sorts.set(key, sort);
  }
  const start = cuts.stretches.find((stretch) => stretch.ripped === (numbers[0] as number) - 1)?.start ?? 0;
  return [...sorts.values()].map(({ strip, count }, i): CutBlock => {
    const at = (x: number): number => NAMES + (start + x) * along;
    const v0 = i === 0 ? LINE_STEP * TEXT + 1 : 0;
    const bar = cutBar({
      cuts: withSpares(strip.cuts, ink.saw.keepFrom),
      at,
      v0,
      height: BAR,
      display,
      across: [NAMES, width],
    });
    const heading = write(
      'note',
      `Strips from ${numbers.length > 1 ? 'each of ' : ''}${lengthsText(numbers)}`,
      [0, ASCENT * TEXT],
      { height: TEXT },
    );
    const name = rowName(`${count} ×`, sectionText(strip.box.width, strip.box.height, display), v0, BAR);
    return {
      marks: [...bar.marks, ...name, ...(i === 0 ? [heading] : [])],
      height: Math.max(bar.v1, v0 + BAR / 2 + 0.8 + (ASCENT + DESCENT) * TEXT),
      above: i === 0 ? 4 : 2.2,
      thinned: bar.thinned,
    };
  });
}

/** Ends of a strip from this length on, mm, are spare stock and no waste. */
function withSpares(cuts: CrossCuts, from: number): CrossCuts {
  const stretches = cuts.stretches.map(
    (one): Stretch => (one.kind === 'waste' && one.length >= from ? { ...one, kind: 'spare' } : one),
  );
  return { ...cuts, stretches };
}

/** The ends of a ripped length, or where they are drawn already. */
function rippingOnce(group: Group, board: number, ink: CutInk): CutBlock[] {
  const { ripped, numbers } = group;
  const first = ripped.stages[0];
  const key = first ? stageKey(first, ripped, ink.numberOf) : '';
  const known = ink.drawn.get(key);
  if (known === undefined) {
    ink.drawn.set(key, `${lengthsText(numbers)} of pattern ${board}`);
    return ripping(group, ink);
  }
  const text = `${capital(lengthsText(numbers))}: ripped as ${known}.`;
  const mark = write('note', text, [0, ASCENT * TEXT_LARGE], { height: TEXT_LARGE });
  return [{ marks: [mark], height: (ASCENT + DESCENT) * TEXT_LARGE, above: 6, wide: textWidth(text, TEXT_LARGE) }];
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The end of a ripped length, of each sort of blank that is ripped again, and the schedule of its rips. */
function ripping({ ripped, numbers }: Group, ink: CutInk): CutBlock[] {
  const { display, saw, width, height, ends, numberOf } = ink;
  const sorts = new Map<string, { stage: Stage; count: number }>();
  for (const stage of ripped.stages) {
    const key = stageKey(stage, ripped, numberOf);
    const sort = sorts.get(key) ?? { stage, count: 0 };
    sort.count += 1;
    sorts.set(key, sort);
  }
  const pictures = [...sorts.values()].map(({ stage, count }, i): CutBlock => {
    const size = sectionText(stage.piece.width, stage.piece.height, display);
    const many = count > 1 ? `${count} alike` : '';
    const head = i === 0 ? `End of ${lengthsText(numbers)}` : ['Blank', size, many].filter(Boolean).join(', ');
    return titled(head, stageView({ ripped, stage, ratio: ends, numberOf }));
  });
  const tables = ripTable(ripped, { numberOf, planing: saw.planing, display, width, height: height - 20 });
  const name = `Rips of ${lengthsText(numbers)}`;
  return [...pictures, ...tables.map(({ marks, bounds }) => titled(name, { marks, bounds }))];
}

/** What makes two blanks one sort: sizes, settings, and what becomes of them. */
function stageKey(stage: Stage, { rips, stages }: RippedLength, numberOf: (rip: Rip) => number): string {
  const { piece, axis, rips: own, regions, planed } = stage;
  const made = own.map((i) => [numberOf(rips[i] as Rip), rips[i]?.at]);
  const become = regions.map(({ letters, stage: next }): unknown =>
    next === undefined ? letters : stageKey(stages[next] as Stage, { rips, stages } as RippedLength, numberOf),
  );
  return JSON.stringify([Math.round(piece.width * 1e4), Math.round(piece.height * 1e4), axis, made, become, planed]);
}

function titled(text: string, { marks, bounds: { u0, v0, u1, v1 } }: Picture): CutBlock {
  const base = ASCENT * TEXT_LARGE;
  const top = base + DESCENT * TEXT_LARGE + 2;
  return {
    marks: [write('title', text, [0, base], { height: TEXT_LARGE }), ...moved([...marks], { du: -u0, dv: top - v0 })],
    height: top + v1 - v0,
    above: 6,
    wide: Math.max(u1 - u0, textWidth(text, TEXT_LARGE, 'semibold')),
  };
}

/** Blocks set abreast as far as they have room, in their order. */
function abreast(blocks: readonly CutBlock[], width: number): CutBlock[] {
  const rows: { block: CutBlock; used: number }[] = [];
  for (const block of blocks) {
    const [row, wide] = [rows.at(-1), block.wide ?? width];
    const left = row === undefined ? 0 : row.used + GUTTER;
    if (row === undefined || left + wide > width) {
      rows.push({ block, used: wide });
      continue;
    }
    const marks = [...row.block.marks, ...moved(block.marks, { du: left, dv: 0 })];
    row.block = { ...row.block, marks, height: Math.max(row.block.height, block.height) };
    row.used = left + wide;
  }
  return rows.map(({ block }) => block);
}

/** `length 1`, `lengths 1 and 2`. */
function lengthsText(numbers: readonly number[]): string {
  return `length${numbers.length > 1 ? 's' : ''} ${numbers.join(' and ')}`;
}
