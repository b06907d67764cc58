import { floorToMark, INCH } from '../length.ts';
import type { Panel } from '../panel/panel.ts';
import { panelRule, type Rule } from './rule.ts';
import { lengthText, unlikeLengths } from './words.ts';

/** How fine a saw fence can be set and held: 1/64 in, mm; common practice, no source. */
const FINEST_FENCE = INCH / 64;

/** What the maker can do when the measured stack makes another height than the one planned, mm. */
export interface MeasuredAdvice {
  /** Outside height now less the one planned. */
  readonly off: number;
  /** With one course fewer: what is missing, made up by a filler of this height under the top rail. */
  readonly fewer: { readonly courses: number; readonly filler: number };
  /** With all courses: rails this much lower or higher in all. */
  readonly rails: number;
}

/** Advice for a panel whose slats were measured; absent for any other, and where the height comes out right. */
export function measuredAdvice(panel: Panel): MeasuredAdvice | undefined {
  const { asBuilt, courses, display } = panel;
  if (!asBuilt) return undefined;
  const height = asBuilt.changes.find(({ what }) => what === 'outside height');
  const off = height ? height.now - height.planned : 0;
  if (Math.abs(off) < display.mark) return undefined;
  return {
    off,
    fewer: { courses: courses.count - 1, filler: floorToMark(courses.pitch - off, display.mark) },
    rails: -off,
  };
}

/** What a filler is, in words. */
const FILLED =
  'two strips, one on either side of the staves, which are the cover strips made higher where there are any';

/** Rules on closing the height, planned and measured. */
export const fitRules: readonly Rule[] = [
  panelRule({
    code: 'slat-step',
    reason: 'a height finer than the fence can be set to is a height that no one can cut',
    source: 'common practice, no source',
    judge: ({ asBuilt, courses, spec, display }) => {
      if (asBuilt || spec.fit.vary !== 'slats' || courses.step >= FINEST_FENCE - 1e-9) return undefined;
      const [figure, limit] = unlikeLengths(courses.step, FINEST_FENCE, display);
      return {
        level: 'caution',
        text: `The slat height is set in steps finer than the saw: ${courses.count} slats add up to ${lengthText((courses.count * FINEST_FENCE) / 2, display)} of doubt.`,
        figure,
        limit,
        judged: (found, least) => `The step is ${found}; a fence is set to ${least} at best`,
        field: 'fit',
        mend: 'a coarser step; and measure the stack before cutting stiles and staves',
      };
    },
  }),
  panelRule({
    code: 'measured-height',
    reason: 'stiles, staves and sticks follow the stack that was measured, so the outside height moves with it',
    source: 'the measured stack of this job',
    judge: (panel) => {
      const advice = measuredAdvice(panel);
      if (!advice) return undefined;
      const { off, fewer, rails } = advice;
      const { display, opening } = panel;
      const tall = off > 0;
      const room = opening ? opening.gaps.top + opening.gaps.bottom : Number.POSITIVE_INFINITY;
      const filler =
        fewer.filler > 0
          ? `one course fewer (${fewer.courses}) and a filler ${lengthText(fewer.filler, display)} high under the top rail, ${FILLED}`
          : `one course fewer (${fewer.courses})`;
      const rail = `rails ${lengthText(Math.abs(rails), display)} ${tall ? 'lower' : 'higher'} in all`;
      return {
        level: off > room ? 'stop' : 'caution',
        text: `The measured stack makes the panel ${tall ? 'higher' : 'lower'} than planned.`,
        figure: `${lengthText(Math.abs(off), display)} ${tall ? 'over' : 'under'}`,
        limit: off > room ? `${lengthText(room, display)}, all the gaps of the opening` : 'the height planned',
        judged: (found, limit) =>
          off > room ? `It comes out ${found}, and there is only ${limit}` : `It comes out ${found} ${limit}`,
        mend: tall
          ? `${filler}; or ${rail}`
          : `a filler ${lengthText(-off, display)} high under the top rail, ${FILLED}; or ${rail}`,
      };
    },
  }),
];
