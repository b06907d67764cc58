import { INCH } from '../length.ts';
import { ESCAPE_CODE } from '../uses/codes.ts';
import { dividerDetails, TIPPING } from '../uses/divider.ts';
import { layRuns, runGaps } from '../uses/run.ts';
import { screenDetails } from '../uses/screen.ts';
import { GRAVITY } from '../uses/weight.ts';
import { panelWind } from '../uses/wind.ts';
import { panelRule, type Rule } from './rule.ts';
import { codeText, lengthText, unlikeForces, unlikeLengths } from './words.ts';

/** Least room between panel and glass, mm: a hand and a cloth, air to dry the pane; common practice, no source. */
const GLASS_ROOM = INCH;

/** Gaps that differ by less are alike, mm. */
const SAME_GAP = 0.5;

/** Rules on screens, dividers and runs in their places. */
export const placeRules: readonly Rule[] = [
  panelRule({
    code: 'escape-window',
    reason: 'a fixed screen over a window that someone needs as an escape shuts people in and rescuers out',
    source: `${ESCAPE_CODE.area.source}; ${ESCAPE_CODE.release}`,
    judge: ({ details, outside, display }) => {
      if (details.use !== 'screen' || !(details.bedroom || details.glass !== undefined)) return undefined;
      const feet = (area: number) =>
        display.unit === 'in' ? `${(area / (12 * INCH) ** 2).toFixed(1)} sq ft` : `${(area / 1e6).toFixed(2)} m²`;
      return {
        level: details.bedroom ? 'stop' : 'note',
        text: details.bedroom
          ? 'Fixed as drawn, the screen shuts the escape window of a room that people sleep in.'
          : 'The screen covers a window: someone may need it as an escape.',
        figure: feet(outside.width * outside.height),
        limit: `${feet(ESCAPE_CODE.area.value)} clear, at least ${codeText(ESCAPE_CODE.height.value, display)} high and ${codeText(ESCAPE_CODE.width.value, display)} wide`,
        judged: (covered, wanted) => `It covers ${covered}, fixed all round; an escape window must open to ${wanted}`,
        field: 'screen.bedroom',
        mend: details.bedroom
          ? 'do not screw it fast: hang it so that it opens or lifts off from inside without key or tool, or leave another escape; the local code decides'
          : 'if the room may be slept in, or has no other way out, hang it so that it opens or lifts off from inside without key or tool; the local code decides',
      };
    },
  }),
  panelRule({
    code: 'glass-distance',
    reason: 'closer, the pane can be neither cleaned nor dried, and a swollen or wind-bent slat touches it',
    source: 'common practice, no source',
    judge: (panel) => {
      if (panel.details.use !== 'screen') return undefined;
      const { glass } = screenDetails(panel);
      if (!glass || glass.frame >= GLASS_ROOM - 1e-9) return undefined;
      const [figure, limit] = unlikeLengths(glass.frame, GLASS_ROOM, panel.display);
      return {
        level: 'caution',
        text: 'The panel stands close to the glass.',
        figure,
        limit,
        judged: (found, least) => `Its back is ${found} from the glass; leave ${least} or more`,
        mend: 'deeper stand-off blocks, or a screen that swings open',
      };
    },
  }),
  panelRule({
    code: 'divider-tips',
    reason: 'a shoulder or a leaning hand pushes that hard, at 1.5 m or at the top of a lower panel',
    source: 'statics; 45 N (10 lbf) is common practice, no source',
    judge: (panel) => {
      if (panel.details.use !== 'divider') return undefined;
      const { tipping } = dividerDetails(panel);
      if (!tipping) return undefined;
      const [figure, limit] = unlikeForces(tipping.push, TIPPING.push, panel.display);
      const at = lengthText(tipping.at, panel.display);
      const judged = (found: string, least: string) => `It tips at a push of ${found}; ${least} or more is wanted`;
      if (tipping.push >= TIPPING.push - 1e-9)
        return {
          level: 'note',
          text: `The divider stands a light push ${at} up, and no more.`,
          figure,
          limit,
          judged: (found, least) => `${judged(found, least)}, which it meets; a person who falls against it tips it`,
          mend: 'where children play or people pass close by, a hook in the wall, or two panels hinged at an angle',
          field: 'divider.feet.length',
        };
      return {
        level: 'caution',
        text: `A light push ${at} up tips the divider.`,
        figure,
        limit,
        judged,
        field: 'divider.feet.length',
        mend: `feet ${lengthText(tipping.footWanted, panel.display)} long, two panels hinged at an angle, or a hook in the wall`,
      };
    },
  }),
  panelRule({
    code: 'divider-in-wind',
    reason: 'wind pushes at half the height with many times the force of a hand',
    source: 'ASCE 7-16 (constants from memory), allowable-stress level; statics',
    judge: (panel) => {
      if (panel.details.use !== 'divider') return undefined;
      const { feet, mass, height } = dividerDetails(panel);
      const wind = panelWind(panel);
      if (!wind || !feet) return undefined;
      const holds = (mass * GRAVITY * feet.length) / height;
      if (wind.allowableForce <= holds) return undefined;
      const [figure, limit] = unlikeForces(wind.allowableForce, holds, panel.display);
      return {
        level: 'stop',
        text: 'The wind blows a free-standing divider over.',
        figure,
        limit,
        judged: (found, most) => `The design wind pushes with ${found}, and ${most} tips it`,
        mend: 'bring it indoors, or make it a screen fixed between posts',
      };
    },
  }),
  panelRule({
    code: 'divider-faces',
    reason: 'a divider is seen from both sides',
    source: 'geometry of the weave: an even count of staves makes both faces of plain weave alike',
    judge: (panel) => {
      if (panel.details.use !== 'divider') return undefined;
      const { faces } = dividerDetails(panel);
      if (faces === 'alike' || faces === 'alike but shifted') return undefined;
      return {
        level: 'note',
        text:
          faces === 'mirrored'
            ? 'From behind the pattern runs the other way.'
            : 'The two faces show different patterns.',
        figure: faces === 'mirrored' ? 'mirrored faces' : 'faces that differ',
        limit: 'faces alike',
        judged: (found, wanted) => `This weave has ${found}; an even number of staves in plain weave has ${wanted}`,
        mend: 'where it is not settled yet, settle with the client which side is the front, or take plain weave',
        field: 'weave',
      };
    },
  }),
  {
    code: 'run-level',
    reason: 'course lines that step from bay to bay show at once',
    source: 'common practice, no source',
    judge: ({ job, panels }) =>
      layRuns(job, panels)
        .filter(({ level }) => !level.equal)
        .map(({ name, level }) => ({
          level: 'caution',
          where: name,
          text: 'The course lines do not run through from panel to panel.',
          figure: lengthText(level.off, job.display),
          limit: 'one level',
          judged: (found) => `They are up to ${found} off one level, or the panels have different counts of courses`,
          mend: 'give every panel of the run the same height, bottom gap, rail and fit',
        })),
  },
  {
    code: 'run-gap',
    reason: 'the run and the panel’s opening give two gaps for one place',
    source: 'the job',
    judge: ({ job, panels }) =>
      job.runs.flatMap((run) =>
        run.panels.flatMap((name) => {
          const panel = panels.find((each) => each.name === name);
          if (!panel?.opening || run.post === 0) return [];
          const { left, right } = runGaps(run, panel);
          const off = Math.max(Math.abs(left - run.gap), Math.abs(right - run.gap));
          if (off < SAME_GAP) return [];
          return {
            level: 'caution' as const,
            where: `${run.name}, ${name}`,
            text: 'The gap to the posts differs between the run and the panel’s opening; the opening’s is drawn.',
            figure: `${lengthText(left, job.display)} and ${lengthText(right, job.display)}`,
            limit: lengthText(run.gap, job.display),
            judged: (found: string, other: string) =>
              `The opening leaves ${found} at left and right, and the run says ${other}`,
            mend: 'have the job say one of them only',
            field: 'runs.gap',
          };
        }),
      ),
  },
];
