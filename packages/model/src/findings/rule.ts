import type { CutPlan } from '../cutting/plan.ts';
import type { Finding } from '../finding.ts';
import type { Job } from '../job/job.ts';
import type { Panel } from '../panel/panel.ts';
import type { Part } from '../parts/part.ts';

/** Everything that the rules look at. */
export interface Subject {
  readonly job: Job;
  readonly panels: readonly Panel[];
  readonly parts: readonly Part[];
  /** Absent before the cutting is planned; the rules on the plan then say nothing. */
  readonly plan?: CutPlan;
}

/** What one rule says of one thing; the rule adds its code, source, and its reason unless it has one of its own. */
export interface Judgement extends Omit<Finding, 'code' | 'reason' | 'source' | 'judged'> {
  /** Figure and limit as they stand in the finding, in a plain sentence or two. */
  readonly judged: (figure: string, limit: string) => string;
  readonly reason?: string;
}

/** One small rule: what it is called, why its limit is what it is, and what it finds. */
export interface Rule {
  readonly code: string;
  readonly reason: string;
  readonly source: string;
  /** What it has to say of a subject; nothing where all is well. */
  readonly judge: (subject: Subject) => readonly Judgement[];
}

type PanelJudgement = Omit<Judgement, 'where'>;

/** A rule that looks at one panel at a time; where is the panel's name. */
export function panelRule(
  rule: Omit<Rule, 'judge'> & {
    readonly judge: (panel: Panel, job: Job) => PanelJudgement | readonly PanelJudgement[] | undefined;
  },
): Rule {
  const { judge, ...rest } = rule;
  return {
    ...rest,
    judge: ({ panels, job }) =>
      panels.flatMap((panel) => [judge(panel, job) ?? []].flat().map((found) => ({ where: panel.name, ...found }))),
  };
}
