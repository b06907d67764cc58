import { describe, expect, it } from 'vitest';
import { contains, overlaps } from '../../src/layout/clearance.ts';
import { SHEET_PAPERS } from '../../src/sheet/arrange.ts';
import { BLOCK_WIDTH, extentOf, frame } from '../../src/sheet/frame.ts';

const papers = Object.values(SHEET_PAPERS);

describe('frame', () => {
  // ISO 5457: 20 mm filing margin, 10 mm elsewhere; its drawing spaces are 180 × 277 on A4 and 390 × 277 on A3.
  it.each([
    ['A4', 'portrait', 180, 277],
    ['A3', 'landscape', 390, 277],
  ] as const)('%s %s leaves the drawing space of ISO 5457: %d × %d', (name, orientation, width, height) => {
    expect(extentOf(frame(SHEET_PAPERS[name], orientation).border)).toEqual({ width, height });
  });

  // ISO 216 for A sizes; ASME Y14.1 A and B; 18 × 24 in.
  it.each([
    ['A4', 210, 297],
    ['A3', 297, 420],
    ['A2', 420, 594],
    ['Letter', 215.9, 279.4],
    ['Tabloid', 279.4, 431.8],
    ['ARCH C', 457.2, 609.6],
  ] as const)('%s is %d × %d mm upright and turned on its side', (name, short, long) => {
    const [upright, side] = [frame(SHEET_PAPERS[name], 'portrait'), frame(SHEET_PAPERS[name], 'landscape')];
    expect(upright.width).toBeCloseTo(short, 9);
    expect(upright.height).toBeCloseTo(long, 9);
    expect([side.width, side.height]).toEqual([upright.height, upright.width]);
  });

  it('the title block stands in the lower right corner, never on a room, and at least 180 mm wide (ISO 7200)', () => {
    for (const paper of papers)
      for (const orientation of ['landscape', 'portrait'] as const) {
        const { border, block, rooms } = frame(paper, orientation);
        expect([block.u1, block.v1]).toEqual([border.u1, border.v1]);
        expect(extentOf(block).width).toBeGreaterThanOrEqual(BLOCK_WIDTH - 1e-9);
        for (const room of rooms) {
          expect(contains(border, room)).toBe(true);
          expect(overlaps(room, block)).toBe(false);
        }
      }
  });
});
