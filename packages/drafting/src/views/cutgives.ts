import type { Marks } from '@wattlewright/model';
import { KEEP } from './cutcross.ts';
import { cutHeight, cutWidth, SAME } from './cutfence.ts';
import { sectionText, sideText } from './cutsize.ts';
import type { Rip } from './cutstages.ts';

/**
 * How the pieces lie on the saw's table: flat where the piece was no higher than wide at the first of its rips in a row,
 * else on edge. Such as `flat, 3 1⁄2 wide`, a line for each way.
 */
export function liesText(rips: readonly Rip[], display: Marks): string[] {
  const laidFlat = rips.filter(({ axis, lies }) => {
    const [across, high] = axis === 'width' ? [lies.width, lies.height] : [lies.height, lies.width];
    return high <= across + SAME;
  });
  const edge = rips.filter((rip) => !laidFlat.includes(rip));
  const still = laidFlat.some((rip) => cutHeight(rip) <= cutWidth(rip) + SAME);
  // What lay flat and has grown narrower than it is high is not turned for it.
  return [
    ...(laidFlat.length > 0 ? [`${still ? 'flat' : 'as it lay before'}, ${facesText(laidFlat, display)} wide`] : []),
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

/** Some rips, how often each is made, and where later rows take up what they give. */
export interface Counted {
  readonly rip: Rip;
  readonly times: number;
  /** The setting at which what comes off is ripped again; 0 where it is not. */
  readonly again: number;
  /** The setting at which a later row rips what remains; 0 where none does. */
  readonly next: number;
}

/** How often a rip is made, and at which settings later rows take up its pieces; `row` are the rips of its own row. */
export function countedRip(
  rip: Rip,
  of: {
    readonly times: number;
    /** All rips of its length. */
    readonly rips: readonly Rip[];
    readonly row: readonly Rip[];
    readonly numberOf: (rip: Rip) => number;
  },
): Counted {
  const { times, rips, row, numberOf } = of;
  const [again, next] = [rip.again, rip.next].map((i) => (i === undefined ? undefined : rips[i]));
  return {
    rip,
    times,
    again: again === undefined ? 0 : numberOf(again),
    next: next === undefined || row.includes(next) ? 0 : numberOf(next),
  };
}

/** Letters of the parts in one strip: `B + A`. */
export function lettersText(letters: readonly string[]): string {
  return letters.join(' + ');
}

/** Pieces with their size: `12 × A 43 × 50`, or, where a strip makes several parts, `2 strips, each B + A, 43 × 50`. */
function piecesText(times: number, letters: readonly string[], size: string, remain: boolean): string {
  const what = remain ? 'what remains, ' : '';
  if (letters.length === 1 && letters[0] === KEEP) return `${times} ×\u00a0${what}${size}, kept for the rack`;
  if (letters.length < 2) return `${times} ×\u00a0${what}${letters.join('')}\u00a0 ${size}`;
  const strips = times === 1 ? '1 strip' : `${times} strips`;
  return `${strips}, ${what}${times === 1 ? '' : 'each '}${lettersText(letters)}, ${size}`;
}

/**
 * What rips give, a line for each sort, with how many: what comes off, and what remains at the last rip of a row, so that
 * every piece that a later row starts with has been named.
 */
export function givesText(counted: readonly Counted[], display: Marks): string[] {
  const found = new Map<string, { times: number; text: (times: number) => string }>();
  const add = (key: string, times: number, text: (times: number) => string): void => {
    found.set(key, { times: (found.get(key)?.times ?? 0) + times, text });
  };
  for (const { rip, times, again } of counted) {
    const { off, offIs } = rip;
    const size = sectionText(off.width, off.height, display);
    if (offIs === 'waste') add('waste', times, (n) => `${n} ×\u00a0a strip to throw away`);
    else if (offIs === 'more')
      add(`off ${size} ${again}`, times, (n) => `${n} ×\u00a0blank ${size}, ripped again at ${again}`);
    else add(`off ${offIs} ${size}`, times, (n) => piecesText(n, offIs, size, false));
  }
  for (const { rip, times, next } of counted) {
    const size = sectionText(rip.rest, cutHeight(rip), display);
    if (rip.restIs.length > 0) add(`rest ${rip.restIs} ${size}`, times, (n) => piecesText(n, rip.restIs, size, true));
    else if (next > 0)
      add(`rest ${size} ${next}`, times, (n) => `${n} ×\u00a0what remains, blank ${size}, ripped again at ${next}`);
  }
  return [...[...found.values()].map(({ times, text }) => text(times)), ...trimmed(counted)];
}

/** How many rips take less than the blade is thick, in words. */
function trimmed(counted: readonly Counted[]): string[] {
  const sum = (some: readonly Counted[]): number => some.reduce((all, { times }) => all + times, 0);
  const [trims, all] = [sum(counted.filter(({ rip }) => rip.shaving)), sum(counted)];
  if (trims === 0) return [];
  const who = trims === all ? 'only trims' : `${trims} ${trims === 1 ? 'only trims' : 'only trim'}`;
  return [`${who} the edge: less than a blade comes off`];
}
