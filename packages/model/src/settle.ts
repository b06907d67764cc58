import { type FreeHeightPlan, planWithFreeHeight, slatHeights } from './cutting/heights.ts';
import { planWhatCanBeCut } from './cutting/partial.ts';
import type { CutPlan } from './cutting/plan.ts';
import type { PlanLimits, PlanProgress } from './cutting/quick.ts';
import type { Finding } from './finding.ts';
import { check } from './findings/check.ts';
import type { Job, PanelSpec } from './job/job.ts';
import { formatLength } from './length.ts';
import { allowanceMargin, slatOptions } from './panel/courses.ts';
import type { Panel } from './panel/panel.ts';
import { heightToClose, type SlatHeights, solve } from './panel/solve.ts';
import { partsToCut } from './parts/inhand.ts';
import type { Part } from './parts/part.ts';
import { partsOf } from './parts/parts.ts';

/** A slat height that the cutting plan chose, and what it bought against the one nearest the preferred height. */
export interface HeightChoice {
  /** Names of the panels that have it. */
  readonly panels: readonly string[];
  /** mm. */
  readonly height: number;
  readonly plainHeight: number;
  /** What the plan with the plain height would cost more; money, or mm³ of wood where some board has no price. */
  readonly saved: number;
  /** The same in a sentence. */
  readonly text: string;
}

/** Everything worked out for a job, before any paper. */
export interface Settled {
  readonly job: Job;
  readonly panels: readonly Panel[];
  readonly parts: readonly Part[];
  /** Of all parts, or where slats are measured of what is still to be cut: `partsToCut`. */
  readonly plan: CutPlan;
  readonly findings: readonly Finding[];
  /** One for each kind of panel whose slat height was free. */
  readonly choices: readonly HeightChoice[];
}

/** How a job is settled. */
export interface SettleOptions {
  readonly limits?: PlanLimits;
  /** Hears of each better plan or bound. */
  readonly onProgress?: (progress: PlanProgress) => void;
  /** Ends the search for a better plan with the best so far; an `AbortSignal` will do. */
  readonly signal?: { readonly aborted: boolean };
}

/**
 * Solves the panels, lets the cutting plan pick the slat height where the job leaves it free, plans the cuts and checks
 * it all.
 * @throws {JobError} for a panel that cannot be laid out
 */
export async function settle(job: Job, options: SettleOptions = {}): Promise<Settled> {
  const { heights, choices } = chooseHeights(job);
  const panels = solve(job, heights);
  const parts = partsOf(panels, job);
  const { stock, offcuts, saw } = job;
  const toCut = { parts: partsToCut(parts), stock, offcuts, saw, display: job.display };
  const plan = await planWhatCanBeCut({ ...toCut, ...options });
  return { job, panels, parts, plan, findings: check(job, { panels, parts, plan }), choices };
}

/** Most slat heights that are tried for one kind of panel: each is a whole cutting plan. */
const MOST_HEIGHTS = 10;

function chooseHeights(whole: Job): { readonly heights: SlatHeights; readonly choices: readonly HeightChoice[] } {
  let heights: SlatHeights = {};
  const choices: HeightChoice[] = [];
  const measured = new Set(whole.panels.filter((spec) => spec.measured).map(({ name }) => name));
  // Slats that are measured were cut to the height chosen before that, so it is chosen as it was.
  const job = { ...whole, panels: whole.panels.map(({ measured: _, ...spec }) => spec) };
  for (const kind of freeKinds(job)) {
    const plain = heightIn(solve(job, heights), kind[0] as PanelSpec);
    const tried = heightsToTry(job, kind[0] as PanelSpec, plain);
    if (tried.length < 2) continue;
    const settledAt = (height: number): SlatHeights => ({
      ...heights,
      ...Object.fromEntries(kind.map(({ name }) => [name, height])),
    });
    const candidates = tried.map((height) => {
      const panels = solve(job, settledAt(height));
      return {
        height,
        courses: panels.find(({ name }) => name === kind[0]?.name)?.courses.count ?? 0,
        parts: partsOf(panels, job),
      };
    });
    const { stock, offcuts, saw } = job;
    const result = planWithFreeHeight({
      candidates,
      plain: tried.indexOf(plain),
      stock,
      offcuts,
      saw,
      limits: { effort: 1 },
    });
    if (result.chosen < 0) continue;
    heights = settledAt(tried[result.chosen] as number);
    const open = kind.filter(({ name }) => !measured.has(name));
    if (open.length > 0) choices.push(choiceOf(job, open, result, tried.indexOf(plain)));
  }
  return { heights, choices };
}

