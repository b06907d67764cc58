import { makingOrder, partsOf, type Step, solve } from '../../src/index.ts';
import { jobOf } from '../support.ts';

/** The making order of one panel. */
export function stepsOf(panel: object, rest: object = {}): Step[] {
  const job = jobOf({ size: { width: '44 1/2', height: 52 }, ...panel }, rest);
  const panels = solve(job);
  return makingOrder(job, { panels, parts: partsOf(panels, { spare: job.spare }) });
}

/** Index of the step of a title. */
export function place(steps: readonly Step[], title: RegExp): number {
  return steps.findIndex((step) => title.test(step.title));
}

/** All that a step says, on one line. */
export function said({ cautions: warned, text, figures }: Step): string {
  return [...warned, ...text, ...figures.map(({ what, value }) => `${what} ${value}`)].join(' ');
}
