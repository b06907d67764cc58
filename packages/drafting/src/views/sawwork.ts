import type { CutPlan, Marks, Part, Stock } from '@wattlewright/model';
import { type Block, prosePages } from '../layout/prose.ts';
import type { Drawing } from '../mark.ts';
import { type BoardCuts, boardCuts, type Rip } from './cutboard.ts';
import { fenceAt, lies, takesOff } from './cutrips.ts';
import type { CutSheetOptions } from './cutsheets.ts';
import { lengthText, sectionText, sideText } from './cutsize.ts';
import { type RipSetting, ripSettings } from './cutsteps.ts';
import { cutStops, type Stop } from './sawworkstops.ts';
import { thinRips } from './sawworkthin.ts';

/** What `sawWork` needs to know: as for the cut sheets, and the stock and the rack that the plan was made from. */
export interface SawWorkOptions extends CutSheetOptions {
  /** To say which boards are rough and are planed first. */
  readonly stock?: readonly Stock[];
  readonly offcuts?: readonly Stock[];
  /** Columns on a page; by its width unless given. */
  readonly columns?: number;
}

/**
 * The order of work at the saw: boards squared and crosscut by stop settings, then ripped one fence setting after the other,
 * numbered as on the cut sheets, then the strips crosscut. Thin strips are warned of. For a plan that is impossible, the
 * reason.
 */
export function sawWork(plan: CutPlan, options: SawWorkOptions): Drawing[] {
  const { width, height, columns = width > WIDE ? 2 : 1 } = options;
  return prosePages({
    name: 'saw-work',
    title: 'Order of work at the saw',
    alt: `The cuts of the plan in order: ${plan.crosscuts} crosscuts and ${plan.rips} rips at ${plan.fences.length} fence settings.`,
    blocks: plan.status === 'impossible' ? refused(plan) : blocksOf(plan, options),
    width,
    height,
    columns,
  });
}

/** A page wider than this, mm, has its text in two columns. */
const WIDE = 260;

function refused({ refusal }: CutPlan): Block[] {
  return [{ kind: 'paragraph', text: refusal?.text ?? 'There is no plan.' }];
}

function blocksOf(plan: CutPlan, options: SawWorkOptions): Block[] {
  const { parts, display, saw } = options;
  const boards = boardCuts(plan, saw);
  const settings = ripSettings(plan, boards);
  const stops = cutStops(boards);
  const stopText = (stop: Stop): Block => ({ kind: 'bullet', text: stopLine(stop, parts, display) });
  return [
    ...before(boards, options),
    ...section('Crosscut the boards', [
      ...(stops.boards.length > 0 ? [said('Set the stop to the near side of the blade, the longest first.')] : []),
      ...stops.boards.map(stopText),
    ]),
    ...section('Rip', [
      ...(settings.length > 0 ? [said(ripping(display.unit, saw.planing))] : []),
      ...thinRips(settings, display),
      ...settings.map((setting): Block => ({ kind: 'step', text: settingLine(setting, boards, options) })),
    ]),
    ...section('Crosscut the strips', [
      ...(stops.strips.length > 0 ? [said('Square the left end of a strip only if the saw has left it rough.')] : []),
      ...stops.strips.map(stopText),
    ]),
    ...section('When all is cut', counted(parts)),
  ];
}

const said = (text: string): Block => ({ kind: 'paragraph', text });

function section(title: string, blocks: readonly Block[]): Block[] {
  return blocks.length > 0 ? [{ kind: 'heading', text: title }, ...blocks] : [];
}

