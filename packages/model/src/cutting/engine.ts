import { type Mixture, type Rest, roundUp } from './bound.ts';
import { better } from './dive.ts';
import { flowBelow } from './flow.ts';
import { choicesOf, takesOf } from './gather.ts';
import { costOfTakes, type Draft, isDone, type Take, takeOff } from './greedy.ts';
import { boundGroup, type Group, planGroup, withDraft } from './group.ts';
import type { CutPlan } from './plan.ts';
import { concludePlan, openJob, type PlanOptions } from './quick.ts';
import { renew } from './renew.ts';
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
  const groups: Group[] = nested.map((n) => planGroup(boundGroup(n)));
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
    for (const stage of STAGES.slice(0, effort).flat()) {
      await breathe();
      if (stopped()) break;
      const next = await search(groups[i] as Group, stage, { stopped, raise: (raised) => tell(i, raised) });
      groups[i] = next;
      tell();
      if (next.hopeless || (next.done && next.cost <= next.bound)) break;
    }
  }
  return concludePlan(problem, options, groups);
}

/**
 * One step of the search: boards taken apart and cut anew, or a run of the solver, over the boards left open when the
 * mixture's whole ones are held, or over all.
 */
type Stage =
  | { readonly is: 'renew'; readonly over: 'open' | 'all'; readonly rounds: number }
  | {
      readonly is: 'solve';
      readonly over: 'open' | 'all';
      readonly choices: number;
      readonly iterations: number;
      /** Only where all choices of use are within the limit. */
      readonly proof?: boolean;
    };

/**
 * The steps one after the other, each started from the best plan so far; effort says how many are made, so that more
 * can only be better. Few choices find plans quickly, all of them prove.
 */
const STAGES: readonly (readonly Stage[])[] = [
  [{ is: 'renew', over: 'open', rounds: 150 }],
  [{ is: 'solve', over: 'open', choices: 800, iterations: 6000 }],
  [
    { is: 'renew', over: 'all', rounds: 60 },
    { is: 'solve', over: 'all', choices: 5000, iterations: 30_000, proof: true },
  ],
  [{ is: 'solve', over: 'open', choices: 2000, iterations: 20_000 }],
  [{ is: 'solve', over: 'all', choices: 1000, iterations: 40_000 }],
  [
    { is: 'renew', over: 'all', rounds: 400 },
    { is: 'solve', over: 'all', choices: 20_000, iterations: 100_000 },
  ],
  [{ is: 'solve', over: 'all', choices: 2000, iterations: 80_000 }],
  [{ is: 'solve', over: 'all', choices: 40_000, iterations: 200_000 }],
  [{ is: 'solve', over: 'all', choices: 60_000, iterations: 300_000 }],
  [{ is: 'solve', over: 'all', choices: 100_000, iterations: 600_000 }],
];

/** Table cells filled over one stage of renewal, roughly. */
const RENEWED = 4e6;

/** What a stage may change of a plan, and what of it is held. */
interface Scope {
  readonly rest: Rest;
  readonly mix: Mixture;
  readonly held: readonly Take[];
  readonly open: readonly Take[];
}

/** The boards of a stage; all of them where the plan no longer has those that the mixture held. */
function scopeOf(group: Group, over: Stage['over']): Scope {
  const { held, rest, mix, draft } = group;
  const holds = held.takes.length > 0 && held.takes.every((take, i) => draft.takes[i] === take);
  if (over === 'all' || !holds) return { rest, mix, held: [], open: draft.takes };
  return { rest: held.rest, mix: held.mix, held: held.takes, open: draft.takes.slice(held.takes.length) };
}

interface Watch {
  readonly stopped: () => boolean;
  readonly raise: (bound: number) => void;
}

async function search(group: Group, stage: Stage, watch: Watch): Promise<Group> {
  const scope = scopeOf(group, stage.over);
  if (stage.is === 'solve') return solveOver(group, scope, stage, watch);
  const { nested, mix, draft, cells } = group;
  const rounds = Math.min(stage.rounds, Math.floor(RENEWED / cells));
  const bound = roundUp(scope.mix.bound, nested.problem.costStep);
  const open = renew(nested, scope.rest, { takes: scope.open, rest: draft.rest }, { worth: mix.worth, bound, rounds });
  return improved(group, { takes: [...scope.held, ...open.takes], rest: open.rest });
}

/** The group with a draft, where that makes every piece and is better: an equal cost with less wood or fewer rips is. */
function improved(group: Group, draft: Draft): Group {
  const beaten = isDone(draft.rest) && better(group.nested, group.draft, draft) === draft;
  return beaten ? withDraft(group, draft) : group;
}

async function solveOver(
  group: Group,
  scope: Scope,
  stage: Extract<Stage, { is: 'solve' }>,
  { stopped, raise }: Watch,
): Promise<Group> {
  const highs = await loadSolver();
  if (highs === undefined) return group;
  const { nested } = group;
  const step = nested.problem.costStep;
  const dearest = nested.problem.boards.reduce((m, b) => Math.max(m, b.cost), 0);
  const pieces = scope.rest.need.reduce((sum, n) => sum + n, 0);
  const below = group.done ? costOfTakes(nested, scope.open) - step : dearest * pieces;
  if (group.done && below < roundUp(scope.mix.bound, step)) return group;
  const flow = flowBelow(nested, scope.rest, scope.mix, below, stage.choices);
  if (stage.proof && !flow.complete) return group;
  const start = group.done ? choicesOf(nested, scope.open) : new Map();
  // Where the flow leaves nothing out below the cost in hand, the solver's own bound holds for every plan; but for lists
  // cut short, or boards held, it speaks of the plans that they hold alone.
  const whole = nested.complete && scope.held.length === 0;
  const others = flow.complete ? Number.POSITIVE_INFINITY : flow.bound;
  const provenBy = (bound: number): number => (whole ? roundUp(Math.min(bound, others), step) : group.bound);
  const told = (bound: number): void => raise(provenBy(bound));
  const solved = searchFlow(highs, flow, start, { iterations: stage.iterations, stopped, told });
  if (solved.infeasible && flow.complete && whole) return { ...group, hopeless: !group.done };
  const draft = solved.tallied && draftOf(scope, takesOf(nested, solved.tallied));
  const next = draft ? improved(group, draft) : group;
  const bound = Math.max(group.bound, Math.min(provenBy(solved.bound), next.cost));
  return { ...next, bound, boundKind: bound > group.bound ? 'complete' : group.boundKind };
}

/** Takes from the solver, walked anew: its own word is not relied on. Boards left beyond what there is void them. */
function draftOf(scope: Scope, takes: readonly Take[]): Draft | undefined {
  let rest = scope.rest;
  for (const { pattern, count } of takes) {
    if ((rest.left[pattern.room]?.[pattern.board] ?? 0) < count) return undefined;
    rest = takeOff(rest, pattern, count);
  }
  return { takes: [...scope.held, ...takes], rest };
}

/** Lets whoever waits have a turn, so that a stop can be asked for. */
function breathe(): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, 0);
  });
}
