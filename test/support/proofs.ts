import { proof } from '@wattlewright/drafting';
import { check, type PlanLimits, partsOf, planCutsQuick, readJob, type Settled, solve } from '@wattlewright/model';
import fc from 'fast-check';
import { expect } from 'vitest';
import { packetSheets } from '../../packages/packet/src/sheets/sheets.ts';
import { stickSheets } from '../../packages/packet/src/sheets/sticks.ts';
import { arbitraryJob, type JobObject, type JobsWanted } from './jobs.ts';

/** Which jobs are proofed, and how many. */
interface ProofRun {
  readonly jobs: JobsWanted;
  readonly seed: number;
  readonly runs: number;
  /** How hard cuts are planned; refused unless given, since plans take longer than all the drawings. */
  readonly limits?: PlanLimits;
}

const sheetPapers = [undefined, 'A4', 'A3', 'A2', 'Letter', 'Tabloid', 'ARCH C'] as const;
const stickPapers = [undefined, 'A4', 'A3', 'Letter', 'Legal', 'Tabloid', 'roll 610', 'roll 914'] as const;

/** Draws every sheet of the packets and sticks of arbitrary jobs on every paper, and expects that `proof` finds nothing. */
export function expectSoundSheets({ jobs, seed, runs, limits = { maxPieces: 0 } }: ProofRun): void {
  const papers = fc.record({ sheets: fc.constantFrom(...sheetPapers), sticks: fc.constantFrom(...stickPapers) });
  fc.assert(
    fc.property(arbitraryJob(jobs), papers, (file, paper) => {
      const settled = settledWith({ ...file, paper }, limits);
      const sheets = packetSheets(settled);
      const found = [...proof(sheets, { parts: settled.parts }), ...proof(stickSheets(settled))];
      expect(found.map(({ code, where, text, figure }) => `${code}, ${where}: ${text} ${figure}`)).toEqual([]);
      expect(sheets.length).toBeGreaterThan(5);
    }),
    // A failing job is reported as it is: to shrink it would draw hundreds more.
    { seed, numRuns: runs, endOnFailure: true },
  );
}

/** A job worked out without a search for slat heights. */
function settledWith(file: JobObject, limits: PlanLimits): Settled {
  const job = readJob(JSON.stringify(file));
  const panels = solve(job);
  const parts = partsOf(panels, { spare: job.spare });
  const { stock, offcuts, saw } = job;
  const plan = planCutsQuick({ parts, stock, offcuts, saw, limits });
  return { job, panels, parts, plan, findings: check(job, { panels, parts, plan }), choices: [] };
}
