import { flowBelow } from './flow.ts';
import { choicesOf, takesOf } from './gather.ts';
import { draftFrom } from './greedy.ts';
import { type Group, withDraft } from './group.ts';
import { amountsOf, type Measure } from './measure.ts';
import type { Nested } from './nested.ts';
import { loadSolver, searchFlow } from './solver.ts';

/** What a plan of the same cost is better by, each held before the next is made less. */
const AFTER_COST: readonly Measure[] = ['waste', 'fences', 'cuts'];

/** Choices and iterations of one run: a few are enough to tidy up. */
const CHOICES = 400;
const ITERATIONS = 3000;

/** Pieces over which a plan is not tidied: the runs would take longer than they are worth. */
const MOST_PIECES = 120;

/** The group with less waste, then fewer fence settings, then fewer cuts, at no more cost. */
export async function refine(group: Group, stopped: () => boolean): Promise<Group> {
  const { nested, rest, mix } = group;
  const pieces = rest.need.reduce((sum, n) => sum + n, 0);
  const highs = group.done && pieces <= MOST_PIECES ? await loadSolver() : undefined;
  if (highs === undefined) return group;
  const flow = flowBelow(nested, rest, mix, { below: group.cost, most: CHOICES });
  let now = group;
  let most: Partial<Record<Measure, number>> = { cost: group.cost };
  for (const least of AFTER_COST) {
    if (stopped()) break;
    const start = choicesOf(nested, now.draft.takes);
    const aim = { least, most };
    const { tallied } = searchFlow(highs, flow, start, { iterations: ITERATIONS, stopped, told: () => undefined, aim });
    const draft = tallied && draftFrom(rest, takesOf(nested, tallied));
    const next = draft && withDraft(group, draft);
    if (next?.done && isBetter(nested, now, next)) now = next;
    most = { ...most, [least]: amountsIn(nested, now)[least] };
  }
  return now;
}

function amountsIn(nested: Nested, { draft }: Group): Record<Measure, number> {
  return amountsOf(nested, choicesOf(nested, draft.takes));
}

function isBetter(nested: Nested, now: Group, next: Group): boolean {
  const [a, b] = [amountsIn(nested, now), amountsIn(nested, next)];
  const first = (['cost', ...AFTER_COST] as const).find((m) => Math.abs(a[m] - b[m]) > 1e-6 * (1 + a[m]));
  return first !== undefined && b[first] < a[first];
}
