import { readFileSync } from 'node:fs';
import { type Panel, partsOf, readJob, screwSchedule, solve } from '@wattlewright/model';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arbitraryJob } from '../../../../test/support/jobs.ts';
import { boxOf, pointsOf } from '../../src/ink.ts';
import { contains } from '../../src/layout/clearance.ts';
import { textBox } from '../../src/lettering.ts';
import type { Drawing } from '../../src/mark.ts';
import { proof } from '../../src/proofing/proof.ts';
import { tile } from '../../src/tiling/tile.ts';
import { cornerScrews } from '../../src/views/template.ts';
import { cornerTemplate } from '../../src/views/templatecorner.ts';
import { footTemplate } from '../../src/views/templatefoot.ts';
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

const wordsOf = ({ marks }: Drawing): string =>
  marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])).join(' ');

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
    expect(wordsOf(drawing)).toContain('Lines across');
  });

  test('cornerTemplate says nothing of lines of courses where it reaches none', () => {
    const panel = example('wash-house-gate');
    const bottoms = panel.courses.bottoms.slice(0, 1);
    expect(wordsOf(cornerTemplate({ ...panel, courses: { ...panel.courses, bottoms } }))).not.toContain('Lines across');
  });
});

describe('screws on templates', () => {
  test.each(EXAMPLES)('cornerTemplate(%s) draws the corner’s screws to their tips', (name) => {
    const panel = example(name);
    const row = screwSchedule(panel).find(({ joint }) => joint === 'rail to stile');
    const fastener = row?.fastener as Extract<NonNullable<typeof row>['fastener'], { kind: 'screw' }>;
    const tip = fastener.counterbore + fastener.length;
    const drawing = cornerTemplate(panel);
    const tips = drawing.marks.flatMap((mark) => {
      const last = mark.kind === 'path' && mark.role === 'hidden' ? pointsOf(mark.path).at(-1) : undefined;
      return last ? [last] : [];
    });
    // The one nearer the front in full, the other, which it would cover in part, by its centre line.
    const [front, ...behind] = cornerScrews(panel).toSorted((a, b) => b.z - a.z);
    const has = (along: number) => tips.some(([u, v]) => Math.hypot(u - along, v + tip) < 1e-9);
    expect(has(front?.along ?? Number.NaN)).toBe(true);
    for (const { along } of behind) {
      expect(has(along)).toBe(false);
      const centre = drawing.marks.some(
        (mark) => mark.kind === 'path' && mark.role === 'centre' && pointsOf(mark.path).every(([u]) => u === along),
      );
      expect(centre).toBe(true);
    }
    expect(wordsOf(drawing)).toContain('dash and dot: the screw nearer the back');
    expect(drawing.bounds.v0).toBeLessThan(-tip);
  });

  test('railEndTemplate(wash-house-gate) rings the plugs over the screws and says how to bore them', () => {
    const panel = example('wash-house-gate');
    const plug = screwSchedule(panel).find(({ joint }) => joint === 'rail to stile')?.plug;
    expect(plug).toBeDefined();
    const rings = railEndTemplate(panel).marks.filter(
      (mark) =>
        mark.kind === 'path' &&
        mark.role === 'hidden' &&
        Math.abs(boxOf(pointsOf(mark.path)).u1 - boxOf(pointsOf(mark.path)).u0 - (plug?.diameter ?? 0)) < 0.01,
    );
    expect(rings).toHaveLength(cornerScrews(panel).length);
    expect(wordsOf(railEndTemplate(panel))).toContain('3⁄8 in, 1 in deep');
  });

  test('footTemplate(studio-divider) has each foot screw of both ends, seen from below, and the corners’ own as rings', () => {
    const panel = example('studio-divider');
    const { rail, outside } = panel;
    const drawing = footTemplate(panel) as Drawing;
    const found = crosses(drawing);
    const places = screwSchedule(panel).find(({ joint }) => joint === 'foot to bottom rail')?.places ?? [];
    expect(found).toHaveLength(places.length);
    // The rail's right end lies at the left, x running from right to left, the front downwards.
    const leftEnd = Math.max(...uprights(drawing));
    for (const { x, z } of places) {
      const u = x < outside.width / 2 ? leftEnd - x : outside.width - x;
      expect(near(found, u, rail.depth / 2 + z)).toBe(true);
    }
    expect(drawing.marks.filter((mark) => mark.kind === 'path' && mark.role === 'hidden')).toHaveLength(4);
  });

  test.each(['tern-hollow-window', 'larch-deck-guard', 'wash-house-gate'])('footTemplate(%s) is undefined', (name) => {
    expect(footTemplate(example(name))).toBeUndefined();
  });
});

describe('templates on one page', () => {
  test.each(EXAMPLES)('templates of %s take one page each of A4 and of Letter', (name) => {
    const panel = example(name);
    for (const view of [railEndTemplate, stileEndTemplate, cornerTemplate, footTemplate])
      for (const paper of ['A4', 'Letter'] as const) {
        const drawing = view(panel);
        if (drawing) expect(tile(drawing, { paper })).toHaveLength(1);
      }
  });
});

describe('a template wider than a page', () => {
  test('its words stay within the first page', () => {
    const panel = panelsOf(
      JSON.stringify({
        job: 'Wide',
        unit: 'mm',
        panels: [{ name: 'Wide stiles', size: { width: 900, height: 1200 }, stile: { width: 150, depth: 32 } }],
      }),
    )[0] as Panel;
    const pages = tile(cornerTemplate(panel), { paper: 'A4' });
    expect(pages.length).toBeGreaterThan(1);
    expect(proof(pages)).toEqual([]);
  });
  test.each([84, 87, 90, 93])('a stile of %d mm: its words stay whole at the margins that a job has', (width) => {
    const panel = panelsOf(
      JSON.stringify({
        job: 'Tall',
        unit: 'mm',
        panels: [{ name: 'Tall', size: { width: 400, height: 2550 }, rail: { height: 33 }, stile: { width } }],
      }),
    )[0] as Panel;
    for (const paper of ['A4', 'Letter', 'Legal'] as const)
      expect(proof(tile(cornerTemplate(panel), { paper, margin: 12 }))).toEqual([]);
  });
});

describe('all templates', () => {
  test('templates of arbitrary jobs carry no text on a text or a line, and none outside their bounds', () => {
    fc.assert(
      fc.property(arbitraryJob({ panels: 1 }), (data) => {
        for (const panel of panelsOf(JSON.stringify(data))) {
          const parts = partsOf([panel]);
          for (const view of [railEndTemplate, stileEndTemplate, cornerTemplate, footTemplate]) {
            const drawing = view(panel, { parts });
            if (!drawing) continue;
            const { marks, bounds, scale } = drawing;
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
