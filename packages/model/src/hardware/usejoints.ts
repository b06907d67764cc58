import type { GateUse } from '../job/job.ts';
import type { Panel } from '../panel/panel.ts';
import { PLATE } from '../uses/brace.ts';
import { BRACKET, sideFixings } from '../uses/fixings.ts';
import { gateDetails } from '../uses/gate.ts';
import { braceScrews } from './bracescrews.ts';
import { capScrews } from './cap.ts';
import { chooseScrew } from './choose.ts';
import { footScrews } from './foot.ts';
import { HINGE_SCREWS, type JointToScrew } from './row.ts';
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
      const hung = hinges(panel, panel.details);
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
    remark: bracket ? 'angle brackets: two screws in the stile, two in the post' : 'clearance hole in the stile',
  };
}

function hinges(panel: Panel, gate: GateUse): JointToScrew[] {
  const { stile, spec, display } = panel;
  const middles = gateDetails(panel).hinges;
  const places = middles.flatMap(({ x, y }) =>
    [-1, 0, 1].map((i) => ({ x, y: y + i * HINGE_SCREWS, z: ((i === 0 ? 1 : -1) * stile.depth) / 6 })),
  );
  const shared = {
    screw: chooseScrew({ gauges: [10, 8], through: PLATE, room: stile.width - 6, unit: display.unit }),
    along: 'x',
    edge: stile.depth / 3,
    end: Math.max(0, gate.hingeInset - HINGE_SCREWS - panel.rail.height),
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
      remark: `${remark}; a post more than twice as thick as they are long takes longer ones, and holds better`,
    },
  ];
}
