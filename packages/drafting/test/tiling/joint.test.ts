import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { evenJoints, joints, pagesBetween, type Span } from '../../src/tiling/joint.ts';

describe('evenJoints', () => {
  test('evenJoints are as many as joints, and leave no sliver at the end', () => {
    // Furthest: 192, so that the second page would show 16 to spare; spread, each page shows about half.
    const at = { whole: [0, 210], window: 200, overlap: 16, texts: [] } as const;
    expect(joints(at)).toEqual([192]);
    const [even] = evenJoints(at);
    expect(evenJoints(at)).toHaveLength(1);
    expect(even).toBeGreaterThan(90);
    expect(even).toBeLessThan(130);
  });
  test('evenJoints cut no text for it that joints leave whole', () => {
    const texts: Span[] = [
      [20, 100],
      [102, 190],
    ];
    for (const joint of evenJoints({ whole: [0, 210], window: 200, overlap: 16, texts }))
      expect(texts.some(([a, b]) => a < joint && b > joint)).toBe(false);
  });
});

describe('joints', () => {
  test('joints of what one page shows: none', () => {
    expect(joints({ whole: [0, 200], window: 200, overlap: 16, texts: [] })).toEqual([]);
  });
  test('joints without texts are as far apart as the window allows', () => {
    // First page shows 0 to 200, its joint 8 before its end; each further page adds 200 − 16 = 184.
    expect(joints({ whole: [0, 560], window: 200, overlap: 16, texts: [] })).toEqual([192, 376]);
  });
  test('joints move back clear of a text by 2 mm', () => {
    expect(joints({ whole: [0, 300], window: 200, overlap: 16, texts: [[170, 230]] })).toEqual([168]);
  });
  test('joints move back clear of a mark too, as long as they can', () => {
    expect(joints({ whole: [0, 300], window: 200, overlap: 16, texts: [], marks: [[192, 192]] })).toEqual([190]);
    const wall: Span[] = Array.from({ length: 100 }, (_, i) => [100 + i, 100 + i]);
    expect(joints({ whole: [0, 300], window: 200, overlap: 16, texts: [], marks: wall })).toEqual([192]);
  });
  test('joints stay on a text that the overlap shows whole on both pages, where there is no clear place', () => {
    const texts: Span[] = Array.from({ length: 25 }, (_, i) => [100 + 4 * i, 110 + 4 * i]);
    expect(joints({ whole: [0, 300], window: 200, overlap: 16, texts })).toEqual([192]);
  });
  test('joints of an overlap that leaves no room are refused', () => {
    expect(() => joints({ whole: [0, 300], window: 30, overlap: 16, texts: [] })).toThrow('invalid overlap: 16');
  });
  test('pages cover the whole, none shows more than the window, and neighbours share the overlap', () => {
    const span = fc
      .tuple(fc.double({ min: 0, max: 4000, noNaN: true }), fc.double({ min: 1, max: 60, noNaN: true }))
      .map(([a, l]): Span => [a, a + l]);
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 4000, noNaN: true }),
        fc.double({ min: 120, max: 500, noNaN: true }),
        fc.array(span, { maxLength: 40 }),
        (length, window, texts) => {
          const pages = pagesBetween([0, length], joints({ whole: [0, length], window, overlap: 16, texts }), 16);
          expect(pages[0]?.[0]).toBe(0);
          expect(pages.at(-1)?.[1]).toBe(length);
          pages.forEach(([from, to], i) => {
            expect(to - from).toBeLessThanOrEqual(window + 1e-6);
            const next = pages[i + 1];
            if (next) expect(to - next[0]).toBeCloseTo(16, 9);
          });
        },
      ),
      { seed: 20261124, numRuns: 300 },
    );
  });
});
