import { type Panel, partsOf, readJob, solve } from '@wattlewright/model';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arbitraryJob } from '../../../../test/support/jobs.ts';
import { proof } from '../../src/proofing/proof.ts';
import { arrange } from '../../src/sheet/arrange.ts';
import { elevationMaker } from '../../src/views/elevation.ts';
import { verticalSectionMaker } from '../../src/views/verticalsection.ts';
import { weaveSectionMaker } from '../../src/views/weavesection.ts';

describe('proof over arbitrary jobs', () => {
  const meta = { owner: 'Shop', title: 'Job', number: '1', revision: 'A', unit: 'mm' };
  // Six tests share the 300 jobs, so that a fault names the sixth it is in.
  test.each([1, 2, 3, 4, 5, 6])('sheets of 50 jobs, part %i of 6: nothing is found', (part) => {
    fc.assert(
      fc.property(arbitraryJob({ panels: 1 }), fc.nat({ max: 7 }), (file, turn) => {
        const job = readJob(JSON.stringify(file));
        const panels = solve(job);
        const parts = partsOf(panels);
        const [panel] = panels as [Panel];
        // The elevation is the crowded view and is drawn for every job; the sections take turns.
        const section = [weaveSectionMaker, verticalSectionMaker][turn];
        const makers = [elevationMaker(panel, { parts }), ...(section ? [section(panel, parts)] : [])];
        const { unit } = job.display;
        const paper = unit === 'in' ? 'Tabloid' : 'A3';
        const sheets = makers.flatMap((maker) => arrange([maker], { paper, unit, meta }));
        expect(proof(sheets).map(({ code, where, text, figure }) => `${code}: ${where}: ${text} ${figure}`)).toEqual(
          [],
        );
      }),
      { seed: 20261124 + part, numRuns: 50 },
    );
  });
});
