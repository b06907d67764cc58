import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arbitraryJob, uses } from '../../../../test/support/jobs.ts';
import { partsOf, readJob, solve } from '../../src/index.ts';

const settings = { seed: 20261124, numRuns: 40 };

describe('arbitraryJob', () => {
  test.each(uses)('readJob(arbitraryJob of a %s) can be read, solved and cut into parts', (use) => {
    fc.assert(
      fc.property(arbitraryJob({ use }), (file) => {
        const job = readJob(JSON.stringify(file));
        const panels = solve(job);
        expect(panels.length).toBe(file.panels.length);
        expect(panels.every(({ details }) => details.use === use)).toBe(true);
        for (const { length, width, thickness } of partsOf(panels)) {
          expect(Math.min(length, width, thickness)).toBeGreaterThan(0);
        }
      }),
      settings,
    );
  });
});
