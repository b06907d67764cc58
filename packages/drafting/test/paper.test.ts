import { describe, expect, test } from 'vitest';
import { SAFE_MARGIN, TILE_PAPERS } from '../src/paper.ts';

describe('TILE_PAPERS', () => {
  // ISO 216: a sheet halved keeps its shape, sides in whole mm; ASME Y14.1: A 8 1/2 × 11, B 11 × 17 in.
  test.each([
    ['A4', 210, 297],
    ['A3', 297, 420],
    ['Letter', 215.9, 279.4],
    ['Legal', 215.9, 355.6],
    ['Tabloid', 279.4, 431.8],
  ] as const)('%s is %f × %f mm', (name, short, long) => {
    expect(TILE_PAPERS[name].short).toBeCloseTo(short, 9);
    expect(TILE_PAPERS[name].long).toBeCloseTo(long, 9);
  });
  test.each(['A4', 'A3'] as const)('%s has sides as 1 to √2, to the millimetre', (name) => {
    const { short, long = 0 } = TILE_PAPERS[name];
    expect(Math.abs(short * Math.SQRT2 - long)).toBeLessThan(1);
  });
  test('rolls have no length', () => {
    expect([TILE_PAPERS['roll 610'], TILE_PAPERS['roll 914']].map(({ long }) => long)).toEqual([undefined, undefined]);
  });
  test('SAFE_MARGIN is 1/4 in', () => expect(SAFE_MARGIN).toBe(6.35));
});
