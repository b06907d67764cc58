import { type Panel, partsOf, readJob, screwSchedule, solve, VIEW_LETTERS } from '@wattlewright/model';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arbitraryJob } from '../../../../test/support/jobs.ts';
import { boxOf } from '../../src/ink.ts';
import { overlaps } from '../../src/layout/clearance.ts';
import { textBox } from '../../src/lettering.ts';
import { type Mark, stroke, type TextMark } from '../../src/mark.ts';
import { line } from '../../src/path.ts';
import { type Scale, scalesOf, standardScale } from '../../src/scale.ts';
import { detail, detailExtent, detailMakers } from '../../src/views/detail.ts';
import { freeCircle } from '../../src/views/detailcircle.ts';
import { cutPlanes, type DetailSubject, detailLetters } from '../../src/views/detailkey.ts';
import { cornerPlaces, screwReach, screwSide, screwsOf } from '../../src/views/detailscrew.ts';
import { partOf } from '../../src/views/partof.ts';
import { verticalSection } from '../../src/views/verticalsection.ts';
import { weaveSection } from '../../src/views/weavesection.ts';
import {
  example,
  examples,
  inkOf,
  isWithinBounds,
  measured,
  onPath,
  plain,
  type Solved,
  textsOf,
  wordsOf,
} from './read.ts';

const subjects: readonly DetailSubject[] = ['stave head', 'stave foot', 'corner', 'slat end', 'fixing'];
const full = (panel: Panel): Scale => standardScale(1, panel.display.unit);

describe('cutPlanes', () => {
  test.each(examples)('cutPlanes of %s cuts the middle of a course and the middle of a stave', (name) => {
    const { panel } = example(name);
    const { down, across } = cutPlanes(panel);
    expect(down.y).toBeCloseTo((panel.courses.bottoms[down.course] as number) + panel.courses.height / 2, 9);
    expect(across.x).toBeCloseTo((panel.staves.lefts[across.stave] as number) + panel.staves.width / 2, 9);
  });
});

describe('detailLetters', () => {
  test.each(examples)('detailLetters of %s: one letter for each subject, none of them a cut letter', (name) => {
    const { panel, parts } = example(name);
    const letters = detailLetters(panel).map(({ letter }) => letter);
    expect(letters).toEqual(['V', 'W', 'X', 'Y', 'Z']);
    const { down, across } = cutPlanes(panel);
    const all = [...letters, down.letter, across.letter, ...new Set(parts.map(({ letter }) => letter))];
    expect(new Set(all).size).toBe(all.length);
    for (const { at, radius } of detailLetters(panel)) {
      expect(at.x).toBeGreaterThanOrEqual(0);
      expect(at.x).toBeLessThanOrEqual(panel.outside.width);
      expect(radius).toBeGreaterThan(0);
    }
  });
  test('no section, detail or balloon of a job of many parts shares a letter', () => {
    const panels = [3, 4, 5, 6, 7, 8, 9].map((n) => ({ name: `P${n}`, size: { width: 150 * n, height: 160 * n } }));
    const made = solve(readJob(JSON.stringify({ job: 'Many', unit: 'mm', panels })));
    const parts = partsOf(made);
    expect(parts.length).toBeGreaterThan(24);
    const letters = new Set(parts.map(({ letter }) => letter));
    for (const panel of made) {
      const { down, across } = cutPlanes(panel);
      const views = [down, across, ...detailLetters(panel)].map(({ letter }) => letter);
      expect(views).toEqual(VIEW_LETTERS);
      for (const letter of views) expect(letters.has(letter)).toBe(false);
    }
  });
  test.each(examples)('the sections of %s carry the letters of the details that detailLetters puts there', (name) => {
    const { panel, parts } = example(name);
    const scale = scalesOf(panel.display.unit)[4] as Scale;
    const shown = (drawing: ReturnType<typeof weaveSection>): string[] =>
      textsOf(drawing).flatMap(({ text, height }) => (height === 5 ? [text] : []));
    const on = (view: string): string[] =>
      detailLetters(panel).flatMap(({ letter, on: views }) =>
        (views as readonly string[]).includes(view) ? [letter] : [],
      );
    expect(shown(weaveSection(panel, { scale, parts }))).toEqual(on('weave section'));
    expect(shown(verticalSection(panel, { scale, parts }))).toEqual(on('vertical section'));
  });
  test.each(examples)('detail of %s names its letter in its title, and detailMakers has one for each', (name) => {
    const { panel, parts } = example(name);
    const makers = detailMakers(panel, parts);
    detailLetters(panel).forEach(({ letter, title }, i) => {
      expect(makers[i]?.make(full(panel)).title.startsWith(`Detail ${letter}  ${title}`), title).toBe(true);
    });
    for (const { real } of makers) expect(Math.min(real.width, real.height)).toBeGreaterThan(0);
  });
});

