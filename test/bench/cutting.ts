import { type CutPlan, type CuttingInput, checkPlan, planCuts, planCutsQuick, type Stock } from '@wattlewright/model';
import { flowBelow } from '../../packages/model/src/cutting/flow.ts';
import { boundGroup, planGroup } from '../../packages/model/src/cutting/group.ts';
import { openJob } from '../../packages/model/src/cutting/quick.ts';
import { loadSolver, searchFlow } from '../../packages/model/src/cutting/solver.ts';
import { board, part, saw, screens, shopJobs, yard } from '../../packages/model/test/cutting/jobs.ts';

/** One figure of the benchmark. */
export interface Row {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly note: string;
}

/** Numbers from 0 to 1, the same in every run (Park and Miller's generator). */
function numbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

const whole = (next: () => number, from: number, to: number): number => from + Math.floor(next() * (to - from + 1));

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
  const next = numbers(seed);
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
  for (const [panels, jobs] of [
    [1, 12],
    [3, 8],
    [12, 4],
    [40, 2],
    [100, 2],
  ] as const) {
    const gaps: number[] = [];
    const quickGaps: number[] = [];
    const quickTimes: number[] = [];
    const times: number[] = [];
    let proven = 0;
    for (let i = 0; i < jobs; i++) {
      const job = randomJob(panels, 1000 * panels + i + 1);
      const t0 = performance.now();
      const quick = valid(planCutsQuick(job), job, `random ${panels}`);
      const t1 = performance.now();
      const plan = valid(await planCuts(job), job, `random ${panels}`);
      times.push(performance.now() - t1);
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
        name: `random, ${panels} panels: plan`,
        value: quantile(gaps, 0.5),
        unit: '% over the linear bound',
        note: `${proven} of ${jobs} proven, ${time}`,
      },
    );
  }
  return rows;
}

/** One-dimensional packing as boards of one length at price 1 and a saw without kerf; sizes in mm. */
function packing(room: number, sizes: readonly number[]): CuttingInput {
  const counts = new Map<number, number>();
  for (const size of sizes) counts.set(size, (counts.get(size) ?? 0) + 1);
  const parts = [...counts].map(([size, count], i) => ({ ...part(`P${i}`, [1, 1, 1], count), length: size }));
  const stock: Stock[] = [{ ...board([1, 1, 1], 1), length: room }];
  return { parts, stock, offcuts: [], saw: saw({ ripKerf: 0, crossKerf: 0 }) };
}

/**
 * Sets made by their published recipes. Uniform and triplets: Falkenauer, Journal of Heuristics 2 (1996). Hard: Scholl,
 * Klein and Juergens, Computers and Operations Research 24 (1997), their third set.
 */
const sets: readonly { name: string; count: number; make: (next: () => number) => CuttingInput }[] = [
  {
    name: 'uniform, 120 of 20 to 100 in 150',
    count: 10,
    make: (next) =>
      packing(
        150,
        Array.from({ length: 120 }, () => whole(next, 20, 100)),
      ),
  },
  {
    name: 'triplets, 60 in 1000',
    count: 6,
    make: (next) =>
      packing(
        1000,
        Array.from({ length: 20 }, () => {
          const a = whole(next, 380, 490);
          const b = whole(next, 250, Math.floor((1000 - a) / 2));
          return [a, b, 1000 - a - b];
        }).flat(),
      ),
  },
  {
    name: 'hard, 50 of 20 000 to 35 000 in 100 000, a tenth of a length',
    count: 3,
    make: (next) =>
      packing(
        10_000,
        Array.from({ length: 50 }, () => whole(next, 20_000, 35_000) / 10),
      ),
  },
];

async function packingRows(): Promise<Row[]> {
  const rows: Row[] = [];
  for (const { name, count, make } of sets) {
    const times: number[] = [];
    let own = 0;
    let proven = 0;
    for (let i = 0; i < count; i++) {
      const job = make(numbers(77 + i));
      const t0 = performance.now();
      const quick = valid(planCutsQuick(job), job, name);
      times.push(performance.now() - t0);
      const plan = quick.status === 'optimal' ? quick : valid(await planCuts(job), job, name);
      if (quick.status === 'optimal') own++;
      if (plan.status === 'optimal') proven++;
    }
    rows.push({
      name: `packing: ${name}`,
      value: (100 * proven) / count,
      unit: '% proven optimal',
      note: `${own} of ${count} by the own core, median ${Math.round(quantile(times, 0.5))} ms`,
    });
  }
  return rows;
}

/** Measures the cutting plan; every plan is walked by the checker first. */
export async function bench(): Promise<Row[]> {
  return [...(await shopRows()), ...(await randomRows()), ...(await packingRows())];
}
