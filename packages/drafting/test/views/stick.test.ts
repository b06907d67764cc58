import { readFileSync } from 'node:fs';
import {
  fineMarks,
  formatLength,
  type Panel,
  parseLength,
  partsOf,
  readJob,
  screwSchedule,
  solve,
} from '@wattlewright/model';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arbitraryJob } from '../../../../test/support/jobs.ts';
import { boxOf, pointsOf } from '../../src/ink.ts';
import { contains, overlaps } from '../../src/layout/clearance.ts';
import { textBox } from '../../src/lettering.ts';
import type { Drawing } from '../../src/mark.ts';
import { ticksFit } from '../../src/views/stick.ts';
import { courseStick } from '../../src/views/stickcourse.ts';
import { staveStick } from '../../src/views/stickstave.ts';
import { faultsOf } from '../layout/faults.ts';

const EXAMPLES = ['tern-hollow-window', 'larch-deck-guard', 'wash-house-gate', 'studio-divider'];

const panelsOf = (text: string): Panel[] => solve(readJob(text));
const example = (name: string): Panel =>
  panelsOf(readFileSync(new URL(`../../../../examples/${name}.yaml`, import.meta.url), 'utf8'))[0] as Panel;

/** A job of one plain panel, sizes in the unit. */
function onePanel(job: object, panel: object): Panel {
  return panelsOf(JSON.stringify({ job: 'Sticks', ...job, panels: [{ name: 'Panel', ...panel }] }))[0] as Panel;
}

/** Starts and ends of the straight ticks that run across the stick: their place along it and their two ends across. */
function ticksOf({ marks }: Drawing, along: 'u' | 'v'): { at: number; from: number; to: number }[] {
  const [s, t] = along === 'u' ? [1, 2] : [2, 1];
  return marks.flatMap((mark) => {
    if (mark.kind !== 'path' || mark.role !== 'tick' || mark.path.length !== 2) return [];
    const [a, b] = mark.path as unknown as [number[], number[]];
    return Math.abs((a[s] as number) - (b[s] as number)) < 1e-9
      ? [{ at: a[s] as number, from: a[t] as number, to: b[t] as number }]
      : [];
  });
}

const printed = ({ marks }: Drawing): string[] => marks.flatMap((m) => (m.kind === 'text' ? [m.text] : []));

