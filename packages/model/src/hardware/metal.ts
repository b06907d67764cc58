import type { Panel } from '../panel/panel.ts';
import type { ScrewRow } from './row.ts';

/** What screws and fittings are to be made of, and why. */
export interface Metal {
  readonly name: string;
  readonly reason: string;
}

const OUTDOORS = 'stainless or hot-dip galvanized steel';

/** Largest gauge that is hardly sold galvanized. */
const SMALL = 5;

/**
 * Metal for a panel's screws and fittings: tannin-bearing woods (cedars, redwood, oaks) stain and eat plain and
 * electroplated steel where wet. From memory of the trade and of the Wood Handbook, ch. 8.
 */
export function metalFor({ spec, site }: Pick<Panel, 'spec' | 'site'>): Metal {
  const tannic = Object.values(spec.wood).find(({ wood }) => wood.tannic)?.wood.name;
  if (site.salt)
    return {
      name: 'stainless steel A4 (316)',
      reason: 'salt air and treated posts eat zinc, and common stainless steel too',
    };
  if (site.where === 'outdoors')
    return tannic
      ? { name: 'stainless steel', reason: `${tannic} holds tannin, which stains and eats coated steel where wet` }
      : { name: OUTDOORS, reason: 'plain and electroplated steel rusts outdoors' };
  return tannic
    ? { name: 'stainless steel or brass', reason: `${tannic} holds tannin: plain steel leaves dark stains when damp` }
    : { name: 'zinc-plated steel', reason: 'dry indoors, any coated steel does' };
}

/**
 * Metal of one screw or pin: what the panel asks for, but pins and the smallest screws, which are hardly sold hot-dip
 * galvanized, of stainless steel alone. Common practice, no source.
 */
export function metalOf(fastener: ScrewRow['fastener'], panel: Pick<Panel, 'spec' | 'site'>): string {
  const { name } = metalFor(panel);
  const small = fastener.kind === 'pin' || fastener.gauge <= SMALL;
  return small && name === OUTDOORS ? 'stainless steel' : name;
}
