import { describe, test } from 'vitest';
import { expectSoundSheets } from '../support/proofs.ts';

describe('proof(sheets) of guards from 300 mm to 4 m', () => {
  test.each(['in', 'mm'] as const)('finds nothing on any sheet of 40 jobs in %s', (unit) => {
    expectSoundSheets({ jobs: { use: 'guard', unit, panels: 1 }, seed: 20261122, runs: 40 });
  });
});
