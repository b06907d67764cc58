import { readFileSync } from 'node:fs';
import { readJob, solve } from '@wattlewright/model';
import { expect, test } from 'vitest';
import { insideOf, planOf } from '../../src/sheets/inside.ts';

const file = (name: string): string =>
  readFileSync(new URL(`../../../../examples/${name}.yaml`, import.meta.url), 'utf8');

test('insideOf and planOf: the bays of the guard have one inside; the two of one width one plan too', () => {
  const panels = solve(readJob(file('larch-deck-guard')));
  expect(new Set(panels.map(insideOf)).size).toBe(1);
  expect(new Set(panels.map(planOf)).size).toBe(3);
});

test('insideOf tells a panel of another height or section apart', () => {
  const of = (more: object): string => {
    const panel = { name: 'P', size: { width: 600, height: 600 }, slat: { thickness: 5, height: 40 }, ...more };
    return solve(readJob(JSON.stringify({ job: 'J', unit: 'mm', panels: [panel] })))
      .map(insideOf)
      .join();
  };
  const plain = of({});
  expect(of({ size: { width: 600, height: 700 } }) === plain).toBe(false);
  expect(of({ rail: { height: 60 } }) === plain).toBe(false);
  expect(of({}) === plain).toBe(true);
});
