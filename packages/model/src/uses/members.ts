import { ceilToMark, INCH } from '../length.ts';
import type { Panel } from '../panel/panel.ts';
import type { Member } from '../parts/member.ts';
import { braceLine, strutThickness } from './brace.ts';
import { sideFixings } from './fixings.ts';
import { BLOCK_HEIGHT } from './place.ts';

/** What a strut is longer at first than it ends up, mm: 1 in or 25 mm, common practice, no source. */
const OVER = { in: INCH, mm: 25 } as const;

/** The pieces that a panel's use adds to the woven panel itself. */
export function useMembers(panel: Panel): Member[] {
  const { details, spec, outside, stile, display } = panel;
  const { wood } = spec;
  switch (details.use) {
    case 'guard':
      return details.cap
        ? [
            {
              name: 'cap rail',
              role: 'cap rail',
              count: 1,
              length: outside.width,
              section: [details.cap.height, details.cap.depth],
              wood: wood.rail,
              made: 'outside width',
            },
          ]
        : [];
    case 'divider':
      return details.feet
        ? [
            {
              name: 'foot',
              role: 'foot',
              count: 2,
              length: details.feet.length,
              section: [details.feet.height, details.feet.width],
              wood: wood.rail,
              made: 'given or assumed',
            },
          ]
        : [];
    case 'screen':
      return details.mounting === 'blocks' && details.standoff > 0
        ? [
            {
              name: 'stand-off block',
              role: 'stand-off block',
              count: sideFixings(panel).places.length,
              length: BLOCK_HEIGHT,
              section: [stile.width, details.standoff],
              wood: wood.stile,
              made: 'as long as a screw needs so as not to split it',
            },
          ]
        : [];
    case 'gate': {
      const line = braceLine(panel, details);
      if (line?.kind !== 'strut') return [];
      return [
        {
          name: 'strut',
          role: 'strut',
          count: 1,
          length: ceilToMark(
            Math.hypot(line.latch.x - line.hinge.x, line.latch.y - line.hinge.y) + stile.width + OVER[display.unit],
            display.mark,
          ),
          section: [stile.width, strutThickness(panel)],
          wood: wood.rail,
          made: `middle to middle of the corner joints, half a lap at each, and ${display.unit === 'in' ? 'an inch' : '25 mm'} over to saw both ends flush`,
        },
      ];
    }
  }
}
