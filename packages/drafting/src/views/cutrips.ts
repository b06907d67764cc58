import type { Marks } from '@wattlewright/model';
import { tablePages } from '../layout/table.ts';
import type { Drawing } from '../mark.ts';
import type { Rip, RippedLength } from './cutboard.ts';
import { sectionText, sideText } from './cutsize.ts';

/**
 * Distance from fence to blade for a rip that leaves `at` mm when its sawn face is planed. The sawn face of what remains
 * is planed before it goes to the fence again, so that the fence always meets a finished face.
 */
export function fenceAt(at: number, { planing }: { readonly planing: number }): number {
  return at + planing;
}

/** How the wood lies on the saw's table for a rip through its width or through its thickness. */
export function lies(axis: Rip['axis']): 'flat' | 'on edge' {
  return axis === 'width' ? 'flat' : 'on edge';
}

/** What stands between fence and blade, in words: the parts that it becomes, a piece to rip further, or waste. */
export function takesOff({ off, offIs }: Rip, display: Marks, many = false): string {
  if (offIs === 'waste') return 'waste';
  const size = sectionText(off.width, off.height, display);
  return offIs === 'more' ? `${many ? 'pieces' : 'a piece'} ${size} to rip on` : `${offIs.join(' ')}\u00a0 ${size}`;
}

/** The rips of one length as a schedule: one row a fence setting, in the order of work; parted where it is too tall. */
export function ripTable(
  { rips }: RippedLength,
  of: {
    readonly numberOf: (rip: Rip) => number;
    readonly planing: number;
    readonly display: Marks;
    readonly width: number;
    readonly height: number;
  },
): Drawing[] {
  const { numberOf, planing, display, width, height } = of;
  const rows = new Map<string, { rip: Rip; number: number; count: number; off: Set<string> }>();
  for (const rip of rips) {
    const number = numberOf(rip);
    const key = `${number}|${rip.axis}`;
    const row = rows.get(key) ?? { rip, number, count: 0, off: new Set<string>() };
    row.count += 1;
    row.off.add(takesOff(rip, display));
    rows.set(key, row);
  }
  return tablePages({
    name: 'rips',
    title: '',
    alt: '',
    columns: [
      { title: 'Setting', align: 'right' },
      { title: 'Fence', align: 'right' },
      { title: 'Wood lies' },
      { title: 'Rips', align: 'right' },
      { title: 'By the fence' },
    ],
    rows: [...rows.values()]
      .sort((a, b) => a.number - b.number)
      .map(({ rip, number, count, off }) => [
        `${number}`,
        sideText(fenceAt(rip.at, { planing }), display),
        lies(rip.axis),
        `${count}`,
        [...off].join('\n'),
      ]),
    width,
    height,
  });
}
