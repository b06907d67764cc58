import { describe, expect, it } from 'vitest';
import { contains, crossesBox, grown, overlaps, segmentsCross } from '../../src/layout/clearance.ts';

const box = { u0: 0, v0: 0, u1: 10, v1: 10 };

describe('clearance', () => {
  it.each([
    ['apart', { u0: 11, v0: 0, u1: 12, v1: 10 }, false],
    ['edge to edge', { u0: 10, v0: 0, u1: 12, v1: 10 }, false],
    ['corner in', { u0: 9, v0: 9, u1: 12, v1: 12 }, true],
    ['within', { u0: 2, v0: 2, u1: 3, v1: 3 }, true],
  ])('overlaps: %s', (_, other, expected) => {
    expect(overlaps(box, other)).toBe(expected);
    expect(overlaps(other, box)).toBe(expected);
  });

  it('contains: itself and what lies within, not what reaches out', () => {
    expect(contains(box, box)).toBe(true);
    expect(contains(box, grown(box, -1))).toBe(true);
    expect(contains(box, grown(box, 1))).toBe(false);
  });

  it.each([
    [
      'straight through',
      [
        [-5, 5],
        [15, 5],
      ],
      true,
    ],
    [
      'from inside out',
      [
        [5, 5],
        [15, 20],
      ],
      true,
    ],
    [
      'along an edge',
      [
        [-5, 10],
        [15, 10],
      ],
      false,
    ],
    [
      'past a corner',
      [
        [-5, 4],
        [4, -5],
      ],
      false,
    ],
    [
      'ends short',
      [
        [-5, 5],
        [-1, 5],
      ],
      false,
    ],
    [
      'upright outside',
      [
        [11, -5],
        [11, 15],
      ],
      false,
    ],
  ] as const)('crossesBox: %s', (_, line, expected) => {
    expect(crossesBox(line, box)).toBe(expected);
  });

  it.each([
    [
      'a cross',
      [
        [0, 0],
        [10, 10],
      ],
      [
        [0, 10],
        [10, 0],
      ],
      true,
    ],
    [
      'a common end',
      [
        [0, 0],
        [10, 10],
      ],
      [
        [0, 0],
        [10, 0],
      ],
      false,
    ],
    [
      'parallel',
      [
        [0, 0],
        [10, 0],
      ],
      [
        [0, 1],
        [10, 1],
      ],
      false,
    ],
    [
      'would meet further on',
      [
        [0, 0],
        [1, 1],
      ],
      [
        [0, 10],
        [10, 0],
      ],
      false,
    ],
  ] as const)('segmentsCross: %s', (_, a, b, expected) => {
    expect(segmentsCross(a, b)).toBe(expected);
    expect(segmentsCross(b, a)).toBe(expected);
  });
});
