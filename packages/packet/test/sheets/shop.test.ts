import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { pageFor } from '../../src/sheets/page.ts';
import { shopSheets } from '../../src/sheets/shop.ts';
import { settledOf } from './settled.ts';

/** The scales of the shop drawings of a job's first panel, by name. */
function scalesOf(text: string): Map<string, number> {
  const { job, panels, ...rest } = settledOf(text);
  const layouts = shopSheets({ ...rest, job: { ...job, runs: [] }, panels: panels.slice(0, 1) }, pageFor(job));
  return new Map(layouts.flatMap(({ drawings }) => drawings.map(({ name, scale }) => [name, scale] as const)));
}

const example = (name: string): string =>
  readFileSync(new URL(`../../../../examples/${name}.yaml`, import.meta.url), 'utf8');

describe('shopSheets', () => {
  test.each(['tern-hollow-window', 'larch-deck-guard', 'wash-house-gate', 'studio-divider'])(
    'the bay of %s stands larger than in the section',
    (name) => {
      const scales = scalesOf(example(name));
      expect(scales.get('weave-bay')).toBeGreaterThan(scales.get('weave-section') as number);
    },
  );

  test.each(['tern-hollow-window', 'larch-deck-guard', 'wash-house-gate', 'studio-divider'])(
    'the drawings of %s stay on the paper that its job names',
    (name) => {
      const settled = settledOf(example(name));
      const layouts = shopSheets(settled, pageFor(settled.job));
      expect(layouts.flatMap(({ outgrew }) => outgrew ?? [])).toEqual([]);
    },
  );

  test('a bay that would come out no larger than in the section is left out', () => {
    const panel = { name: 'P', size: { width: 1000, height: 700 }, stave: { count: 2 } };
    const scales = scalesOf(JSON.stringify({ job: 'Two staves', unit: 'mm', panels: [panel] }));
    expect(scales.get('weave-section')).toBeGreaterThan(0);
    expect(scales.has('weave-bay')).toBe(false);
  });
});
