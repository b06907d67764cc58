import { capScrew } from '../hardware/cap.ts';
import { PENETRATION } from '../hardware/choose.ts';
import { gluedStrips } from '../hardware/framejoints.ts';
import { type Meeting, meetings, WOOD_BETWEEN } from '../hardware/meet.ts';
import type { JointName } from '../hardware/row.ts';
import { screwSchedule } from '../hardware/schedule.ts';
import { floorToMark, INCH, type Marks } from '../length.ts';
import type { Panel } from '../panel/panel.ts';
import { weaveReach } from '../panel/reach.ts';
import { sideFixings, TIP_ROOM } from '../uses/fixings.ts';
import { gateDetails } from '../uses/gate.ts';
import { panelRule, type Rule } from './rule.ts';
import { forceText, lengthText, unlikeLengths } from './words.ts';

/** What would mend two joints whose screws meet, by the joint that can move. */
const MENDS: readonly (readonly [joint: JointName, mend: string, field: string])[] = [
  [
    'hinge to stile',
    'hinges further from the ends of the stile, their outer screws past the tips of the corner’s',
    'gate.hinges.inset',
  ],
  ['brace plate to frame', 'wider stiles and rails, or a plate bolted through', 'stile.width'],
  ['strut to frame', 'wider stiles and rails', 'stile.width'],
  ['foot to bottom rail', 'wider feet', 'divider.feet.width'],
  ['mounting', 'a higher panel, or fixings elsewhere', 'size.height'],
  ['end stave to stile', 'a higher panel, or glue the end staves and leave these screws out', 'size.height'],
];

/** Rules on screws in one another's way, where no screw fits, and where one is too long. */
export const screwRules: readonly Rule[] = [
  panelRule({
    code: 'screws-meet',
    reason: 'the second one cannot be driven, or breaks the wood between them',
    source: 'geometry; 3 mm of wood between two screws is common practice, no source',
    judge: (panel) => {
      const met = meetings(screwSchedule(panel), panel);
      if (met.length === 0) return undefined;
      const least = Math.min(...met.map(({ wood }) => wood));
      const [mend, field] = mendOf(met, panel);
      return {
        level: 'caution' as const,
        text: 'Two screws meet.',
        figure: met.map((meeting) => meetingText(meeting, panel.display)).join('; '),
        limit: lengthText(WOOD_BETWEEN, panel.display),
        judged: (found: string, wood: string) =>
          `${least < 0 ? 'As placed they run into one another' : 'They leave too little wood between them'}: ${found}; ${wood} of wood is wanted between any two`,
        mend: `${mend}; else try each place with a thin drill first and move one of the two`,
        field,
      };
    },
  }),
  panelRule({
    code: 'strip-glued',
    reason: 'a pin splits so thin a strip, or does not reach the wood behind it',
    source: 'common practice, no source',
    judge: (panel) => {
      const glued = gluedStrips(panel);
      if (glued.length === 0) return undefined;
      return {
        level: 'note',
        text: 'Strips are held by glue alone.',
        figure: glued.map(({ joint, why }) => `${joint}: ${why}`).join('; '),
        limit: 'a strip that takes a pin',
        judged: (found) => `Wanted would be pins too. On the ${found}`,
        mend: 'clamp the strips for as long as the glue says; or thicker and lower strips',
        field: 'top.cover',
      };
    },
  }),
  panelRule({
    code: 'cap-screws',
    reason: 'the groove lies under the middle of the rail, and a screw that reaches it splits the staves',
    source: 'geometry; six diameters of thread NDS 12.1.5.6 (from memory)',
    judge: (panel) => {
      const { details, rail, groove, display } = panel;
      if (details.use !== 'guard' || !details.cap || capScrew(panel, details.cap.height)) return undefined;
      return {
        level: 'caution',
        text: 'No screw fits the cap: the wood over the groove is too thin, or the cap is.',
        figure: lengthText(rail.height - groove.depth, display),
        limit: 'six diameters of a screw and 1/8 in over the groove',
        judged: (found, least) => `There is ${found} of wood over the groove; wanted is ${least}`,
        mend: 'a higher top rail or a shallower groove; else glue the cap, and fix it to the posts',
        field: 'rail.height',
      };
    },
  }),
  panelRule({
    code: 'strut-screws',
    reason: 'the strut lies on the back and has nothing to push against but its screws and glue',
    source: 'statics; none for what a screw bears across',
    judge: (panel) => {
      if (panel.details.use !== 'gate') return undefined;
      const { brace } = gateDetails(panel);
      if (brace?.kind !== 'strut') return undefined;
      return {
        level: 'note',
        text: 'Whether two screws an end carry the strut’s push is not worked out.',
        figure: forceText(Math.abs(brace.forceLoaded) / 2, panel.display),
        limit: 'what the maker of the screws says one bears across',
        judged: (found, limit) =>
          `With someone on the latch side each takes ${found}, which must be less than ${limit}`,
        mend: 'glue the strut to the frame as well, with glue that stands the weather; or bolt it through',
      };
    },
  }),
  panelRule({
    code: 'screw-past-glass',
    reason: 'the tip can meet the pane, its pocket or the weight box, or come out of the window frame',
    source: 'common practice, no source',
    judge: (panel) => {
      const { details, stile, display } = panel;
      if (details.use !== 'screen' || details.glass === undefined) return undefined;
      const { kind, screw } = sideFixings(panel);
      if (kind !== 'screw') return undefined;
      const behind = screw.length - stile.depth;
      const room = details.glass - behind;
      if (keepsFromGlass(panel)) return undefined;
      const [figure, limit] = unlikeLengths(behind, details.glass, display);
      return {
        level: 'caution',
        text: room < 0 ? 'The fixing screws go past the glass.' : 'The fixing screws end near the glass.',
        figure,
        limit: `${limit}, less ${lengthText(TIP_ROOM[display.unit], display)}`,
        judged: (found) => `The tips reach ${found} behind the frame; the glass stands at ${limit}`,
        mend: `${thinnerBlock(panel)}; else brackets on the wall beside the window. As it is, see what is in the window frame there before you drill`,
        field: 'screen.standoff',
      };
    },
  }),
];