const odd: Readonly<Record<string, Solved>> = {
  'light of 300 mm': plain({ size: { width: 300, height: 320 }, stave: { count: 3 } }),
  'run of 4 m': plain({ use: 'guard', opening: { width: 4000, height: 1000 } }),
  'on a track': plain({ use: 'divider', size: { width: 900, height: 1800 }, divider: { stand: 'track' } }),
  'gate hung right, to the back': plain({
    use: 'gate',
    size: { width: 900, height: 1200 },
    gate: { hinge: 'right', swing: 'towards the back' },
  }),
  'between posts, with stops': plain({
    size: { width: 800, height: 900 },
    slat: { thickness: 4, stop: 11 },
    screen: { mounting: 'posts' },
  }),
  'on a wall': plain({ size: { width: 800, height: 900 }, screen: { mounting: 'stiles', into: 'masonry' } }),
  ...Object.fromEntries(examples.map((name) => [name, example(name)])),
};

describe('what a detail states is what it draws', () => {
  const rows = Object.keys(odd).flatMap((name) => subjects.map((subject) => [name, subject] as const));
  test.each(rows)('detail(%s, %s): every printed size measures itself at full and at half size', (name, subject) => {
    const { panel, parts } = odd[name] as Solved;
    for (const scale of [full(panel), standardScale(0.5, panel.display.unit)]) {
      const drawing = detail(panel, subject, { scale, parts });
      expect(isWithinBounds(drawing)).toBe(true);
      const sizes = measured(drawing, panel.display.unit);
      expect(sizes.length).toBeGreaterThan(1);
      for (const { says, measures } of sizes)
        expect(Math.abs(says - measures)).toBeLessThan(panel.display.mark / 2 + 1e-6);
      for (const { height } of textsOf(drawing)) expect([2.5, 3.5, 5]).toContain(height);
    }
  });
});

describe('detail draws the parts it names', () => {
  test.each(Object.keys(odd))('detail(%s, stave foot): groove, stave foot and grain are those of the panel', (name) => {
    const { panel, parts } = odd[name] as Solved;
    const drawing = detail(panel, 'stave foot', { scale: full(panel), parts });
    const rail = inkOf(drawing, partOf(parts, panel, 'rail')?.letter, 'edge').flatMap(onPath);
    const { groove } = panel;
    expect(rail).toContainEqual(
      [groove.width / 2, -(panel.rail.height - groove.depth)].map((n) => expect.closeTo(n, 9)),
    );
    expect(inkOf(drawing, partOf(parts, panel, 'rail')?.letter, 'hatch').length).toBeGreaterThan(0);
    const stave = partOf(parts, panel, 'stave')?.letter;
    expect(inkOf(drawing, stave, 'hatch')).toEqual([]);
    expect(inkOf(drawing, stave, 'hatch-long').length).toBeGreaterThan(0);
    expect(boxOf(inkOf(drawing, stave, 'edge').flatMap(onPath)).v1).toBeCloseTo(-panel.staves.bottom, 9);
  });
  test('detail(window, slat end) prints how far the farthest end lies off mid-depth, draws it there, and the screw of the end stave', () => {
    const { panel, parts } = example('tern-hollow-window');
    const off = Math.max(...panel.rows.map(({ bend }) => Math.abs(bend.endOffsets[0])));
    const sizes = measured(detail(panel, 'slat end', { scale: full(panel), parts }), 'in');
    expect(sizes.some(({ measures }) => Math.abs(measures - off) < 1e-6)).toBe(true);
    expect(wordsOf(detail(panel, 'slat end', { scale: full(panel), parts }))).toContain(
      'End stave held to the stile by',
    );
  });
  test('detail(divider, slat end) draws both stops where the parts list has them', () => {
    const { panel, parts } = example('studio-divider');
    const drawing = detail(panel, 'slat end', { scale: full(panel), parts });
    const stop = partOf(parts, panel, 'stop');
    const boxes = inkOf(drawing, stop?.letter, 'edge', 'edge-light').map((mark) => boxOf(onPath(mark)));
    expect(boxes).toHaveLength(2);
    for (const { u0, u1, v0, v1 } of boxes) {
      const sides = [u1 - u0, v1 - v0].toSorted((a, b) => a - b);
      expect(sides).toEqual([stop?.thickness, stop?.width].map((side) => expect.closeTo(side as number, 6)));
      expect(u0).toBeCloseTo(panel.clear.left, 9);
    }
  });
  const fixings: readonly [string, RegExp][] = [
    ['tern-hollow-window', /Stand-off block.*Screw No\. .*through stile and block/],
    ['larch-deck-guard', /both legs 38 mm/],
    ['wash-house-gate', /the leaf swings towards the front/],
    ['studio-divider', /Foot, 780 mm long/],
    ['on a track', /Ceiling track/],
    ['between posts, with stops', /Post.*bracket|bracket.*Post/],
    ['on a wall', /Wall, plugged/],
  ];
  test.each(fixings)('detail(%s, fixing) shows how it is held', (name, words) => {
    const { panel, parts } = odd[name] as Solved;
    expect(wordsOf(detail(panel, 'fixing', { scale: full(panel), parts }))).toMatch(words);
  });
});

