import type { CutPlan } from '../cutting/plan.ts';
import type { Job } from '../job/job.ts';
import type { Panel } from '../panel/panel.ts';
import type { Part } from '../parts/part.ts';
import { finishStep, hangingSteps } from './hanging.ts';
import { frameSteps, weavingSteps } from './joining.ts';
import { sawingSteps } from './sawing.ts';
import type { Step } from './step.ts';

/**
 * The steps of making, numbered, in the order in which they have to be done, with this job's own numbers. The stack is
 * measured before stiles and staves are cut; a film finish goes on before weaving, a thin one after.
 */
export function makingOrder(
  job: Job,
  made: { readonly panels: readonly Panel[]; readonly parts: readonly Part[]; readonly plan?: CutPlan },
): Step[] {
  const making = { job, ...made };
  const finish = finishStep(making) ?? [];
  const before = job.finish.kind === 'film' ? finish : [];
  const after = job.finish.kind === 'film' ? [] : finish;
  return [sawingSteps(making), frameSteps(making), before, weavingSteps(making), after, hangingSteps(making)]
    .flat()
    .map((step, i) => ({ n: i + 1, ...step }));
}
