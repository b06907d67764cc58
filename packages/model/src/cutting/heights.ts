import type { Part } from '../parts/part.ts';
import type { CutPlan } from './plan.ts';
import { type CuttingInput, sidesOf } from './problem.ts';
import { type BoundedJob, boundJob, type PlanLimits, planBounded, planCutsQuick } from './quick.ts';
import type { Saw, Stock } from './stock.ts';
import { fromTicks } from './ticks.ts';

/** What the slat heights to look at follow from. Sizes in mm. */
export interface SlatHeightRange {
  readonly from: number;
  readonly to: number;
  /** Heights are whole multiples of it; rounded down. */
  readonly step: number;
  /** Height to be covered by courses. */
  readonly cover: number;
  /** Gap between neighbouring courses. */
  readonly gap: number;
  readonly stock: readonly Stock[];
  readonly saw: Saw;
  /** Sides of other parts that may be ripped off a board first. */
  readonly others?: readonly number[];
}

/** A slat height and the courses that it takes. */
export interface SlatHeight {
  readonly height: number;
  readonly courses: number;
}

/**
 * Slat heights at which a plan can be best, smallest first: the ends of the range; heights that divide a board side
 * evenly, `(D + K) / m - K`, also after one other part is ripped off; heights that cover the panel exactly,
 * `(cover + gap) / n - gap`. Between two of them a greater height covers more from the same rips. Derived.
 */
export function slatHeights(range: SlatHeightRange): SlatHeight[] {
  const { from, to, step, cover, gap, saw } = range;
  if (!(from > 0 && to >= from && step > 0 && cover > 0 && gap >= 0)) {
    throw new RangeError(`slat height from ${from} to ${to} by ${step}, cover ${cover}, gap ${gap}`);
  }
  const found = new Set<number>();
  const add = (height: number): void => {
    const n = Math.floor(height / step + 1e-9);
    if (n * step >= from - 1e-9 && n * step <= to + 1e-9) found.add(n);
  };
  add(Math.ceil(from / step - 1e-9) * step);
  add(to);
  const loss = saw.ripKerf + 2 * saw.planing;
  const sides = range.stock.flatMap((s) => Object.values(sidesOf(s, saw)).map(fromTicks));
  for (const side of new Set(sides)) {
    for (const rest of [side, ...(range.others ?? []).map((o) => side - o - loss)]) {
      for (let m = 1; rest > 0; m++) {
        const height = (rest + loss) / m - loss;
        if (height < from) break;
        add(height);
      }
    }
  }
  for (let n = 1; ; n++) {
    const height = (cover + gap) / n - gap;
    if (height < from) break;
    add(height);
  }
  return [...found].sort((a, b) => a - b).map((n) => withCourses(n * step, cover, gap));
}

/** A height with the whole number of courses that covers the panel. */
function withCourses(height: number, cover: number, gap: number): SlatHeight {
  return { height, courses: Math.ceil((cover + gap) / (height + gap) - 1e-9) };
}

/** One slat height with the whole job's parts as they are at that height. */
export interface HeightCandidate extends SlatHeight {
  readonly parts: readonly Part[];
}

/** What each candidate comes to. */
export interface HeightResult extends SlatHeight {
  /** No plan at this height costs less. */
  readonly bound: number;
  /** Absent where the bound is above the cost of a plan at another height: it was not planned. */
  readonly plan?: { readonly cost: number; readonly waste: number; readonly status: CutPlan['status'] };
}

/** The height chosen, its plan, and what the others would have cost. */
export interface FreeHeightPlan {
  /** Index among the candidates; -1 where none can be cut. */
  readonly chosen: number;
  readonly plan: CutPlan;
  readonly candidates: readonly HeightResult[];
  /** What the choice saves against the plain candidate, in the plan's cost; 0 where there is none that can be cut. */
  readonly saved: number;
}

