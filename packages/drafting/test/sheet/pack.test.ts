import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contains, grown, overlaps } from '../../src/layout/clearance.ts';
import type { Box } from '../../src/mark.ts';
import { placeIn, without } from '../../src/sheet/pack.ts';

const sheet = { u0: 0, v0: 0, u1: 100, v1: 60 };

describe('placeIn', () => {
  it('takes the highest, then the leftmost place', () => {
    const free = without([sheet], { u0: 0, v0: 0, u1: 40, v1: 30 }, 0);
    expect(placeIn(free, { width: 20, height: 20 })).toEqual({ u0: 40, v0: 0, u1: 60, v1: 20 });
    expect(placeIn(free, { width: 70, height: 20 })).toEqual({ u0: 0, v0: 30, u1: 70, v1: 50 });
  });

  it('finds none for what is too large', () => {
    expect(placeIn([sheet], { width: 101, height: 1 })).toBeUndefined();
  });

  it('boxes placed one after another never come closer than the gap, nor leave the sheet', () => {
    const size = fc.record({ width: fc.integer({ min: 1, max: 60 }), height: fc.integer({ min: 1, max: 40 }) });
    fc.assert(
      fc.property(fc.array(size, { maxLength: 20 }), (sizes) => {
        let free: readonly Box[] = [sheet];
        const placed: Box[] = [];
        for (const one of sizes) {
          const box = placeIn(free, one);
          if (!box) continue;
          for (const other of placed) expect(overlaps(grown(box, 3), other)).toBe(false);
          expect(contains(sheet, box)).toBe(true);
          placed.push(box);
          free = without(free, box, 3);
        }
      }),
      { seed: 20261124, numRuns: 200 },
    );
  });
});
