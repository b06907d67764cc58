import { PENETRATION } from '../hardware/choose.ts';
import { DISTANCES, type ScrewRow } from '../hardware/row.ts';
import { screwSchedule } from '../hardware/schedule.ts';
import { sideFixings } from '../uses/fixings.ts';
import { panelRule, type Rule } from './rule.ts';
import { forceText, lengthText } from './words.ts';

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
      return {
        level: 'caution',
        text: `The wind asks more of a fixing than one screw gives, with ${perSide} a side, ${lengthText(spacing, panel.display)} apart.`,
        figure: forceText(pull, panel.display),
        limit: forceText(resistance, panel.display),
        mend: 'two screws at each fixing, longer ones, or bolts; ask a licensed professional',
      };
    },
  }),
  panelRule({
    code: 'fixing-not-reckoned',
    reason: 'plugs, brackets, posts and footings have their makers’ own figures, not reckoned here',
    source: 'ASCE 7-16 for the wind; none for the fixing',
    judge: (panel) => {
      const { use } = panel.details;
      if (use !== 'screen' && use !== 'guard') return undefined;
      const { pull, resistance } = sideFixings(panel);
      if (pull === 0 || resistance !== undefined) return undefined;
      return {
        level: 'note',
        text: 'What the fixings bear is told, not whether they bear it.',
        figure: `${forceText(pull, panel.display)} from the wind on the worst one`,
        limit: 'what the plug’s or bracket’s maker says it bears',
        mend: 'choose plugs or brackets with that figure; a licensed professional decides',
      };
    },
  }),
  panelRule({
    code: 'wind-not-given',
    reason: 'without a wind speed no pull on fixings, hinges and posts can be told',
    source: 'ASCE 7-16, ch. 26: the map value of the place',
    judge: ({ site }) => {
      if (site.where === 'indoors' || site.wind) return undefined;
      return {
        level: 'note',
        text: 'No wind is reckoned: the job gives no wind speed.',
        figure: 'no wind speed',
        limit: 'the design wind speed of the place, m/s',
        mend: 'give site.wind with speed and exposure',
      };
    },
  }),
  panelRule({
    code: 'screw-edge',
    reason: 'a screw near an edge splits it; a pilot hole of full depth and wax help',
    source: SPACING_SOURCE,
    judge: (panel) =>
      screws(screwSchedule(panel)).flatMap(({ joint, name, edge, fastener }) => {
        if (edge.found >= edge.wanted - 1e-6) return [];
        const share = edge.found / fastener.diameter;
        return {
          level: share < VERY_NEAR ? ('caution' as const) : ('note' as const),
          text: `${name}, ${joint}: near the edge of the wood.`,
          figure: `${lengthText(edge.found, panel.display)}, ${share.toFixed(1)} diameters`,
          limit: `${lengthText(edge.wanted, panel.display)}, ${DISTANCES.edge} diameters`,
          mend: 'drill the pilot full depth, or take wider wood or a thinner screw',
        };
      }),
  }),
  panelRule({
    code: 'screw-end',
    reason: 'a screw near an end splits the wood along the grain',
    source: SPACING_SOURCE,
    judge: (panel) =>
      screws(screwSchedule(panel)).flatMap(({ joint, name, end, fastener }) => {
        if (end.found >= end.wanted - 1e-6) return [];
        return {
          level: 'note' as const,
          text: `${name}, ${joint}: near the end of the wood.`,
          figure: `${lengthText(end.found, panel.display)}, ${(end.found / fastener.diameter).toFixed(1)} diameters`,
          limit: `${lengthText(end.wanted, panel.display)}, ${DISTANCES.end} diameters`,
          mend: 'drill the pilot full depth; leave the piece long and cut it to length after screwing',
        };
      }),
  }),
  panelRule({
    code: 'screw-reach',
    reason: 'under six diameters of thread a screw is not counted at all',
    source: 'NDS 12.1.5.6 (from memory)',
    judge: (panel) =>
      screws(screwSchedule(panel)).flatMap(({ joint, name, fastener }) => {
        const share = fastener.penetration / fastener.diameter;
        if (share >= PENETRATION.least - 1e-6) return [];
        return {
          level: 'caution' as const,
          text: `${name}, ${joint}: too little thread in the far piece.`,
          figure: `${share.toFixed(1)} diameters of thread`,
          limit: `${PENETRATION.least} diameters`,
          mend: 'a thicker far piece, a bolt right through, or a longer screw than the series here has',
        };
      }),
  }),
];