describe('staveStick', () => {
  test.each(EXAMPLES)('staveStick(%s) ticks both faces of every stave at both edges, at least 10 mm long', (name) => {
    const panel = example(name);
    const ticks = ticksOf(staveStick(panel), 'u');
    const faces = panel.staves.lefts.flatMap((left) => [left, left + panel.staves.width]);
    for (const edge of [0, 70]) {
      const here = ticks.filter(({ from }) => from === edge);
      for (const face of faces) {
        const tick = here.find(({ at }) => Math.abs(at - face) < 1e-9);
        expect(tick, `face at ${face}`).toBeDefined();
        expect(Math.abs((tick?.to ?? 0) - edge)).toBeGreaterThanOrEqual(10);
      }
      expect(here).toHaveLength(faces.length);
    }
  });

  test.each(EXAMPLES)('staveStick(%s) prints each distance from the rail’s left end, rounded once', (name) => {
    const panel = example(name);
    const texts = printed(staveStick(panel));
    for (const left of panel.staves.lefts)
      for (const face of [left, left + panel.staves.width]) {
        const text = formatLength(face, panel.display, { fractions: 'stacked' });
        expect(texts).toContain(text);
        expect(Math.abs(parseLength(text.replace('⁄', '/'), panel.display.unit) - face)).toBeLessThanOrEqual(
          panel.display.mark / 2 + 1e-9,
        );
      }
  });

  test.each([
    ['front', ['front', 'behind', 'front', 'behind', 'front']],
    ['behind', ['behind', 'front', 'behind', 'front', 'behind']],
  ])('staveStick names the side of the first course at each stave, starting %s', (start, sides) => {
    const panel = onePanel(
      { unit: 'mm' },
      { size: { width: 1200, height: 900 }, stave: { count: 5 }, weave: { pattern: 'plain', start } },
    );
    expect(printed(staveStick(panel)).filter((text) => text === 'front' || text === 'behind')).toEqual(sides);
  });

  // Clear width 44 1/2 in, 5 staves of 3/4: pitch 10 15/16 lies half-way between eighths; in whole millimetres 277.8125
  // goes up to 278. Errors worked by hand: stepping adds (j - 1) times the pitch's own rounding; running marks do not.
  test.each([
    {
      unit: 'in',
      mark: '1/8',
      step: 11,
      stepped: [0, 1, 2, 3, 4].map((n) => n / 16),
      running: [0, 1, 0, 1, 0].map((n) => n / 16),
    },
    {
      unit: 'mm',
      mark: 1,
      step: 278,
      stepped: [0, 1, 2, 3, 4].map((n) => n * 0.1875),
      running: [0, 0.1875, 0.375, -0.4375, -0.25],
    },
  ])('a tape stepped off at $step $unit drifts; the marks of staveStick stay within half a mark', (row) => {
    const inch = row.unit === 'in';
    const panel = onePanel(
      { unit: row.unit, mark: row.mark },
      {
        size: { width: inch ? 47.5 : 1130.3 + 76, height: inch ? 52 : 1320 },
        stile: { width: inch ? 1.5 : 38, depth: inch ? 1.5 : 38 },
        stave: { width: inch ? 0.75 : 19.05, depth: inch ? 0.625 : 15.875, count: 5 },
      },
    );
    const unit = inch ? 25.4 : 1;
    const { lefts, pitch } = panel.staves;
    expect(pitch).toBeCloseTo(277.8125, 9);
    const texts = printed(staveStick(panel));
    lefts.forEach((left, j) => {
      const text = formatLength(left, panel.display, { fractions: 'stacked' });
      expect(texts).toContain(text);
      const running = parseLength(text.replace('⁄', '/'), panel.display.unit) - left;
      expect(running / unit).toBeCloseTo(row.running[j] as number, 9);
      const stepped = (lefts[0] as number) + j * row.step * unit - left;
      expect(stepped / unit).toBeCloseTo(row.stepped[j] as number, 9);
    });
  });

  test('staveStick leaves out distances where staves crowd, says so, and still ticks every face', () => {
    const panel = onePanel(
      { unit: 'mm' },
      { size: { width: 400, height: 500 }, stave: { width: 4, depth: 4, count: 28 }, slat: { thickness: 0.5 } },
    );
    const drawing = staveStick(panel);
    expect(printed(drawing).join(' ')).toMatch(/every face is marked/);
    expect(ticksOf(drawing, 'u').filter(({ from }) => from === 0)).toHaveLength(56);
    expect(faultsOf(drawing.marks)).toEqual([]);
  });
});

test('staveStick(tern-hollow-window) marks the drain holes of the bottom rail at its edge, half-way between the staves', () => {
  const panel = example('tern-hollow-window');
  const { lefts, width } = panel.staves;
  const drawing = staveStick(panel);
  const tips = drawing.marks.flatMap((mark) => {
    const [tip] = mark.kind === 'path' && mark.shade === 0 ? pointsOf(mark.path) : [];
    return tip && tip[1] === 0 ? [tip[0]] : [];
  });
  expect(tips).toHaveLength(lefts.length - 1);
  tips.forEach((u, j) => {
    const middle = ((lefts[j] as number) + width + (lefts[j + 1] as number)) / 2;
    expect(u).toBeCloseTo(middle, 9);
    expect(printed(drawing)).toContain(`drain ${formatLength(middle, panel.display, { fractions: 'stacked' })}`);
  });
});