/** Candidates to choose from; `plain` is the index of the one that would be taken without choosing. */
export interface FreeHeightOptions extends Omit<CuttingInput, 'parts'> {
  readonly candidates: readonly HeightCandidate[];
  readonly plain?: number;
  readonly limits?: PlanLimits;
}

/**
 * Plans with the own core, the candidates of least bound first, and chooses the cheapest, then the one of least
 * waste beside leftovers of full section, then the greatest height. Those whose bound is above the best plan are not planned, save the plain one. With no
 * candidates it throws.
 */
export function planWithFreeHeight({ candidates, plain, ...input }: FreeHeightOptions): FreeHeightPlan {
  if (candidates.length === 0) throw new RangeError('no slat heights to choose from');
  const jobs = candidates.map(({ parts }) => boundJob({ ...input, parts }));
  const plans: (CutPlan | undefined)[] = candidates.map(() => undefined);
  const best = (): CutPlan | undefined =>
    plans.reduce((a, b) => (b && b.status !== 'impossible' && (!a || beats(b, a)) ? b : a), undefined);
  const bounds = jobs.map(({ bound }) => bound);
  const order = bounds.map((_, i) => i).sort((a, b) => (bounds[a] as number) - (bounds[b] as number) || a - b);
  for (const i of order) {
    const cost = best()?.cost ?? Number.POSITIVE_INFINITY;
    if (i === plain || (bounds[i] as number) <= cost) plans[i] = planBounded(jobs[i] as BoundedJob);
  }
  const found = best();
  const plan = found ?? (plans.find((p) => p !== undefined) as CutPlan);
  const against = plain === undefined ? undefined : plans[plain];
  return {
    chosen: found === undefined ? -1 : plans.lastIndexOf(found),
    plan,
    candidates: candidates.map(({ height, courses }, i) => {
      const made = plans[i];
      const told = made && { cost: made.cost, waste: made.shares.waste, status: made.status };
      return { height, courses, bound: bounds[i] as number, ...(told && { plan: told }) };
    }),
    saved: !found || against === undefined || against.status === 'impossible' ? 0 : against.cost - found.cost,
  };
}

function beats(plan: CutPlan, best: CutPlan): boolean {
  if (plan.cost !== best.cost) return plan.cost < best.cost;
  return lost(plan) <= lost(best) + 1e-9;
}

/** Share of the wood that no part has and no leftover of full section: a board's end is worth more than as much in strips. */
function lost({ shares, boards, leftovers }: CutPlan): number {
  const whole = new Set(boards.map(({ name, width, thickness }) => `${name}|${width}|${thickness}`));
  const volume = (list: CutPlan['leftovers']): number =>
    list.reduce((sum, one) => sum + one.count * one.length * one.width * one.thickness, 0);
  const strips = leftovers.filter(({ name, width, thickness }) => !whole.has(`${name}|${width}|${thickness}`));
  return shares.waste + (shares.kept * volume(strips)) / (volume(leftovers) || 1);
}

/** How the same slats are chosen where the caller builds the parts for a height. */
export interface ChooseHeightOptions extends Omit<FreeHeightOptions, 'candidates'> {
  readonly heights: readonly SlatHeight[];
  /** The parts of the job with slats of a height. */
  readonly partsAt: (height: SlatHeight) => readonly Part[];
}

/** {@link planWithFreeHeight} over parts that `partsAt` builds for each height. */
export function chooseSlatHeight({ heights, partsAt, ...input }: ChooseHeightOptions): FreeHeightPlan {
  return planWithFreeHeight({ ...input, candidates: heights.map((h) => ({ ...h, parts: partsAt(h) })) });
}

/** The own core's plan if both blades had this kerf (mm): what a thinner blade would yield. */
export function withKerf(input: CuttingInput & { readonly limits?: PlanLimits }, kerf: number): CutPlan {
  return planCutsQuick({ ...input, saw: { ...input.saw, ripKerf: kerf, crossKerf: kerf } });
}
