import { type Panel, partsOf, sampleSlat, weaveReach } from '@wattlewright/model';
import { describe, expect, test } from 'vitest';
import { boxOf, pointsOf } from '../../src/ink.ts';
import type { Drawing, PathMark } from '../../src/mark.ts';
import { partOf } from '../../src/views/partof.ts';
import { sideElevation, sideExtent } from '../../src/views/side.ts';
import { panelsOf, screen } from './seen.ts';

const scale = { ratio: 0.2, text: '1:5' };

function paths({ marks }: Drawing, role: string, of?: string): PathMark[] {
  return marks.filter((mark): mark is PathMark => mark.kind === 'path' && mark.role === role && mark.of === of);
}

describe('sideElevation(panel)', () => {
  test('draws rails and stile as deep as they are, the front on the left', () => {
    const panel = screen('plain', { screen: { mounting: 'blocks', standoff: 40 } });
    const parts = partsOf(panel);
    const drawing = sideElevation(panel, { scale, parts });
    const [rail] = paths(drawing, 'wood', partOf(parts, panel, 'rail')?.letter).map(({ path }) =>
      boxOf(pointsOf(path)),
    );
    expect(rail).toMatchObject({ u0: -panel.rail.depth * 0.1, u1: panel.rail.depth * 0.1 });
    const blocks = paths(drawing, 'wood', partOf(parts, panel, 'stand-off block')?.letter);
    expect(blocks.length).toBeGreaterThan(0);
    for (const { path } of blocks) {
      const { u0, u1 } = boxOf(pointsOf(path));
      expect(u0).toBeCloseTo((panel.stile.depth / 2) * 0.2);
      expect(u1).toBeCloseTo((panel.stile.depth / 2 + 40) * 0.2);
    }
  });

  test('dashes the slats where their bend comes furthest to the front and to the back', () => {
    const panel = screen('plain', { rail: { height: 45, depth: 60 }, stile: { width: 45, depth: 60 } });
    const parts = partsOf(panel);
    const lines = paths(sideElevation(panel, { scale, parts }), 'hidden', partOf(parts, panel, 'slat')?.letter);
    const zs = panel.rows.flatMap(({ bend }) =>
      Array.from({ length: 2001 }, (_, i) => sampleSlat(bend, (panel.clear.width * i) / 2000).z),
    );
    const half = panel.courses.thickness / 2;
    const drawn = lines.map(({ path }) => -(pointsOf(path)[0] as readonly [number, number])[0] / 0.2);
    expect(Math.max(...drawn)).toBeCloseTo(Math.max(...zs) + half, 1);
    expect(Math.min(...drawn)).toBeCloseTo(Math.min(...zs) - half, 1);
  });

  test('leaves hidden lines out where they would run together on paper', () => {
    const drawing = sideElevation(screen('plain'), { scale: { ratio: 0.02, text: '1:50' } });
    expect(drawing.marks.filter(({ role }) => role === 'hidden')).toEqual([]);
  });

  test('states depth, height and, for a divider, its feet and the whole', () => {
    const divider = { stand: 'feet', feet: { length: 400, height: 60, width: 45 } };
    const [panel] = panelsOf([
      { name: 'D', use: 'divider', size: { width: 1200, height: 1600 }, wood: 'white oak', divider },
    ]) as [Panel];
    const drawing = sideElevation(panel, { scale });
    const words = drawing.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
    const { depth, height } = panel.outside;
    const sizes = [depth, height, 400, 60, height + 60].map((size) => String(Math.round(size)));
    expect(words).toEqual(expect.arrayContaining(['front', 'back', ...sizes]));
    expect(sideExtent(panel)).toEqual({ width: 400, height: height + 60 });
  });

  test.each([
    [1 / 128 - 0.002, false],
    [1 / 128 + 0.002, true],
  ])('slats that stand out %d in count as within the frame unless a size of 1/64 in can be printed', (out, isProud) => {
    const [panel] = panelsOf([{ name: 'S', use: 'screen', size: { width: 36, height: 36 }, wood: 'white oak' }], {
      unit: 'in',
    }) as [Panel];
    const depth = 2 * (weaveReach(panel).front - out * 25.4);
    const thin: Panel = { ...panel, outside: { ...panel.outside, depth } };
    const drawing = sideElevation(thin, { scale, parts: partsOf([panel]) });
    const words = drawing.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
    expect(words.filter((word) => word.endsWith('1⁄64')).length > 0).toBe(isProud);
  });
});
