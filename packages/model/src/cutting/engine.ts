import { roundUp } from './bound.ts';
import { better } from './dive.ts';
import { flowBelow } from './flow.ts';
import { choicesOf, takesOf } from './gather.ts';
import { costOfTakes, type Draft, isDone, takeOff } from './greedy.ts';
import { type Group, planGroup } from './group.ts';
import type { CutPlan } from './plan.ts';
import { concludePlan, openJob, type PlanOptions } from './quick.ts';
import { costUnit, inHundredths, refusedPlan } from './result.ts';
import { loadSolver, searchFlow } from './solver.ts';

/** What to plan, and a way to stop early; an `AbortSignal` will do. */
export interface SearchOptions extends PlanOptions {
  readonly signal?: { readonly aborted: boolean };
}

/**
 * The cheapest cutting plan that the work allowed finds, with the bound it is judged by. The own core's plan comes
 * first; where it costs more than its bound a general integer solver is loaded and started from it. Where the solver
 * cannot be loaded, or `signal` says stop, the best plan so far comes back. Work is counted in steps, never by the
 * clock, so the same input gives the same plan on every machine; more effort never makes it dearer.
 *
 * @example
 * const plan = await planCuts({ parts, stock, offcuts: [], saw, onProgress: ({ cost, bound }) => console.log(cost, bound) });
 */
export async function planCuts(options: SearchOptions): Promise<CutPlan> {
  const opened = openJob(options, options.limits);
  if ('refusal' in opened) return refusedPlan(opened.problem, opened.refusal);
  const { problem, nested } = opened;
  const effort = Math.min(10, Math.max(1, Math.round(options.limits?.effort ?? 3)));
  const unit = costUnit(problem);
  const stopped = (): boolean => options.signal?.aborted === true;
  const groups: Group[] = nested.map((n) => planGroup(n));
  let told = '';
  // Of the group under way the bound may have risen to `raised` meanwhile; costs are those of checked plans only.
  const tell = (at = -1, raised = 0): void => {
    if (groups.some((g) => !g.done)) return;
    const cost = groups.reduce((s, g) => s + g.cost, 0);
    const bound = groups.reduce((s, g, i) => s + Math.min(g.cost, i === at ? Math.max(g.bound, raised) : g.bound), 0);
    if (told === `${cost} ${bound}`) return;
    told = `${cost} ${bound}`;
    options.onProgress?.({ cost: inHundredths(cost * unit), bound: inHundredths(bound * unit) });
  };
  tell();
  for (let i = 0; i < groups.length; i++) {
    const group = groups[i] as Group;
    if (group.hopeless || (group.done && group.cost <= group.bound)) continue;
    for (const stage of STAGES.slice(0, effort)) {
      await breathe();
      if (stopped()) break;
      const next = await search(groups[i] as Group, stage, stopped, (raised) => tell(i, raised));
      groups[i] = next;
      tell();
      if (next.hopeless || (next.done && next.cost <= next.bound)) break;
    }
  }
  return concludePlan(problem, options, groups);
}

/** Work that one run of the solver may do. */
interface Stage {
  readonly choices: number;
  readonly iterations: number;
}

/**
 * The runs of the solver one after the other, each started from the best plan so far; effort says how many are made, so
 * that more can only be better. Narrow models find plans quickly, wide ones prove.
 */
const STAGES: readonly Stage[] = [
  { choices: 1200, iterations: 25_000 },
  { choices: 2500, iterations: 10_000 },
  { choices: 5000, iterations: 15_000 },
  { choices: 1000, iterations: 40_000 },
  { choices: 20_000, iterations: 50_000 },
  { choices: 2000, iterations: 80_000 },
  { choices: 40_000, iterations: 100_000 },
  { choices: 1000, iterations: 200_000 },
  { choices: 60_000, iterations: 200_000 },
  { choices: 100_000, iterations: 400_000 },
];

async function search(
  group: Group,
  stage: Stage,
  stopped: () => boolean,
  raise: (bound: number) => void,
): Promise<Group> {
  const highs = await loadSolver();
  if (highs === undefined) return group;
  const { nested, rest, mix } = group;
  const step = nested.problem.costStep;
  const dearest = nested.problem.boards.reduce((m, b) => Math.max(m, b.cost), 0);
  const pieces = rest.need.reduce((sum, n) => sum + n, 0);
  const below = group.done ? group.cost - step : dearest * pieces;
  const flow = flowBelow(nested, rest, mix, below, stage.choices);
  const start = group.done ? choicesOf(nested, group.draft.takes) : new Map();
  // Where the flow leaves nothing out below the cost in hand, the solver's own bound holds for every plan; but for lists
  // cut short it speaks of the plans that they hold alone.
  const { complete } = nested;
  const others = flow.complete ? Number.POSITIVE_INFINITY : flow.bound;
  const provenBy = (bound: number): number => (complete ? roundUp(Math.min(bound, others), step) : group.bound);
  const told = (bound: number): void => raise(provenBy(bound));
  const solved = searchFlow(highs, flow, start, { ...stage, stopped, told });
  if (solved.infeasible && flow.complete && complete) return { ...group, hopeless: !group.done };
  const proven = provenBy(solved.bound);
  const draft = solved.tallied && draftOf(group, takesOf(nested, solved.tallied));
  // An equal cost with less wood opened, or fewer rips, is taken too.
  const beaten = draft !== undefined && isDone(draft.rest) && better(nested, group.draft, draft) === draft;
  const next = beaten ? { ...group, draft, done: true, cost: costOfTakes(nested, draft.takes) } : group;
  const bound = Math.max(group.bound, Math.min(proven, next.cost));
  return { ...next, bound, boundKind: bound > group.bound ? 'complete' : group.boundKind };
}

/** Takes from the solver, walked anew: its own word is not relied on. Boards left beyond what there is void them. */
function draftOf(group: Group, takes: Draft['takes']): Draft | undefined {
  let rest = group.rest;
  for (const { pattern, count } of takes) {
    if ((rest.left[pattern.room]?.[pattern.board] ?? 0) < count) return undefined;
    rest = takeOff(rest, pattern, count);
  }
  return { takes, rest };
}

/** Lets whoever waits have a turn, so that a stop can be asked for. */
function breathe(): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, 0);
  });
}
