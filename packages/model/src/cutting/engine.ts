import { searchSets } from './boardsets.ts';
import { roundUp } from './bound.ts';
import { better } from './dive.ts';
import { flowBelow } from './flow.ts';
import { choicesOf, takesOf } from './gather.ts';
import { type Draft, draftFrom, isDone } from './greedy.ts';
import { boundGroup, type Group, planGroup, restart, withDraft, withPacking } from './group.ts';
import { searchPacking } from './packing.ts';
import type { CutPlan } from './plan.ts';
import { concludePlan, openJob, type PlanOptions } from './quick.ts';
import { refine } from './refine.ts';
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
    let group = groups[i] as Group;
    const ended = (): boolean => group.hopeless || (group.done && group.cost <= group.bound);
    let solved = false;
    const run = async (stages: readonly Stage[]): Promise<void> => {
      for (const stage of stages) {
        if (ended()) return;
        await breathe();
        if (stopped()) return;
        solved ||= stage.is === 'solve' || stage.is === 'sets';
        group = await search(group, stage, { stopped, raise: (raised) => tell(i, raised) });
        groups[i] = group;
        tell();
      }
    };
    await run(OWN);
    if (!ended() && !stopped()) await run((await loadSolver()) ? STAGES.slice(0, effort).flat() : WITHOUT);
    // The solver is not loaded to tidy up alone.
    if (solved && !stopped()) groups[i] = await refine(group, stopped);
    tell();
  }
  return concludePlan(problem, options, groups);
}

/** One step of the search. The open boards are those left when the mixture's whole ones are held. */
type Stage =
  | { readonly is: 'restart'; readonly starts: number }
  | { readonly is: 'renew'; readonly over: 'open' | 'all'; readonly rounds: number }
  | {
      readonly is: 'solve';
      readonly choices: number;
      readonly iterations: number;
      /** Only plans that rip each board before it is crosscut. */
      readonly ripFirst?: boolean;
      /** Where all choices of use are this many or fewer they are all taken, for a proof. */
      readonly whole?: number;
    }
  | { readonly is: 'sets'; readonly iterations: number }
  /** Of boards that are only crosscut. */
  | { readonly is: 'pack'; readonly work: number };

/** What comes before the solver is loaded. */
const OWN: readonly Stage[] = [{ is: 'pack', work: 3e9 }];

/** The solver's iterations for a proof. */
const PROOF = 60_000;

/**
 * The steps one after the other, each started from the best plan so far; effort says how many are made, so that more
 * can only be better. Ripping first leaves few choices and finds good plans quickly; sets of boards prove, and so do all
 * choices where they are not too many.
 */
const STAGES: readonly (readonly Stage[])[] = [
  [{ is: 'solve', ripFirst: true, choices: 650, iterations: 15_000 }],
  [{ is: 'sets', iterations: 40_000 }],
  [{ is: 'solve', choices: 700, iterations: 16_000, whole: 1200 }],
  [
    { is: 'restart', starts: 8 },
    { is: 'renew', over: 'all', rounds: 300 },
    { is: 'solve', ripFirst: true, choices: 1000, iterations: 20_000 },
  ],
  [{ is: 'solve', choices: 1200, iterations: 40_000 }],
  [{ is: 'solve', choices: 20_000, iterations: 60_000 }],
  [
    { is: 'restart', starts: 40 },
    { is: 'renew', over: 'open', rounds: 300 },
    { is: 'solve', choices: 1000, iterations: 60_000 },
  ],
  [{ is: 'solve', choices: 20_000, iterations: 150_000 }],
  [{ is: 'solve', choices: 40_000, iterations: 200_000 }],
  [{ is: 'solve', choices: 100_000, iterations: 600_000 }],
];

/** What is done instead where no solver can be had. */
const WITHOUT: readonly Stage[] = [
  { is: 'restart', starts: 8 },
  { is: 'renew', over: 'open', rounds: 80 },
];

/** Table cells filled over one stage of restarts or renewal, roughly. */
const RENEWED = 8e6;

interface Watch {
  readonly stopped: () => boolean;
  readonly raise: (bound: number) => void;
}

async function search(group: Group, stage: Stage, watch: Watch): Promise<Group> {
  const { cells } = group;
  if (stage.is === 'solve') return solve(group, stage, watch);
  if (stage.is === 'sets') return bySets(group, stage, watch);
  if (stage.is === 'pack') return packed(group, stage.work, watch);
  if (!group.done) return group;
  if (stage.is === 'restart') {
    return restart(group, Math.min(stage.starts, Math.floor((8 * RENEWED) / cells / 50)), watch.stopped);
  }
  return renewed(group, stage, watch.stopped);
}

