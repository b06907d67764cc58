import { GUARD_CODE } from '../uses/codes.ts';
import { panelBall } from '../uses/openwork.ts';
import { hangsTogether } from '../weave/hang.ts';
import { insertionFactor } from '../weave/insertion.ts';
import { HARDLY_GRIPS, LEAST_GRIP, leastGrip, SLAT_USE } from '../weave/limits.ts';
import { curesText } from './cures.ts';
import { panelRule, type Rule } from './rule.ts';
import { breakingText, mostUse, windyUse } from './strength.ts';
import { codeText, lengthText, percentText, unlikeForces, unlikePercents } from './words.ts';

/** Half a percent: what rounds to the limit is at it, where the limit itself is a round one of practice. */
const HALF = 0.005;

/** Rules on bending, grip and holding together. */
export const weaveRules: readonly Rule[] = [
  panelRule({
    code: 'slat-strength',
    reason:
      'strength tables give the average of short tests: single pieces scatter by 16 % about it, and wood that stays bent for years keeps little more than half of it',
    source:
      'Wood Handbook FPL-GTR-190, scatter and lasting load (from memory); share of slats worked out from the scatter',
    judge: (panel) => {
      const use = mostUse(panel);
      if (use <= SLAT_USE.kept) return undefined;
      const stop = use >= SLAT_USE.stop;
      const [figure, limit] = unlikePercents(use, SLAT_USE.kept);
      return {
        level: stop ? 'stop' : 'caution',
        text: stop
          ? `Too many slats break when they are bent round the staves: ${breakingText(use)}.`
          : 'The slats are bent close to their strength.',
        figure,
        limit,
        judged: (found, most) =>
          `The weave bends the slats to ${found} of their strength; keep to ${most}, where ${breakingText(SLAT_USE.kept)} breaks${stop ? `, and never go to ${percentText(SLAT_USE.stop)} or over, where one in ten does and the spare slats are used up` : `; at this bend it is ${breakingText(use)}`}`,
        mend: curesText(panel),
        field: 'stave, slat or wood',
      };
    },
  }),
  panelRule({
    code: 'slat-strength-weaving',
    reason: 'pushing a slat aside to slip the last stave in bends it more for a moment',
    source: 'common practice, no source; the extra bend worked out from the shape of the slat',
    judge: (panel) => {
      const { staves, courses } = panel;
      const use = mostUse(panel) * insertionFactor({ staveDepth: staves.depth, slatThickness: courses.thickness });
      if (use <= SLAT_USE.weaving + HALF || mostUse(panel) > SLAT_USE.breaks) return undefined;
      const [figure, limit] = unlikePercents(use, SLAT_USE.weaving);
      return {
        level: 'caution',
        text: 'A slat pushed off its stave to slip another stave in may break.',
        figure,
        limit,
        judged: (found, most) => `It would be bent to ${found} of its strength; ${most} is the most to risk`,
        mend: 'set every stave first and weave over the free stave tops, the top rail off',
      };
    },
  }),
  panelRule({
    code: 'slat-in-wind',
    reason:
      'a gust bends the slats between the staves more than the weave does already; it is short, so three quarters',
    source: 'ASCE 7-16 (constants from memory); each slat taken as a beam held at every stave',
    judge: (panel) => {
      const use = windyUse(panel) ?? 0;
      if (use <= SLAT_USE.weaving || mostUse(panel) > SLAT_USE.breaks) return undefined;
      const [figure, limit] = unlikePercents(use, SLAT_USE.weaving);
      return {
        level: 'caution',
        text: 'Wind and weave together bend the slats close to their strength.',
        figure,
        limit,
        judged: (found, most) =>
          `In the design wind they come to ${found} of their strength, ${percentText(mostUse(panel))} of it by the weave alone; keep to ${most}`,
        mend: curesText(panel),
      };
    },
  }),
  panelRule({
    code: 'row-not-gripped',
    reason:
      'a slat must pass from side to side twice, or have stops at its ends, to be bent; a straight one rattles and slides out',
    source: 'statics of a strip between staves',
    judge: ({ rows }) => {
      const loose = rows.filter(({ bend }) => !bend.gripped);
      if (loose.length === 0) return undefined;
      const courses = loose.reduce((sum, row) => sum + row.courses, 0);
      return {
        level: 'caution',
        text: `${courses} courses are not gripped by their staves: the slats lie straight and loose.`,
        figure: `${loose.length} of ${rows.length} rows`,
        limit: 'none',
        judged: (found) => `That is ${found} of the weave; there should be none`,
        mend: 'more staves, a weave that changes side twice in every row, or stops at the stiles',
      };
    },
  }),
  panelRule({
    code: 'loose-layers',
    reason: 'a course that passes every stave on one side can be lifted off',
    source:
      'Clapham 1980, When a fabric hangs together (from memory); checked by trying every way of lifting small weaves apart',
    judge: ({ weave, spec }) => {
      const rows = weave.rowOfCourse.map((row) => weave.rows[row] ?? []);
      const { looseCourses } = hangsTogether(rows, { stavesTied: true });
      if (looseCourses.length === 0) return undefined;
      const held = spec.endStop !== undefined;
      return {
        level: held ? 'caution' : 'stop',
        text: held ? 'Courses are held by the end stops alone.' : 'Courses come off the panel: nothing holds them.',
        figure: `${looseCourses.length} courses`,
        limit: 'none',
        judged: (found) => `${found} are loose, the lowest is course ${looseCourses[0]}; there should be none`,
        mend: 'give every course at least one stave in front and one behind',
      };
    },
  }),
  panelRule({
    code: 'little-grip',
    reason: 'the grip falls fast as staves stand further apart: at twice the distance a slat presses with an eighth',
    source:
      'a 3/16 in slat with staves 14 in apart, the trade’s widest (common practice, no source); force worked out from the bend',
    judge: (panel) => {
      const { courses, display } = panel;
      const force = leastGrip(panel.rows.map(({ bend }) => bend));
      const least = LEAST_GRIP * courses.height;
      if (force === undefined || force >= least) return undefined;
      const [figure, limit] = unlikeForces(force, least, display);
      const poor = force < HARDLY_GRIPS * least;
      return {
        level: poor ? 'stop' : 'caution',
        text: poor
          ? 'The staves hardly hold the slats: do not build it so.'
          : 'The staves hold the slats only lightly: it can be built, but slats may rattle in wind and slip by hand.',
        figure,
        limit,
        judged: (found, wanted) =>
          `A slat presses on its stave with ${found}; ${wanted} or more is wanted, and under half of that a panel is not worth building`,
        mend: curesText(panel),
        field: 'stave.count',
      };
    },
  }),
  panelRule({
    code: 'ball-passes',
    reason: 'the ball stands for a small child’s head; guards have a rule of their own',
    source: GUARD_CODE.sphere.source,
    judge: (panel) => {
      if (panel.details.use === 'guard') return undefined;
      const ball = panelBall(panel);
      if (ball < GUARD_CODE.sphere.value) return undefined;
      return {
        level: 'caution',
        text: 'A ball as big as a small child’s head passes between the courses.',
        figure: lengthText(ball, panel.display),
        limit: `under ${codeText(GUARD_CODE.sphere.value, panel.display)}`,
        judged: (found, most) => `A ball of ${found} passes; for a guard it must be ${most}`,
        mend: 'smaller gaps between the courses, and less room over the stack',
      };
    },
  }),
];
