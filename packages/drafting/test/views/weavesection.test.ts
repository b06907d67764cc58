import { type Panel, partsOf, readJob, sampleSlat, solve } from '@wattlewright/model';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arbitraryJob } from '../../../../test/support/jobs.ts';
import type { Point } from '../../src/mark.ts';
import { scalesOf, standardScale } from '../../src/scale.ts';
import { cutPlanes } from '../../src/views/detailkey.ts';
import { partOf } from '../../src/views/partof.ts';
import { bayStretch, weaveBay, weaveSection } from '../../src/views/weavesection.ts';
import { example, examples, inkOf, isWithinBounds, measured, onPath, plain, textsOf, wordsOf } from './read.ts';

const rowCut = (panel: Panel): Panel['rows'][number] =>
  panel.rows[panel.weave.rowOfCourse[cutPlanes(panel).down.course] as number] as Panel['rows'][number];

/** Distance from a place in the plan to the slat's centre line: the nearest of many samples, then halved steps. */
function toCentre(panel: Panel, [x, z]: Point): number {
  const { bend } = rowCut(panel);
  const off = (at: number): number => Math.hypot(at - x, sampleSlat(bend, at).z - z);
  let best = x;
  for (let step = 4; step > 1e-6; step /= 2)
    for (let turn = 0; turn < 8; turn++)
      for (const next of [best - step, best + step]) if (off(next) < off(best)) best = next;
  return off(best);
}

/** The outline of the cut slat, as places of the plan from the left stile's inner face. */
function slatPlaces(name: (typeof examples)[number]): { panel: Panel; places: Point[] } {
  const { panel, parts } = example(name);
  const scale = standardScale(1, panel.display.unit);
  const of = (partOf(parts, panel, 'slat', rowCut(panel).cutLength) ?? partOf(parts, panel, 'slat'))?.letter;
  const outline = inkOf(weaveSection(panel, { scale, parts }), of, 'edge')[0];
  if (!outline) throw new Error('no slat drawn');
  return { panel, places: onPath(outline).map(([u, v]): Point => [u - panel.clear.left, v]) };
}

describe('weaveSection draws the slat that bending makes', () => {
  test.each(examples)('%s: every point of both faces is half a slat from the centre line of sampleSlat', (name) => {
    const { panel, places } = slatPlaces(name);
    expect(places.length).toBeGreaterThan(50);
    for (const place of places) expect(toCentre(panel, place)).toBeCloseTo(panel.courses.thickness / 2, 3);
  });
  test.each(examples)('%s: the slat is as long as its cut length and neither end is in a stile', (name) => {
    const { panel, places } = slatPlaces(name);
    const xs = places.map(([x]) => x);
    const [low, high] = [Math.min(...xs), Math.max(...xs)];
    expect(low).toBeGreaterThan(-1e-6);
    expect(high).toBeLessThan(panel.clear.width + 1e-6);
    // Corner to corner: the centre line's ends stand off by half the thickness times the slope (small slopes).
    const { bend, cutLength } = rowCut(panel);
    const half = panel.courses.thickness / 2;
    const inset = bend.endSlopes.map((slope) => half * Math.abs(Math.sin(Math.atan(slope))));
    const [from, to] = [low + (inset[0] as number), high - (inset[1] as number)];
    let length = 0;
    for (let k = 0; k < 4000; k++) {
      const dx = (to - from) / 4000;
      length += dx * (1 + sampleSlat(bend, from + (k + 0.5) * dx).slope ** 2 / 2);
    }
    expect(Math.abs(length - cutLength)).toBeLessThan(0.05);
  });
  test.each(examples)('%s: it bears on an arris of each stave that bending says it touches', (name) => {
    const { panel } = example(name);
    const { bend, sides } = rowCut(panel);
    for (const stave of bend.touched) {
      const left = (panel.staves.lefts[stave - 1] as number) - panel.clear.left;
      const z = ((sides[stave - 1] as number) * panel.staves.depth) / 2;
      const gaps = [left, left + panel.staves.width].map((x) => toCentre(panel, [x, z]) - panel.courses.thickness / 2);
      expect(Math.min(...gaps.map(Math.abs))).toBeLessThan(0.03 * panel.courses.thickness);
    }
  });
});

describe('weaveSection and weaveBay tell the grain', () => {
  test.each(examples)('%s: staves and stiles are end grain, the slat is long grain', (name) => {
    const { panel, parts } = example(name);
    const drawing = weaveBay(panel, { scale: standardScale(1, panel.display.unit), parts });
    for (const role of ['stave', 'stile'] as const) {
      const of = partOf(parts, panel, role)?.letter;
      expect(inkOf(drawing, of, 'hatch').length).toBeGreaterThan(0);
      expect(inkOf(drawing, of, 'hatch-long')).toEqual([]);
    }
    const slat = (partOf(parts, panel, 'slat', rowCut(panel).cutLength) ?? partOf(parts, panel, 'slat'))?.letter;
    expect(inkOf(drawing, slat, 'hatch-long').length).toBeGreaterThan(0);
    expect(inkOf(drawing, slat, 'hatch')).toEqual([]);
  });
  test('weaveSection of a face too thin for lines shades it, and of a slat too thin for two edges draws one', () => {
    const { panel, parts } = example('larch-deck-guard');
    const drawing = weaveSection(panel, { scale: standardScale(0.1, 'mm'), parts });
    const slat = partOf(parts, panel, 'slat', rowCut(panel).cutLength)?.letter;
    expect(inkOf(drawing, slat, 'hatch', 'hatch-long')).toEqual([]);
    // 0.45 mm on paper: one wide line, and a narrow one for the course beneath.
    expect(inkOf(drawing, slat, 'edge')).toHaveLength(1);
    const larger = weaveSection(panel, { scale: standardScale(0.2, 'mm'), parts });
    expect(inkOf(larger, slat, 'hatch', 'hatch-long')).toEqual([]);
    expect(inkOf(larger, slat, 'wood-shade')).toHaveLength(1);
  });
});

