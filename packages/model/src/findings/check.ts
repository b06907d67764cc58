import type { CutPlan } from '../cutting/plan.ts';
import type { Finding, FindingLevel } from '../finding.ts';
import type { Job } from '../job/job.ts';
import type { Panel } from '../panel/panel.ts';
import { solve } from '../panel/solve.ts';
import type { Part } from '../parts/part.ts';
import { partsOf } from '../parts/parts.ts';
import type { Judgement } from './rule.ts';
import { rules } from './rules.ts';

const ORDER: Readonly<Record<FindingLevel, number>> = { stop: 0, caution: 1, note: 2 };

/**
 * Everything that the design makes true and the maker must know: stops first, then cautions, then notes, within a level
 * in the order of `rules` and of the panels.
 * @param solved what is there already; panels and parts are worked out where they are not given, and without a plan the
 *   rules on it say nothing
 */
export function check(
  job: Job,
  solved: { readonly panels?: readonly Panel[]; readonly parts?: readonly Part[]; readonly plan?: CutPlan } = {},
): Finding[] {
  const panels = solved.panels ?? solve(job);
  const parts = solved.parts ?? partsOf(panels, job);
  const subject = { job, panels, parts, ...(solved.plan && { plan: solved.plan }) };
  return rules
    .flatMap(({ code, reason, source, judge }) =>
      togetherWhereAlike(judge(subject)).map((found) => ({ code, ...found, reason, source })),
    )
    .sort((a, b) => ORDER[a.level] - ORDER[b.level]);
}

/** What one rule says alike of several panels is said once, with all their names. */
function togetherWhereAlike(found: readonly Judgement[]): Judgement[] {
  const alike = new Map<string, Judgement>();
  for (const each of found) {
    const { where, ...rest } = each;
    const key = JSON.stringify(rest);
    const before = alike.get(key);
    alike.set(key, before ? { ...before, where: `${before.where}, ${where}` } : each);
  }
  return [...alike.values()];
}
