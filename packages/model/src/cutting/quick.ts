import { type Bounded, boundGroup, type Group, nestGroups, planGroup } from './group.ts';
import { type Bounds, inputFault, misfit, ripFault, supplyFault } from './impossible.ts';
import type { Nested } from './nested.ts';
import type { CutPlan, Refusal } from './plan.ts';
import { type CuttingInput, type Problem, problemOf } from './problem.ts';
import { costUnit, finishPlan, inHundredths, refusedPlan } from './result.ts';

/** How much work a plan may take. */
export interface PlanLimits {
  /** 1, quick, to 10, thorough; 3 unless told: how many runs the solver makes. More never makes the plan dearer. */
  readonly effort?: number;
  /** Most pieces in all, spares too; 50 000 unless told. */
  readonly maxPieces?: number;
  /** Most different sizes of part; 200 unless told. */
  readonly maxSizes?: number;
}

/** Cost of the best plan so far and the least any plan could cost, in the plan's own unit. */
export interface PlanProgress {
  readonly cost: number;
  readonly bound: number;
}

/** What to plan, how hard to try, and who wants to hear of it. */
export interface PlanOptions extends CuttingInput {
  readonly limits?: PlanLimits;
  /** Hears of each better plan or bound. */
  readonly onProgress?: (progress: PlanProgress) => void;
}

/** A job brought to tables, or the reason why it cannot be cut. */
export type Opened =
  | { readonly problem: Problem; readonly nested: readonly Nested[] }
  | { readonly problem: Problem | undefined; readonly refusal: Refusal };

/** Checks a job and builds its tables. */
export function openJob(input: CuttingInput, limits: PlanLimits = {}): Opened {
  const bounds: Bounds = { maxPieces: limits.maxPieces ?? 50_000, maxSizes: limits.maxSizes ?? 200 };
  const fault = inputFault(input, bounds);
  if (fault !== undefined) return { problem: undefined, refusal: fault };
  const problem = problemOf(input);
  const wrong = misfit(problem);
  if (wrong !== undefined) return { problem, refusal: wrong };
  const nested = nestGroups(problem);
  for (const n of nested) {
    const rip = ripFault(n);
    if (rip !== undefined) return { problem, refusal: rip };
  }
  return { problem, nested };
}

/**
 * A cutting plan by the model's own core alone: no solver is loaded. Boards are crosscut to segments, segments ripped
 * to sticks, sticks crosscut to parts. The bound is a true one; a job that cannot be cut comes back as `impossible`
 * with part and reason. Same input, same plan, whatever the order of the parts.
 *
 * @example
 * planCutsQuick({ parts, stock, offcuts: [], saw }).boards
 */
export function planCutsQuick(options: PlanOptions): CutPlan {
  return planBounded(boundJob(options));
}

/** A job with the least that any plan for it costs, before it is planned. */
export interface BoundedJob {
  readonly options: PlanOptions;
  readonly opened: Opened;
  readonly groups: readonly Bounded[];
  /** In the plan's own unit; 0 for a job that is refused. */
  readonly bound: number;
}

/** The bound of a job, without a plan. */
export function boundJob(options: PlanOptions): BoundedJob {
  const opened = openJob(options, options.limits);
  if ('refusal' in opened) return { options, opened, groups: [], bound: 0 };
  const groups = opened.nested.map(boundGroup);
  const bound = groups.reduce((sum, g) => sum + g.bound, 0);
  return { options, opened, groups, bound: inHundredths(bound * costUnit(opened.problem)) };
}

/** The own core's plan of a job whose bound is known. */
export function planBounded({ options, opened, groups }: BoundedJob): CutPlan {
  if ('refusal' in opened) return refusedPlan(opened.problem, opened.refusal);
  const plan = concludePlan(opened.problem, options, groups.map(planGroup));
  options.onProgress?.({ cost: plan.cost, bound: plan.bound });
  return plan;
}

/** The plan of all groups, or the refusal of the first that lacks boards. */
export function concludePlan(problem: Problem, input: CuttingInput, groups: readonly Group[]): CutPlan {
  const open = groups.find((g) => !g.done);
  if (open !== undefined) {
    return refusedPlan(problem, supplyFault(open.nested.problem.demands, open.draft.rest.need, open.hopeless));
  }
  return finishPlan(problem, input, groups);
}
