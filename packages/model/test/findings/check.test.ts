import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arbitraryJob, uses } from '../../../../test/support/jobs.ts';
import { rules } from '../../src/findings/rules.ts';
import { gentler, mostUse } from '../../src/findings/strength.ts';
import {
  bendSlat,
  check,
  hardwareList,
  layRuns,
  makingOrder,
  type Panel,
  partsOf,
  readJob,
  screwSchedule,
  solve,
  useBySpacing,
  useResult,
  woodChoices,
} from '../../src/index.ts';
import { jobOf, panelOf } from '../support.ts';
import { changeBend, subjectOf } from './cases/case.ts';

const settings = { seed: 20261124, numRuns: 40 };
const everyNumberIsOne = (value: unknown) =>
  expect(
    JSON.stringify(value, (_, each) => (typeof each === 'number' && !Number.isFinite(each) ? 'NaN' : each)),
  ).not.toMatch(/NaN|undefined|Infinity/);

describe('check', () => {
  test.each(uses)('check(arbitrary job of a %s) never throws, and all that is worked out is numbers', (use) => {
    fc.assert(
      fc.property(arbitraryJob({ use, panels: 2 }), (file) => {
        const job = readJob(JSON.stringify(file));
        const panels = solve(job);
        const parts = partsOf(panels, { spare: job.spare });
        const findings = check(job, { panels, parts });
        const order = { stop: 0, caution: 1, note: 2 };
        const levels = findings.map(({ level }) => order[level]);
        expect(levels).toEqual([...levels].sort());
        everyNumberIsOne(findings);
        everyNumberIsOne(panels.map((panel) => useResult(panel)));
        everyNumberIsOne(panels.map(screwSchedule));
        everyNumberIsOne(hardwareList(job, panels));
        everyNumberIsOne(layRuns(job, panels));
        everyNumberIsOne(makingOrder(job, { panels, parts }));
      }),
      settings,
    );
  });

  test('check(job) works panels and parts out itself, and says the same as when they are given', () => {
    const job = jobOf({ size: { width: 40, height: 50 } });
    const panels = solve(job);
    expect(check(job)).toEqual(check(job, { panels, parts: partsOf(panels, { spare: job.spare }) }));
  });

  test('check says once what is alike of several panels, with all their names', () => {
    const guard = { use: 'guard', size: { width: 48, height: 30 } };
    const job = jobOf(guard, {
      panels: [
        { name: 'A', ...guard },
        { name: 'B', ...guard },
      ],
    });
    const told = check(job).filter(({ code }) => code === 'not-a-tested-guard');
    expect(told.map(({ where }) => where)).toEqual(['A, B']);
  });

  test('check says once, with each panel’s figure and remedy, what differs from panel to panel by its figures only', () => {
    const job = jobOf(
      {},
      {
        panels: [
          { name: 'A', size: { width: 96, height: 52 }, stave: { count: 6 }, slat: { thickness: '3/16' } },
          { name: 'B', size: { width: 90, height: 52 }, stave: { count: 6 }, slat: { thickness: '3/16' } },
        ],
      },
    );
    const [told, ...more] = check(job).filter(({ code }) => code === 'little-grip');
    expect(more).toEqual([]);
    expect(told?.where).toBe('A, B');
    expect(told?.judged).toMatch(/presses on its stave with [\d.]+ lb \(A\), [\d.]+ lb \(B\); /);
    expect(told?.mend).toMatch(/^A: .*; B: /);
  });

  test('a finding carries code, level, where, text, figure, limit, the sentence of both, reason, source and mend', () => {
    for (const finding of check(jobOf({ size: { width: 40, height: 50 } })))
      expect(
        Object.keys(finding)
          .filter((key) => key !== 'field')
          .sort(),
      ).toEqual(['code', 'figure', 'judged', 'level', 'limit', 'mend', 'reason', 'source', 'text', 'where'].sort());
  });
});

describe('slat-strength', () => {
  const rule = rules.find(({ code }) => code === 'slat-strength');
  const levelAt = (use: number) => rule?.judge(changeBend(subjectOf(), () => ({ use })))[0]?.level;

  test.each([
    [0.55, undefined],
    [0.5501, 'caution'],
    [0.7999, 'caution'],
    [0.8, 'stop'],
    [1.2, 'stop'],
  ])('a share of %d is a %s', (use, level) => {
    expect(levelAt(use)).toBe(level);
  });

  test('gentler(panel) names a pitch and a thickness that bring the share to 0.55, whatever the count of staves', () => {
    for (const count of [5, 6, 7, 9]) {
      const panel = panelOf({ size: { width: 48, height: 52 }, stave: { count }, slat: { thickness: '1/4' } });
      const { pitch, thickness } = gentler(panel);
      expect(bent(panel, panel.clear.width, thickness)).toBeCloseTo(0.55, 9);
      const wider = pitch * (count - 1) + panel.staves.width;
      // The closed form lends its shape to the scaling; a narrow panel is not quite of that shape.
      expect(bent(panel, wider, panel.courses.thickness) / 0.55).toBeGreaterThan(0.98);
      expect(bent(panel, wider, panel.courses.thickness) / 0.55).toBeLessThan(1.02);
    }
  });

  function bent({ staves, courses, rows, spec }: Panel, clearWidth: number, thickness: number): number {
    const { modulus, strength } = spec.wood.slat.wood;
    const slat = { thickness, height: courses.height };
    return Math.max(...rows.map(({ sides }) => bendSlat({ clearWidth, staves, slat, sides, modulus, strength }).use));
  }
});

describe('woodChoices', () => {
  const job = jobOf({ size: { width: 44, height: 52 } });
  const panel = solve(job)[0] as Panel;
  const choices = woodChoices(job, panel);

  test('woodChoices(job, panel) has the panel’s own wood with the panel’s own figures', () => {
    const own = choices.find(({ chosen }) => chosen);
    expect(own?.wood).toBe('western redcedar');
    expect(own?.use).toBeCloseTo(mostUse(panel), 12);
    expect(own?.movement).toBeCloseTo(panel.movement.swell - panel.movement.shrink, 9);
  });

  test('the share of another wood is what solving the panel in that wood gives', () => {
    for (const wood of ['white oak', 'Douglas-fir, coast', 'teak']) {
      const solved = panelOf({ size: { width: 44, height: 52 }, wood });
      expect(choices.find((choice) => choice.wood === wood)?.use).toBeCloseTo(mostUse(solved), 9);
    }
  });

  test('woods with less against them come first, then by share of the strength', () => {
    const keys = choices.map(({ against, use }) => against.length * 1000 + use);
    expect(keys).toEqual([...keys].sort((a, b) => a - b));
  });
});

describe('useBySpacing', () => {
  test('the line of the panel’s own thickness passes through the panel’s own point', () => {
    const panel = panelOf({ size: { width: 44, height: 52 }, stave: { count: 5 } });
    const { lines, point } = useBySpacing(panel);
    const own = lines.find(({ thickness }) => thickness === point.thickness);
    const near = (own?.points ?? []).filter(({ pitch }) => Math.abs(pitch - point.pitch) < 10);
    expect(near.some(({ use }) => use >= point.use)).toBe(true);
    expect(near.some(({ use }) => use <= point.use)).toBe(true);
    for (const { points } of lines)
      for (const [i, { use }] of points.entries())
        expect(use).toBeLessThan(points[i - 1]?.use ?? Number.POSITIVE_INFINITY);
  });
});