/** The group with its open boards renewed, or with all where it no longer has those that the mixture held. */
function renewed(group: Group, stage: Extract<Stage, { is: 'renew' }>, stopped: () => boolean): Group {
  const { nested, held, mix, draft, cells } = group;
  const rounds = Math.min(stage.rounds, Math.floor(RENEWED / cells));
  const holds = stage.over === 'open' && held.takes.every((take, i) => draft.takes[i] === take);
  const from = holds ? held : { takes: [], rest: group.rest, mix };
  const first = { takes: draft.takes.slice(from.takes.length), rest: draft.rest };
  const bound = roundUp(from.mix.bound, nested.problem.costStep);
  const open = renew(nested, from.rest, first, { worth: mix.worth, bound, rounds, stopped });
  return improved(group, { takes: [...from.takes, ...open.takes], rest: open.rest });
}

/** The group with a draft, where that makes every piece and is better: an equal cost with less wood or fewer rips is. */
function improved(group: Group, draft: Draft): Group {
  const beaten = isDone(draft.rest) && better(group.nested, group.draft, draft) === draft;
  return beaten ? withDraft(group, draft) : group;
}

function packed(group: Group, work: number, { stopped }: Watch): Group {
  const next = group.packing && withPacking(group, searchPacking(group.packing, work, stopped));
  return next?.done && next.cost <= group.cost ? next : group;
}

/** Boards of a plan for which sets are searched, at most: of more there are too many sets alike. */
const MOST_BOARDS = 25;

async function bySets(group: Group, stage: Extract<Stage, { is: 'sets' }>, watch: Watch): Promise<Group> {
  const { nested, rest, draft, done, cost } = group;
  const boards = draft.takes.reduce((sum, { count }) => sum + count, 0);
  if (!done || !nested.complete || boards > MOST_BOARDS) return group;
  const highs = await loadSolver();
  if (highs === undefined) return group;
  const { iterations } = stage;
  const { stopped, raise: told } = watch;
  const solved = searchSets(highs, group, cost - nested.problem.costStep, { iterations, stopped, told });
  const found = solved.tallied && draftFrom(rest, takesOf(nested, solved.tallied));
  return proven(found ? improved(group, found) : group, group, roundUp(solved.bound, nested.problem.costStep));
}

/** The group that came of another, with a bound that the search has proven, where that says more. */
function proven(next: Group, group: Group, by: number): Group {
  const bound = Math.max(group.bound, Math.min(by, next.cost));
  return { ...next, bound, boundKind: bound > group.bound ? 'complete' : group.boundKind };
}

async function solve(group: Group, stage: Extract<Stage, { is: 'solve' }>, { stopped, raise }: Watch): Promise<Group> {
  const highs = await loadSolver();
  if (highs === undefined) return group;
  const { nested, rest, mix } = group;
  const step = nested.problem.costStep;
  const dearest = nested.problem.boards.reduce((m, b) => Math.max(m, b.cost), 0);
  const pieces = rest.need.reduce((sum, n) => sum + n, 0);
  const below = group.done ? group.cost - step : dearest * pieces;
  // A proof needs whole lists.
  const most = nested.complete ? stage.whole : undefined;
  const all = most === undefined ? undefined : flowBelow(nested, rest, mix, { below, most });
  const flow = all?.complete
    ? all
    : flowBelow(nested, rest, mix, { below, most: stage.choices, ripFirst: stage.ripFirst === true });
  const iterations = all?.complete ? PROOF : stage.iterations;
  const start = group.done ? choicesOf(nested, group.draft.takes) : new Map();
  // Where the flow leaves nothing out below the cost in hand, the solver's own bound holds for every plan; but for lists
  // cut short it speaks of the plans that they hold alone.
  const others = flow.complete ? Number.POSITIVE_INFINITY : flow.bound;
  const provenBy = (bound: number): number => (nested.complete ? roundUp(Math.min(bound, others), step) : group.bound);
  const told = (bound: number): void => raise(provenBy(bound));
  const solved = searchFlow(highs, flow, start, { iterations, stopped, told });
  if (solved.infeasible && flow.complete && nested.complete) return { ...group, hopeless: !group.done };
  // Walked anew: the solver's own word is not relied on.
  const draft = solved.tallied && draftFrom(rest, takesOf(nested, solved.tallied));
  return proven(draft ? improved(group, draft) : group, group, provenBy(solved.bound));
}

/** Lets whoever waits have a turn, so that a stop can be asked for. */
function breathe(): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, 0);
  });
}
