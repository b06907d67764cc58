import { type CutPlan, type CuttingInput, checkPlan, planCuts, planCutsQuick } from '@wattlewright/model';
import { chances } from '../../packages/model/src/cutting/chance.ts';
import { flowBelow } from '../../packages/model/src/cutting/flow.ts';
import { boundGroup, planGroup } from '../../packages/model/src/cutting/group.ts';
import { openJob } from '../../packages/model/src/cutting/quick.ts';
import { loadSolver, searchFlow } from '../../packages/model/src/cutting/solver.ts';
import { leastBins } from '../../packages/model/test/cutting/arcflow.ts';
import { saw, screens, shopJobs, yard } from '../../packages/model/test/cutting/jobs.ts';
import { type Bins, packing, packingSets, whole } from '../../packages/model/test/cutting/packings.ts';

/** One figure of the benchmark. */
export interface Row {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly note: string;
}

function quantile(values: readonly number[], q: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(q * sorted.length))] ?? Number.NaN;
}

function valid(plan: CutPlan, job: CuttingInput, name: string): CutPlan {
  const wrong = checkPlan(plan, job);
  if (wrong.length > 0) throw new Error(`${name}: ${wrong[0]}`);
  return plan;
}

/** A job of `panels` screens of random sizes, 30 to 96 by 36 to 72 in. */
function randomJob(panels: number, seed: number): CuttingInput {
  const next = chances(seed);
  const sizes: [number, number, number][] = [];
  for (let left = panels; left > 0; ) {
    const n = panels === 1 ? 1 : Math.min(left, whole(next, 1, Math.max(1, Math.ceil(panels / 5))));
    sizes.push([whole(next, 60, 192) / 2, whole(next, 72, 144) / 2, n]);
    left -= n;
  }
  const slat = [1.375, 1.5, 1.625][whole(next, 0, 2)] as number;
  return { parts: screens(sizes, slat), stock: yard(), offcuts: [], saw: saw({ trimHead: 1 / 4 }) };
}

async function shopRows(): Promise<Row[]> {
  const rows: Row[] = [];
  for (const [id, make] of Object.entries(shopJobs)) {
    const job: CuttingInput = make();
    const t0 = performance.now();
    const quick = valid(planCutsQuick(job), job, id);
    const t1 = performance.now();
    const plan = valid(await planCuts(job), job, id);
    const t2 = performance.now();
    rows.push(
      {
        name: `shop ${id}: own core`,
        value: (quick.cost / quick.bound - 1) * 100,
        unit: '% over its bound',
        note: `${quick.cost}, ${Math.round(t1 - t0)} ms`,
      },
      {
        name: `shop ${id}: plan`,
        value: (plan.cost / quick.bound - 1) * 100,
        unit: '% over the linear bound',
        note: `${plan.cost}, ${plan.status}, ${plan.boundKind} bound ${plan.bound}, ${Math.round(t2 - t1)} ms`,
      },
      {
        name: `shop ${id}: solver alone`,
        value: await solverAlone(job, plan.cost),
        unit: '% dearer than this plan',
        note: 'same model, no start, 60 s',
      },
    );
  }
  return rows;
}

/** How much dearer the general solver's plan is on the same choices with no plan to start from; NaN if it finds none. */
async function solverAlone(job: CuttingInput, cost: number): Promise<number> {
  const opened = openJob(job);
  const highs = await loadSolver();
  if ('refusal' in opened || highs === undefined) return Number.NaN;
  let sum = 0;
  for (const nested of opened.nested) {
    const group = planGroup(boundGroup(nested));
    const flow = flowBelow(group.nested, group.rest, group.mix, { below: group.cost, most: 5000 });
    const end = performance.now() + 60_000;
    const { tallied } = searchFlow(highs, flow, new Map(), {
      iterations: Number.POSITIVE_INFINITY,
      stopped: () => performance.now() > end,
      told: () => undefined,
    });
    if (tallied === undefined) return Number.NaN;
    for (const { choice, count } of tallied.values()) {
      if (choice.is === 'buy') sum += count * (nested.rooms[choice.room]?.boards[choice.board]?.cost ?? 0);
    }
  }
  return (sum / 100 / cost - 1) * 100;
}

