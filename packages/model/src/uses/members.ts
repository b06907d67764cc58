import type { Panel } from '../panel/panel.ts';
import type { Member } from '../parts/parts.ts';

/** The pieces that a panel's use adds to the woven panel itself. */
export function useMembers(panel: Panel): Member[] {
  const { details, spec, clear, outside } = panel;
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
      return [];
    case 'gate':
      return details.brace.kind === 'strut'
        ? [
            {
              name: 'strut',
              role: 'strut',
              count: 1,
              length: Math.hypot(clear.width, clear.height),
              section: [spec.stile.width, Math.min(spec.stile.depth, 25.4)],
              wood: wood.rail,
              made: 'corner to corner of the clear opening',
            },
          ]
        : [];
  }
}
