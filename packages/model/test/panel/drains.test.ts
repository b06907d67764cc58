import { describe, expect, test } from 'vitest';
import { drainHoles } from '../../src/index.ts';
import { inches, panelOf } from '../support.ts';

describe('drainHoles', () => {
  const size = { width: '44 1/2', height: 52 };

  test('one half-way between every two staves, from the left end of the rail', () => {
    const panel = panelOf({ size, stave: { count: 5 } });
    const { diameter, places } = drainHoles(panel);
    expect(diameter).toBeCloseTo(inches(1 / 4), 9);
    expect(places).toHaveLength(4);
    places.forEach((x, i) => {
      const left = (panel.staves.lefts[i] as number) + panel.staves.width;
      expect(x - left).toBeCloseTo((panel.staves.lefts[i + 1] as number) - x, 9);
    });
    // Both ends alike: the holes lie the same way about the middle.
    expect((places[0] as number) + (places[3] as number)).toBeCloseTo(panel.outside.width, 9);
  });

  test('none indoors; 6 mm in metric work', () => {
    expect(drainHoles(panelOf({ size }, { site: { where: 'indoors' } })).places).toEqual([]);
    expect(drainHoles(panelOf({ size: { width: 1000, height: 1200 } }, { unit: 'mm' })).diameter).toBe(6);
  });
});
