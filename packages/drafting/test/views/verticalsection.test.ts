import { type Panel, partsOf, readJob, sampleSlat, solve } from '@wattlewright/model';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arbitraryJob } from '../../../../test/support/jobs.ts';
import { boxOf, pointsOf } from '../../src/ink.ts';
import { crossesBox } from '../../src/layout/clearance.ts';
import { textBox } from '../../src/lettering.ts';
import type { PathMark } from '../../src/mark.ts';
import { type Scale, scalesOf, standardScale } from '../../src/scale.ts';
import { cutPlanes } from '../../src/views/detailkey.ts';
import { partOf } from '../../src/views/partof.ts';
import { verticalSection, verticalSectionExtent } from '../../src/views/verticalsection.ts';
import { sphereAt } from '../../src/views/verticalsectionsite.ts';
import {
  brokenSizes,
  example,
  examples,
  inkOf,
  isWithinBounds,
  measured,
  onPath,
  plain,
  textsOf,
  wordsOf,
} from './read.ts';

const full = (panel: Panel): Scale => standardScale(1, panel.display.unit);

describe('verticalSection draws what is solved', () => {
  test.each(examples)('%s: each course is cut at its height, where sampleSlat puts it at the stave', (name) => {
    const { panel, parts } = example(name);
    const drawing = verticalSection(panel, { scale: full(panel), parts });
    const x = cutPlanes(panel).across.x - panel.clear.left;
    const letters = new Set(parts.flatMap(({ role, letter }) => (role === 'slat' ? [letter] : [])));
    const faces = [...letters].flatMap((of) => inkOf(drawing, of, 'edge')).map((mark) => boxOf(onPath(mark)));
    expect(faces).toHaveLength(panel.courses.count);
    panel.courses.bottoms.forEach((bottom, course) => {
      const face = faces.find(({ v1 }) => Math.abs(v1 + bottom) < 1e-6);
      const row = panel.rows[panel.weave.rowOfCourse[course] as number] as Panel['rows'][number];
      expect(face && face.v1 - face.v0).toBeCloseTo(panel.courses.height, 9);
      expect(face && -(face.u0 + face.u1) / 2).toBeCloseTo(sampleSlat(row.bend, x).z, 9);
      expect(face && face.u1 - face.u0).toBeGreaterThanOrEqual(panel.courses.thickness - 1e-9);
    });
  });
  test.each(examples)(
    '%s: the rails have their grooves, and the stave reaches into both less its clearance',
    (name) => {
      const { panel, parts } = example(name);
      const drawing = verticalSection(panel, { scale: full(panel), parts });
      const rails = inkOf(drawing, partOf(parts, panel, 'rail')?.letter, 'edge');
      expect(rails).toHaveLength(2);
      const { rail, groove, outside } = panel;
      const [bottom, top] = rails.map((mark) => onPath(mark).map(([u, v]) => [u, -v]));
      const side = groove.width / 2;
      expect(bottom).toContainEqual([-side, rail.height - groove.depth].map((n) => expect.closeTo(n, 9)));
      expect(top).toContainEqual([side, outside.height - rail.height + groove.depth].map((n) => expect.closeTo(n, 9)));
      const stave = boxOf(inkOf(drawing, partOf(parts, panel, 'stave')?.letter, 'edge').flatMap(onPath));
      expect(stave.u1 - stave.u0).toBeCloseTo(panel.staves.depth, 9);
      expect(stave.v1 - stave.v0).toBeCloseTo(panel.staves.length, 9);
      expect(-stave.v1).toBeGreaterThanOrEqual(rail.height - groove.depth - 1e-9);
    },
  );
  test.each(examples)('%s: rails and slats show end grain, the stave long grain', (name) => {
    const { panel, parts } = example(name);
    const drawing = verticalSection(panel, { scale: full(panel), parts });
    const hatches = (role: 'rail' | 'slat' | 'stave'): string[] => {
      const letters = parts.filter((part) => part.role === role).map(({ letter }) => letter);
      return [...new Set(letters.flatMap((of) => inkOf(drawing, of, 'hatch', 'hatch-long')).map((mark) => mark.role))];
    };
    expect([hatches('rail'), hatches('slat'), hatches('stave')]).toEqual([['hatch'], ['hatch'], ['hatch-long']]);
  });
});

