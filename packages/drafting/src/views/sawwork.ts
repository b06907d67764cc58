import { type CutPlan, fineMarks, lettersCut, type Marks, type Part, type Stock } from '@wattlewright/model';
import { type Block, prosePages } from '../layout/prose.ts';
import { fractions } from '../lettering.ts';
import type { Drawing } from '../mark.ts';
import { type BoardCuts, boardCuts } from './cutboard.ts';
import type { CutSheetOptions } from './cutsheets.ts';
import { kerfText, lengthText, overText, patternsText, sideText } from './cutsize.ts';
import { ripSettings } from './cutsteps.ts';
import { andText, lettersLeftOut, sentence } from './leftout.ts';
import { planeCautions, roughBoards } from './sawworkplane.ts';
import { cutStops } from './sawworkstops.ts';
import { ripWork, stopWork } from './sawworktable.ts';
import { ripCautions } from './sawworkthin.ts';

/** What `sawWork` needs to know: as for the cut sheets, and the stock and the rack that the plan was made from. */
export interface SawWorkOptions extends CutSheetOptions {
  /** To say which boards are rough and are planed first. */
  readonly stock?: readonly Stock[];
  readonly offcuts?: readonly Stock[];
  /** Columns on a page; by its width unless given. */
  readonly columns?: number;
}

/**
 * The order of work at the saw: what comes before the first cut and what to beware of, then tables with a box to tick for
 * each setting: boards crosscut by a length stop, rips one fence setting after the other, numbered as on the cut sheets,
 * then the strips crosscut. For a plan that is impossible, the reason.
 */
export function sawWork(plan: CutPlan, options: SawWorkOptions): Drawing[] {
  const { width, height, columns = width > WIDE ? 2 : 1 } = options;
  const prose = (blocks: readonly Block[], title = 'Order of work at the saw'): Drawing[] =>
    prosePages({
      name: 'saw-work',
      title,
      alt: `The cuts of the plan in order: ${plan.crosscuts} crosscuts and ${plan.rips} rips at ${plan.fences.length} fence settings.`,
      blocks,
      width,
      height,
      columns,
    });
  if (plan.status === 'impossible' && plan.boards.length === 0)
    return prose([said(sentence(fractions(plan.refusal?.text ?? 'There is no plan.')))]);
  const boards = boardCuts(plan, options.saw);
  const settings = ripSettings(plan, boards);
  const stops = cutStops(boards);
  const page = { ...options, boards };
  const cut = lettersCut(plan);
  const left = (letter: string): boolean => plan.status === 'impossible' && !cut.has(letter);
  const made = { ...options, parts: options.parts.filter(({ letter }) => !left(letter)) };
  return [
    ...prose([
      ...(plan.status === 'impossible' ? [leftOut(lettersLeftOut(plan, options.parts))] : []),
      ...before(boards, options),
      ...section('Rip', [
        ...(settings.length > 0 ? [said(ripping(options.display, options.saw.planing))] : []),
        ...ripCautions(settings, options.display),
        ...planeCautions(boards, options.saw),
      ]),
      ...(columns > 1 ? [] : section('When all is cut', counted(made))),
    ]),
    ...stopWork('1. Crosscut the boards', stops.boards, page),
    ...ripWork('2. Rip', settings, page),
    ...stopWork('3. Crosscut the strips', stops.strips, page, stops),
    // In columns it would stand beside the first cut.
    ...(columns > 1 ? prose(counted(made), 'When all is cut') : []),
  ];
}

/** A page wider than this, mm, has its text in two columns. */
const WIDE = 260;

/** What this plan leaves out, and why. */
function leftOut(letters: readonly string[]): Block {
  const which = letters.length === 0 ? 'Some pieces' : `Part${letters.length > 1 ? 's' : ''} ${andText(letters)}`;
  return {
    kind: 'caution',
    text: `${which} cannot be cut from these boards, at least not in full. Why, and what to buy, stands in the table “Not in the boards to buy”. Buy that first: with other boards the plan may be another.`,
  };
}

const said = (text: string): Block => ({ kind: 'paragraph', text });

function section(title: string, blocks: readonly Block[]): Block[] {
  return blocks.length > 0 ? [{ kind: 'heading', text: title }, ...blocks] : [];
}

/** What comes before the first cut: rough faces planed, left ends squared. */
function before(boards: readonly BoardCuts[], { stock = [], offcuts = [], display, saw }: SawWorkOptions): Block[] {
  const trims = new Map<string, number[]>();
  boards.forEach(({ cuts }, i) => {
    if (cuts.datum <= 0) return;
    const text = lengthText(cuts.kerfs[0]?.at ?? 0, display);
    trims.set(text, [...(trims.get(text) ?? []), i]);
  });
  const bullet = (text: string): Block => ({ kind: 'bullet', text });
  return section('Before the first cut', [
    ...(boards.length > 0 ? [bullet(kerfText(saw, display))] : []),
    ...(boards.length > 0
      ? [bullet('Measure the boards: none may be thinner, narrower or shorter than its pattern says.')]
      : []),
    ...roughBoards(boards, { stock, offcuts, display }).map(bullet),
    ...[...trims].map(([text, list]) =>
      bullet(
        `Square the left end of the boards of ${patternsText(list, boards)}: ${text} ${display.unit} and a blade go.`,
      ),
    ),
  ]);
}

function ripping(display: Marks, planing: number): string {
  const plane =
    planing > 0
      ? ` The fence stands off the finished size by ${sideText(planing, fineMarks(display), { named: true })}: plane the sawn face of what remains before its next rip, and that of the strip after.`
      : '';
  return `Make all rips of one setting before the next; the numbers are those over the blades on the cut sheets.${plane} Deep is how much wood stands above the table. How a piece lies is told before the cut.`;
}

function counted({ parts, display }: SawWorkOptions): Block[] {
  const list = parts
    .filter(({ count, spare }) => count + spare > 0)
    .map(({ letter, count, spare }: Part) => `${letter} ${count + spare}`);
  if (list.length === 0) return [];
  const long = overText(parts, display);
  return [
    said(`Count the pieces: ${list.join(', ')}. Write its letter on every piece as it leaves the saw.`),
    ...(long === '' ? [] : [said(long)]),
  ];
}
