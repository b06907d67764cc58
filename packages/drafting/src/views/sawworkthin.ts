import { type Marks, THIN_RIP } from '@wattlewright/model';
import type { Block } from '../layout/prose.ts';
import { setBy } from './cutrips.ts';
import { sideText } from './cutsize.ts';
import type { RipSetting } from './cutsteps.ts';

/**
 * The cautions where strips come off so thin that the saw can throw them: how to set the stop, and the rips that leave a thin
 * piece at the fence all the same; none where no strip is thin. Common practice, no source.
 */
export function thinRips(settings: readonly RipSetting[], display: Marks): Block[] {
  const thin = settings.filter((setting) => setBy(setting) === 'stop');
  const left = thin.filter(({ rips }) => rips.some(({ rip }) => rip.rest < THIN_RIP));
  return [...(thin.length > 0 ? [stopped(thin, display)] : []), ...(left.length > 0 ? [carried(left, display)] : [])];
}

function stopped(thin: readonly RipSetting[], display: Marks): Block {
  const sizes = [...new Set(thin.map(({ at }) => sideText(at, display)))].join(', ');
  return {
    kind: 'caution',
    text: `Thin strips at ${settingList(thin)}: ${sizes} ${display.unit}. Between fence and blade such a strip bends, jams and is thrown back, so it is cut on the free side. Fix a stop with a rounded end or a roller to the table on the free side, just before the blade, never beside it; set it so far from the blade’s teeth as the setting says. Push the board’s free side up to the stop, bring the fence up to the board and lock it: the board runs between fence and blade, the strip falls free. The stop stays; the fence is moved up for each strip. Guard and riving knife on, an insert that closes the gap beside the blade, a push shoe on the board and not on the strip; stand out of the line of the blade.`,
  };
}

function carried(left: readonly RipSetting[], display: Marks): Block {
  const most = Math.max(...left.flatMap(({ rips }) => rips.map(({ rip }) => (rip.rest < THIN_RIP ? rip.rest : 0))));
  return {
    kind: 'caution',
    text: `At ${settingList(left)} the last rip of a piece leaves no more than ${sideText(most, display, { named: true })} at the fence. Before it, fix the piece with double-sided tape to a straight scrap wider than a hand, so that the scrap runs along the fence and carries both past the blade.`,
  };
}

function settingList(settings: readonly RipSetting[]): string {
  const numbers = settings.map(({ number }) => number);
  if (numbers.length === 1) return `setting ${numbers[0]}`;
  return `settings ${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1)}`;
}
