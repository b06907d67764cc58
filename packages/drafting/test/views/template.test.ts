import { readFileSync } from 'node:fs';
import { type Panel, partsOf, readJob, screwSchedule, solve } from '@wattlewright/model';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arbitraryJob } from '../../../../test/support/jobs.ts';
import { pointsOf } from '../../src/ink.ts';
import { contains } from '../../src/layout/clearance.ts';
import { textBox } from '../../src/lettering.ts';
import type { Drawing } from '../../src/mark.ts';
import { cornerScrews } from '../../src/views/template.ts';
import { cornerTemplate } from '../../src/views/templatecorner.ts';
import { railEndTemplate } from '../../src/views/templaterail.ts';
import { stileEndTemplate } from '../../src/views/templatestile.ts';
import { faultsOf } from '../layout/faults.ts';

const EXAMPLES = ['tern-hollow-window', 'larch-deck-guard', 'wash-house-gate', 'studio-divider'];

const panelsOf = (text: string): Panel[] => solve(readJob(text));
const example = (name: string): Panel =>
  panelsOf(readFileSync(new URL(`../../../../examples/${name}.yaml`, import.meta.url), 'utf8'))[0] as Panel;

/** Centres of the crosses on a template: where a level tick and an upright one of equal length halve each other. */
function crosses({ marks }: Drawing): { u: number; v: number }[] {
  const ticks = marks.flatMap((mark) =>
    mark.kind === 'path' && mark.role === 'tick' && mark.path.length === 2 ? [pointsOf(mark.path)] : [],
  );
  const middles = (k: 0 | 1): { u: number; v: number }[] =>
    ticks.flatMap(([a, b]) =>
      a &&
      b &&
      Math.abs(a[k] - b[k]) < 1e-9 &&
      Math.abs(Math.abs(a[1 - k] as number) - Math.abs(b[1 - k] as number)) <= 8 + 1e-9 &&
      Math.hypot(a[0] - b[0], a[1] - b[1]) < 8 + 1e-9
        ? [{ u: (a[0] + b[0]) / 2, v: (a[1] + b[1]) / 2 }]
        : [],
    );
  const upright = middles(0);
  return middles(1).filter(({ u, v }) => upright.some((other) => Math.hypot(other.u - u, other.v - v) < 1e-9));
}

const near = (found: readonly { u: number; v: number }[], u: number, v: number): boolean =>
  found.some((one) => Math.hypot(one.u - u, one.v - v) < 1e-9);

/** Places of all straight ticks and edges that run up (`u` constant). */
const uprights = ({ marks }: Drawing): number[] =>
  marks.flatMap((mark) => {
    if (mark.kind !== 'path' || (mark.role !== 'tick' && mark.role !== 'edge') || mark.path.length !== 2) return [];
    const [a, b] = pointsOf(mark.path);
    return a && b && Math.abs(a[0] - b[0]) < 1e-9 ? [a[0]] : [];
  });

describe('railEndTemplate', () => {
  test.each(EXAMPLES)('railEndTemplate(%s) puts each screw of the schedule on the outer edge, true size', (name) => {
    const panel = example(name);
    const { rail } = panel;
    const places = screwSchedule(panel).find(({ joint }) => joint === 'rail to stile')?.places ?? [];
    const mine = places.filter(({ x, y }) => y === 0 && x < panel.outside.width / 2);
    expect(mine.length).toBeGreaterThan(0);
    const found = crosses(railEndTemplate(panel));
    // Folded round the rail, the outer edge begins under grooved edge and front face; its depth counts from the front.
    for (const { x, z } of mine) expect(near(found, x, rail.depth + rail.height + rail.depth / 2 - z)).toBe(true);
    expect(found).toHaveLength(mine.length);
  });

  test.each(EXAMPLES)(
    'railEndTemplate(%s) marks the stile’s inner face, and the groove as deep and wide as it is',
    (name) => {
      const panel = example(name);
      const { rail, clear, groove } = panel;
      const drawing = railEndTemplate(panel);
      expect(uprights(drawing).some((u) => Math.abs(u - clear.left) < 1e-9)).toBe(true);
      const levels = drawing.marks.flatMap((mark) =>
        mark.kind === 'path' && (mark.role === 'tick' || mark.role === 'hidden')
          ? pointsOf(mark.path).map(([, v]) => v)
          : [],
      );
      for (const v of [(rail.depth - groove.width) / 2, (rail.depth + groove.width) / 2, rail.depth + groove.depth])
        expect(levels.some((level) => Math.abs(level - v) < 1e-9)).toBe(true);
    },
  );
});

describe('stileEndTemplate', () => {
  test.each(EXAMPLES)(
    'stileEndTemplate(%s) meets the rail’s screws: its foot seen from below, the front downwards',
    (name) => {
      const panel = example(name);
      const { stile } = panel;
      const found = crosses(stileEndTemplate(panel));
      // From below with the front at the lower edge, x runs from right to left.
      for (const { along, z } of cornerScrews(panel))
        expect(near(found, stile.width - along, stile.depth / 2 + z)).toBe(true);
    },
  );
});

describe('cornerTemplate', () => {
  test.each(EXAMPLES)('cornerTemplate(%s) shows the lower edges of the courses where the panel has them', (name) => {
    const panel = example(name);
    const drawing = cornerTemplate(panel);
    const levels = drawing.marks.flatMap((mark) => {
      const [a, b] = mark.kind === 'path' && mark.role === 'tick' ? pointsOf(mark.path) : [];
      return a && b && Math.abs(a[1] - b[1]) < 1e-9 ? [-a[1]] : [];
    });
    expect(levels.length).toBeGreaterThan(0);
    expect(levels).toEqual(panel.courses.bottoms.slice(1, levels.length + 1));
  });
});

describe('all templates', () => {
  test('templates of arbitrary jobs carry no text on a text or a line, and none outside their bounds', () => {
    fc.assert(
      fc.property(arbitraryJob({ panels: 1 }), (data) => {
        for (const panel of panelsOf(JSON.stringify(data))) {
          const parts = partsOf([panel]);
          for (const view of [railEndTemplate, stileEndTemplate, cornerTemplate]) {
            const { marks, bounds, scale } = view(panel, { parts });
            expect(scale).toBe(1);
            expect(faultsOf(marks)).toEqual([]);
            for (const mark of marks)
              if (mark.kind === 'text') expect(contains(bounds, textBox(mark)), mark.text).toBe(true);
          }
        }
      }),
      { seed: 20261124, numRuns: 40 },
    );
  });
});
