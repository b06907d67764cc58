import { expect, test } from 'vitest';
import { standardScale } from '../../src/scale.ts';
import { braceMakers } from '../../src/views/detailbrace.ts';
import { example, isWithinBounds, measured, wordsOf } from './read.ts';

test('braceMakers draws both ends of the gate’s cable: clips above, the turnbuckle below, each as it measures', () => {
  const { panel, parts } = example('wash-house-gate');
  const [upper, lower] = braceMakers(panel, parts).map(({ make }) => make(standardScale(0.5, 'in')));
  expect(wordsOf(upper as NonNullable<typeof upper>)).toContain('two clips');
  expect(wordsOf(lower as NonNullable<typeof lower>)).toContain('Turnbuckle, its jaw pinned in the eye');
  for (const drawing of [upper, lower]) {
    if (!drawing) throw new Error('no drawing');
    expect(isWithinBounds(drawing)).toBe(true);
    const sizes = measured(drawing, 'in');
    expect(sizes.length).toBeGreaterThan(3);
    for (const { says, measures } of sizes)
      expect(Math.abs(says - measures)).toBeLessThan(panel.display.mark / 2 + 1e-6);
  }
  expect(braceMakers(example('larch-deck-guard').panel)).toEqual([]);
});
