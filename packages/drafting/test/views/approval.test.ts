import { describe, expect, it } from 'vitest';
import { pointsOf } from '../../src/ink.ts';
import { TEXT } from '../../src/layout/style.ts';
import { textWidth } from '../../src/lettering.ts';
import { approval } from '../../src/views/approval.ts';

describe('approval', () => {
  it('keeps within a height', () => {
    const { bounds } = approval(70, { height: 42 });
    expect(bounds.v1 - bounds.v0).toBeLessThanOrEqual(42 + 1e-9);
    expect(bounds.v1 - bounds.v0).toBeGreaterThan(40);
  });

  it.each([
    [60, 0],
    [75, 0],
    [110, 0],
    [75, 2],
  ])('leaves room to sign on every rule %d mm wide, %d points open', (width, open) => {
    const { marks } = approval(width, { open });
    const rules = marks.flatMap((mark) => (mark.kind === 'path' ? [pointsOf(mark.path)] : []));
    const long = rules.map((points) => Math.max(...points.map(([u]) => u)) - Math.min(...points.map(([u]) => u)));
    expect(rules).toHaveLength(open > 0 ? 4 : 6);
    // A signature or a date after it.
    expect(long.filter((_, i) => i % 2 === 0).every((length) => length >= Math.min(45, width * 0.6))).toBe(true);
    for (const mark of marks) {
      if (mark.kind !== 'text') continue;
      const [u, v] = mark.at;
      const end = u + textWidth(mark.text, TEXT);
      for (const points of rules) {
        const [[from, at]] = points as [[number, number]];
        expect(Math.abs(at - v) > 1 || from > end || from + 1 < u).toBe(true);
      }
    }
  });
});
