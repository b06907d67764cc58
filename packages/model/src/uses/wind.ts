import { type WindLoad, windLoad } from '../loads/wind.ts';
import type { Panel } from '../panel/panel.ts';
import { solidity } from './openwork.ts';

/** Height of the panel's lower edge above the floor, ground or foot of the wall that it stands on, mm. */
export function bottomAbove({ details }: Pick<Panel, 'details'>): number {
  switch (details.use) {
    case 'screen':
      return details.above;
    case 'guard':
      return details.floorGap;
    case 'divider':
      return details.feet?.height ?? details.track?.below ?? 0;
    case 'gate':
      return details.clear.ground;
  }
}

/** Wind on the panel where the job gives a speed and the panel stands outdoors; absent otherwise. */
export function panelWind(panel: Panel): WindLoad | undefined {
  const { site, outside, details } = panel;
  if (!site.wind || site.where === 'indoors') return undefined;
  const drop = details.use === 'guard' ? details.drop : 0;
  return windLoad({
    width: outside.width,
    height: outside.height,
    top: drop + bottomAbove(panel) + outside.height,
    speed: site.wind.speed,
    exposure: site.wind.exposure,
    solidity: solidity(panel),
  });
}
