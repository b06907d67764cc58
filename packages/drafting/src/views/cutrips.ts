import { type Marks, THIN_RIP } from '@wattlewright/model';
import { tablePages } from '../layout/table.ts';
import type { Drawing } from '../mark.ts';
import { sectionText, sideText } from './cutsize.ts';
import type { Planed, Rip, RippedLength, SectionBox } from './cutstages.ts';

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

/** The rips of one length as a schedule: one row a setting, in the order of work; parted where it is too tall. */
export function ripTable(
  { rips, stages }: RippedLength,
  of: {
    readonly numberOf: (rip: Rip) => number;
    readonly planing: number;
    readonly display: Marks;
    readonly width: number;
    readonly height: number;
  },
): Drawing[] {
  const { numberOf, planing, display, width, height } = of;
  const again = (rip: Rip): number => (rip.again === undefined ? 0 : numberOf(rips[rip.again] as Rip));
  const rows = new Map<string, Rip[]>();
  for (const rip of rips) {
    const key = `${numberOf(rip)}|${sideText(cutHeight(rip), display)}`;
    rows.set(key, [...(rows.get(key) ?? []), rip]);
  }
  const sawn = [...rows.values()]
    .sort(([a], [b]) => numberOf(a as Rip) - numberOf(b as Rip))
    .map((same) => {
      const first = same[0] as Rip;
      return [
        `${numberOf(first)}`,
        `${setWord(first)} ${sideText(fenceAt(first.at, { planing }), display)}`,
        liesText(same, display).join('\n'),
        sideText(cutHeight(first), display),
        `${same.length}`,
        givesText(
          same.map((rip) => ({ rip, times: 1, again: again(rip) })),
          display,
        ).join('\n'),
      ];
    });
  const planed = planedIn({ rips, stages }, display).map(({ what, to, count, before }) => [
    'plane',
    `to ${to}`,
    what,
    '',
    `${count}`,
    before === undefined ? 'to size' : `before it is ripped at ${numberOf(before)}`,
  ]);
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
    rows: [...planed, ...sawn],
    width,
    height,
  });
}

/** Fence or thin-rip stop. */
export function setWord(rip: { readonly at: number }): string {
  return setBy(rip) === 'stop' ? 'thin-rip stop' : 'fence';
}

/** Pieces brought to size by the plane, alike ones together. */
export interface PlanedPieces {
  /** The piece before. */
  readonly what: string;
  readonly to: string;
  readonly count: number;
  /** The first rip after it; absent for a strip that is then to size. */
  readonly before?: Rip;
}

/** What is planed of one ripped length. */
export function planedIn({ rips, stages }: Pick<RippedLength, 'rips' | 'stages'>, display: Marks): PlanedPieces[] {
  const found = new Map<string, PlanedPieces & { count: number }>();
  const add = (name: string, box: SectionBox, planed: readonly Planed[], before?: Rip): void => {
    for (const { at } of planed) {
      const [what, to] = [`${name} ${sectionText(box.width, box.height, display)}`, sideText(at, display)];
      const entry = found.get(`${what}|${to}`) ?? { what, to, count: 0, ...(before && { before }) };
      entry.count += 1;
      found.set(`${what}|${to}`, entry);
    }
  };
  stages.forEach(({ from, planed, rips: own, regions }, i) => {
    add(i === 0 ? 'all' : 'blank', from, planed, rips[own[0] as number]);
    for (const region of regions) add(region.letters.join(' '), region.box, region.planed);
  });
  return [...found.values()];
}
