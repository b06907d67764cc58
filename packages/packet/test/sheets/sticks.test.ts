import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { panelNames } from '../../src/sheets/names.ts';
import { stickDrawings, stickSheets } from '../../src/sheets/sticks.ts';
import { settledOf } from './settled.ts';

const example = (name: string): string =>
  readFileSync(new URL(`../../../../examples/${name}.yaml`, import.meta.url), 'utf8');

const bay = (name: string, width: number): object => ({ name, size: { width, height: 700 } });

describe('stickDrawings', () => {
  test('panels alike share all their sticks and templates, named after them all', () => {
    const settled = settledOf({ job: 'Alike', unit: 'mm', panels: [bay('Left', 900), bay('Right', 900)] });
    expect(stickDrawings(settled).map(({ title }) => title)).toEqual([
      'Stave stick: Left and Right',
      'Course stick: Left and Right',
      'Rail end template: Left and Right',
      'Stile end template: Left and Right',
      'Corner template: Left and Right',
    ]);
  });

  test('panels that differ in width alone share their course stick and templates', () => {
    const panels = [bay('Bay 1', 900), bay('Bay 2', 1100), bay('Bay 3', 900)];
    const titles = stickDrawings(settledOf({ job: 'Widths', unit: 'mm', panels })).map(({ title }) => title);
    expect(titles).toContain('Stave stick: Bay 1 and 3');
    expect(titles).toContain('Stave stick: Bay 2');
    expect(titles).toContain('Course stick: Bay 1, 2 and 3');
    expect(titles).toHaveLength(6);
  });

  test('no two drawings of larch-deck-guard are the same ink', () => {
    const drawings = stickDrawings(settledOf(example('larch-deck-guard')));
    const ink = drawings.map(({ marks }) =>
      JSON.stringify(marks.filter((mark) => mark.kind === 'path' || !/Bay/.test(mark.text))),
    );
    expect(new Set(ink).size).toBe(ink.length);
  });

  test('a divider on feet has a foot template', () => {
    expect(stickDrawings(settledOf(example('studio-divider'))).at(-1)?.title).toBe('Foot template: Divider');
  });
});

describe('stickSheets', () => {
  test('templates share pages of large paper', () => {
    const on = (sticks: string): number =>
      stickSheets(settledOf({ job: 'One', unit: 'mm', panels: [bay('A', 900)], paper: { sticks } })).length;
    expect(on('A3')).toBeLessThan(on('A4'));
    expect(on('roll 610')).toBeLessThanOrEqual(2);
  });
});

describe('panelNames', () => {
  test.each([
    [['Gate'], 'Gate'],
    [['Left', 'Middle', 'Right'], 'Left, Middle and Right'],
    [['Bay 1', 'Bay 2', 'Bay 4'], 'Bay 1, 2 and 4'],
    [['Bay 1', 'Bay 2', 'Bay 3', 'Bay 4', 'Bay 5'], 'Bay 1 to 5'],
    [['Bay 1', 'Side 2'], 'Bay 1 and Side 2'],
  ])('panelNames(%j) is %s', (names, text) => {
    expect(panelNames(names)).toBe(text);
  });
});
