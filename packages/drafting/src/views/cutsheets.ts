import type { CutPlan, Marks, Part, Saw } from '@wattlewright/model';
import { moved } from '../ink.ts';
import { prosePages } from '../layout/prose.ts';
import { ASCENT, DESCENT, TEXT_LARGE } from '../layout/style.ts';
import { TooLarge } from '../layout/toolarge.ts';
import type { Drawing } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { rectangle } from '../path.ts';
import type { CutBlock } from './cutblock.ts';
import { boardBlocks } from './cutblocks.ts';
import { type BoardCuts, boardCuts } from './cutboard.ts';
import { type CutPages, columnChoices, columnWidth, cutPages } from './cutpages.ts';
import { kerfText, overText } from './cutsize.ts';
import type { Rip } from './cutstages.ts';
import { ripSettings } from './cutsteps.ts';
import { NAMES } from './cutstrips.ts';

/** What `cutSheets` and `sawWork` need to know: the plan's own parts and saw, and the room on a page, paper mm. */
export interface CutSheetOptions {
  readonly parts: readonly Part[];
  readonly display: Marks;
  readonly saw: Saw;
  readonly width: number;
  readonly height: number;
  /** Columns of patterns on a page; as makes the fewest sheets unless given. */
  readonly columns?: number;
}

/**
 * Cut sheets: each different board once, with how many are cut so. The long view has every crosscut with its distance from
 * the squared end, a row below it each sort of strip; ends are drawn at full or half size with the blades to scale, beside
 * them the fence settings in the order of work. As many pages as it takes; none for a plan without boards.
 */
export function cutSheets(plan: CutPlan, options: CutSheetOptions): Drawing[] {
  const { width, columns } = options;
  const boards = boardCuts(plan, options.saw);
  if (boards.length === 0) return [];
  const choices = columns === undefined ? columnChoices(width) : [columns];
  const ways = choices.flatMap((count) => way(plan, boards, { ...options, columns: count }));
  // As few sheets as may be, and as few patterns as may be that run over from one to the next.
  const cost = ({ pages, broken }: CutPages): number => pages.length + broken;
  const [best] = ways.sort((a, b) => cost(a) - cost(b));
  const pages = best?.pages ?? [];
  const alt = `How ${boards.length} different boards are cut: ${boards.map(({ board }) => `${board.count} × ${board.name}`).join(', ')}.`;
  return pages.map((page, i) => ({
    name: pages.length > 1 ? `cut-sheets-${i + 1}` : 'cut-sheets',
    title: pages.length > 1 ? `Cut sheets (${i + 1} of ${pages.length})` : 'Cut sheets',
    scale: 0,
    scaleText: '',
    marks: [...page.marks],
    bounds: { u0: 0, v0: 0, u1: width, v1: page.height },
    alt,
  }));
}

/** The sheets in some columns, with the usual room between blocks and with less; none where a table is wider than one of several. */
function way(
  plan: CutPlan,
  boards: readonly BoardCuts[],
  { parts, display, saw, width, height, columns }: CutSheetOptions & { readonly columns: number },
): CutPages[] {
  const numbers = new Map<Rip, number>();
  for (const setting of ripSettings(plan, boards)) for (const { rip } of setting.rips) numbers.set(rip, setting.number);
  const column = columnWidth({ width, columns });
  const longest = Math.max(...boards.map(({ board }) => board.length));
  const over = Math.max(1, Math.ceil(longest / (column - NAMES) - 1e-9));
  const ends = endScale(boards, column);
  const ink = {
    display,
    saw,
    width: column,
    height,
    along: 1 / over,
    ends: ends.ratio,
    numberOf: (rip: Rip): number => numbers.get(rip) ?? 0,
    drawn: new Map<string, string>(),
  };
  try {
    const blocks = boards.map((board, i) => boardBlocks(board, i + 1, ink));
    const notes = notesOf(boards, { along: `1:${over}`, ends: ends.text, blocks: blocks.flat(), parts, saw, display });
    const close = blocks.map((some) => some.map((block) => ({ ...block, above: block.above / 2 })));
    return [blocks, close].map((some) => cutPages(some, noteInk(notes, width), { width, height, columns }));
  } catch (error) {
    if (columns > 1 && error instanceof TooLarge) return [];
    throw error;
  }
}

/** Strips whose smaller side is at least this, paper mm, can be told apart. */
const LETTERED = 1.4;

/** The largest of full size, half and a fifth at which the widest board's end has room, half where strips still show. */
function endScale(boards: readonly BoardCuts[], width: number): { readonly ratio: number; readonly text: string } {
  const thinnest = Math.min(
    ...boards.flatMap(({ ripped }) =>
      ripped.flatMap(({ strips }) =>
        strips.filter(({ letters }) => letters.length > 0).map(({ box }) => Math.min(box.width, box.height)),
      ),
    ),
  );
  const widest = Math.max(...boards.map(({ board }) => board.width));
  const scales = [
    { ratio: 1, text: 'full size' },
    { ratio: 1 / 2, text: '1:2' },
    { ratio: 1 / 5, text: '1:5' },
  ];
  const fitting = scales.filter(({ ratio }) => widest * ratio <= width - ROOM_BESIDE_END);
  const half = fitting.find(({ ratio }) => ratio === 1 / 2);
  if (half && thinnest * half.ratio >= LETTERED) return half;
  return fitting[0] ?? (scales[2] as (typeof scales)[number]);
}

