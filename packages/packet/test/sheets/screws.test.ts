import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { screwTable } from '../../src/sheets/screws.ts';
import { settledOf } from './settled.ts';

const guard = settledOf(readFileSync(new URL('../../../../examples/larch-deck-guard.yaml', import.meta.url), 'utf8'));

const textOf = (settled: typeof guard): string =>
  screwTable(settled, { width: 380, height: 250 })
    .flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])))
    .join(' ');

describe('screwTable', () => {
  test('rows that differ in places alone are one row, with the places bay by bay', () => {
    const text = textOf(guard);
    expect(text.match(/cap rail to/g)).toHaveLength(1);
    expect(text).toMatch(/from its left end: Bay 1, Bay 2: 36, 370/);
    expect(text).toMatch(/Bay 4: 36, 323/);
  });

  // A pilot of 2 mm is cut 24 deep by a common bit: 30 long wants a long one, as does 80.
  test('a pilot deeper than a common bit reaches is told with its depth; heads in wood are countersunk', () => {
    const panel = { name: 'Gate', use: 'gate', size: { width: 900, height: 1000 } };
    const text = textOf(settledOf({ job: 'Gate', unit: 'mm', panels: [panel] }));
    expect(text).toMatch(/deep: long bit/);
    expect(text).toMatch(/countersink/);
  });
});
