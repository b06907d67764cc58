import type { Part } from '@wattlewright/model';
import { type Cell, type Picture, tablePages } from '../layout/table.ts';
import type { Drawing } from '../mark.ts';
import { stroke } from '../mark.ts';
import { rectangle } from '../path.ts';
import { lengthsText } from './cutblock.ts';
import type { BoardCuts } from './cutboard.ts';
import { cutHeight, fenceAt, settingText, setWord } from './cutfence.ts';
import { countedRip, givesText, liesText } from './cutgives.ts';
import { blankOf, type PlanedPiece, planedStrips, planedTogether } from './cutplaned.ts';
import type { CutSheetOptions } from './cutsheets.ts';
import { lengthText, sectionText, sideText } from './cutsize.ts';
import type { Rip, RippedLength } from './cutstages.ts';
import type { PlacedRip, RipSetting } from './cutsteps.ts';
import { workRows } from './cutworkrows.ts';
import type { Kind, Stop, Stops } from './sawworkstops.ts';
import { ripNotes } from './sawworkthin.ts';

/** What the tables need to know. */
interface TableContext extends CutSheetOptions {
  readonly boards: readonly BoardCuts[];
}

/** A box to tick, paper mm. */
const BOX = { u0: 0, v0: 0, u1: 3, v1: 3 };
const TICK: Picture = { marks: [stroke('edge-light', rectangle(BOX))], bounds: BOX };

/** Crosscuts by length stop, the longest first, each row with a box to tick; parts that are at length already at the end. */
export function stopWork(
  title: string,
  stops: readonly Stop[],
  { parts, display, width, height }: TableContext,
  { whole = [], last = [] }: Partial<Pick<Stops, 'whole' | 'last'>> = {},
): Drawing[] {
  const rows: Cell[][] = stops.map(({ length, kinds, count, boards }) => [
    TICK,
    lengthText(length, display),
    `${count}`,
    kindsText(kinds, parts),
    boards.join(', '),
  ]);
  if (whole.length > 0) rows.push([TICK, 'none', '', `already to length: ${kindsText(whole, parts)}`, '']);
  if (last.length > 0)
    rows.push([TICK, 'none', '', `last of its wood, no cut: ${kindsText(last, parts)}; check each at the stop`, '']);
  if (rows.length === 0) return [];
  return tablePages({
    name: 'stop-work',
    title,
    alt: `${title}: ${stops.length} settings of the length stop.`,
    columns: [
      { title: '' },
      { title: `Length stop at (${display.unit})`, align: 'right' },
      { title: 'Cuts', align: 'right' },
      { title: 'Gives' },
      { title: 'From pattern' },
    ],
    rows,
    width,
    height,
  });
}

function kindsText(kinds: readonly Kind[], parts: readonly Part[]): string {
  const names = kinds.map(({ letter, count }) => {
    if (letter === undefined) return `${count} ${count === 1 ? 'length' : 'lengths'} to rip`;
    return `${count} × ${letter} (${parts.find((part) => part.letter === letter)?.name ?? 'part'})`;
  });
  return names.join(', ');
}

/**
 * The rips, a row for each sort of each setting with a box to tick. What is planed stands after the rips that free it and
 * right before those that need it, strips planed to size at the end.
 */
export function ripWork(title: string, settings: readonly RipSetting[], context: TableContext): Drawing[] {
  const { boards, display, saw, width, height } = context;
  const numbers = new Map(settings.flatMap(({ number, rips }) => rips.map(({ rip }) => [rip, number] as const)));
  const sort = (rip: Rip): string =>
    `${sideText(cutHeight(rip), display)} ${rip.offIs} ${sectionText(rip.off.width, rip.off.height, display)}`;
  const numberOf = (rip: Rip): number => numbers.get(rip) ?? 0;
  const rows: Cell[][] = [];
  for (const { number, at, rips } of settings) {
    let told = false;
    for (const row of workRows(rips, boards, sort)) {
      const planed = planedCells(
        row.blanks.map(({ board, ripped, stage }) => ({
          ...blankOf(stage, boards[board]?.ripped[ripped] as RippedLength),
          board,
          ripped,
        })),
        context,
      );
      rows.push(...planed);
      const all = row.rips.map(({ rip }) => rip);
      const counted = row.rips.map(({ board, ripped, rip }) => {
        const own = boards[board]?.ripped[ripped]?.rips ?? [];
        return countedRip(rip, { times: boards[board]?.board.count ?? 0, rips: own, row: all, numberOf });
      });
      rows.push([
        TICK,
        settingText(number, told && planed.length > 0),
        `${setWord({ at })}\u00a0${sideText(fenceAt(at, saw), display)}`,
        fromText(row.rips, boards),
        liesText(all, display).join('\n'),
        sideText(cutHeight(all[0] as Rip), display),
        `${counted.reduce((sum, { times }) => sum + times, 0)}`,
        givesText(counted, display).join('\n'),
        ripNotes(all, display).join('; '),
      ]);
      told = true;
    }
  }
  const strips = boards.flatMap(({ ripped }, board) =>
    ripped.flatMap((length, at) => planedStrips(length).map((strip) => ({ ...strip, board, ripped: at }))),
  );
  rows.push(...planedCells(strips, context));
  if (rows.length === 0) return [];
  return tablePages({
    name: 'rip-work',
    title: `${title} (${display.unit})`,
    alt: `${title}: ${settings.length} settings of the fence in order.`,
    columns: [
      { title: '' },
      { title: 'Setting' },
      { title: 'Set to' },
      { title: 'Pattern' },
      { title: 'How it lies' },
      { title: 'Deep', align: 'right' },
      { title: 'Rips', align: 'right' },
      { title: 'Gives' },
      { title: 'Mind' },
    ],
    rows,
    balance: true,
    width,
    height,
  });
}

/** Wood of a pattern: indices of the board and of the ripped length on it. */
type Place = Pick<PlacedRip, 'board' | 'ripped'>;

/** `1; 3 (length 1)`: the patterns, with the length where a board has several; those of the same length together. */
function fromText(places: readonly Place[], boards: readonly BoardCuts[]): string {
  const from = new Map<number, Set<number>>();
  for (const { board, ripped } of places) from.set(board, (from.get(board) ?? new Set()).add(ripped));
  const byLength = new Map<string, number[]>();
  for (const [board, found] of [...from].sort(([a], [b]) => a - b)) {
    const lengths = [...found].sort((a, b) => a - b).map((i) => i + 1);
    const several = (boards[board]?.ripped.length ?? 0) > 1;
    const which = several ? lengthsText(lengths) : '';
    byLength.set(which, [...(byLength.get(which) ?? []), board + 1]);
  }
  return [...byLength]
    .map(([which, numbers]) => {
      const each = numbers.length > 1 ? 'each ' : '';
      return `${numbers.join(', ')}${which === '' ? '' : `\u00a0(${each}${which})`}`;
    })
    .join('; ');
}

/** A row for each sort of piece that the plane brings to size. */
function planedCells(pieces: readonly (PlanedPiece & Place)[], { boards, display }: TableContext): Cell[][] {
  const counted = pieces.map((piece) => ({ ...piece, times: boards[piece.board]?.board.count ?? 0 }));
  return planedTogether(counted, display).map(({ what, to, gives, note, count, of }) => [
    TICK,
    'plane',
    `to\u00a0${to}`,
    fromText(of, boards),
    what,
    '',
    '',
    `${count} ×\u00a0${gives}`,
    note,
  ]);
}
