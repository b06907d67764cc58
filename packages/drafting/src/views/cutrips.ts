import { type Marks, THIN_RIP } from '@wattlewright/model';
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

/** What is set to the size that comes off: the fence, or for a thin strip a stop on the free side of the blade. */
export function setBy({ at }: { readonly at: number }): 'fence' | 'stop' {
  return at < THIN_RIP - SAME ? 'stop' : 'fence';
}

/** The piece's size across the cut, from fence to free side, mm. */
function along({ axis, piece }: Rip): number {
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
 * edge. Such as `lies on 3 1⁄2 face`, or in two lines where pieces grow too narrow to lie flat.
 */
export function liesText(rips: readonly Rip[], display: Marks): string[] {
  const flat = rips.filter((rip) => cutHeight(rip) <= along(rip) + SAME);
  const edge = rips.filter((rip) => !flat.includes(rip));
  return [
    ...(flat.length > 0 ? [`lies on ${facesText(flat, display)} face`] : []),
    ...(edge.length > 0 ? [`stands on ${facesText(edge, display)} edge`] : []),
  ];
}

/** The widest and the narrowest of the faces that pieces lie on. */
function facesText(rips: readonly Rip[], display: Marks): string {
  const sizes = [...new Set(rips.map((rip) => sideText(along(rip), display)))];
  const sorted = [...rips].sort((a, b) => along(b) - along(a));
  const [first, last] = [sorted[0], sorted.at(-1)].map((rip) => sideText(along(rip as Rip), display));
  return sizes.length > 1 ? `${first} ${sizes.length > 2 ? 'to' : 'and'} ${last}` : `${first}`;
}

/** What comes off, in words: the parts that it becomes, a blank with the setting at which it is ripped again, or waste. */
export function takesOff(
  rip: Rip,
  of: { readonly display: Marks; readonly again: number; readonly many?: boolean },
): string {
  const { off, offIs } = rip;
  if (offIs === 'waste') return 'a strip to throw away';
  const size = sectionText(off.width, off.height, of.display);
  const blank = of.many ? 'blanks' : 'blank';
  return offIs === 'more' ? `${blank} ${size}, ripped again at ${of.again}` : `${offIs.join(' ')}\u00a0 ${size}`;
}

/** The rips of one length as a schedule: one row a setting, in the order of work; parted where it is too tall. */
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
  const again = (rip: Rip): number => numberOf(rips[rip.again ?? 0] as Rip);
  const rows = new Map<string, Rip[]>();
  for (const rip of rips) {
    const key = `${numberOf(rip)}|${sideText(cutHeight(rip), display)}`;
    rows.set(key, [...(rows.get(key) ?? []), rip]);
  }
  return tablePages({
    name: 'rips',
    title: '',
    alt: '',
    columns: [
      { title: 'Setting', align: 'right' },
      { title: 'Set to' },
      { title: 'The piece' },
      { title: 'Deep', align: 'right' },
      { title: 'Rips', align: 'right' },
      { title: 'Comes off' },
    ],
    rows: [...rows.values()]
      .sort(([a], [b]) => numberOf(a as Rip) - numberOf(b as Rip))
      .map((same) => {
        const first = same[0] as Rip;
        const off = new Set(same.map((rip) => takesOff(rip, { display, again: again(rip) })));
        const shavings = same.filter(({ shaving }) => shaving).length;
        return [
          `${numberOf(first)}`,
          `${setBy(first)} ${sideText(fenceAt(first.at, { planing }), display)}`,
          liesText(same, display).join('\n'),
          sideText(cutHeight(first), display),
          `${same.length}`,
          [...off, ...(shavings > 0 ? [shavingText(shavings, same.length)] : [])].join('\n'),
        ];
      }),
    width,
    height,
  });
}

/** That a blade runs half in the air, and how often of how many rips. */
export function shavingText(count: number, of: number): string {
  const some = count === 1 ? 'one a shaving' : `${count} shavings`;
  return `${count === of ? (of === 1 ? 'a shaving' : 'shavings') : some}: the blade runs half in the air`;
}