/** Room for the fence and for numbers beside an end view, paper mm. */
const ROOM_BESIDE_END = 40;

interface NoteContext extends Pick<CutSheetOptions, 'parts' | 'saw' | 'display'> {
  readonly along: string;
  readonly ends: string;
  readonly blocks: readonly CutBlock[];
}

/** What a reader must know of the sheets, each a bullet. */
function notesOf(boards: readonly BoardCuts[], { along, ends, blocks, parts, saw, display }: NoteContext): string[] {
  const shaved = boards.some(({ cuts, ripped }) =>
    [cuts, ...ripped.flatMap(({ strips }) => strips.map((s) => s.cuts))].some(({ kerfs }) =>
      kerfs.some((kerf) => kerf.width < saw.crossKerf - 1e-6),
    ),
  );
  const stages = boards.flatMap(({ ripped }) => ripped.flatMap((one) => one.stages));
  const notes: [boolean, string][] = [
    [true, kerfText(saw, display)],
    [true, overText(parts, display)],
    [
      boards.some(({ board }) => board.count > 1),
      'A pattern is one way of cutting a board; its counts are those of one board.',
    ],
    [
      true,
      `Lengths ${along}, thickness of the strips not to scale. The square end is at the left; a figure under a cut is its distance from there.`,
    ],
    [
      stages.length > 0,
      `Ends ${ends}, each as the piece lies on the saw, seen from its left end. Dark is the blade; the number over it is its setting in the order of work.`,
    ],
    [
      stages.length > 0,
      'Grey beside an end is the fence, a black square the thin-rip stop, at its first setting; words tell of others.',
    ],
    [
      stages.length > 1,
      'A blank is ripped again, at the setting that it names; ‘from’ is the setting that it comes from.',
    ],
    [true, wasteText(parts)],
    [shaved, 'A crosscut narrower than the others takes less than the blade is thick.'],
    [saw.planing > 0, 'Sizes are finished; the fence stands off them by what is planed off the sawn face.'],
    [blocks.some(({ thinned }) => thinned === true), 'Where cuts stand too close, not all distances are given.'],
  ];
  return notes.flatMap(([when, text]) => (when && text !== '' ? [text] : []));
}

/** Plugs for grooves that are sawn right through come from wood that no part needs. */
function wasteText(parts: readonly Part[]): string {
  const plugs = parts.some(({ name }) => name === 'rail') ? ' (save an end of the rails’ wood for plugs)' : '';
  return `What is crossed out is waste${plugs}; what is marked keep is for the rack.`;
}

/** Room inside the box of rules, mm. */
const BOX_PAD = 2.5;

/** A box of rules with a heading, in two columns where the page is wide. */
function noteInk(texts: readonly string[], width: number): CutBlock {
  const [pages] = prosePages({
    name: 'rules',
    title: '',
    alt: '',
    blocks: texts.map((text) => ({ kind: 'bullet', text })),
    width: width - 2 * BOX_PAD,
    height: 1000,
  });
  const wide = width > WIDE;
  const flow = wide ? columns(texts, width - 2 * BOX_PAD) : pages;
  const top = BOX_PAD + (ASCENT + DESCENT) * TEXT_LARGE + 1.5;
  const height = top + (flow?.bounds.v1 ?? 0) + BOX_PAD;
  return {
    marks: [
      stroke('edge-light', rectangle({ u0: 0, v0: 0, u1: width, v1: height })),
      write('title', 'How to read the cut sheets', [BOX_PAD, BOX_PAD + ASCENT * TEXT_LARGE], { height: TEXT_LARGE }),
      ...moved([...(flow?.marks ?? [])], { du: BOX_PAD, dv: top }),
    ],
    height,
    above: 0,
  };
}

/** A page wider than this, mm, has its rules in two columns. */
const WIDE = 260;

/** The rules in two columns about as tall as one another. */
function columns(texts: readonly string[], width: number): Drawing | undefined {
  const half = Math.ceil(texts.length / 2);
  const of = (some: readonly string[]): Drawing =>
    prosePages({
      name: 'rules',
      title: '',
      alt: '',
      blocks: some.map((text) => ({ kind: 'bullet', text })),
      width: (width - 8) / 2,
      height: 1000,
    })[0] as Drawing;
  const [left, right] = [of(texts.slice(0, half)), of(texts.slice(half))];
  return {
    ...left,
    marks: [...left.marks, ...moved([...right.marks], { du: (width + 8) / 2, dv: 0 })],
    bounds: { ...left.bounds, u1: width, v1: Math.max(left.bounds.v1, right.bounds.v1) },
  };
}