describe('what verticalSection states is what it draws', () => {
  const rows = examples.flatMap((name) => [false, true].map((broken) => [name, broken] as const));
  test.each(rows)('%s, broken %s: every printed size measures itself', (name, broken) => {
    const { panel, parts } = example(name);
    for (const scale of scalesOf(panel.display.unit).slice(2, 8)) {
      const drawing = verticalSection(panel, { scale, parts, broken });
      expect(isWithinBounds(drawing)).toBe(true);
      const sizes = measured(drawing, panel.display.unit);
      expect(sizes.length).toBeGreaterThan(2);
      for (const { says, measures } of sizes)
        expect(Math.abs(says - measures)).toBeLessThan(panel.display.mark / 2 + 1e-6);
    }
  });
  test('verticalSection of the window: 1 1/2 + 48 1/2 + 1/4 + 1 1/2 = 51 3/4', () => {
    const { panel, parts } = example('tern-hollow-window');
    const drawing = verticalSection(panel, { scale: standardScale(0.25, 'in'), parts });
    const inches = measured(drawing, 'in').map(({ says }) => Math.round((says / 25.4) * 1e6) / 1e6);
    for (const size of [1.5, 48.5, 0.25, 51.75, 1 + 33 / 64, 0.5]) expect(inches).toContain(size);
  });
  test('verticalSection, broken, states stack, clear height and outside height across its break', () => {
    const { panel, parts } = example('tern-hollow-window');
    const drawing = verticalSection(panel, { scale: standardScale(0.25, 'in'), parts, broken: true });
    for (const { says } of measured(drawing, 'in')) expect(says).toBeLessThan(panel.courses.height * 3);
    const inches = brokenSizes(drawing, 'in').map((says) => Math.round((says / 25.4) * 1e6) / 1e6);
    expect(inches).toEqual([48.5, 48.75, 51.75]);
    expect(drawing.chains?.some(({ parts: links }) => links.length === 3)).toBe(true);
    const whole = verticalSectionExtent(panel).height;
    expect(verticalSectionExtent(panel, true).height).toBeCloseTo(
      whole - (panel.courses.count - 6) * panel.courses.pitch,
      6,
    );
  });
  test('verticalSection of few courses stays whole when it is asked to break', () => {
    const { panel, parts } = plain({ size: { width: 500, height: 300 } });
    const scale = standardScale(0.5, 'mm');
    const broken = verticalSection(panel, { scale, parts, broken: true });
    expect(broken.marks).toEqual(verticalSection(panel, { scale, parts }).marks);
  });
});

describe('sphereAt', () => {
  // Radius 50.8. Gap 80: its middle 80 − 50.8 = 29.2 under the arris, so √(50.8² − 29.2²) = √1728 = 41.5692 before it.
  test('sphereAt(80, 20) touches the arris from the front', () => {
    const { z, y } = sphereAt(80, 20);
    expect(y).toBeCloseTo(-29.2, 9);
    expect(z).toBeCloseTo(20 + 41.5692, 3);
  });
  test('sphereAt(101.6, 20) passes under the rail', () => {
    expect(sphereAt(101.6, 20)).toEqual({ z: 0, y: expect.closeTo(-50.8, 9) });
  });
  test('sphereAt(30, 20) meets the face of the rail', () => {
    expect(sphereAt(30, 20)).toEqual({ z: expect.closeTo(70.8, 9), y: expect.closeTo(20.8, 9) });
  });
});

test('verticalSection says whether the guard’s sphere passes under the rail', () => {
  const scale = standardScale(0.1, 'mm');
  const guard = (bottom: number): string => {
    const { panel, parts } = plain({ use: 'guard', size: { width: 900, height: 900 }, guard: { floor: bottom } });
    return wordsOf(verticalSection(panel, { scale, parts }));
  };
  expect(guard(80)).toContain('A 4 in sphere does not pass under the rail');
  expect(guard(110)).toContain('A 4 in sphere passes under the rail');
});

test.each([156.1875, 60])(
  'verticalSection, %d in tall: neither leader nor arrowhead runs through the letter of a circle',
  (height) => {
    const file = {
      job: 'Letters',
      unit: 'in',
      panels: [
        {
          name: 'Window',
          use: 'screen',
          size: { width: 17.5, height },
          rail: { height: 3.375, depth: 1.8125 },
          stile: { width: 1.875, depth: 1.8125 },
          groove: { depth: 0.5625 },
          stave: { width: 0.5625, depth: 0.5625, count: 3 },
          slat: { thickness: 0.125, height: 0.75 },
          fit: { vary: 'outside', go: 'nearest' },
          weave: 'two-over-two basket',
          wood: 'teak',
          screen: { mounting: 'blocks', into: 'masonry' },
        },
      ],
    };
    const [panel] = solve(readJob(JSON.stringify(file))) as [Panel];
    const { marks } = verticalSection(panel, { scale: standardScale(0.5, 'in'), parts: partsOf(panel), broken: true });
    const letters = marks.flatMap((mark) => (mark.kind === 'text' && /^[A-Z]$/.test(mark.text) ? [textBox(mark)] : []));
    expect(letters).toHaveLength(2);
    const leaders = marks.filter((mark): mark is PathMark => mark.kind === 'path' && mark.role === 'dimension');
    for (const { path } of leaders) {
      // Leaders and arrowheads; circles have more points.
      const points = pointsOf(path);
      if (points.length > 4) continue;
      points.forEach((p, i) => {
        const next = points[(i + 1) % points.length] ?? p;
        for (const box of letters) expect(crossesBox([p, next], box)).toBe(false);
      });
    }
  },
);

test('verticalSection keeps its text heights at any scale', () => {
  const { panel, parts } = example('larch-deck-guard');
  for (const scale of scalesOf('mm'))
    for (const { height } of textsOf(verticalSection(panel, { scale, parts }))) expect([2.5, 3.5, 5]).toContain(height);
});

test('verticalSection draws any panel within its bounds, each size as it measures', () => {
  fc.assert(
    fc.property(arbitraryJob({ panels: 1 }), fc.nat(5), fc.boolean(), (file, k, broken) => {
      const job = readJob(JSON.stringify(file));
      const panel = solve(job)[0] as Panel;
      const scale = scalesOf(panel.display.unit)[k + 2] as Scale;
      const drawing = verticalSection(panel, { scale, parts: partsOf(panel, { spare: job.spare }), broken });
      expect(isWithinBounds(drawing)).toBe(true);
      for (const { says, measures } of measured(drawing, panel.display.unit))
        expect(Math.abs(says - measures)).toBeLessThan(panel.display.mark / 2 + 1e-6);
    }),
    { seed: 20261124, numRuns: 60 },
  );
});
