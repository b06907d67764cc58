import type { Job } from '../job/job.ts';
import type { Panel } from '../panel/panel.ts';
import { GUARD_CODE } from '../uses/codes.ts';
import type { GuardBending, GuardDetails } from '../uses/guard.ts';
import { guardDetails } from '../uses/guard.ts';
import { runGaps } from '../uses/run.ts';
import { SLAT_USE } from '../weave/limits.ts';
import { curesText } from './cures.ts';
import { type Judgement, panelRule, type Rule } from './rule.ts';
import { guardShare } from './strength.ts';
import { codeText, forceText, lengthText, percentText, unlikeLengths, unlikePercents } from './words.ts';

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
    source: GUARD_CODE.drop.source,
    judge: ({ details, display }) => {
      if (details.use !== 'guard') return undefined;
      return {
        level: 'caution',
        text: 'A woven infill is not a tested guard.',
        figure: lengthText(details.drop, display),
        limit: codeText(GUARD_CODE.drop.value, display),
        judged: (drop, from) => `People can fall ${drop} here; the codes ask for a guard from a fall of ${from} on`,
        mend: `have the guard approved before it is built: ${DECIDES}`,
      };
    },
  }),
  panelRule({
    code: 'guard-top-load',
    reason: 'what people lean on is the top of a guard; this panel is only what fills it in',
    source: GUARD_CODE.topLoad.source,
    judge: ({ details, display }) => {
      if (details.use !== 'guard') return undefined;
      const bearer = details.cap
        ? 'the cap rail on its frame and the posts must carry it, unless a handrail of the deck’s own stands over them;'
        : details.top === undefined
          ? 'the top of the frame and the posts must carry it, unless a handrail of the deck’s own stands over them;'
          : 'the handrail and its posts must carry it;';
      return {
        level: 'caution',
        text: 'The load at the top of the guard is not worked out for posts, fixings and what they stand on.',
        figure: `${forceText(GUARD_CODE.topLoad.value, display)}${display.unit === 'mm' ? ' (200 lb)' : ''}`,
        limit: 'what handrail, posts and their fixings bear',
        judged: (load) =>
          `The code asks the top to bear ${load} at any one point, outwards, inwards or down; ${bearer} neither the fixings of this panel nor its corners are figured for it`,
        mend: 'let whoever answers for the deck size handrail, posts and what holds them; never let this panel stand in for a handrail',
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
        .map(({ where, ball }) => {
          const limit = codeText(GUARD_CODE.sphere.value, panel.display);
          return {
            level: 'stop' as const,
            text: `A ball of ${limit} passes, ${where}.`,
            figure: unlikeLengths(ball, GUARD_CODE.sphere.value, panel.display)[0],
            limit: `under ${limit}`,
            judged: (found: string, most: string) => `The opening is ${found}; it must be ${most} in the driest season`,
            mend:
              where === 'panel to floor'
                ? `bring the foot of the panel down by more than ${lengthText(ball - GUARD_CODE.sphere.value, panel.display)}: hang it lower, where its top may come down as much, or make the panel that much higher`
                : 'smaller gaps',
            ...(where === 'panel to floor' && { field: 'guard.floor' }),
          };
        }),
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
        figure: unlikeLengths(guard.top, guard.wanted.value, panel.display)[0],
        limit: codeText(guard.wanted.value, panel.display),
        judged: (top, wanted) => `Its top is ${top} above the floor; the codes ask for ${wanted}`,
        mend: `raise panel, cap or handrail by ${lengthText(guard.wanted.value - guard.top, panel.display)}; ${DECIDES}`,
        field: 'guard.top',
      };
    },
  }),
  panelRule({
    code: 'guard-load',
    reason:
      'sawn wood may take for good its average strength less the scatter (one piece in twenty is weaker), over 2.1',
    source: `${GUARD_CODE.infillLoad.source}; ASTM D245 factors (from memory); members taken as plain beams`,
    judge: (panel, job) => (guardOf(panel, job)?.bending ?? []).flatMap((bending) => overloaded(bending, panel) ?? []),
  }),
  panelRule({
    code: 'guard-ladder',
    reason: 'level slats are rungs to a child; most codes allow them, but some places and all pool rules do not',
    source: 'IRC (2018) has no general ladder rule (from memory); ISPSC (2018) 305.2.5 has one',
    judge: ({ details, courses, display }) => {
      if (details.use !== 'guard') return undefined;
      return {
        level: 'note',
        text: 'A child can climb level slats.',
        figure: `${courses.count} courses, ${lengthText(courses.pitch, display)} apart`,
        limit: 'no limit in most codes',
        judged: (found) => `There are ${found}`,
        mend: 'ask the local code; no gaps between courses give toes less hold',
      };
    },
  }),
];

function overloaded(bending: GuardBending, panel: Panel): Omit<Judgement, 'where'> | undefined {
  const { of, load, span, share } = bending;
  const { display } = panel;
  const most = guardShare(of);
  if (share <= most) return undefined;
  const stop = share >= SLAT_USE.stop;
  const [figure, limit] = unlikePercents(share, most);
  const slat = of === 'slat';
  return {
    level: stop ? 'stop' : 'caution',
    text: `The ${of} ${stop ? 'may break' : 'takes a large share of its strength'} under the code’s load of ${forceText(load, display)} over ${lengthText(span, display)}.`,
    figure,
    limit,
    judged: (found, keep) =>
      `It takes ${found} of its strength; keep to ${keep}${stop ? `: at ${percentText(SLAT_USE.stop)} one in ten breaks at once` : ''}`,
    ...(slat && {
      reason:
        'a slat is bent by the weave already, which is judged by itself: weave and a short load together may take three quarters of its strength',
    }),
    mend: of === 'slat' || of === 'stave' ? curesText(panel) : 'a stouter section, or a shorter span between posts',
    field: slat ? 'slat' : of === 'stave' ? 'stave.depth' : of === 'rail' ? 'rail.depth' : 'guard.cap',
  };
}
