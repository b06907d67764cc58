import { describe, expect, test } from 'vitest';
import { textBox } from '../../src/lettering.ts';
import { stroke } from '../../src/mark.ts';
import { line, polygon } from '../../src/path.ts';
import { planFacing } from '../../src/views/detaildrawing.ts';

const end = line([0, -20], [0, 20]);
const boxes = (marks: ReturnType<typeof planFacing>) =>
  marks.flatMap((mark) => (mark.kind === 'text' ? [textBox(mark)] : []));

describe('planFacing', () => {
  test('stands 3 mm beside the end of the plan', () => {
    expect(boxes(planFacing([0, 0], 1)).map(({ u0 }) => Math.round(u0))).toEqual([3, 3]);
    expect(boxes(planFacing([0, 0], -1)).map(({ u1 }) => Math.round(u1))).toEqual([-3, -3]);
  });

  test.each([1, -1] as const)(
    'stands clear of a slat that slants %d × 6 mm out of the plan beside the words',
    (way) => {
      const slat = polygon([
        [way * -9, -9],
        [way * 6, 4],
        [way * 4, 6],
        [way * -11, -7],
      ]);
      const ink = [stroke('edge-light', end), stroke('edge', slat)];
      for (const { u0, u1 } of boxes(planFacing([0, 0], way, ink)))
        expect(Math.min(way * u0, way * u1)).toBeGreaterThan(8);
    },
  );

  test('does not mind a slat far from the height of the words', () => {
    const slat = polygon([
      [6, 14],
      [6, 18],
      [-6, 18],
    ]);
    expect(planFacing([0, 0], 1, [stroke('edge-light', end), stroke('edge', slat)])).toEqual(planFacing([0, 0], 1));
  });
});
