import { describe, test } from 'vitest';
import { expectSoundSheets } from '../support/proofs.ts';

describe('proof(sheets) of dividers from 300 mm to 4 m', () => {
  test.each(['in', 'mm'] as const)('finds nothing on any sheet of 40 jobs in %s', (unit) => {
    expectSoundSheets({ jobs: { use: 'divider', unit, panels: 1 }, seed: 20261123, runs: 40 });
  });
});