test('freeCircle puts the letter where no line crosses it, and in the first direction where every one is crossed', () => {
  const bar = (v: number): Mark => stroke('edge', line([-50, v], [50, v]));
  const circle = { at: [0, 0] as const, radius: 10, letter: 'W' };
  const letter = (ink: readonly Mark[]): TextMark | undefined =>
    freeCircle(ink, circle).find((mark) => mark.kind === 'text');
  const alone = letter([]);
  expect(alone?.at[0]).toBeCloseTo((10 + 1 + 3.5) * Math.cos((40 * Math.PI) / 180), 9);
  const height = (alone?.at[1] as number) - 1;
  const { v0, v1 } = textBox(letter([bar(height)]) as TextMark);
  expect(v1 < height || v0 > height).toBe(true);
  expect(letter(Array.from({ length: 81 }, (_, i) => bar(i - 40)))?.at).toEqual(alone?.at);
});

describe('screws are those of the schedule', () => {
  test.each(examples)('detail(%s, corner) has a cross of lines at each corner screw of screwSchedule', (name) => {
    const { panel, parts } = example(name);
    const drawing = detail(panel, 'corner', { scale: full(panel), parts });
    const row = screwSchedule(panel).find(({ joint }) => joint === 'rail to stile');
    const places = row ? cornerPlaces(row, panel) : [];
    expect(places).toHaveLength(2);
    const down = 12 + panel.rail.depth / 2;
    const lines = drawing.marks.flatMap((mark) =>
      mark.kind === 'path' && mark.role === 'dimension' && mark.path.length === 2 ? [onPath(mark)] : [],
    );
    for (const { x, z } of places) {
      const through = lines.filter(
        ([a, b]) => a && b && Math.hypot((a[0] + b[0]) / 2 - x, (a[1] + b[1]) / 2 - z - down) < 1e-9,
      );
      expect(through).toHaveLength(2);
    }
  });
  test('screwSide of a counterbored screw ends at the depth of its counterbore and its length together', () => {
    const { panel } = example('wash-house-gate');
    const row = screwsOf(panel, 'rail to stile');
    if (!row) throw new Error('no corner screws');
    expect(screwReach(row)).toBeCloseTo((1 + 3.5) * 25.4, 6);
    const marks = screwSide(row, { from: [0, 0], way: [0, -1], scale: 1 });
    const hidden = marks.filter((mark) => mark.role === 'hidden');
    const tips = hidden.flatMap((mark) => (mark.kind === 'path' ? [boxOf(onPath(mark)).v0] : []));
    for (const tip of tips) expect(tip).toBeCloseTo(-screwReach(row), 9);
  });
});

test('detailExtent of each subject is no larger than what is drawn at full size', () => {
  for (const { panel, parts } of Object.values(odd))
    for (const subject of subjects) {
      const { bounds } = detail(panel, subject, { scale: full(panel), parts });
      const real = detailExtent(panel, subject);
      expect(bounds.u1 - bounds.u0).toBeGreaterThanOrEqual(real.width - 1e-6);
      expect(bounds.v1 - bounds.v0).toBeGreaterThanOrEqual(real.height - 1e-6);
    }
});

test('detail draws any panel within its bounds, each size as it measures', () => {
  fc.assert(
    fc.property(arbitraryJob({ panels: 1 }), fc.nat(3), (file, k) => {
      const job = readJob(JSON.stringify(file));
      const panel = solve(job)[0] as Panel;
      const parts = partsOf(panel, { spare: job.spare });
      const scale = scalesOf(panel.display.unit).slice(1)[k] as Scale;
      for (const subject of subjects) {
        const drawing = detail(panel, subject, { scale, parts });
        expect(isWithinBounds(drawing)).toBe(true);
        const [plan, back] = ['looking down, stile cut', 'back'].map((text) =>
          textsOf(drawing).find((mark) => mark.text === text),
        );
        if (plan && back) expect(overlaps(textBox(plan), textBox(back))).toBe(false);
        for (const { says, measures } of measured(drawing, panel.display.unit))
          expect(Math.abs(says - measures)).toBeLessThan(panel.display.mark / 2 + 1e-6);
      }
    }),
    { seed: 20261124, numRuns: 40 },
  );
});
