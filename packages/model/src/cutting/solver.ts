import type { Highs } from 'highs';
import type { Choice, Flow } from './flow.ts';
import { choiceKey, type Tallied } from './gather.ts';
import { programOf } from './integer.ts';
import type { Aim } from './measure.ts';

/** What the general solver found. */
export interface Solved {
  /** The choices of its best plan; `undefined` where it has none. */
  readonly tallied: Tallied | undefined;
  /** No plan made of the flow's choices costs less. */
  readonly bound: number;
  readonly infeasible: boolean;
  /** Work done. */
  readonly iterations: number;
}

/** How long the solver may work, told in work done and never by the clock. */
export interface SolverWork {
  readonly iterations: number;
  /** Asked now and then; the search ends when it says so. */
  readonly stopped: () => boolean;
  /** Called with the bound now and then while the search goes on. */
  readonly told: (bound: number) => void;
  /** What is to be least; cost unless told. */
  readonly aim?: Aim;
}

let loading: Promise<Highs> | undefined;

/** Loads the general mixed-integer solver (HiGHS as WebAssembly, MIT licence) once; `undefined` where it cannot be had. */
export async function loadSolver(): Promise<Highs | undefined> {
  try {
    // Its types describe the CommonJS build; an import gets the module build, whose default is the loader itself.
    loading ??= import('highs').then((m) => (m.default as unknown as () => Promise<Highs>)());
    return await loading;
  } catch {
    loading = undefined;
    return undefined;
  }
}

/** Searches the plans of a flow, starting from the plan in hand. What it says is to be checked by the caller. */
export function searchFlow(highs: Highs, flow: Flow, start: Tallied, work: SolverWork): Solved {
  const keys = new Set(flow.choices.map(choiceKey));
  const added = [...start.values()].filter(({ choice }) => !keys.has(choiceKey(choice))).map(({ choice }) => choice);
  const choices: Choice[] = [...flow.choices, ...added];
  const program = programOf({ ...flow, choices }, work.aim);
  const [numCols, numRows] = [program.costs.length, program.rowLower.length];
  const inf = highs.infinity;
  const model = {
    numCols,
    numRows,
    colCost: Float64Array.from(program.costs),
    colLower: new Float64Array(numCols),
    colUpper: Float64Array.from(program.uppers, (u) => Math.min(u, 1e6)),
    rowLower: Float64Array.from(program.rowLower),
    rowUpper: Float64Array.from(program.rowUpper, (u) => (u === Number.POSITIVE_INFINITY ? inf : u)),
    matrix: {
      format: 'csc' as const,
      numRows,
      numCols,
      starts: Int32Array.from(program.starts),
      indices: Int32Array.from(program.rows),
      values: Float64Array.from(program.values),
    },
    integrality: Int32Array.from(program.whole, (w) => (w ? 1 : 0)),
  };
  return highs.withModel(model, (run) => {
    const least = work.aim?.least ?? 'cost';
    const step = { cost: flow.nested.problem.costStep / program.unit, waste: 1, fences: 1, cuts: 1 }[least];
    run.options.set({
      output_flag: false,
      random_seed: 0,
      mip_rel_gap: 0,
      mip_abs_gap: Math.max(1e-6, 0.999 * step),
      mip_heuristic_run_rins: false,
      mip_heuristic_run_rens: false,
      mip_heuristic_run_root_reduced_cost: false,
      mip_allow_restart: false,
    });
    if (start.size > 0) {
      run.setSolution({
        indices: Int32Array.from(choices, (_, j) => j),
        values: Float64Array.from(choices, (c) => start.get(choiceKey(c))?.count ?? 0),
      });
    }
    const { mipInterrupt } = highs.constants.callbackType;
    let iterations = 0;
    run.run({
      [mipInterrupt]: (event) => {
        const data = event.data;
        work.told((data.mip_dual_bound ?? 0) * program.unit);
        iterations = Number(data.mip_total_lp_iterations ?? 0);
        if (iterations > work.iterations || work.stopped()) event.interrupt();
      },
    });
    const infeasible = run.getModelStatus() === highs.constants.modelStatus.infeasible;
    const values = run.getSolution()?.colValue;
    const found = run.info.get('primal_solution_status') === 2 && values !== undefined;
    const tallied = new Map<string, { choice: Choice; count: number }>();
    choices.forEach((choice, j) => {
      const count = Math.round(values?.[j] ?? 0);
      if (count > 0) tallied.set(choiceKey(choice), { choice, count });
    });
    const bound = Number(run.info.get('mip_dual_bound')) * program.unit;
    return { tallied: found ? tallied : undefined, bound: Number.isFinite(bound) ? bound : 0, infeasible, iterations };
  });
}
