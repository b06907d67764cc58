import { describe, expect, test } from 'vitest';
import { pointsOf } from '../../src/ink.ts';
import { crossesBox } from '../../src/layout/clearance.ts';
import { textBox } from '../../src/lettering.ts';
import { type Mark, stroke, write } from '../../src/mark.ts';
import { line } from '../../src/path.ts';
import { standardScale } from '../../src/scale.ts';
import { detail } from '../../src/views/detail.ts';
import { firstFree } from '../../src/views/freeink.ts';
import { weaveBay } from '../../src/views/weavesection.ts';
import { example } from './read.ts';

const EXAMPLES = ['wash-house-gate', 'tern-hollow-window', 'larch-deck-guard', 'studio-divider'] as const;

/** Words for front and back that a line of the drawing runs through. */
function struck(marks: readonly Mark[]): string[] {
  const lines = marks.flatMap((mark) => (mark.kind === 'path' ? [pointsOf(mark.path)] : []));
  return marks.flatMap((mark) => {
    if (mark.kind !== 'text' || mark.role !== 'faint' || !/^(front|back)$/.test(mark.text)) return [];
    const box = textBox(mark);
    const hit = lines.some((points) => points.some((p, i) => i > 0 && crossesBox([points[i - 1] ?? p, p], box)));
    return hit ? [mark.text] : [];
  });
}

describe('firstFree', () => {
  const word = (u: number) => [write('faint', 'back', [u, 0], { height: 2.5 })];

  test('firstFree takes the first place that no line crosses, and the first of all where none is free', () => {
    const across = stroke('dimension', line([-5, -1], [8, -1]));
    expect(firstFree([word(0), word(20)], [across])).toEqual(word(20));
    const long = stroke('dimension', line([-5, -1], [80, -1]));
    expect(firstFree([word(0), word(20)], [long])).toEqual(word(0));
  });

  test.each(EXAMPLES)('details and first bay of %s: no line runs through the words for front and back', (name) => {
    const { panel, parts } = example(name);
    for (const ratio of [1, 0.5]) {
      const scale = standardScale(ratio, 'mm');
      for (const subject of ['stave foot', 'stave head', 'slat end'] as const)
        expect([subject, ratio, ...struck(detail(panel, subject, { scale, parts }).marks)]).toEqual([subject, ratio]);
      expect(['bay', ratio, ...struck(weaveBay(panel, { scale, parts }).marks)]).toEqual(['bay', ratio]);
    }
  });
});