describe('courseStick', () => {
  test.each(EXAMPLES)('courseStick(%s) ticks and figures the lower edge of every course from the foot', (name) => {
    const panel = example(name);
    const { courses, clear, display } = panel;
    const drawing = courseStick(panel);
    const ticks = ticksOf(drawing, 'v');
    const texts = printed(drawing);
    courses.bottoms.forEach((bottom, course) => {
      const y = bottom - clear.bottom;
      expect(texts).toContain(`${course + 1}`);
      if (course === 0) return;
      expect(texts).toContain(formatLength(y, display, { fractions: 'stacked' }));
      for (const edge of [0, drawing.bounds.u1]) {
        const tick = ticks.find(({ at, from }) => from === edge && Math.abs(at + y) < 1e-9);
        expect(Math.abs((tick?.to ?? edge) - edge)).toBeGreaterThanOrEqual(10);
      }
    });
    const show = (length: number): string => formatLength(length, display, { fractions: 'stacked' });
    const fine = (length: number): string => formatLength(length, fineMarks(display), { fractions: 'stacked' });
    expect(texts).toContain(`Top of stack ${fine(courses.stack)}`);
    expect(texts).toContain(`Stile top ${show(panel.stile.length)}`);
  });

  test('courseStick(wash-house-gate) marks hinges and latch at the edge of their own stile, screws at both, figured from the stile’s foot', () => {
    const panel = example('wash-house-gate');
    const drawing = courseStick(panel);
    const { u1 } = drawing.bounds;
    // The right edge is laid on the left stile.
    const textsAt = (edge: 'left' | 'right') =>
      drawing.marks.flatMap((mark) =>
        mark.kind === 'text' && (mark.anchor === 'end') === (edge === 'right') && /^[a-z]+ \d/.test(mark.text)
          ? [mark.text]
          : [],
      );
    // Hinges 7 in from both ends of a leaf 60 5/8 high on a rail of 2 1/2: 4 1/2, and 60 5/8 − 7 − 2 1/2 = 51 1/8.
    // The latch 40 over the ground, the leaf 2 1/2 over it: 40 − 2 1/2 − 2 1/2 = 35.
    expect(textsAt('right')).toEqual(expect.arrayContaining(['hinge 4 1⁄2', 'hinge 51 1⁄8']));
    expect(textsAt('left')).toContain('latch 35');
    expect(textsAt('left').join(' ')).not.toContain('hinge');
    expect(textsAt('right').join(' ')).not.toContain('latch');
    const screws = textsAt('right').filter((text) => /^screw \d/.test(text));
    expect(screws.length).toBeGreaterThan(2);
    expect(textsAt('left').filter((text) => /^screw \d/.test(text))).toEqual(screws);
    // At the edge itself a dashed line at the height: courses have whole ticks.
    const dashes = drawing.marks.flatMap((mark) =>
      mark.kind === 'path' && mark.role === 'hidden' ? [pointsOf(mark.path)] : [],
    );
    const at = (edge: number) => dashes.flatMap(([end]) => (end?.[0] === edge ? [end[1]] : []));
    expect(at(u1)).toHaveLength(screws.length + 2);
    expect(at(0)).toHaveLength(screws.length + 1);
    expect(at(0).some((v) => Math.abs(v + 35 * 25.4) < 1e-9)).toBe(true);
  });

  test('courseStick: marks a millimetre apart have triangles and words clear of each other, each led to its own height', () => {
    const stickOf = (latch: number) =>
      courseStick(onePanel({ unit: 'mm' }, { use: 'gate', size: { width: 900, height: 1500 }, gate: { latch } }));
    const heights = (drawing: Drawing, what: string) =>
      printed(drawing).flatMap((text) => (text.startsWith(`${what} `) ? [Number(text.split(' ')[1])] : []));
    const some = stickOf(900);
    const screw = heights(some, 'screw').toSorted((a, b) => a - b)[4] as number;
    const drawing = stickOf(900 + screw + 1 - (heights(some, 'latch')[0] as number));
    expect(heights(drawing, 'latch')).toEqual([screw + 1]);
    const triangles = drawing.marks.flatMap((mark) =>
      mark.kind === 'path' && mark.role === 'dimension' && mark.shade === 0 ? [boxOf(pointsOf(mark.path))] : [],
    );
    expect(triangles.length).toBeGreaterThan(6);
    triangles.forEach((one, i) => {
      for (const other of triangles.slice(i + 1)) expect(overlaps(one, other)).toBe(false);
    });
    expect(faultsOf(drawing.marks)).toEqual([]);
  });

  test.each(EXAMPLES)('courseStick(%s) sends brackets alone to the back', (name) => {
    const said = printed(courseStick(example(name)))
      .join(' ')
      .replaceAll(/\s+/g, ' ');
    expect(said.includes('carry them round to the back')).toBe(name === 'larch-deck-guard');
  });

  test.each(EXAMPLES)('courseStick(%s) speaks of hinges and latch on a gate alone', (name) => {
    const said = printed(courseStick(example(name))).join(' ');
    expect(/hinge|latch/.test(said)).toBe(name === 'wash-house-gate');
  });

  test.each(EXAMPLES)(
    'courseStick(%s) tells stile top, room and top of the stack in the order of their heights',
    (name) => {
      const texts = courseStick(example(name)).marks.flatMap((mark) => (mark.kind === 'text' ? [mark] : []));
      const base = (start: string): number => texts.find(({ text }) => text.startsWith(start))?.at[1] as number;
      expect(base('Stile top')).toBeLessThan(base('Room above'));
      expect(base('Room above')).toBeLessThan(base('Top of stack'));
    },
  );

  test('both sticks are named as the panels they serve', () => {
    const panel = example('larch-deck-guard');
    for (const stick of [staveStick(panel, { named: 'Bay 1 and 2' }), courseStick(panel, { named: 'Bay 1 and 2' })]) {
      expect(stick.title).toMatch(/: Bay 1 and 2$/);
      expect(printed(stick).some((text) => text.startsWith('Bay 1 and 2:'))).toBe(true);
    }
  });

  test.each(EXAMPLES)('courseStick(%s) says how much more its heights are from the foot of the frame', (name) => {
    const panel = example(name);
    const texts = printed(courseStick(panel));
    const show = (length: number): string => formatLength(length, panel.display, { fractions: 'stacked' });
    const said = /From the foot of the frame: (.+) more/.exec(texts.join(' '))?.[1] as string;
    const excess = parseLength(said, panel.display.unit);
    // Along a stile: both rails run through, the stile stands between them.
    expect(excess).toBeCloseTo((panel.outside.height - panel.stile.length) / 2, 6);
    // The same screws, as the schedule has them from the foot of the frame and as the stick has them from its own.
    const places = screwSchedule(panel).find(({ joint }) => joint === 'end stave to stile')?.places ?? [];
    expect(places.length).toBeGreaterThan(0);
    for (const { y } of places) expect(texts).toContain(`screw ${show(y - excess)}`);
  });

  test('courseStick follows the measured stack: 30 courses of a stack measured 6 mm lower', () => {
    const asked = { size: { width: 900, height: 1300 }, slat: { thickness: 5 } };
    const planned = onePanel({ unit: 'mm' }, asked);
    const stack = planned.courses.stack - 6;
    const built = onePanel({ unit: 'mm' }, { ...asked, measured: { stack, thickness: 4.8 } });
    const last = ticksOf(courseStick(built), 'v').map(({ at }) => -at);
    expect(Math.max(...last)).toBeCloseTo(stack, 9);
    const n = built.courses.count;
    expect(last.some((y) => Math.abs(y - (stack * (n - 1)) / n) < 1e-9)).toBe(true);
    expect(printed(courseStick(built)).join(' ')).toMatch(/From the measured slats/);
  });
});