/** Panels whose slat height is free, gathered by what decides it, so that panels in one run keep level courses. */
function freeKinds(job: Job): PanelSpec[][] {
  const kinds = new Map<string, PanelSpec[]>();
  for (const spec of job.panels) {
    if (spec.fit.vary !== 'slats') continue;
    const key = JSON.stringify([spec.fit, spec.size.height, spec.rail.height, spec.allowance, spec.wood.slat]);
    kinds.set(key, [...(kinds.get(key) ?? []), spec]);
  }
  return [...kinds.values()];
}

function heightIn(panels: readonly Panel[], { name }: PanelSpec): number {
  return panels.find((panel) => panel.name === name)?.courses.height ?? 0;
}

/**
 * Heights that close the panel with no more spare room than a quarter of a course: the greatest for each count, and those
 * at which boards rip evenly. The plain one is always among them, the rest are the nearest to the preferred height.
 */
function heightsToTry(job: Job, spec: PanelSpec, plain: number): number[] {
  const { fit } = spec;
  if (fit.vary !== 'slats') return [];
  const ask = heightToClose(job, spec);
  const share = spec.allowance === undefined ? 1 + ask.swellShare : 1;
  const room = (ask.clearHeight - (spec.allowance ?? allowanceMargin(job.display))) / share;
  const even = slatHeights({ ...fit, cover: room, gap: 0, stock: [...job.stock, ...job.offcuts], saw: job.saw });
  const closes = ({ height }: { height: number }) => room - Math.floor(room / height + 1e-9) * height <= height / 4;
  const all = [...slatOptions(ask), ...even.filter(closes)].map(({ height }) => Math.round(height * 1e6) / 1e6);
  const others = [...new Set(all)].filter((height) => Math.abs(height - plain) > 1e-6);
  const near = others
    .sort((a, b) => Math.abs(a - fit.prefer) - Math.abs(b - fit.prefer) || a - b)
    .slice(0, MOST_HEIGHTS - 1);
  return [plain, ...near].sort((a, b) => a - b);
}

function choiceOf(
  { display, currency }: Job,
  kind: readonly PanelSpec[],
  result: FreeHeightPlan,
  plain: number,
): HeightChoice {
  const chosen = result.candidates[result.chosen];
  const before = result.candidates[plain];
  const step = kind[0]?.fit.vary === 'slats' ? kind[0].fit.step : display.mark;
  const show = (height: number) =>
    formatLength(height, { unit: display.unit, mark: Math.min(step, display.mark) }, { named: true });
  const names = kind.map(({ name }) => name).join(', ');
  const height = chosen?.height ?? 0;
  const plainHeight = before?.height ?? height;
  const gain =
    result.plan.costIs === 'price' && result.saved > 0
      ? `saves ${result.saved.toFixed(2)}${currency ? ` ${currency}` : ''}`
      : result.saved > 0
        ? `takes ${((result.saved / (before?.plan?.cost ?? 1)) * 100).toFixed(1)} % less wood`
        : 'costs the same and wastes less';
  const text =
    Math.abs(height - plainHeight) < 1e-6
      ? `${names}: slats ${show(height)} high, the nearest to the wish; no other height that closes the panel is cheaper to cut.`
      : `${names}: slats ${show(height)} high in ${chosen?.courses} courses instead of ${show(plainHeight)} in ${before?.courses}: ${gain}.`;
  return { panels: kind.map(({ name }) => name), height, plainHeight, saved: result.saved, text };
}
