import { gateDetails, type Panel, type PanelPlace, screenDetails, sideFixings } from '@wattlewright/model';
import type { RunningValue } from '../layout/running.ts';
import { printed } from './elevationsizes.ts';

/** Something fixed to a panel, by its middle in the panel frame, mm. */
interface FixedPlace extends Pick<PanelPlace, 'x' | 'y'> {
  readonly name: string;
}

/** Everything that is fixed to a panel at some height of its own. */
function fixedPlaces(panel: Panel): FixedPlace[] {
  const { details } = panel;
  const named = (name: string, places: readonly PanelPlace[]): FixedPlace[] =>
    places.map(({ x, y }) => ({ x, y, name }));
  switch (details.use) {
    case 'gate': {
      const { hinges, latch, brace } = gateDetails(panel);
      return [
        ...named('hinge', hinges),
        ...(latch.inside ? named('latch', [latch]) : []),
        ...(brace ? named(brace.kind === 'cable' ? 'eye' : 'strut', [brace.hinge, brace.latch]) : []),
      ];
    }
    case 'screen': {
      const { blocks } = screenDetails(panel);
      const { kind, places } = sideFixings(panel);
      return blocks ? named('block', blocks.places) : named(kind, places);
    }
    case 'guard':
      return named('bracket', sideFixings(panel).places);
    case 'divider':
      return [];
  }
}

/**
 * Heights of what is fixed, each once with its name, lowest first, for a running row; `v` maps heights to paper. Where all
 * are of one kind the row says which.
 */
export function fixedHeights(
  panel: Panel,
  v: (y: number) => number,
): { readonly values: RunningValue[]; readonly what: string } {
  const places = fixedPlaces(panel).toSorted((a, b) => a.y - b.y);
  const names = [...new Set(places.map(({ name }) => name))];
  const [only] = names;
  const values: RunningValue[] = [];
  places.forEach(({ y, name }, i) => {
    if (places.findIndex((one) => one.name === name && Math.abs(one.y - y) < 1e-6) < i) return;
    const { text } = printed(panel, y);
    values.push({ at: v(y), text: names.length === 1 ? text : `${name} ${text}` });
  });
  return { values, what: names.length === 1 ? `Middles of ${only}s` : 'Middles' };
}
