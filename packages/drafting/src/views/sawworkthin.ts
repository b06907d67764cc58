import type { Marks } from '@wattlewright/model';
import type { Block } from '../layout/prose.ts';
import { sideText } from './cutsize.ts';
import type { RipSetting } from './cutsteps.ts';

/** Strips thinner than this, mm, are warned of: about 3/8 in. Common practice, no source. */
const THIN = 10;

/** The caution where strips come off so thin that the saw can throw them; none where no strip does. Common practice. */
export function thinRips(settings: readonly RipSetting[], display: Marks): Block[] {
  const thin = settings.filter(({ at }) => at < THIN);
  if (thin.length === 0) return [];
  const numbers = thin.map(({ number }) => number);
  const sizes = [...new Set(thin.map(({ at }) => sideText(at, display)))].join(', ');
  const at =
    numbers.length === 1
      ? `setting ${numbers[0]}`
      : `settings ${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1)}`;
  return [
    {
      kind: 'caution',
      text: `Thin strips at ${at}: ${sizes} ${display.unit}. A thin strip between fence and blade bends, jams and is thrown back. Guard and riving knife on; an insert that closes the gap beside the blade; a featherboard that presses the board to the fence before the blade, never beside it. Feed with a long push shoe of scrap that carries strip and board together past the blade, and stand out of its line.`,
    },
    {
      kind: 'caution',
      text: 'Safer: let the thin strip fall on the free side. Fix a stop ahead of the blade, away from it by the strip’s thickness; bring board and fence up to the stop before each rip, so that the wide piece runs between fence and blade.',
    },
  ];
}
