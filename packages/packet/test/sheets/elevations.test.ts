import type { Drawing } from '@wattlewright/drafting';
import { describe, expect, test } from 'vitest';
import { elevationLayouts } from '../../src/sheets/elevations.ts';
import { grouped, makeOf } from '../../src/sheets/makes.ts';
import { pageFor } from '../../src/sheets/page.ts';
import { runOf, settledOf } from './settled.ts';

/** The drawings of the sheets of a job's elevations, sheet by sheet, for each make of panel. */
function sheetsOf(job: object): (readonly Drawing[])[][] {
  const settled = settledOf(job);
  return grouped(settled.panels, makeOf).map((alike) =>
    elevationLayouts(alike, settled, { on: pageFor(settled.job) }).map(({ drawings }) => drawings),
  );
}

describe('elevationLayouts', () => {
  test('the end view stands level beside the front elevation where there is room, at its scale', () => {
    const size = { width: 1400, height: 900 };
    const [sheets] = sheetsOf({ job: 'S', unit: 'mm', panels: [{ name: 'S', size }], paper: { sheets: 'A3' } });
    const sheet = sheets?.find((drawings) => drawings.some(({ name }) => name === 'side')) ?? [];
    const [front, side] = ['elevation', 'side'].map((of) => sheet.find(({ name }) => name === of)) as [
      Drawing,
      Drawing,
    ];
    expect(side.scale).toBe(front.scale);
    expect(side.bounds.v0).toBeCloseTo(front.bounds.v0, 6);
    expect(side.bounds.u0).toBeGreaterThan(front.bounds.u1);
  });

  test('a light of 300 mm is drawn at 1:5 on A4, front and back', () => {
    const panels = [{ name: 'L', use: 'gate', size: { width: 300, height: 300 } }];
    const drawings = sheetsOf({ job: 'L', unit: 'mm', panels, paper: { sheets: 'A4' } }).flat(2);
    expect(drawings.filter(({ name }) => name === 'elevation' || name === 'back').map(({ scale }) => scale)).toEqual([
      0.2, 0.2,
    ]);
  });

  test('panels of one make share one elevation under both names', () => {
    const makes = sheetsOf(runOf(2, 'A3'));
    expect(makes).toHaveLength(1);
    const titles = makes.flat(2).map(({ title }) => title);
    expect(titles).toContain('B1 and B2, front elevation');
  });
});