describe('both sticks', () => {
  test('sticks of arbitrary jobs carry no text on a text or a line, and none outside their bounds', () => {
    fc.assert(
      fc.property(arbitraryJob({ panels: 1 }), (data) => {
        const panels = panelsOf(JSON.stringify(data));
        const parts = partsOf(panels);
        for (const panel of panels)
          for (const { marks, bounds } of [staveStick(panel, { parts }), courseStick(panel, { parts })]) {
            expect(faultsOf(marks)).toEqual([]);
            for (const mark of marks)
              if (mark.kind === 'text') expect(contains(bounds, textBox(mark)), mark.text).toBe(true);
          }
      }),
      { seed: 20261124, numRuns: 40 },
    );
  });

  test('each tick names its part', () => {
    const panel = example('tern-hollow-window');
    const parts = partsOf([panel]);
    const letter = (role: string): string => parts.find((part) => part.role === role)?.letter as string;
    const of = (drawing: Drawing): Set<string | undefined> =>
      new Set(drawing.marks.flatMap((mark) => (mark.role === 'tick' ? [mark.of] : [])));
    expect(of(staveStick(panel, { parts }))).toEqual(new Set([letter('rail'), letter('stile'), letter('stave')]));
    expect(of(courseStick(panel, { parts }))).toEqual(new Set([letter('stile'), letter('slat')]));
  });

  test.each([
    {
      texts: [
        [10, 1],
        [16, -1],
      ],
      height: 2.5,
      fits: false,
    },
    {
      texts: [
        [10, 1],
        [18.7, -1],
      ],
      height: 2.5,
      fits: true,
    },
    {
      texts: [
        [10, -1],
        [10.2, 1],
      ],
      height: 2.5,
      fits: false,
    },
  ] as const)('ticksFit($texts, $height) is $fits', ({ texts, height, fits }) => {
    expect(
      ticksFit(
        texts.map(([at, way]) => ({ at, way, text: '1' })),
        height,
      ),
    ).toBe(fits);
  });
});