/** Whether the fixing screws of a screen before glass end short enough of it. */
function keepsFromGlass(panel: Panel): boolean {
  const { details, stile, display } = panel;
  if (details.use !== 'screen' || details.glass === undefined) return true;
  return details.glass - (sideFixings(panel).screw.length - stile.depth) >= TIP_ROOM[display.unit] - 1e-6;
}

/** Steps of the thickness of a block, and its least, mm; common practice, no source. */
const BLOCK = { in: { step: INCH / 8, least: INCH / 2 }, mm: { step: 1, least: 12 } } as const;

/** The thickest thinner block with which a screw holds and ends clear of the glass, the weave clear of what is behind. */
function thinnerBlock(panel: Panel): string {
  const { details, display, stile } = panel;
  if (details.use !== 'screen' || details.glass === undefined) return '';
  const { step, least } = BLOCK[display.unit];
  const room = Math.max(least, weaveReach(panel).back - panel.outside.depth / 2);
  if (details.mounting === 'blocks')
    for (let standoff = floorToMark(details.standoff - 1e-6, step); standoff >= room - 1e-9; standoff -= step) {
      const thinner = { ...panel, details: { ...details, standoff } };
      const { screw } = sideFixings(thinner);
      if (screw.penetration < PENETRATION.least * screw.diameter - 1e-6 || !keepsFromGlass(thinner)) continue;
      const tip = details.glass - (screw.length - stile.depth);
      return `blocks ${lengthText(standoff, display)} thick, which take a screw No. ${screw.gauge} x ${lengthText(screw.length, display)}: its tip stays ${lengthText(tip, display)} short of the glass`;
    }
  return 'a shallower frame, so that a shorter screw holds';
}

function meetingText({ joints: [one, other], wood }: Meeting, display: Marks): string {
  const pair = one === other ? `two of ${one}` : `${one} and ${other}`;
  return wood < 0 ? pair : `${pair}, ${lengthText(wood, display)} of wood between them`;
}

/** Steps in which hinges are tried farther from the ends of the stile, mm. */
const INSET = { in: INCH / 4, mm: 5 } as const;

/** How far from the ends of a leaf the middles of its hinges stand, at least, so that no two screws meet, mm. */
function clearInset(panel: Panel): number | undefined {
  const { details, outside, display } = panel;
  if (details.use !== 'gate') return undefined;
  const step = INSET[display.unit];
  for (let inset = floorToMark(details.hingeInset, step) + step; inset <= outside.height / 4; inset += step) {
    const moved = { ...panel, details: { ...details, hingeInset: inset } };
    if (meetings(screwSchedule(moved), moved).length === 0) return inset;
  }
  return undefined;
}

function mendOf(met: readonly Meeting[], panel: Panel): readonly [mend: string, field: string] {
  const inset = met.some(({ joints }) => joints.includes('hinge to stile')) ? clearInset(panel) : undefined;
  if (inset !== undefined)
    return [
      `hinges with their middles ${lengthText(inset, panel.display)} from the ends of the leaf, where all screws are clear; marks and sticks follow when the packet is made again`,
      'gate.hinges.inset',
    ];
  const found = MENDS.find(([joint]) => met.some(({ joints }) => joints.includes(joint)));
  return found ? [found[1], found[2]] : ['stouter stiles and rails', 'stile.width'];
}
