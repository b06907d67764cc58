import type { CutPlan, Finding, Job, Panel, Part } from '@wattlewright/model';

/** Everything worked out for a job, before any paper. */
export interface Settled {
  readonly job: Job;
  readonly panels: readonly Panel[];
  readonly parts: readonly Part[];
  readonly plan: CutPlan;
  readonly findings: readonly Finding[];
}
