import { readFileSync } from 'node:fs';
import { type Panel, readJob, solve } from '@wattlewright/model';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arbitraryJob } from '../../../../test/support/jobs.ts';
import { pointsOf } from '../../src/ink.ts';
import { contains } from '../../src/layout/clearance.ts';
import { textBox } from '../../src/lettering.ts';
import type { Drawing, Mark, Point } from '../../src/mark.ts';
import { niceTicks, plot } from '../../src/views/plot.ts';
import { apart } from '../../src/views/plotnames.ts';
import { sightChart } from '../../src/views/sightchart.ts';
import { spacingChart } from '../../src/views/spacingchart.ts';
import { faultsOf } from '../layout/faults.ts';

const panelsOf = (text: string): Panel[] => solve(readJob(text));
const example = (name: string): Panel =>
  panelsOf(readFileSync(new URL(`../../../../examples/${name}.yaml`, import.meta.url), 'utf8'))[0] as Panel;

/** Faults other than names over the light grid, which a patch of paper hides. */
const faults = ({ marks }: Drawing): string[] => faultsOf(marks.filter((mark: Mark) => mark.role !== 'grid'));

describe('niceTicks', () => {
  test.each([
    [0, 0.43, 5, [0, 0.1, 0.2, 0.3, 0.4]],
    [0, 100, 5, [0, 20, 40, 60, 80, 100]],
    [3, 17, 6, [5, 10, 15]],
    [-1, 1, 4, [-1, -0.5, 0, 0.5, 1]],
  ])('niceTicks(%f, %f, %i) steps by 1, 2 or 5', (from, to, wanted, ticks) => {
    expect(niceTicks(from, to, wanted)).toEqual(ticks);
  });
});

describe('apart', () => {
  test.each([
    [[0, 10, 20], 4, [0, 10, 20]],
    [[5, 5], 4, [3, 7]],
    [[0, 1, 2, 30], 4, [-3, 1, 5, 30]],
  ])('apart(%j, %i) moves groups about their middle', (wishes, step, places) => {
    expect(apart(wishes, step)).toEqual(places);
  });
});

describe('plot', () => {
  const field = {
    name: 'p',
    title: 'P',
    alt: 'P',
    x: { label: 'x', from: 0, to: 10 },
    y: { label: 'y', from: 0, to: 5 },
  };

  test('plot draws a line through its points at the axes’ own scale', () => {
    const drawing = plot({
      ...field,
      series: [
        {
          label: 'half',
          points: [
            [0, 0],
            [10, 5],
          ],
        },
      ],
      width: 100,
      height: 50,
    });
    const [line] = drawing.marks.filter((mark) => mark.role === 'plot');
    expect(line?.kind === 'path' && pointsOf(line.path)).toEqual([
      [0, 50],
      [100, 0],
    ]);
  });

  test('plot sets the name of each curve on the curve itself, which leaves room for it', () => {
    const drawing = plot({
      ...field,
      series: [1, 2, 4].map((n) => ({
        label: `${n} mm`,
        points: Array.from({ length: 51 }, (_, i) => [i / 5, Math.min(5, (n * 2) / (i / 5 + 0.1))] as const),
      })),
      width: 120,
      height: 60,
    });
    const names = drawing.marks.flatMap((mark) => (mark.kind === 'text' && / mm$/.test(mark.text) ? [mark] : []));
    expect(names.map(({ text }) => text).toSorted()).toEqual(['1 mm', '2 mm', '4 mm']);
    for (const name of names) expect(textBox(name).u1).toBeLessThan(120);
    expect(faultsOf(drawing.marks)).toEqual([]);
  });

  test('plot cuts a curve where it leaves the field, on its own straight piece', () => {
    const drawing = plot({
      ...field,
      series: [
        {
          label: 'steep',
          points: [
            [0, 10],
            [10, 0],
          ],
        },
      ],
      width: 100,
      height: 50,
    });
    const [line] = drawing.marks.filter((mark) => mark.role === 'plot');
    expect(line?.kind === 'path' && pointsOf(line.path)).toEqual([
      [50, 0],
      [100, 50],
    ]);
  });
});

describe('sightChart and spacingChart', () => {
  test('sightChart says in plain words what its curve shows: closed from level, the figure at 30°', () => {
    const { alt, marks } = sightChart(example('tern-hollow-window'));
    expect(alt).toMatch(/Level view: closed/i);
    const words = marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])).join(' ');
    expect(words).toMatch(/window one floor up: \d+ % open/);
  });

  test('spacingChart puts this panel where its pitch and its worst slat say', () => {
    const panel = example('tern-hollow-window');
    const drawing = spacingChart(panel, { width: 120, height: 60 });
    const { staves, rows } = panel;
    const use = Math.max(...rows.map(({ bend }) => bend.use));
    // The curve leaves room for its name.
    const curve = drawing.marks
      .filter((m) => m.kind === 'path' && m.role === 'accent' && m.shade === undefined)
      .flatMap((m) => (m.kind === 'path' ? [pointsOf(m.path)] : []))
      .find((piece) => (piece[0] as Point)[0] < 40 && (piece.at(-1) as Point)[0] > 40) as Point[];
    const ring = drawing.marks.find((m) => m.kind === 'path' && m.role === 'accent' && m.shade === 1);
    const at = (mark: Mark | undefined): Point[] => (mark?.kind === 'path' ? pointsOf(mark.path) : []);
    const middle = (k: 0 | 1): number =>
      (Math.min(...at(ring).map((p) => p[k])) + Math.max(...at(ring).map((p) => p[k]))) / 2;
    // The axis runs from half the pitch to twice the pitch, so the panel itself stands at a third of it.
    expect(staves.pitch / 2).toBeGreaterThan(1.5 * staves.width);
    expect(middle(0)).toBeCloseTo(120 / 3, 6);
    expect(middle(1)).toBeCloseTo(60 * (1 - use / 1.2), 6);
    // This thickness's curve passes through the point: the chord between its neighbours lies within a tenth of it.
    const after = curve.findIndex(([u]) => u > 40);
    const [a, b] = [curve[after - 1] as Point, curve[after] as Point];
    expect(a[1] + ((40 - a[0]) / (b[0] - a[0])) * (b[1] - a[1])).toBeCloseTo(middle(1), 0);
  });

  test('charts of arbitrary jobs carry no text on a text or a curve, and none outside their bounds', () => {
    fc.assert(
      fc.property(arbitraryJob({ panels: 1 }), (data) => {
        for (const panel of panelsOf(JSON.stringify(data)))
          for (const drawing of [sightChart(panel), spacingChart(panel)]) {
            expect(faults(drawing)).toEqual([]);
            for (const mark of drawing.marks)
              if (mark.kind === 'text') expect(contains(drawing.bounds, textBox(mark)), mark.text).toBe(true);
          }
      }),
      { seed: 20261124, numRuns: 10 },
    );
  });
});
