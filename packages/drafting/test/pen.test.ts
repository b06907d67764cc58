import { describe, expect, test } from 'vitest';
import { stroke } from '../src/mark.ts';
import { line } from '../src/path.ts';
import { fillOf, layers, pen, roles, thick, thin } from '../src/pen.ts';

/** ISO 128-2:2020, the series of line widths, mm. */
const series = [0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1, 1.4, 2];

describe('pen', () => {
  test('thin to thick is 1 to 2 (ISO 128-2)', () => expect(thick / thin).toBe(2));
  test.each(roles)('pen(%s) draws at a width of the ISO 128-2 series, on a listed layer', (role) => {
    const { width, layer, stroke: grey, fill = 0 } = pen(role);
    expect([0, ...series]).toContain(width);
    expect(layers).toContain(layer);
    for (const shade of [grey, fill]) expect(shade >= 0 && shade <= 1).toBe(true);
  });
  test.each(['hidden', 'centre', 'cutting-plane', 'neighbour'] as const)('pen(%s) is dashed, gaps 3 widths', (role) => {
    expect(pen(role).dash[1]).toBeCloseTo(3 * thin, 12);
  });
  test('pen(edge) is twice as wide as a dimension line', () => {
    expect(pen('edge').width).toBe(2 * pen('dimension').width);
  });
  test('fillOf prefers the mark’s own shade', () => {
    const mark = stroke('wood', line([0, 0], [1, 1]));
    expect(fillOf(mark)).toBe(pen('wood').fill);
    expect(fillOf({ ...mark, shade: 0.3 })).toBe(0.3);
    expect(fillOf(stroke('edge', line([0, 0], [1, 1])))).toBeUndefined();
  });
});
