import { type Marks, THIN_RIP } from '@wattlewright/model';
import { tablePages } from '../layout/table.ts';
import type { Drawing } from '../mark.ts';
import { sectionText, sideText } from './cutsize.ts';
import type { Planed, Rip, RippedLength, SectionBox, Stage } from './cutstages.ts';
import { workRows } from './cutworkrows.ts';

/**
 * Distance from fence to blade for a rip that leaves `at` mm when its sawn face is planed. The sawn face of what remains
 * is planed before it goes to the fence again, so that the fence always meets a finished face.
 */
export function fenceAt(at: number, { planing }: { readonly planing: number }): number {
  return at + planing;
}

/** What is set to the size that comes off: the fence, or for a thin strip a stop on the free side of the blade. */
export function setBy({ at }: { readonly at: number }): 'fence' | 'stop' {
  return at < THIN_RIP - SAME ? 'stop' : 'fence';
}

/** The piece's size across the cut, from fence to free side, mm. */
export function cutWidth({ axis, piece }: Rip): number {
  return axis === 'width' ? piece.width : piece.height;
}

/** The piece's size through the blade, mm. */
export function cutHeight({ axis, piece }: Rip): number {
  return axis === 'width' ? piece.height : piece.width;
}

/** Sizes closer than this, mm, are one. */
const SAME = 1e-6;

/**
 * How the pieces lie on the saw's table, judged by the piece before each rip: flat where it is no higher than wide, else on
 * edge. Such as `flat, 3 1⁄2 wide`, or in two lines where pieces grow too narrow to lie flat.
 */
export function liesText(rips: readonly Rip[], display: Marks): string[] {
  const flat = rips.filter((rip) => cutHeight(rip) <= cutWidth(rip) + SAME);
  const edge = rips.filter((rip) => !flat.includes(rip));
  return [
    ...(flat.length > 0 ? [`flat, ${facesText(flat, display)} wide`] : []),
    ...(edge.length > 0 ? [`on edge, ${facesText(edge, display)} wide`] : []),
  ];
}

/** The widest and the narrowest of the faces that pieces lie on. */
function facesText(rips: readonly Rip[], display: Marks): string {
  const sizes = [...new Set(rips.map((rip) => sideText(cutWidth(rip), display)))];
  const sorted = [...rips].sort((a, b) => cutWidth(b) - cutWidth(a));
  const [first, last] = [sorted[0], sorted.at(-1)].map((rip) => sideText(cutWidth(rip as Rip), display));
  return sizes.length > 1 ? `${first} ${sizes.length > 2 ? 'to' : 'and'} ${last}` : `${first}`;
}

/** What comes off, in words: the parts that it becomes, a blank with the setting at which it is ripped again, or waste. */
function takesOff({ off, offIs }: Rip, again: number, display: Marks): string {
  if (offIs === 'waste') return 'a strip to throw away';
  const size = sectionText(off.width, off.height, display);
  return offIs === 'more' ? `blank ${size}, ripped again at ${again}` : `${offIs.join(' ')}\u00a0 ${size}`;
}

/** Some rips, how often each is made, and the setting at which what comes off is ripped again. */
export interface Counted {
  readonly rip: Rip;
  readonly times: number;
  readonly again: number;
}

/**
 * What rips give, a line for each sort, with how many: what comes off, and parts that remain at the last rip, which no rip
 * of their own frees.
 */
export function givesText(rips: readonly Counted[], display: Marks): string[] {
  const found = new Map<string, number>();
  const add = (text: string, times: number): unknown => found.set(text, (found.get(text) ?? 0) + times);
  for (const { rip, times, again } of rips) add(takesOff(rip, again, display), times);
  for (const { rip, times } of rips) if (rip.restIs.length > 0) add(`${rip.restIs.join(' ')}, what remains`, times);
  const shavings = rips.reduce((sum, { rip, times }) => sum + (rip.shaving ? times : 0), 0);
  return [
    ...[...found].map(([text, times]) => `${times} ×\u00a0${text}`),
    ...(shavings > 0 ? [`${shavings === 1 ? 'one takes' : `${shavings} take`} less than the blade is thick`] : []),
  ];
}

/**
 * The rips of one length as a schedule in the order of work: a row for each setting, what is planed right before the rips
 * that want it; parted where it is too tall.
 */
