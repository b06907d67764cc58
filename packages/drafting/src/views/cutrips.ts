import type { Marks } from '@wattlewright/model';
import { tablePages } from '../layout/table.ts';
import type { Drawing } from '../mark.ts';
import { cutHeight, fenceAt, settingText, setWord } from './cutfence.ts';
import { countedRip, givesText, liesText } from './cutgives.ts';
import { blankOf, planedStrips, planedTogether } from './cutplaned.ts';
import { sideText } from './cutsize.ts';
import type { Rip, RippedLength } from './cutstages.ts';
import { workRows } from './cutworkrows.ts';

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
  const lengths = [{ ripped: [length] }];
  const rows: string[][] = [];
  const byNumber = new Map<number, Rip[]>();
  for (const rip of rips) byNumber.set(numberOf(rip), [...(byNumber.get(numberOf(rip)) ?? []), rip]);
  for (const [number, some] of [...byNumber].sort(([a], [b]) => a - b)) {
    const placed = some.map((rip) => ({ board: 0, ripped: 0, rip }));
    let told = false;
    for (const row of workRows(placed, lengths, (rip) => sideText(cutHeight(rip), display))) {
      const blanks = row.blanks.map(({ stage }) => ({ ...blankOf(stage, length), times: 1 }));
      for (const { what, to, gives, count } of planedTogether(blanks, display))
        rows.push(['plane', `to\u00a0${to}`, what, '', '', `${count} ×\u00a0${gives}, then ripped at ${number}`]);
      const same = row.rips.map(({ rip }) => rip);
      const first = same[0] as Rip;
      const counted = same.map((rip) => countedRip(rip, { times: 1, rips, row: same, numberOf }));
      rows.push([
        settingText(number, told && blanks.length > 0),
        `${setWord(first)}\u00a0${sideText(fenceAt(first.at, { planing }), display)}`,
        liesText(same, display).join('\n'),
        sideText(cutHeight(first), display),
        `${same.length}`,
        givesText(counted, display).join('\n'),
      ]);
      told = true;
    }
  }
  const strips = planedStrips(length).map((strip) => ({ ...strip, times: 1 }));
  for (const { what, to, gives, count } of planedTogether(strips, display))
    rows.push(['plane', `to\u00a0${to}`, what, '', '', `${count} ×\u00a0${gives}`]);
  return tablePages({
    name: 'rips',
    title: '',
    alt: '',
    columns: [
      { title: 'Setting' },
      { title: 'Set to' },
      { title: 'How it lies' },
      { title: 'Deep', align: 'right' },
      { title: 'Rips', align: 'right' },
      { title: 'Gives' },
    ],
    rows,
    balance: true,
    width,
    height,
  });
}
