import { describe, expect, test } from 'vitest';
import { overallOf } from '../../src/index.ts';
import { panelOf } from '../support.ts';

const size = { width: 40, height: 50 };

describe('overallOf', () => {
  test.each([
    // Inches: a frame of 40 × 50 × 1 1/2 and nothing else.
    [{}, [40, 50, 1.5], []],
    // A cap 1 high and 4 deep: 51 high, 4 deep.
    [{ use: 'guard', guard: { cap: { height: 1, depth: 4 } } }, [40, 51, 4], ['the cap rail']],
    // Feet 16 long and 2 1/2 high.
    [{ use: 'divider', divider: { feet: { length: 16, height: 2.5 } } }, [40, 52.5, 16], ['the feet']],
    // A strut 3/4 thick on the back.
    [{ use: 'gate', gate: { brace: { kind: 'strut' } } }, [40, 50, 2.25], ['the strut at the back']],
  ])('a panel with %j is %j in over all', (more, inches, by) => {
    const overall = overallOf(panelOf({ size, fit: { vary: 'gaps', to: 1 }, ...more }));
    const { width, height, depth } = overall;
    expect([width, height, depth].map((mm) => Math.round((mm / 25.4) * 1000) / 1000)).toEqual(inches);
    expect(overall.by).toEqual(by);
  });

  test('slats that stand out of the frame count', () => {
    const panel = panelOf({ size, weave: { rows: ['++-+--', '--+-++'] }, stave: { count: 6 } });
    const { depth, by } = overallOf(panel);
    const ends = panel.rows.flatMap(({ bend }) => bend.endOffsets);
    const out = Math.max(...ends) + panel.courses.thickness / 2;
    expect(by).toEqual(['slats that stand out of the frame']);
    expect(depth).toBeGreaterThan(panel.outside.depth / 2 + out - 1e-9);
  });
});