/** What comes before the first cut: rough faces planed, left ends squared. */
function before(boards: readonly BoardCuts[], { stock = [], offcuts = [], display }: SawWorkOptions): Block[] {
  const rough = new Map<string, number[]>();
  boards.forEach(({ board }, i) => {
    const list = board.from === 'stock' ? stock : offcuts;
    if (list[board.stock]?.surface !== 'rough') return;
    const size = `${sectionText(board.thickness, board.width, display)} ${display.unit}`;
    rough.set(size, [...(rough.get(size) ?? []), i + 1]);
  });
  const trims = new Map<string, number[]>();
  boards.forEach(({ cuts }, i) => {
    if (cuts.datum <= 0) return;
    const text = lengthText(cuts.kerfs[0]?.at ?? 0, display);
    trims.set(text, [...(trims.get(text) ?? []), i + 1]);
  });
  const planed = [...rough].map(([size, numbers]) => `${boardList(numbers)} to ${size}`);
  const squared = [...trims].map(([text, numbers]) => ({
    kind: 'bullet' as const,
    text: `Square the left end of ${boardList(numbers)}: take off ${text} ${display.unit}.`,
  }));
  return section('Before the first cut', [
    ...(planed.length > 0
      ? [{ kind: 'bullet' as const, text: `Plane the rough boards all round: ${planed.join('; ')}.` }]
      : []),
    ...squared,
  ]);
}

function ripping(unit: Marks['unit'], planing: number): string {
  const numbers = 'The numbers are those at the blades on the cut sheets.';
  const order = 'Make all rips of one setting before the fence is moved.';
  const plane =
    planing > 0
      ? ` The fence stands off the finished size by ${sideText(planing, { unit, mark: unit === 'in' ? 25.4 / 64 : 0.1 }, { named: true })}: plane the sawn face of what remains before its next rip, and that of the strip after.`
      : '';
  return `${order} ${numbers}${plane} Flat: the board lies on its face. On edge: it stands on its edge, face to the fence.`;
}

function settingLine(
  { at, rips }: RipSetting,
  all: readonly BoardCuts[],
  { display, saw }: Pick<SawWorkOptions, 'display' | 'saw'>,
): string {
  const fence = sideText(fenceAt(at, saw), display, { named: true });
  const leaves = saw.planing > 0 ? ` (leaves ${sideText(at, display)})` : '';
  const works = new Map<string, { rip: Rip; count: number; boards: number[] }>();
  for (const { board, rip } of rips) {
    const key = `${rip.axis} ${takesOff(rip, display)}`;
    const work = works.get(key) ?? { rip, count: 0, boards: [] };
    works.set(key, work);
    work.count += all[board]?.board.count ?? 0;
    if (!work.boards.includes(board + 1)) work.boards.push(board + 1);
  }
  const each = [...works.values()].map(({ rip, count, boards }) => {
    const times = `${count} rip${count > 1 ? 's' : ''}`;
    return `${boardList(boards)} ${lies(rip.axis)}, ${times} for ${takesOff(rip, display, count > 1)}`;
  });
  return `Fence at ${fence}${leaves}: ${each.join('; ')}.`;
}

/** `board 3`, `boards 1, 2 and 4`. */
function boardList(numbers: readonly number[]): string {
  if (numbers.length === 1) return `board ${numbers[0]}`;
  return `boards ${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1)}`;
}

function stopLine({ length, kinds, count, boards }: Stop, parts: readonly Part[], display: Marks): string {
  const names = kinds.map(({ letter, count: n }) => {
    if (letter === undefined) return `${n} to be ripped`;
    const name = parts.find((part) => part.letter === letter)?.name ?? 'part';
    return `${n} × ${letter} (${name})`;
  });
  const from = boardList(boards);
  return `Stop at ${lengthText(length, display)} ${display.unit}, ${count} cut${count > 1 ? 's' : ''}: ${names.join(', ')}, from ${from}.`;
}

function counted(parts: readonly Part[]): Block[] {
  const list = parts
    .filter(({ count, spare }) => count + spare > 0)
    .map(({ letter, count, spare }) => `${letter} ${count + spare}`);
  return list.length === 0
    ? []
    : [said(`Count the pieces: ${list.join(', ')}. Write its letter on every piece as it leaves the saw.`)];
}
