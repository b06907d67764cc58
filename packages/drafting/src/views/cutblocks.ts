import type { Marks, Saw } from '@wattlewright/model';
import { moved } from '../ink.ts';
import { ASCENT, DESCENT, LINE_STEP, TEXT, TEXT_HEADING, TEXT_LARGE } from '../layout/style.ts';
import { fitText, textWidth } from '../lettering.ts';
import type { Drawing, Mark } from '../mark.ts';
import { write } from '../mark.ts';
import { cutBar } from './cutbar.ts';
import type { BoardCuts, Rip, RippedLength, Strip } from './cutboard.ts';
import { endView } from './cutend.ts';
import { ripTable } from './cutrips.ts';
import { lengthText, sectionText } from './cutsize.ts';

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
}

/** Column of names left of the bars, mm. */
export const NAMES = 30;

/** Height of the bar of a strip, and least height of a board's, mm. */
const BAR = 6.5;

/** Between two end views abreast, mm. */
const GUTTER = 10;

/** From an end view to the schedule beside it, mm. */
const BESIDE = 8;

/** The blocks of one board: its head with the long view, a row for each sort of strip, the end of each ripped length. */
export function boardBlocks(cuts: BoardCuts, number: number, ink: CutInk): CutBlock[] {
  const groups = groupsOf(cuts.ripped);
  return [
    longView(cuts, number, ink),
    ...groups.flatMap((group) => stripRows(group, cuts, ink)),
    ...abreast(
      groups.flatMap((group) => ripping(group, ink, groups.length > 1)),
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
  const [head, base] = [`Board ${number}`, ASCENT * TEXT_HEADING];
  const marks: Mark[] = [write('title', head, [0, base], { height: TEXT_HEADING })];
  const name = board.count > 1 ? `${board.name}, ${board.count} alike` : board.name;
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
    const bar = cutBar({ cuts: strip.cuts, at, v0, height: BAR, display, across: [NAMES, width] });
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

/**
 * The end of a ripped length with the schedule of its rips beside it, or beneath where that leaves room for another abreast;
 * on its own where both are too tall.
 */
function ripping({ ripped, numbers }: Group, ink: CutInk, many: boolean): CutBlock[] {
  const { display, saw, width, height, ends, numberOf } = ink;
  const picture = endView({ ripped, ratio: ends, numberOf });
  const { u0, v0, u1, v1 } = picture.bounds;
  const base = ASCENT * TEXT_LARGE;
  const top = base + DESCENT * TEXT_LARGE + 2;
  const title = write('title', `End of ${lengthsText(numbers)}`, [0, base], { height: TEXT_LARGE });
  const end = [title, ...moved(picture.marks, { du: -u0, dv: top - v0 })];
  const tables = ripTable(ripped, { numberOf, planing: saw.planing, display, width, height: height - 20 });
  const [first] = tables as [Drawing, ...Drawing[]];
  const narrow = Math.max(u1 - u0, first.bounds.u1) <= (width - GUTTER) / 2;
  const beside = u1 - u0 + BESIDE + first.bounds.u1 <= width && !(many && narrow);
  const at = beside ? { du: u1 - u0 + BESIDE, dv: top } : { du: 0, dv: top + v1 - v0 + 4 };
  const whole = Math.max(top + v1 - v0, at.dv + first.bounds.v1);
  if (tables.length === 1 && whole <= height - 20)
    return [
      {
        marks: [...end, ...moved(first.marks, at)],
        height: whole,
        above: 6,
        wide: Math.max(u1 - u0, at.du + first.bounds.u1),
      },
    ];
  return [
    { marks: end, height: top + v1 - v0, above: 6 },
    ...tables.map(({ marks, bounds }) => ({ marks: [...marks], height: bounds.v1, above: 4 })),
  ];
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