async function randomRows(): Promise<Row[]> {
  const rows: Row[] = [];
  for (const [panels, jobs, limit] of [
    [1, 20, 4000],
    [3, 10, 8000],
    [12, 12, 3000],
    [40, 4, 8000],
    [100, 4, 8000],
  ] as const) {
    const gaps: number[] = [];
    const quickGaps: number[] = [];
    const quickTimes: number[] = [];
    const times: number[] = [];
    const soonGaps: number[] = [];
    let proven = 0;
    let provenSoon = 0;
    for (let i = 0; i < jobs; i++) {
      const job = randomJob(panels, 1000 * panels + i + 1);
      const t0 = performance.now();
      const quick = valid(planCutsQuick(job), job, `random ${panels}`);
      const t1 = performance.now();
      const plan = valid(await planCuts(job), job, `random ${panels}`);
      times.push(performance.now() - t1);
      const t2 = performance.now();
      const signal = {
        get aborted() {
          return performance.now() - t2 > limit;
        },
      };
      const soon = valid(await planCuts({ ...job, signal }), job, `random ${panels}`);
      soonGaps.push((soon.cost / quick.bound - 1) * 100);
      if (soon.status === 'optimal') provenSoon++;
      quickTimes.push(t1 - t0);
      quickGaps.push((quick.cost / quick.bound - 1) * 100);
      gaps.push((plan.cost / quick.bound - 1) * 100);
      if (plan.status === 'optimal') proven++;
    }
    const time = `median ${Math.round(quantile(times, 0.5))} ms`;
    rows.push(
      {
        name: `random, ${panels} panels: own core`,
        value: quantile(quickGaps, 0.5),
        unit: '% over the linear bound',
        note: `median ${Math.round(quantile(quickTimes, 0.5))} ms, ${jobs} jobs`,
      },
      {
        name: `random, ${panels} panels: stopped after ${limit / 1000} s`,
        value: quantile(soonGaps, 0.5),
        unit: '% over the linear bound',
        note: `${provenSoon} of ${jobs} proven, 95 % ${quantile(soonGaps, 0.95).toFixed(2)}`,
      },
      {
        name: `random, ${panels} panels: plan`,
        value: quantile(gaps, 0.5),
        unit: '% over the linear bound',
        note: `${proven} of ${jobs} proven, ${time}`,
      },
    );
  }
  return rows;
}

/** Time that an instance of one-dimensional packing counts as solved in, ms, and that the arc-flow model is given. */
const [IN_TIME, ARCFLOW] = [2000, 20_000];

/** Instances of each set that the arc-flow model is asked as well. */
const ASKED = 8;

/** Sets made by their published recipes, whole; with the time of the arc-flow model in the general solver on a few. */
export async function packingRows(): Promise<Row[]> {
  const rows: Row[] = [];
  const together = { times: [] as number[], proven: 0 };
  for (const set of packingSets) {
    const all = set.make(1).map((bins) => ({ bins, ...packed(bins, set.name) }));
    const proven = all.filter(({ optimal, time }) => optimal && time <= IN_TIME).length;
    const times = all.map(({ time }) => time);
    if (set.name !== 'triplets') {
      together.times.push(...times);
      together.proven += proven;
    }
    const ratios: number[] = [];
    let [own, other] = [0, 0];
    for (let i = 0; i < ASKED; i++) {
      const { bins, time, optimal } = all[Math.floor(((i + 0.5) * all.length) / ASKED)] as (typeof all)[number];
      const start = performance.now();
      const least = await leastBins(bins, ARCFLOW / 1000);
      ratios.push((performance.now() - start) / time);
      if (optimal) own++;
      if (least !== undefined) other++;
    }
    rows.push(packingRow(set.name, proven, times, set.source), {
      name: `packing, ${set.name}: arc-flow model`,
      value: quantile(ratios, 0.5),
      unit: 'times as long (median)',
      note: `${other} of ${ASKED} proven in ${ARCFLOW / 1000} s, own core ${own}`,
    });
  }
  return [...rows, packingRow('all but triplets', together.proven, together.times, 'those above')];
}

function packed(bins: Bins, name: string): { readonly time: number; readonly optimal: boolean } {
  const job = packing(bins);
  const start = performance.now();
  const plan = planCutsQuick(job);
  const time = performance.now() - start;
  valid(plan, job, name);
  return { time, optimal: plan.status === 'optimal' };
}

function packingRow(name: string, proven: number, times: readonly number[], source: string): Row {
  const ms = (q: number): string => quantile(times, q).toFixed(1);
  return {
    name: `packing, ${name}: own core`,
    value: (100 * proven) / times.length,
    unit: '% proven optimal in 2 s',
    note: `${proven} of ${times.length}, median ${ms(0.5)} ms, 95 % ${ms(0.95)} ms; ${source}`,
  };
}

/** Measures the cutting plan of jobs; every plan is walked by the checker first. */
export async function jobRows(): Promise<Row[]> {
  return [...(await shopRows()), ...(await randomRows())];
}
