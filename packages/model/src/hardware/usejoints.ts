import type { GateUse } from '../job/job.ts';
import type { Panel } from '../panel/panel.ts';
import { BRACKET, sideFixings } from '../uses/fixings.ts';
import { gateDetails } from '../uses/gate.ts';
import { braceScrews } from './bracescrews.ts';
import { capScrews } from './cap.ts';
import { footScrews } from './foot.ts';
import { hingePlate } from './hingeplate.ts';
import type { JointToScrew } from './row.ts';
import { heightsText, lengthsText } from './where.ts';

/** Joints that a panel's use adds, clear of the corners' screws. */
export function useJoints(panel: Panel, corner: JointToScrew): JointToScrew[] {
  switch (panel.details.use) {
    case 'screen':
      return [mounting(panel)];
    case 'guard':
      return [mounting(panel), ...capScrews(panel, panel.details, corner)];
    case 'divider':
      return footScrews(panel, panel.details, corner);
    case 'gate': {
      const hung = hinges(panel, panel.details, corner);
      return [...hung, ...braceScrews(panel, panel.details, [corner, ...hung])];
    }
  }
}

function mounting(panel: Panel): JointToScrew {
  const fixings = sideFixings(panel);
  const { stile, rail, spec, display } = panel;
  const first = fixings.places[0]?.y ?? 0;
  const bracket = fixings.kind === 'bracket';
  const inFrom = fixings.driven[0]?.x ?? 0;
  const screws = bracket
    ? `; in the stile two one above the other, ${lengthsText([BRACKET.screws], display)} apart, ${lengthsText([inFrom], display)} in from its outer edge`
    : '';
  const { details } = panel;
  const through =
    details.use === 'screen' && details.into === 'masonry'
      ? 'clearance hole in the stile, a plug in the wall'
      : `clearance hole in the stile${details.use === 'screen' && details.mounting === 'blocks' ? ' and its block' : ''}; into wood: masonry wants plugs, which are listed only where the job says so`;
  return {
    joint: 'mounting',
    screw: fixings.screw,
    places: fixings.places,
    driven: fixings.driven,
    count: fixings.places.length * fixings.screwsEach,
    along: 'z',
    ...(bracket && { into: spec.wood.stile.wood }),
    edge: Math.min(inFrom, stile.width - inFrom),
    end: Math.max(0, first - rail.height - (bracket ? BRACKET.screws / 2 : 0)),
    where: `up each stile, ${bracket ? 'middles of the brackets at the back' : 'in the middle of its front face'}; ${heightsText(
      fixings.places.map(({ y }) => y),
      display,
    )}${screws}`,
    remark: bracket
      ? 'angle brackets: two screws in the stile, two in the post; where the bracket has its holes elsewhere they go there, clear of the corner’s screws'
      : through,
  };
}

function hinges(panel: Panel, gate: GateUse, corner: JointToScrew): JointToScrew[] {
  const { stile, spec, display } = panel;
  const middles = gateDetails(panel).hinges;
  const { screw, places, step } = hingePlate(panel, corner);
  const shared = {
    screw,
    along: 'x',
    edge: stile.depth / 3,
    end: Math.max(0, gate.hingeInset - step - panel.rail.height),
  } as const;
  const heights = lengthsText(
    middles.map(({ y }) => y),
    display,
  );
  const remark = 'drill where the hinge plate has its holes';
  return [
    {
      joint: 'hinge to stile',
      ...shared,
      places,
      into: spec.wood.stile.wood,
      where: `three in each hinge plate; middles of the hinges from the foot of the leaf: ${heights}`,
      remark,
    },
    {
      joint: 'hinge to post',
      ...shared,
      places: [],
      count: places.length,
      where: 'level with those in the leaf',
      remark: `${remark}; into a post over ${lengthsText([2 * shared.screw.length], display)} thick take longer ones: they hold better`,
    },
  ];
}
