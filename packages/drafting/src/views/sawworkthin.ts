import { type Marks, THIN_RIP } from '@wattlewright/model';
import type { Block } from '../layout/prose.ts';
import { cutHeight, cutWidth, setBy } from './cutfence.ts';
import { sideText } from './cutsize.ts';
import type { Rip } from './cutstages.ts';
import type { RipSetting } from './cutsteps.ts';

/** Whether a piece stands so tall on so narrow a base that it tips: half as high again as wide; common practice, no source. */
const isTall = (rip: Rip): boolean => cutHeight(rip) >= 1.5 * cutWidth(rip);

/** Whether a piece is so thin that it creeps under the fence and flutters; common practice, no source. */
const isFlat = (rip: Rip): boolean => cutHeight(rip) < THIN_RIP && cutHeight(rip) < cutWidth(rip);

/** Whether no more than a thin strip is left at the fence after a rip by the thin-rip stop. */
const isCarried = (rip: Rip): boolean => setBy(rip) === 'stop' && rip.rest < THIN_RIP;

/** What to mind at some rips, in a few words: the cautions tell the rest. */
export function ripNotes(rips: readonly Rip[], display: Marks): string[] {
  const slivers = rips.flatMap(({ sliver }) => (sliver === undefined ? [] : [sliver]));
  const most = Math.max(0, ...slivers);
  return [
    ...(rips.some(isTall) ? ['tall: high fence'] : []),
    ...(rips.some(isFlat) ? ['thin and flat: close the gap under the fence'] : []),
    ...(rips.every(isCarried) ? ['every rip here: tape to a scrap'] : []),
    ...(rips.some(isCarried) && !rips.every(isCarried) ? ['last rip of each piece: tape to a scrap'] : []),
    ...(slivers.length === 0 ? [] : [`a sliver of ${sideText(most, display)} falls loose: stand aside`]),
  ];
}

/**
 * The cautions for the settings that want them: strips so thin that the saw can throw them, thin pieces that lie flat, tall
 * ones on a narrow edge; none where there are none. Common practice, no source.
 */
export function ripCautions(settings: readonly RipSetting[], display: Marks): Block[] {
  const those = (is: (rip: Rip) => boolean): RipSetting[] =>
    settings.filter(({ rips }) => rips.some(({ rip }) => is(rip)));
  const [thin, left, flat, tall] = [
    settings.filter((setting) => setBy(setting) === 'stop'),
    those(isCarried),
    those(isFlat),
    those(isTall),
  ];
  return [
    ...(thin.length > 0 ? [stopped(thin, display)] : []),
    ...(left.length > 0 ? [carried(left, display)] : []),
    ...(flat.length > 0 ? [lyingFlat(flat)] : []),
    ...(tall.length > 0 ? [standing(tall)] : []),
  ];
}

function stopped(thin: readonly RipSetting[], display: Marks): Block {
  const sizes = [...new Set(thin.map(({ at }) => sideText(at, display)))].join(', ');
  return {
    kind: 'caution',
    text: `Thin strips at ${settingList(thin)}: ${sizes} ${display.unit}. Between fence and blade such a strip bends, jams and is thrown back, so it is cut on the free side. Fix a thin-rip stop, a block with a rounded end or a roller, to the table on the free side, just before the blade, never beside it; set it so far from the blade’s teeth as the setting says. Push the board’s free side up to the stop, bring the fence up to the board and lock it: the board runs between fence and blade, the strip falls free. The thin-rip stop stays; the fence is moved up for each strip. Guard and riving knife on, an insert that closes the gap beside the blade, a push shoe on the board and not on the strip; stand out of the line of the blade.`,
  };
}

function carried(left: readonly RipSetting[], display: Marks): Block {
  const most = Math.max(...left.flatMap(({ rips }) => rips.map(({ rip }) => (rip.rest < THIN_RIP ? rip.rest : 0))));
  const which = left.every(({ rips }) => rips.every(({ rip }) => isCarried(rip)))
    ? 'every rip'
    : 'the last rip of a piece';
  return {
    kind: 'caution',
    text: `At ${settingList(left)} ${which} leaves no more than ${sideText(most, display, { named: true })} at the fence. Before it, fix the piece with double-sided tape to a straight scrap as long as the piece and wider than a hand, so that the scrap runs along the fence and carries both past the blade.`,
  };
}

function lyingFlat(flat: readonly RipSetting[]): Block {
  return {
    kind: 'caution',
    text: `At ${settingList(flat)} a thin strip lies flat and can creep under the fence or flutter up. Close the gap with a straight batten fixed to the fence down on the table, and hold the strip down with a featherboard before the blade.`,
  };
}

function standing(tall: readonly RipSetting[]): Block {
  return {
    kind: 'caution',
    text: `At ${settingList(tall)} a tall piece stands on a narrow edge and can tip. Fix a high board to the fence, at least two thirds of the piece’s height, and hold the piece to it with a featherboard before the blade, high up.`,
  };
}

function settingList(settings: readonly RipSetting[]): string {
  const numbers = settings.map(({ number }) => number);
  if (numbers.length === 1) return `setting ${numbers[0]}`;
  return `settings ${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1)}`;
}
