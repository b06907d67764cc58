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
      togetherWhereAlike(judge(subject)).map(({ judged, ...found }) => ({
        code,
        reason,
        source,
        ...found,
        judged: judged(found.figure, found.limit),
      })),
    )
    .sort((a, b) => ORDER[a.level] - ORDER[b.level]);
}

/** What one rule says in the same words of several panels is one finding with all their names, and each one's figures. */
function togetherWhereAlike(found: readonly Judgement[]): Judgement[] {
  const groups = new Map<string, Judgement[]>();
  for (const each of found) {
    const said = `${each.level} ${each.text} ${each.reason ?? ''}`;
    const group = groups.get(said) ?? [];
    // Two findings on one panel stay two.
    const key = group.some(({ where }) => where === each.where) ? `${said} ${groups.size}` : said;
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  return [...groups.values()].map((group) => ({
    ...(group[0] as Judgement),
    where: group.map(({ where }) => where).join(', '),
    figure: eachOnce(group, ({ figure }) => figure, NAMED_AFTER),
    limit: eachOnce(group, ({ limit }) => limit, NAMED_AFTER),
    mend: eachOnce(group, ({ mend }) => mend, NAMED_BEFORE),
  }));
}

/** How a text that differs from panel to panel is joined with the panels it is of, and with the next. */
interface Naming {
  readonly named: (text: string, of: string) => string;
  readonly between: string;
}

const NAMED_AFTER: Naming = { named: (text, of) => `${text} (${of})`, between: ', ' };
const NAMED_BEFORE: Naming = { named: (text, of) => `${of}: ${text}`, between: '; ' };

/** The texts of a group: once where all are alike, else each once with the panels that it is of. */
function eachOnce(group: readonly Judgement[], of: (one: Judgement) => string, { named, between }: Naming): string {
  const texts = [...new Set(group.map(of))];
  if (texts.length === 1) return texts[0] as string;
  const panels = (text: string) => group.filter((one) => of(one) === text).map(({ where }) => where);
  return texts.map((text) => named(text, panels(text).join(', '))).join(between);
}
