import { type CutPlan, fineMarks, type Marks, type Part, type Stock } from '@wattlewright/model';
import { type Block, prosePages } from '../layout/prose.ts';
import type { Drawing } from '../mark.ts';
import { type BoardCuts, boardCuts, type Rip } from './cutboard.ts';
import { cutHeight, fenceAt, liesText, setBy, shavingText, takesOff } from './cutrips.ts';
import type { CutSheetOptions } from './cutsheets.ts';
import { kerfText, lengthText, overText, sectionText, sideText } from './cutsize.ts';
import { type RipSetting, ripSettings } from './cutsteps.ts';
import { cutStops, type Kind, type Stop } from './sawworkstops.ts';
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
  const numbers = new Map(settings.flatMap(({ number, rips }) => rips.map(({ rip }) => [rip, number] as const)));
  const stops = cutStops(boards);
  const stopText = (stop: Stop): Block => ({ kind: 'bullet', text: stopLine(stop, parts, display) });
  return [
    ...before(boards, options),
    ...section('Crosscut the boards', [
      ...(stops.boards.length > 0 ? [said('Set the stop to the near side of the blade, the longest first.')] : []),
      ...stops.boards.map(stopText),
    ]),
    ...section('Rip', [
      ...(settings.length > 0 ? [said(ripping(display, saw.planing))] : []),
      ...thinRips(settings, display),
      ...settings.map(
        (setting): Block => ({ kind: 'step', text: settingLine(setting, { ...options, boards, numbers }) }),
      ),
    ]),
    ...section('Crosscut the strips', [
      ...(stops.strips.length > 0 ? [said('Square the left end of a strip only if the saw has left it rough.')] : []),
      ...stops.strips.map(stopText),
      ...(stops.whole.length > 0
        ? [{ kind: 'bullet' as const, text: `Already to length: ${kindsText(stops.whole, parts)}.` }]
        : []),
    ]),
    ...section('When all is cut', counted(options)),
  ];
}

const said = (text: string): Block => ({ kind: 'paragraph', text });

function section(title: string, blocks: readonly Block[]): Block[] {
  return blocks.length > 0 ? [{ kind: 'heading', text: title }, ...blocks] : [];
}

/** What comes before the first cut: rough faces planed, left ends squared. */
function before(boards: readonly BoardCuts[], { stock = [], offcuts = [], display, saw }: SawWorkOptions): Block[] {
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
    text: `Square the left end of ${boardList(numbers)}: ${text} ${display.unit} and a blade go.`,
  }));
  return section('Before the first cut', [
    ...(boards.length > 0 ? [{ kind: 'bullet' as const, text: kerfText(saw, display) }] : []),
    ...(planed.length > 0
      ? [{ kind: 'bullet' as const, text: `Plane the rough boards all round: ${planed.join('; ')}.` }]
      : []),
    ...squared,
  ]);
}

function ripping(display: Marks, planing: number): string {
  const numbers = 'The numbers are those at the blades on the cut sheets.';
  const order = 'Make all rips of one setting before the next.';
  const plane =
    planing > 0
      ? ` The fence stands off the finished size by ${sideText(planing, fineMarks(display), { named: true })}: plane the sawn face of what remains before its next rip, and that of the strip after.`
      : '';
  return `${order} ${numbers}${plane} Deep is the piece’s size through the blade; how it lies is told of the piece in hand before the cut.`;
}

interface SettingContext extends Pick<SawWorkOptions, 'display' | 'saw'> {
  readonly boards: readonly BoardCuts[];
  /** The setting at which each rip is made. */
  readonly numbers: ReadonlyMap<Rip, number>;
}

function settingLine({ at, rips }: RipSetting, { display, saw, boards: all, numbers }: SettingContext): string {
  const size = sideText(fenceAt(at, saw), display, { named: true });
  const leaves = saw.planing > 0 ? ` (leaves ${sideText(at, display)})` : '';
  const works = new Map<string, { rips: Rip[]; count: number; shavings: number; off: string; boards: number[] }>();
  for (const { board, ripped, rip } of rips) {
    const next = rip.again === undefined ? undefined : all[board]?.ripped[ripped]?.rips[rip.again];
    const off = (many: boolean): string => takesOff(rip, { display, again: numbers.get(next as Rip) ?? 0, many });
    const key = `${sideText(cutHeight(rip), display)} ${off(false)}`;
    const work = works.get(key) ?? { rips: [], count: 0, shavings: 0, off: '', boards: [] };
    works.set(key, work);
    const times = all[board]?.board.count ?? 0;
    work.rips.push(rip);
    work.count += times;
    work.shavings += rip.shaving ? times : 0;
    work.off = off(work.count > 1);
    if (!work.boards.includes(board + 1)) work.boards.push(board + 1);
  }
  const each = [...works.values()].map(({ rips: same, count, shavings, off, boards }) => {
    const deep = sideText(cutHeight(same[0] as Rip), display);
    const shaved = shavings > 0 ? ` (${shavingText(shavings, count)})` : '';
    const work = `${count} rip${count > 1 ? 's' : ''} ${deep} deep`;
    return `${boardList(boards)}, ${work}, ${liesText(same, display).join(', then ')}: ${off}${shaved}`;
  });
  return `${setBy({ at }) === 'stop' ? 'Stop' : 'Fence'} at ${size}${leaves}: ${each.join('; ')}.`;
}

/** `board 3`, `boards 1, 2 and 4`. */
function boardList(numbers: readonly number[]): string {
  if (numbers.length === 1) return `board ${numbers[0]}`;
  return `boards ${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1)}`;
}

function stopLine({ length, kinds, count, boards }: Stop, parts: readonly Part[], display: Marks): string {
  const cuts = `${count} cut${count > 1 ? 's' : ''}`;
  return `Stop at ${lengthText(length, display)} ${display.unit}, ${cuts}: ${kindsText(kinds, parts)}, from ${boardList(boards)}.`;
}

function kindsText(kinds: readonly Kind[], parts: readonly Part[]): string {
  const names = kinds.map(({ letter, count }) => {
    if (letter === undefined) return `${count} to rip`;
    return `${count} × ${letter} (${parts.find((part) => part.letter === letter)?.name ?? 'part'})`;
  });
  return names.join(', ');
}

function counted({ parts, display }: SawWorkOptions): Block[] {
  const list = parts
    .filter(({ count, spare }) => count + spare > 0)
    .map(({ letter, count, spare }) => `${letter} ${count + spare}`);
  if (list.length === 0) return [];
  const long = overText(parts, display);
  return [
    said(`Count the pieces: ${list.join(', ')}. Write its letter on every piece as it leaves the saw.`),
    ...(long === '' ? [] : [said(long)]),
  ];
}
