import type { Part } from '@wattlewright/model';
import { type Cell, type Picture, tablePages } from '../layout/table.ts';
import type { Drawing } from '../mark.ts';
import { stroke } from '../mark.ts';
import { rectangle } from '../path.ts';
import type { BoardCuts } from './cutboard.ts';
import { type Counted, cutHeight, fenceAt, givesText, liesText, planedIn, setWord } from './cutrips.ts';
import type { CutSheetOptions } from './cutsheets.ts';
import { lengthText, sideText } from './cutsize.ts';
import type { Rip } from './cutstages.ts';
import type { RipSetting } from './cutsteps.ts';
import type { Kind, Stop } from './sawworkstops.ts';
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
  whole: readonly Kind[] = [],
): Drawing[] {
  const rows: Cell[][] = stops.map(({ length, kinds, count, boards }) => [
    TICK,
    lengthText(length, display),
    `${count}`,
    kindsText(kinds, parts),
    boards.join(', '),
  ]);
  if (whole.length > 0) rows.push([TICK, 'none', '', `already to length: ${kindsText(whole, parts)}`, '']);
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

/** Rips of a setting that are made alike. */
interface Work {
  readonly rips: Counted[];
  readonly from: Map<number, Set<number>>;
  count: number;
}

/** The rips, a row for each sort of each setting with a box to tick; what is planed stands before the rip that needs it. */
export function ripWork(title: string, settings: readonly RipSetting[], context: TableContext): Drawing[] {
  const { boards, display, saw, width, height } = context;
  const numbers = new Map(settings.flatMap(({ number, rips }) => rips.map(({ rip }) => [rip, number] as const)));
  const planed = planedRows(numbers, context);
  const rows: Cell[][] = [];
  for (const { number, at, rips } of settings) {
    rows.push(...planed.filter((row) => row.number === number).map(({ cells }) => cells));
    const works = new Map<string, Work>();
    for (const { board, ripped, rip } of rips) {
      const again = numbers.get(againOf(boards, board, ripped, rip) as Rip) ?? 0;
      const key = `${sideText(cutHeight(rip), display)} ${rip.offIs} ${sideText(rip.off.width, display)} ${sideText(rip.off.height, display)}`;
      const work: Work = works.get(key) ?? { rips: [], from: new Map(), count: 0 };
      works.set(key, work);
      const times = boards[board]?.board.count ?? 0;
      work.rips.push({ rip, times, again });
      work.count += times;
      work.from.set(board, (work.from.get(board) ?? new Set()).add(ripped));
    }
    let first = true;
    for (const { rips: same, from, count } of works.values()) {
      const all = same.map(({ rip }) => rip);
      rows.push([
        TICK,
        first ? `${number}` : '',
        first ? `${setWord({ at })} ${sideText(fenceAt(at, saw), display)}` : '',
        fromText(from, boards),
        liesText(all, display).join('\n'),
        sideText(cutHeight(all[0] as Rip), display),
        `${count}`,
        givesText(same, display).join('\n'),
        ripNotes(all).join(', '),
      ]);
      first = false;
    }
  }
  rows.push(...planed.filter((row) => row.number === undefined).map(({ cells }) => cells));
  if (rows.length === 0) return [];
  return tablePages({
    name: 'rip-work',
    title: `${title} (${display.unit})`,
    alt: `${title}: ${settings.length} settings of the fence in order.`,
    columns: [
      { title: '' },
      { title: 'Setting', align: 'right' },
      { title: 'Set to' },
      { title: 'Pattern' },
      { title: 'How it lies' },
      { title: 'Deep', align: 'right' },
      { title: 'Rips', align: 'right' },
      { title: 'Gives' },
      { title: 'Mind' },
    ],
    rows,
    width,
    height,
  });
}

function againOf(boards: readonly BoardCuts[], board: number, ripped: number, rip: Rip): Rip | undefined {
  return rip.again === undefined ? undefined : boards[board]?.ripped[ripped]?.rips[rip.again];
}

/** `1, length 2`, a line for each pattern; the length is named where a board has several. */
function fromText(from: ReadonlyMap<number, ReadonlySet<number>>, boards: readonly BoardCuts[]): string {
  return [...from]
    .map(([board, lengths]) => {
      const all = boards[board]?.ripped.length ?? 0;
      return all > 1 ? `${board + 1}, length ${[...lengths].map((i) => i + 1).join(' and ')}` : `${board + 1}`;
    })
    .join('\n');
}

interface PlanedRow {
  /** Setting before which it is done; absent for strips that are then to size. */
  readonly number: number | undefined;
  readonly cells: Cell[];
}

function planedRows(numbers: ReadonlyMap<Rip, number>, { boards, display }: TableContext): PlanedRow[] {
  const found = new Map<
    string,
    { number: number | undefined; what: string; to: string; count: number; from: Set<number> }
  >();
  boards.forEach(({ board, ripped }, i) => {
    for (const one of ripped)
      for (const { what, to, count, before } of planedIn(one, display)) {
        const number = before && numbers.get(before);
        const key = `${number}|${what}|${to}`;
        const row = found.get(key) ?? { number, what, to, count: 0, from: new Set() };
        row.count += count * board.count;
        row.from.add(i + 1);
        found.set(key, row);
      }
  });
  return [...found.values()].map(({ number, what, to, count, from }) => ({
    number,
    cells: [TICK, '', `plane to ${to}`, [...from].join(', '), what, '', '', `${count} planed`, ''],
  }));
}
