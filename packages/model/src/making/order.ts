import type { CutPlan } from '../cutting/plan.ts';
import type { Job } from '../job/job.ts';
import type { Panel } from '../panel/panel.ts';
import { partsToCut } from '../parts/inhand.ts';
import type { Part } from '../parts/part.ts';
import { finishAfter, finishBefore } from './finishing.ts';
import { frameSteps } from './fitting.ts';
import { hangingSteps } from './hanging.ts';
import { weavingSteps } from './joining.ts';
import { sawingSteps } from './sawing.ts';
import { remainingStep, stackSteps } from './stacking.ts';
import type { Step } from './step.ts';

/**
 * The steps of making, numbered, in the order in which they have to be done, with this job's own numbers. The stack is
 * measured before stiles and staves are cut, and once it is, only what is left to cut is told; a film finish goes on before weaving, a thin one on end grain before and on the rest after.
 */
export function makingOrder(
  job: Job,
  made: { readonly panels: readonly Panel[]; readonly parts: readonly Part[]; readonly plan?: CutPlan },
): Step[] {
  const making = { job, ...made };
  const measured = made.panels.length > 0 && made.panels.every(({ asBuilt }) => asBuilt);
  return [
    measured ? remainingStep(making) : sawingSteps({ ...making, parts: partsToCut(made.parts) }),
    stackSteps(making),
    frameSteps(making),
    finishBefore(making),
    weavingSteps(making),
    finishAfter(making),
    hangingSteps(making),
  ]
    .flat()
    .map((step, i) => ({ n: i + 1, ...step }));
}