export function ripTable(
  length: RippedLength,
  of: {
    readonly numberOf: (rip: Rip) => number;
    readonly planing: number;
    readonly display: Marks;
    readonly width: number;
    readonly height: number;
  },
): Drawing[] {
  const { numberOf, planing, display, width, height } = of;
  const { rips } = length;
  const again = (rip: Rip): number => (rip.again === undefined ? 0 : numberOf(rips[rip.again] as Rip));
  const lengths = [{ ripped: [length] }];
  const rows: string[][] = [];
  const byNumber = new Map<number, Rip[]>();
  for (const rip of rips) byNumber.set(numberOf(rip), [...(byNumber.get(numberOf(rip)) ?? []), rip]);
  for (const [number, some] of [...byNumber].sort(([a], [b]) => a - b)) {
    const placed = some.map((rip) => ({ board: 0, ripped: 0, rip }));
    for (const row of workRows(placed, lengths, (rip) => sideText(cutHeight(rip), display))) {
      const blanks = row.blanks.map(({ stage }) => ({ ...blankOf(stage, length), times: 1 }));
      for (const { what, to, count } of planedTogether(blanks, display))
        rows.push(['plane', `to ${to}`, what, '', `${count}`, `before it is ripped at ${number}`]);
      const same = row.rips.map(({ rip }) => rip);
      const first = same[0] as Rip;
      const counted = same.map((rip) => ({ rip, times: 1, again: again(rip) }));
      rows.push([
        `${number}`,
        `${setWord(first)} ${sideText(fenceAt(first.at, { planing }), display)}`,
        liesText(same, display).join('\n'),
        sideText(cutHeight(first), display),
        `${same.length}`,
        givesText(counted, display).join('\n'),
      ]);
    }
  }
  const strips = planedStrips(length).map((strip) => ({ ...strip, times: 1 }));
  for (const { what, to, count } of planedTogether(strips, display))
    rows.push(['plane', `to ${to}`, what, '', `${count}`, 'to size']);
  return tablePages({
    name: 'rips',
    title: '',
    alt: '',
    columns: [
      { title: 'Setting', align: 'right' },
      { title: 'Set to' },
      { title: 'How it lies' },
      { title: 'Deep', align: 'right' },
      { title: 'Rips', align: 'right' },
      { title: 'Gives' },
    ],
    rows,
    width,
    height,
  });
}

/** Fence or thin-rip stop. */
export function setWord(rip: { readonly at: number }): string {
  return setBy(rip) === 'stop' ? 'thin-rip stop' : 'fence';
}

/** A piece that the plane brings to size. */
export interface PlanedPiece {
  /** What it is called: a part's letter, `blank`, or `all` for a whole length. */
  readonly name: string;
  readonly from: SectionBox;
  readonly planed: readonly Planed[];
}

/** Strips of a length that the plane brings to size at last. */
export function planedStrips({ stages }: Pick<RippedLength, 'stages'>): PlanedPiece[] {
  return stages.flatMap(({ regions }) =>
    regions
      .filter(({ planed }) => planed.length > 0)
      .map(({ letters, box, planed }) => ({ name: letters.join(' '), from: box, planed })),
  );
}

/** A stage's piece as it comes to the plane. */
export function blankOf(stage: Stage, { stages }: Pick<RippedLength, 'stages'>): PlanedPiece {
  return { name: stage === stages[0] ? 'all' : 'blank', from: stage.from, planed: stage.planed };
}

/** What pieces are before the plane and after it, in words, alike ones together with how many. */
export function planedTogether<P extends PlanedPiece & { readonly times: number }>(
  pieces: readonly P[],
  display: Marks,
): { readonly what: string; readonly to: string; readonly count: number; readonly of: readonly P[] }[] {
  const found = new Map<string, { what: string; to: string; count: number; of: P[] }>();
  for (const piece of pieces) {
    const { name, from, planed, times } = piece;
    const after = { width: from.width, height: from.height };
    for (const { axis, at } of planed) after[axis === 'width' ? 'width' : 'height'] = at;
    const what = `${name} ${sectionText(from.width, from.height, display)}`;
    const to = sectionText(after.width, after.height, display);
    const entry = found.get(`${what}|${to}`) ?? { what, to, count: 0, of: [] };
    entry.count += times;
    entry.of.push(piece);
    found.set(`${what}|${to}`, entry);
  }
  return [...found.values()];
}
