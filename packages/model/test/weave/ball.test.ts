import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { largestBall } from '../../src/weave/ball.ts';
import { sampleSlat } from '../../src/weave/bend.ts';
import { slatContact } from '../../src/weave/contact.ts';
import { weaveNames, weaveSides } from '../../src/weave/pattern.ts';
import { inch } from '../../src/wood/inchpound.ts';
import { plainSolid } from './beam.ts';
import { inInches, typical, typicalPlain } from './typical.ts';

const { modulus: _modulus, strength: _strength, ...sizes } = typicalPlain;
const plain = { ...sizes, slatHeight: 1.625 * inch };

// Gap; bound D = o(w/2 + D/2) by bisection; ball that really passes midway; crude bound √(g² + d²). in.
describe('largestBall() of plain weave', () => {
  test.each([
    [0, 0.612623, 0.612425, 0.625],
    [0.125, 0.624933, 0.624747, 0.637377],
    [0.25, 0.660505, 0.660319, 0.673146],
    [0.5, 0.787063, 0.786866, 0.800391],
    [1, 1.163969, 1.163783, 1.179248],
  ])('with a gap of %d in is %d in: over what passes, under the crude bound', (gap, bound, passes, crude) => {
    const ball = inInches(largestBall({ ...plain, gap: gap * inch }));
    expect(ball).toBeCloseTo(bound, 5);
    expect(ball).toBeGreaterThan(passes);
    expect(ball).toBeLessThan(crude);
  });

  test('counts the slack of the stack in full with the gap', () => {
    expect(largestBall({ ...plain, gap: 3, slack: 9 })).toBe(largestBall({ ...plain, gap: 12 }));
  });

  test('is never more than the bay', () => {
    expect(inInches(largestBall({ ...plain, gap: 0, slack: 1000 }))).toBeCloseTo(10.1875, 6);
  });
});

// Its middle level with the joint and half way between the facing edges, its side against the stave: it clears both
// edges everywhere along its own width.
test('a ball of 99.8 percent of largestBall() fits where its middle crosses the panel', () => {
  for (const gap of [0, 3, 12]) {
    const solid = plainSolid(gap);
    const radius = (0.998 * largestBall({ ...plain, gap })) / 2;
    const x = typicalPlain.staveWidth / 2 + radius;
    const top = { y: solid.height + gap, course: 1 };
    const bottom = { y: solid.height, course: 0 };
    const middle = (solid.line(0, x) + solid.line(1, x)) / 2;
    for (const { y, course } of [top, bottom])
      for (let along = -1; along <= 1; along += 0.01) {
        const edge = x + along * radius;
        const face = solid.line(course, edge) - Math.sign(solid.line(course, x) - middle) * (solid.thickness / 2);
        const away = Math.hypot(edge - x, y - (solid.height + gap / 2), face - middle);
        expect(away).toBeGreaterThan(radius);
      }
  }
});

test('largestBall() of every named weave is the largest that fits between facing edges and staves, by trying places', () => {
  for (const weave of weaveNames) {
    const { rows, rowOfCourse, repeat } = weaveSides({ weave, courses: 12, staves: 6 });
    const panel = { ...typical, clearWidth: 1408, staves: { ...typical.staves, count: 6 }, gap: 2, rows, rowOfCourse };
    const bends = rows.map((sides) => slatContact({ ...panel, sides }));
    const pitch = (1408 - typical.staves.width) / 5;
    let best = 0;
    for (let k = 0; k < repeat.courses; k++)
      for (let j = 0; j < 5; j++)
        for (let i = 0; i <= 4000; i++) {
          const from = j * pitch + typical.staves.width;
          const x = from + ((pitch - typical.staves.width) * i) / 4000;
          const z = [k, k + 1].map((course) => sampleSlat(bends[rowOfCourse[course] ?? 0] ?? { knots: [] }, x).z);
          const apart = Math.max(0, Math.abs((z[0] ?? 0) - (z[1] ?? 0)) - typical.slat.thickness);
          best = Math.max(best, Math.min(Math.hypot(2, apart), 2 * (x - from), 2 * ((j + 1) * pitch - x)));
        }
    expect(largestBall(panel)).toBeGreaterThanOrEqual(best - 1e-9);
    expect(largestBall(panel)).toBeLessThan(best + 0.2);
  }
});

test('largestBall() grows with the gap, and is the gap at least where a bay is wider', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...weaveNames),
      fc.double({ min: 0, max: 100, noNaN: true }),
      fc.double({ min: 0, max: 100, noNaN: true }),
      (weave, gap, more) => {
        const { rows, rowOfCourse } = weaveSides({ weave, courses: 12, staves: 6 });
        const panel = { ...typical, clearWidth: 1408, staves: { ...typical.staves, count: 6 }, rows, rowOfCourse };
        const ball = largestBall({ ...panel, gap });
        expect(ball).toBeGreaterThanOrEqual(gap - 1e-9);
        expect(largestBall({ ...panel, gap: gap + more })).toBeGreaterThanOrEqual(ball - 1e-9);
      },
    ),
    { seed: 20261124, numRuns: 40 },
  );
});

test('largestBall() with negative slack is refused', () => {
  expect(() => largestBall({ ...plain, gap: 0, slack: -1 })).toThrow('invalid slack: -1');
});
