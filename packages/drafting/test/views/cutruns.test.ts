import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { textBox } from '../../src/lettering.ts';
import { namedRuns, type Run } from '../../src/views/cutruns.ts';

const arbitraryRuns = fc
  .array(
    fc.record({
      gap: fc.double({ min: 0, max: 6, noNaN: true }),
      width: fc.double({ min: 0.3, max: 5, noNaN: true }),
      n: fc.nat(200),
    }),
    {
      minLength: 1,
      maxLength: 14,
    },
  )
  .map((list) => {
    let u = 0;
    return list.map(({ gap, width, n }): Run => {
      const run = { u0: u + gap, u1: u + gap + width, text: `rip at ${n}` };
      u = run.u1;
      return run;
    });
  });

describe('namedRuns', () => {
  test('names every stretch once, however close they stand, and no name lies on another', () => {
    fc.assert(
      fc.property(arbitraryRuns, fc.boolean(), (runs, up) => {
        const { marks } = namedRuns(runs, 0, [-12, (runs.at(-1)?.u1 ?? 0) + 12], { up });
        const texts = marks.flatMap((mark) => (mark.kind === 'text' ? [mark] : []));
        expect(texts.map(({ text }) => text).sort()).toEqual(runs.map(({ text }) => text).sort());
        const boxes = texts.map(textBox);
        boxes.forEach((a, i) => {
          for (const b of boxes.slice(i + 1))
            expect(a.u0 < b.u1 && b.u0 < a.u1 && a.v0 < b.v1 && b.v0 < a.v1, `${a.u0} ${b.u0}`).toBe(false);
        });
      }),
      { seed: 20261126, numRuns: 300 },
    );
  });

  test('ends where leaders stand too close to pass a name on any line', () => {
    const runs = Array.from({ length: 9 }, (_, i): Run => ({ u0: i * 0.8, u1: i * 0.8 + 0.5, text: `rip at ${i}` }));
    expect(namedRuns(runs, 0, [-2, 10]).marks.filter(({ kind }) => kind === 'text')).toHaveLength(9);
  });
});