describe('what weaveSection and weaveBay state is what they draw', () => {
  const rows = examples.flatMap((name) => [0, 1, 2].map((k) => [name, k] as const));
  test.each(rows)('%s, scale %#: every printed size measures itself', (name, k) => {
    const { panel, parts } = example(name);
    const { unit, mark } = panel.display;
    const scale = scalesOf(unit)[k + 2] as ReturnType<typeof standardScale>;
    for (const drawing of [weaveSection(panel, { scale, parts }), weaveBay(panel, { scale, parts })]) {
      const sizes = measured(drawing, unit);
      expect(sizes.length).toBeGreaterThan(3);
      for (const { says, measures } of sizes) expect(Math.abs(says - measures)).toBeLessThan(mark / 2 + 1e-6);
      expect(isWithinBounds(drawing)).toBe(true);
    }
  });
  test('weaveSection of the window: clear width 44 1/2 − 2 × 1 1/2 = 41 1/2, pitch (41 1/2 − 3/4) / 4 = 10 3/16', () => {
    const { panel, parts } = example('tern-hollow-window');
    const texts = measured(weaveSection(panel, { scale: standardScale(0.125, 'in'), parts }), 'in').map(
      ({ says }) => Math.round((says / 25.4) * 1e6) / 1e6,
    );
    expect(texts.toSorted((a, b) => a - b)).toEqual([1.5, 1.5, 10.1875, 41.5, 44.5]);
  });
  test('weaveBay says the radius, the share of strength, the length to cut and the room left at each end', () => {
    const { panel, parts } = example('tern-hollow-window');
    const words = wordsOf(weaveBay(panel, { scale: standardScale(0.25, 'in'), parts }));
    const { bend } = rowCut(panel);
    expect(words).toContain(`${Math.round(bend.use * 100)} %`);
    expect(words).toContain('radius');
    expect(words).toContain('short at each end');
    expect(words).toMatch(/Cut 41 \S+ in long/);
  });
  test('weaveBay of a bend too slight for the tape says that the clear width will do', () => {
    const { panel, parts } = plain({
      size: { width: 1500, height: 400 },
      stave: { depth: 6, count: 3 },
      slat: { thickness: 2 },
    });
    expect(rowCut(panel).cutLength - panel.clear.width).toBeLessThan(0.5);
    expect(wordsOf(weaveBay(panel, { scale: standardScale(0.2, 'mm'), parts }))).toContain('the clear width will do');
  });
  test('weaveBay of a slat that nothing bends says that it is loose', () => {
    const { panel, parts } = plain({ size: { width: 600, height: 600 }, weave: { rows: ['+'] } });
    const words = wordsOf(weaveBay(panel, { scale: standardScale(0.5, 'mm'), parts }));
    expect(words).toContain('loose');
  });
});

test('weaveSection keeps its text heights at any scale', () => {
  const { panel, parts } = example('studio-divider');
  const heights = scalesOf('mm').map(
    (scale) => new Set(textsOf(weaveSection(panel, { scale, parts })).map(({ height }) => height)),
  );
  for (const one of heights) expect([...one].toSorted()).toEqual([2.5, 3.5, 5]);
});

test('bayStretch starts a stave’s width inside the stile and ends past the second stave, or is the whole of two staves', () => {
  const { panel } = plain({ size: { width: 700, height: 400 }, stave: { count: 4 } });
  const { clear, staves } = panel;
  expect(bayStretch(panel)).toEqual([
    expect.closeTo(clear.left - staves.width, 9),
    expect.closeTo((staves.lefts[1] as number) + 2.25 * staves.width, 9),
  ]);
  const two = plain({ size: { width: 400, height: 400 }, stave: { count: 2 } });
  expect(bayStretch(two.panel)).toEqual([0, 400]);
});

test('weaveBay breaks the stile off at a break line and inks no edge there', () => {
  const { panel, parts } = example('wash-house-gate');
  const drawing = weaveBay(panel, { scale: standardScale(0.5, 'in'), parts });
  const [stile] = inkOf(drawing, partOf(parts, panel, 'stile')?.letter, 'edge');
  const [from] = bayStretch(panel);
  expect(stile?.path.some(([step]) => step === 'Z')).toBe(false);
  const us = onPath(stile as NonNullable<typeof stile>).map(([u]) => u);
  expect(us).toEqual([from, panel.clear.left, panel.clear.left, from].map((x) => expect.closeTo(x / 2, 9)));
});

test('weaveSection and weaveBay draw any panel within their bounds, each size as it measures', () => {
  fc.assert(
    fc.property(arbitraryJob({ panels: 1 }), fc.nat(5), (file, k) => {
      const job = readJob(JSON.stringify(file));
      const panel = solve(job)[0] as Panel;
      const parts = partsOf(panel, { spare: job.spare });
      const scale = scalesOf(panel.display.unit)[k + 2] as ReturnType<typeof standardScale>;
      for (const drawing of [weaveSection(panel, { scale, parts }), weaveBay(panel, { scale, parts })]) {
        expect(isWithinBounds(drawing)).toBe(true);
        for (const { says, measures } of measured(drawing, panel.display.unit))
          expect(Math.abs(says - measures)).toBeLessThan(panel.display.mark / 2 + 1e-6);
      }
    }),
    { seed: 20261124, numRuns: 60 },
  );
});
