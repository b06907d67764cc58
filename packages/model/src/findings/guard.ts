import type { Job } from '../job/job.ts';
import type { Panel } from '../panel/panel.ts';
import { GUARD_CODE } from '../uses/codes.ts';
import type { GuardBending, GuardDetails } from '../uses/guard.ts';
import { guardDetails } from '../uses/guard.ts';
import { runGaps } from '../uses/run.ts';
import { type Judgement, panelRule, type Rule } from './rule.ts';
import { forceText, lengthText, shareText } from './words.ts';

/** Share of the average strength that a member may take of a code load: 5 % exclusion value over 2.1. */
export const WORKING_SHARE: number = (1 - 1.645 * 0.16) / 2.1;

const DECIDES = 'the local code and a licensed professional decide';

function guardOf(panel: Panel, job: Job): GuardDetails | undefined {
  if (panel.details.use !== 'guard') return undefined;
  const run = job.runs.find(({ panels }) => panels.includes(panel.name));
  return guardDetails(panel, run && { gap: runGaps(run, panel).left });
}

/** Rules on guards. They warn; none of them says that a guard complies. */
export const guardRules: readonly Rule[] = [
  panelRule({
    code: 'not-a-tested-guard',
    reason: 'guards are proved by test or by engineering; woven wood moves, dries and ages',
    source: GUARD_CODE.infillLoad.source,
    judge: ({ details, display }) => {
      if (details.use !== 'guard') return undefined;
      return {
        level: 'caution',
        text: 'A woven infill is not a tested guard.',
        figure: `a fall of ${lengthText(details.drop, display)}`,
        limit: `a fall of ${lengthText(GUARD_CODE.drop.value, display)}, from which guards are wanted`,
        mend: DECIDES,
      };
    },
  }),
  panelRule({
    code: 'guard-sphere',
    reason:
      'a small child’s head and body pass a larger opening; slats give way, so the opening needs room below the limit',
    source: GUARD_CODE.sphere.source,
    judge: (panel, job) =>
      (guardOf(panel, job)?.openings ?? [])
        .filter(({ ball }) => ball >= GUARD_CODE.sphere.value - 1e-9)
        .map(({ where, ball }) => ({
          level: 'stop' as const,
          text: `A 4 in ball passes, ${where}.`,
          figure: lengthText(ball, panel.display),
          limit: `under ${lengthText(GUARD_CODE.sphere.value, panel.display)}`,
          mend: 'smaller gaps, counted in the driest season',
        })),
  }),
  panelRule({
    code: 'guard-height',
    reason: 'people fall over what is under their middle',
    source: `${GUARD_CODE.height.source} (36 in, one and two family houses); ${GUARD_CODE.heightElsewhere.source} (42 in elsewhere)`,
    judge: (panel, job) => {
      const guard = guardOf(panel, job);
      if (!guard || guard.drop <= GUARD_CODE.drop.value || guard.top >= guard.wanted.value - 1e-9) return undefined;
      return {
        level: 'caution',
        text: 'The guard is lower than the model codes ask for.',
        figure: lengthText(guard.top, panel.display),
        limit: lengthText(guard.wanted.value, panel.display),
        mend: `raise panel, cap or handrail by ${lengthText(guard.wanted.value - guard.top, panel.display)}, or say where its top is (guard.top); ${DECIDES}`,
      };
    },
  }),
  panelRule({
    code: 'guard-load',
    reason: 'average strength less its scatter (5 % exclusion), over 2.1, is what sawn wood may take for good',
    source: `${GUARD_CODE.infillLoad.source}; ASTM D245 factors (from memory); members reckoned as plain beams`,
    judge: (panel, job) => (guardOf(panel, job)?.bending ?? []).flatMap((bending) => overloaded(bending, panel) ?? []),
  }),
  panelRule({
    code: 'guard-ladder',
    reason: 'level slats are rungs to a child; some places forbid them, pool rules among them',
    source: 'IRC (2018) has no general ladder rule (from memory); ISPSC (2018) 305.2.5 has one',
    judge: ({ details, courses, display }) => {
      if (details.use !== 'guard') return undefined;
      return {
        level: 'note',
        text: 'A child can climb level slats.',
        figure: `${courses.count} courses, ${lengthText(courses.pitch, display)} apart`,
        limit: 'none in most codes',
        mend: 'ask the local code; no gaps between courses give toes less hold',
      };
    },
  }),
];

function overloaded({ of, load, span, share }: GuardBending, { display }: Panel): Omit<Judgement, 'where'> | undefined {
  // Of a slat only what is left beside the weave's own bending could be told apart; its limit is the slat's.
  const limit = of === 'slat' ? 1 : WORKING_SHARE;
  if (share <= limit) return undefined;
  return {
    level: share > 1 ? 'stop' : 'caution',
    text: `The ${of} takes a large share of its strength under ${forceText(load, display)} over ${lengthText(span, display)}.`,
    figure: shareText(share),
    limit: limit.toFixed(2),
    mend:
      of === 'stave' ? 'deeper or more staves, or a middle rail' : 'a stouter section, or a shorter span between posts',
  };
}
