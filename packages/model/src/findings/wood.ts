import { metalFor } from '../hardware/metal.ts';
import { depthForStrips, hidingHeight } from '../panel/cover.ts';
import type { Panel } from '../panel/panel.ts';
import { woodNamed } from '../wood/species.ts';
import type { Wood } from '../wood/wood.ts';
import { panelRule, type Rule } from './rule.ts';
import { lengthText, unlikeLengths } from './words.ts';

/** Play that a stave keeps in its groove, mm: a sheet of paper on either side, common practice, no source. */
const PLAY = 0.2;

/** The woods of a panel, each once, with the members made of it. */
function woodsOf({ spec }: Panel): { readonly wood: Wood; readonly members: string }[] {
  const names = [...new Set(Object.values(spec.wood).map(({ wood }) => wood.name))];
  return names.flatMap((name) => {
    const own = Object.entries(spec.wood).filter(([, member]) => member.wood.name === name);
    const [first] = own;
    return first ? [{ wood: first[1].wood, members: own.map(([role]) => `${role}s`).join(', ') }] : [];
  });
}

/** Room that the stack has to swell into: over it, and in its gaps, mm. */
function roomToSwell({ courses }: Panel): number {
  return courses.allowance + courses.gap * (courses.count - 1);
}

/** Rules on moisture, decay and what woods do. */
export const woodRules: readonly Rule[] = [
  panelRule({
    code: 'no-room-to-swell',
    reason: 'a stack with no room crushes its edges or bows out of the frame in the wet season',
    source: 'Wood Handbook FPL-GTR-190, ch. 13',
    judge: (panel) => {
      const room = roomToSwell(panel);
      const { swell, needed, wettest } = panel.movement;
      const gaps = panel.courses.gap > 0;
      const wanted = gaps ? swell : needed;
      if (room >= wanted - 1e-6) return undefined;
      const [figure, limit] = unlikeLengths(room, wanted, panel.display);
      return {
        level: room < swell - 1e-6 ? 'stop' : 'caution',
        text: `The stack has too little room to swell to ${wettest} % moisture.`,
        figure,
        limit,
        judged: (found, least) =>
          `It has ${found}, ${gaps ? 'gaps and all' : 'over the top course'}; ${least} is wanted`,
        field: 'top.allowance',
        mend: 'leave more room at the top, build with wetter wood, or take quarter-sawn slats',
      };
    },
  }),
  panelRule({
    code: 'dry-opening',
    reason: 'a stack shrinks in the dry season and leaves the room that it has to swell into',
    source: 'Wood Handbook FPL-GTR-190, ch. 13',
    judge: (panel) => {
      const { courses, cover, movement, display } = panel;
      if (courses.gap > 0 || movement.dryOpening <= cover.height + 1e-6) return undefined;
      const strips = cover.height > 0;
      const [opening, hidden] = unlikeLengths(movement.dryOpening, cover.height, display);
      const height = lengthText(hidingHeight(movement.dryOpening, display), display);
      // Strips were wanted, but the ends of the top course stand out too far for them to lie on the rail.
      const blocked = !strips && cover.reach > 0;
      return {
        level: 'caution',
        text: strips
          ? 'The joint over the stack opens further in the dry season than the strips over it hide.'
          : 'In the dry season light shows over the top course.',
        figure: opening,
        limit: strips ? hidden : 'no gap to be seen',
        judged: (found, limit) =>
          strips
            ? `It opens to ${found}; the strips hide ${limit}`
            : `The joint opens to ${found}${blocked ? `, and nothing can be fixed over it, since the top course reaches ${lengthText(cover.reach, display)} from mid-depth, past what the rail bears` : ', and nothing hides it'}`,
        field: 'top.cover',
        mend: blocked
          ? `a frame ${lengthText(depthForStrips(panel), display)} deep, which has room for strips of wood over the joint; or a top course that begins and ends with a single stave, or stops at the stiles that hold the ends in`
          : `${strips ? 'strips' : 'strips under the top rail'} ${height} high, or less room at the top`,
      };
    },
  }),
  panelRule({
    code: 'groove-play',
    reason: 'a stave that swells tight splits the rail along its groove',
    source: 'Wood Handbook FPL-GTR-190, ch. 13; least play common practice, no source',
    judge: ({ movement, display }) => {
      const { built, driest, wettest } = movement.grooveClearance;
      const least = Math.min(built, driest, wettest);
      if (least >= PLAY) return undefined;
      const [figure, limit] = unlikeLengths(Math.abs(least), PLAY, display);
      return {
        level: least < 0 ? 'stop' : 'caution',
        text: 'The staves have too little play in their grooves.',
        figure,
        limit,
        judged: (found, wanted) =>
          least < 0
            ? `In the tightest season they are ${found} too thick for them`
            : `In the tightest season ${found} is left; ${wanted} or more is wanted`,
        mend: `cut the grooves ${lengthText(Math.max(PLAY - least, display.mark / 4), display)} wider, or more`,
        field: 'groove.clearance',
      };
    },
  }),
  panelRule({
    code: 'knots-in-slats',
    reason: 'a knot or steep grain breaks a bent slat: at a slope of grain of 1 in 10 wood keeps 0.81 of its strength',
    source: 'Wood Handbook FPL-GTR-190, ch. 5 (from memory)',
    judge: ({ spec }) => {
      const { slat, stave } = spec.wood;
      const of = slat.grade !== 'clear' ? 'slats' : stave.grade !== 'clear' ? 'staves' : undefined;
      if (!of) return undefined;
      return {
        level: of === 'slats' ? 'stop' : 'caution',
        text: `The ${of} are of wood with knots allowed.`,
        figure: 'knots allowed',
        limit: 'clear wood',
        judged: (found, wanted) =>
          `The job has ${found}; it should be ${wanted}, and pieces with grain steeper than 1 in 15 set aside`,
        field: 'wood',
        mend: `take clear straight-grained wood for the ${of}`,
      };
    },
  }),
  panelRule({
    code: 'wood-rots',
    reason: 'grooves and the tops of rails hold water',
    source: 'Wood Handbook FPL-GTR-190, Table 14-1',
    judge: (panel) => {
      if (panel.site.where !== 'outdoors') return undefined;
      return woodsOf(panel).flatMap(({ wood, members }) => {
        const group = wood.decay?.group;
        if (group === 'resistant' || group === 'very resistant') return [];
        return {
          level: group === 'moderately resistant' ? ('note' as const) : ('caution' as const),
          text: `${capital(wood.name)} (${members}) does not last long in the weather.`,
          figure: group ? `${group} to decay` : 'of unknown resistance to decay',
          limit: 'resistant to decay',
          judged: (found: string) => `Its heartwood is ${found}, and the sapwood of every wood rots`,
          field: 'wood',
          mend: 'a resistant wood, heartwood only, or keep water out and look at it every year',
        };
      });
    },
  }),
  panelRule({
    code: 'wood-not-in-table',
    reason: 'they are used as given; nothing here checked them',
    source: 'the job',
    judge: (panel) =>
      woodsOf(panel)
        .filter(({ wood }) => !woodNamed(wood.name))
        .map(({ wood, members }) => ({
          level: 'note' as const,
          text: `${capital(wood.name)} (${members}) is not in the wood table.`,
          figure: wood.source ? `from ${wood.source}` : 'without a source',
          limit: 'a wood of the table',
          judged: (from: string) => `Its figures are those of the job, ${from}`,
          field: 'woods',
          mend: 'check its strength, modulus and shrinkage against a published table',
        })),
  }),
  panelRule({
    code: 'moisture-when-built',
    reason: 'a panel built drier or wetter than its place ever is moves one way only, and further',
    source: 'Wood Handbook FPL-GTR-190, ch. 13',
    judge: ({ movement }) => {
      const { built, driest, wettest } = movement;
      if (built >= driest && built <= wettest) return undefined;
      return {
        level: 'caution',
        text: `The wood is ${built < driest ? 'drier' : 'wetter'} when built than the place ever makes it.`,
        figure: `${built} %`,
        limit: `${driest} to ${wettest} %`,
        judged: (found, place) => `It is taken at ${found}; the place brings ${place}`,
        field: 'site.built',
        mend: 'let the boards lie at the place for some weeks and measure again',
      };
    },
  }),
  panelRule({
    code: 'tannin',
    reason: 'tannin stains and eats plain and electroplated steel where wet',
    source: 'Wood Handbook FPL-GTR-190, ch. 8 (from memory)',
    judge: (panel) =>
      woodsOf(panel)
        .filter(({ wood }) => wood.tannic && panel.site.where === 'outdoors')
        .map(({ wood }) => ({
          level: 'note' as const,
          text: `${capital(wood.name)} stains and eats coated steel screws.`,
          figure: 'wood with tannin, outdoors',
          limit: `screws of ${metalFor(panel).name}`,
          judged: (_, metal) => `It wants ${metal}`,
          mend: `use ${metalFor(panel).name} throughout, pins and wire too`,
        })),
  }),
  panelRule({
    code: 'wood-dust',
    reason: 'the fine dust of this wood harms beyond being dust',
    source: 'health notices on wood dust (from memory)',
    judge: (panel) =>
      woodsOf(panel).flatMap(({ wood }) =>
        wood.dust
          ? {
              level: 'note' as const,
              text: `${capital(wood.name)}: ${wood.dust}.`,
              figure: `dust of ${wood.name}`,
              limit: 'as little of it in the air as can be',
              judged: (_: string, limit: string) => `Keep ${limit}`,
              mend: 'extract at the saw, wear a fitted mask, sand outdoors or under extraction',
            }
          : [],
      ),
  }),
];

function capital(name: string): string {
  return name.charAt(0).toUpperCase() + name.slice(1);
}
