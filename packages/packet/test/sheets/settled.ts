import { check, partsOf, planCutsQuick, readJob, type Settled, solve } from '@wattlewright/model';

/** A job worked out without a plan of its cuts, which no test of paper and views asks for. */
export function settledOf(job: string | object): Settled {
  const read = readJob(typeof job === 'string' ? job : JSON.stringify(job));
  const panels = solve(read);
  const parts = partsOf(panels, { spare: read.spare });
  const { stock, offcuts, saw } = read;
  const plan = planCutsQuick({ parts, stock, offcuts, saw, limits: { maxPieces: 0 } });
  return { job: read, panels, parts, plan, findings: check(read, { panels, parts, plan }), choices: [] };
}

/** A job of one run of guards 4 m wide. */
export function runOf(bays: number, sheets: string): object {
  const panels = Array.from({ length: bays }, (_, i) => ({
    name: `B${i + 1}`,
    use: 'guard',
    opening: { width: 4000, height: 1000 },
  }));
  const run = { name: 'Long side', panels: panels.map(({ name }) => name), post: 90, gap: 6 };
  return { job: 'Deck', unit: 'mm', panels, runs: [run], paper: { sheets } };
}
