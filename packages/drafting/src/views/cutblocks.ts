import type { Marks, Saw } from '@wattlewright/model';
import { ASCENT, DESCENT, LINE_STEP, TEXT, TEXT_HEADING, TEXT_LARGE } from '../layout/style.ts';
import { fitText, textWidth } from '../lettering.ts';
import type { Mark } from '../mark.ts';
import { write } from '../mark.ts';
import { cutBar } from './cutbar.ts';
import { abreast, type CutBlock, lengthsText, rowName, titled } from './cutblock.ts';
import type { BoardCuts } from './cutboard.ts';
import { laterGuides, stageView } from './cutend.ts';
import { ripTable } from './cutrips.ts';
import { lengthText, sectionText } from './cutsize.ts';
import type { Rip, RippedLength, Stage } from './cutstages.ts';
import { BAR, NAMES, stripBlocks } from './cutstrips.ts';

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

/** The blocks of one board: its head with the long view, rows for the strips, the end of each ripped length. */
export function boardBlocks(cuts: BoardCuts, number: number, ink: CutInk): CutBlock[] {
  const groups = groupsOf(cuts.ripped);
  return [
    longView(cuts, number, ink),
    ...abreast(
      groups.flatMap(({ ripped, numbers }) => stripBlocks(ripped, numbers, ink)),
      ink.width,
    ),
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
  return { marks, height: bar.v1, above: 8, thinned: bar.thinned, head: true };
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
  const sorts = new Map<string, { stage: Stage; count: number; from: Set<number> }>();
  for (const stage of ripped.stages) {
    const key = stageKey(stage, ripped, numberOf);
    const sort = sorts.get(key) ?? { stage, count: 0, from: new Set() };
    sort.count += 1;
    const freed = firstRip(stage, ripped).after;
    if (freed !== undefined) sort.from.add(numberOf(ripped.rips[freed] as Rip));
    sorts.set(key, sort);
  }
  // The whole length, then its blanks as the table works them.
  const [whole, ...blanks] = [...sorts.values()];
  const turn = ({ stage }: { readonly stage: Stage }): number => numberOf(firstRip(stage, ripped));
  const all = whole === undefined ? [] : [whole, ...blanks.sort((a, b) => turn(a) - turn(b))];
  const sizeOf = ({ piece }: Stage): string => sectionText(piece.width, piece.height, display);
  const pictures = all.map(({ stage, count, from }, i): CutBlock => {
    const size = sizeOf(stage);
    // Blanks of one size that are cut differently are told apart by their order.
    const same = all.slice(1).filter((other) => sizeOf(other.stage) === size);
    const which = same.length > 1 ? ordinal(same.findIndex((other) => other.stage === stage) + 1) : '';
    const head = i === 0 ? `End of ${lengthsText(numbers)}` : ['Blank', size].join(' ');
    const notes = [
      i === 0 ? '' : which,
      from.size > 0 ? `from ${[...from].sort((a, b) => a - b).join(', ')}` : '',
      count > 1 ? `${count} alike` : '',
      stage.planed.length > 0 ? `planed from ${sectionText(stage.from.width, stage.from.height, display)}` : '',
      laterGuides(stage, ripped, numberOf),
    ];
    const view = stageView({ ripped, stage, ratio: ends, numberOf });
    return titled(head, view, notes.filter((note) => note !== '').join(', '));
  });
  const tables = ripTable(ripped, { numberOf, planing: saw.planing, display, width, height: height - 20 });
  const name = `Rips of ${lengthsText(numbers)}`;
  return [...pictures, ...tables.map(({ marks, bounds }) => titled(name, { marks, bounds }))];
}

const firstRip = ({ rips: own }: Stage, { rips }: RippedLength): Rip => rips[own[0] as number] as Rip;

function ordinal(n: number): string {
  return `${n}${n === 1 ? 'st' : n === 2 ? 'nd' : n === 3 ? 'rd' : 'th'}`;
}

/** What makes two blanks one sort: sizes, settings, and what becomes of them. */
function stageKey(stage: Stage, { rips, stages }: RippedLength, numberOf: (rip: Rip) => number): string {
  const { piece, axis, rips: own, regions, planed } = stage;
  const made = own.map((i) => [numberOf(rips[i] as Rip), rips[i]?.at]);
  const become = regions.map(({ letters, kept, stage: next }): unknown =>
    next === undefined ? [letters, kept] : stageKey(stages[next] as Stage, { rips, stages } as RippedLength, numberOf),
  );
  return JSON.stringify([Math.round(piece.width * 1e4), Math.round(piece.height * 1e4), axis, made, become, planed]);
}
