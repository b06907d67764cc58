import { PENETRATION } from '../hardware/choose.ts';
import { DISTANCES, type ScrewRow } from '../hardware/row.ts';
import { screwSchedule } from '../hardware/schedule.ts';
import type { Panel } from '../panel/panel.ts';
import { sideFixings } from '../uses/fixings.ts';
import { panelRule, type Rule } from './rule.ts';
import { forceText, lengthText, sentence, unlikeForces } from './words.ts';

/** Screws nearer to an edge than this many diameters are more than a little near; derived from the 2.5 wanted. */
const VERY_NEAR = 2;

const SPACING_SOURCE = 'NDS C12.1.5.7 (from memory): guidance; the rule is that the wood must not split';

function screws(rows: readonly ScrewRow[]): ScrewRow[] {
  return rows.filter(({ fastener }) => fastener.kind === 'screw');
}

/** Rules on screws and on what panels hang by. */
export const fasteningRules: readonly Rule[] = [
  panelRule({
    code: 'fixing-pull',
    reason: 'wind pulls the panel off its wall: thread in side grain, wind and wet factors counted in',
    source: 'NDS 2018 eq. 12.2-2; factors from memory; wind ASCE 7-16',
    judge: (panel) => {
      if (panel.details.use !== 'screen') return undefined;
      const { pull, resistance, perSide, spacing } = sideFixings(panel);
      if (resistance === undefined || pull <= resistance) return undefined;
      const [figure, limit] = unlikeForces(pull, resistance, panel.display);
      return {
        level: 'caution',
        text: `The wind asks more of a fixing than one screw gives, with ${perSide} a side, ${lengthText(spacing, panel.display)} apart.`,
        figure,
        limit,
        judged: (found, most) => `It pulls with ${found} on the worst one, and a screw holds ${most}`,
        mend: 'two screws at each fixing, longer ones, or bolts; ask a licensed professional',
      };
    },
  }),
  panelRule({
    code: 'fixing-not-reckoned',
    reason: 'wall plugs, brackets and posts have their makers’ own figures',
    source: 'ASCE 7-16 for the wind; none for the fixing',
    judge: (panel) => {
      const { use } = panel.details;
      if (use !== 'screen' && use !== 'guard') return undefined;
      const { pull, resistance, kind } = sideFixings(panel);
      const what = kind === 'bracket' ? 'angle brackets' : 'wall plugs';
      if (pull === 0 || resistance !== undefined) return undefined;
      return {
        level: 'note',
        text: `Whether the ${what} hold in the wind is not worked out.`,
        figure: forceText(pull, panel.display),
        limit: `what the makers of the ${what} say one bears`,
        judged: (found, limit) =>
          `The design wind pulls with ${found} on the worst one, which must be less than ${limit}`,
        mend: `buy ${what} with that figure; a licensed professional decides`,
      };
    },
  }),
  panelRule({
    code: 'wind-not-given',
    reason: 'without it no pull on fixings, hinges and posts can be told',
    source: 'ASCE 7-16, ch. 26: the map value of the place',
    judge: ({ site }) => {
      if (site.where === 'indoors' || site.wind) return undefined;
      return {
        level: 'note',
        text: 'No wind is worked out: the job gives no wind speed.',
        figure: 'no wind speed',
        limit: 'the design wind speed of the place',
        judged: (_, wanted) => `Wanted is ${wanted}, which the building office knows`,
        mend: 'where the wind reaches the panel, have the packet made again with it',
        field: 'site.wind',
      };
    },
  }),
  panelRule({
    code: 'screw-edge',
    reason: 'a screw near an edge splits the wood; a pilot hole of full depth and wax help',
    source: SPACING_SOURCE,
    judge: (panel) => {
      const near = screwSchedule(panel).filter(({ edge }) => short(edge));
      // A pin of wire has no thread that wedges the wood apart.
      const very = ({ fastener, edge }: ScrewRow) =>
        fastener.kind === 'screw' && edge.found / fastener.diameter < VERY_NEAR;
      return [
        tooNear(near.filter(very), panel, { level: 'caution', of: 'edge' }),
        tooNear(
          near.filter((row) => !very(row)),
          panel,
          { level: 'note', of: 'edge' },
        ),
      ].flatMap((found) => found ?? []);
    },
  }),
  panelRule({
    code: 'screw-end',
    reason: 'a screw near an end splits the wood along the grain',
    source: SPACING_SOURCE,
    judge: (panel) =>
      tooNear(
        screws(screwSchedule(panel)).filter(({ end }) => short(end)),
        panel,
        { level: 'note', of: 'end' },
      ),
  }),
  panelRule({
    code: 'screw-reach',
    reason: 'with less thread than that a screw is not counted at all',
    source: 'NDS 12.1.5.6 (from memory)',
    judge: (panel) => {
      const shallow = screws(screwSchedule(panel)).filter(
        ({ fastener }) => fastener.penetration / fastener.diameter < PENETRATION.least - 1e-6,
      );
      if (shallow.length === 0) return undefined;
      return {
        level: 'caution' as const,
        text: 'Screws have too little thread in the far piece.',
        figure: shallow
          .map(
            ({ joint, name, fastener }) =>
              `${joint} (${name}): ${lengthText(fastener.penetration, panel.display)}, wanted ${lengthText(PENETRATION.least * fastener.diameter, panel.display)}`,
          )
          .join('; '),
        limit: `${PENETRATION.least} times the thickness of the screw`,
        judged: (found, least) => `Wanted is ${least}. ${sentence(found)}`,
        mend: `a far piece ${lengthText(Math.max(...shallow.map(({ fastener }) => PENETRATION.least * fastener.diameter - fastener.penetration)), panel.display)} thicker, or bolts right through`,
      };
    },
  }),
];

/** Less than this short of the distance wanted is no more than how true a hole is drilled, mm; common practice, no source. */
const DRILLED = 0.25;

function short({ found, wanted }: ScrewRow['edge']): boolean {
  return found < wanted - DRILLED;
}

/** All screws of a panel that stand too near, in one judgement; nothing for none. */
function tooNear(
  rows: readonly ScrewRow[],
  { display }: Panel,
  { level, of }: { readonly level: 'caution' | 'note'; readonly of: 'edge' | 'end' },
) {
  if (rows.length === 0) return undefined;
  const show = (length: number) => lengthText(length, display);
  return {
    level,
    text: `${rows.every(({ fastener }) => fastener.kind === 'pin') ? 'Pins' : rows.some(({ fastener }) => fastener.kind === 'pin') ? 'Screws and pins' : 'Screws'} stand ${level === 'caution' ? 'much too ' : ''}near the ${of} of the wood.`,
    figure: rows
      .map((row) => `${row.joint} (${row.name}): ${show(row[of].found)}, wanted ${show(row[of].wanted)}`)
      .join('; '),
    limit: `${DISTANCES[of]} times the thickness of the ${rows.every(({ fastener }) => fastener.kind === 'pin') ? 'pin' : 'screw'}`,
    judged: (found: string, least: string) => `Wanted is ${least}. ${sentence(found)}`,
    mend:
      of === 'edge'
        ? 'drill the pilot full depth, or take wider wood or a thinner screw'
        : 'drill the pilot full depth and wax the screw',
  };
}
