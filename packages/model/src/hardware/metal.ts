import type { Panel } from '../panel/panel.ts';

/** What screws and fittings are to be made of, and why. */
export interface Metal {
  readonly name: string;
  readonly reason: string;
}

/**
 * Metal for a panel's screws and fittings: tannin-bearing woods (cedars, redwood, oaks) stain and eat plain and
 * electroplated steel where wet. From memory of the trade and of the Wood Handbook, ch. 8.
 */
export function metalFor({ spec, site }: Pick<Panel, 'spec' | 'site'>): Metal {
  const tannic = Object.values(spec.wood).find(({ wood }) => wood.tannic)?.wood.name;
  if (site.where === 'outdoors')
    return tannic
      ? { name: 'stainless steel', reason: `${tannic} holds tannin, which stains and eats coated steel where wet` }
      : { name: 'stainless or hot-dip galvanized steel', reason: 'plain and electroplated steel rusts outdoors' };
  return tannic
    ? { name: 'stainless steel or brass', reason: `${tannic} holds tannin: plain steel leaves dark stains when damp` }
    : { name: 'zinc-plated steel', reason: 'dry indoors, any coated steel does' };
}
