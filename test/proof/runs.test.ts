import { describe, test } from 'vitest';
import { expectSoundSheets } from '../support/proofs.ts';

describe('proof(sheets) of jobs of several panels', () => {
  test.each(['in', 'mm'] as const)('finds nothing on any sheet of 6 jobs in %s', (unit) => {
    expectSoundSheets({ jobs: { unit, panels: 4 }, seed: 20261124, runs: 6 });
  });
  test('finds nothing on the cut sheets of planned jobs', () => {
    expectSoundSheets({ jobs: { unit: 'in', panels: 2 }, seed: 20261125, runs: 6, limits: { effort: 1 } });
  });
});
