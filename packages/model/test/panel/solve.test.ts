import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatLength, JobError, type Panel, parseLength, sideAt, solve } from '../../src/index.ts';
import { inches, jobOf, panelOf } from '../support.ts';

const seed = 20261124;

describe('solve: the trade’s relations (common practice, no source)', () => {
  const panel = panelOf({ size: { width: '44 1/2', height: 52 } });

  test('with 1 1/2 in rails and stiles and 1/2 in grooves the usual lengths follow', () => {
    expect(panel.stile.length).toBeCloseTo(panel.outside.height - inches(3), 9);
    expect(panel.staves.length).toBeCloseTo(panel.outside.height - inches(2), 9);
    expect(panel.clear.width).toBeCloseTo(panel.outside.width - inches(3), 9);
    expect(panel.staves.length).toBeCloseTo(panel.stile.length + inches(1), 9);
    expect(panel.groove.width - panel.staves.depth).toBeLessThanOrEqual(inches(1 / 16));
    expect(panel.rail.length).toBe(panel.outside.width);
  });

  test('an opening less its gaps is the outside size', () => {
    const fitted = panelOf({ opening: { width: 45, height: 53, gap: { sides: '1/4', top: '1/4', bottom: '3/4' } } });
    expect(fitted.outside.width).toBeCloseTo(inches(44.5), 9);
    expect(fitted.outside.height).toBeCloseTo(inches(52), 9);
  });
});

describe('solve: staves', () => {
  test('pitch = (clear width − stave width)/(count − 1): 44 1/2 in clear, five staves of 3/4 in stand 10 15/16 apart', () => {
    // (44.5 − 0.75)/4 = 10.9375. Not 44.5/4 = 11.125, which would put the last stave 3/4 in out.
    const { staves, clear } = panelOf({
      size: { width: 48, height: 60 },
      stile: { width: 1.75 },
      stave: { width: 0.75, depth: 0.625, count: 5 },
    });
    expect(staves.pitch).toBeCloseTo(inches(10.9375), 9);
    expect(staves.lefts[0]).toBeCloseTo(clear.left, 9);
    expect((staves.lefts[4] as number) + staves.width).toBeCloseTo(clear.left + clear.width, 9);
  });

  test('stepping a pitch rounded to 1/8 drifts by 1/4 in at the fifth stave, running marks stay within 1/16', () => {
    // p = 10.9375 is half-way between eighths and rounds up to 11: error (j − 1)/16 in, so 1/4 in at the last.
    const { staves, clear } = panelOf({
      size: { width: 48, height: 60 },
      stile: { width: 1.75 },
      stave: { width: 0.75, depth: 0.625, count: 5 },
    });
    const eighth = { unit: 'in', mark: inches(1 / 8) } as const;
    const stepped = parseLength(formatLength(staves.pitch, eighth), 'in');
    staves.lefts.forEach((left, j) => {
      const exact = left - clear.left;
      expect(j * stepped - exact).toBeCloseTo(inches(j / 16), 9);
      const running = parseLength(formatLength(exact, eighth), 'in');
      expect(Math.abs(running - exact)).toBeLessThanOrEqual(inches(1 / 16) + 1e-9);
    });
  });

  test('a pitch range takes the count nearest the preferred pitch, and says the nearest pitches where none fits', () => {
    const spec = { size: { width: 48, height: 60 }, stave: { width: 0.75, pitch: { from: 9, to: 14, prefer: 11 } } };
    expect(panelOf(spec).staves.count).toBe(5);
    const none = { ...spec, stave: { width: 0.75, pitch: { from: 12, to: 12.5, prefer: 12 } } };
    expect(() => panelOf(none)).toThrow(/nearest: .*staves at/);
  });

  test('staves that leave no bay are refused with the most that would fit', () => {
    expect(() => panelOf({ size: { width: 24, height: 24 }, stave: { width: 1, count: 40 } })).toThrow(/at most/);
  });
});

describe('solve: the height closes on whole courses', () => {
  test('fit by slats: courses and the room over them make the clear height, within the range asked for', () => {
    const { courses, clear, movement } = panelOf({
      size: { width: 40, height: 52 },
      fit: { vary: 'slats', from: '1 3/8', to: '1 3/4' },
    });
    expect(courses.stack + courses.allowance).toBeCloseTo(clear.height, 9);
    expect(courses.height).toBeGreaterThanOrEqual(inches(1.375));
    expect(courses.height).toBeLessThanOrEqual(inches(1.75));
    expect(courses.allowance).toBeGreaterThanOrEqual(movement.needed - 1e-9);
    expect((courses.height / inches(1 / 64)) % 1).toBeCloseTo(0, 6);
  });

  test.each([
    ['up', (p: Panel) => p.outside.height >= inches(52) - 1e-6],
    ['down', (p: Panel) => p.outside.height <= inches(52) + 1e-6],
    ['nearest', (p: Panel) => Math.abs(p.outside.height - inches(52)) <= inches(1.5 / 2 + 0.3)],
  ])('fit by outside height, %s: the slat stays, the frame moves', (go, holds) => {
    const panel = panelOf({ size: { width: 40, height: 52 }, slat: { height: 1.5 }, fit: { vary: 'outside', go } });
    expect(panel.courses.height).toBe(inches(1.5));
    expect(holds(panel)).toBe(true);
    expect(panel.stile.length).toBeCloseTo(panel.outside.height - inches(3), 9);
  });

  test('fit by gaps: n slats and n − 1 equal gaps make the clear height', () => {
    const { courses, clear } = panelOf({
      size: { width: 40, height: 52 },
      slat: { height: 1.5 },
      fit: { vary: 'gaps', from: '1/16', to: '3/8' },
    });
    expect(courses.count * courses.height + (courses.count - 1) * courses.gap).toBeCloseTo(clear.height, 9);
    expect(courses.gap).toBeGreaterThanOrEqual(inches(1 / 16) - 1e-9);
    expect(courses.gap).toBeLessThanOrEqual(inches(3 / 8) + 1e-9);
  });

  test.each([
    { fit: { vary: 'slats', from: 2.99, to: 3, prefer: 3 }, size: { width: 40, height: 7 } },
    { fit: { vary: 'gaps', from: 0, to: 0.001 }, slat: { height: 1.5 }, size: { width: 40, height: 52 } },
  ])('an impossible fit says the nearest heights that work, and those do work: %j', (spec) => {
    let said: string[] = [];
    try {
      panelOf(spec);
    } catch (error) {
      expect(error).toBeInstanceOf(JobError);
      said = [
        ...((error as JobError).message.split('work: ')[1] as string).matchAll(/([\d /]+) in \(\d+ courses/g),
      ].map((m) => (m[1] as string).trim());
    }
    expect(said.length).toBeGreaterThan(0);
    for (const height of said)
      expect(panelOf({ ...spec, size: { ...spec.size, height } }).courses.count).toBeGreaterThan(0);
  });
});

describe('solve: measured slats', () => {
  const spec = {
    size: { width: 40, height: 52 },
    slat: { thickness: '3/16' },
    fit: { vary: 'slats', from: '1 3/8', to: '1 3/4' },
  };
  const planned = panelOf(spec);
  const stack = planned.courses.stack + inches(0.25);
  const real = panelOf({ ...spec, measured: { stack: `${stack} mm`, thickness: 0.2, broken: 3 } });

  test('stiles, staves and stick follow the real stack', () => {
    expect(real.courses.stack).toBeCloseTo(stack, 6);
    expect(real.stile.length).toBeCloseTo(stack + real.courses.allowance, 6);
    expect(real.staves.length).toBeCloseTo(real.stile.length + inches(1), 6);
    expect((real.courses.bottoms.at(-1) as number) + real.courses.height - real.clear.bottom).toBeCloseTo(stack, 6);
    expect(real.courses.thickness).toBeCloseTo(inches(0.2), 9);
  });

  test('what changed is listed, planned against now', () => {
    const row = real.asBuilt?.changes.find(({ what }) => what === 'stack of courses');
    expect(row?.planned).toBeCloseTo(planned.courses.stack, 9);
    expect(row?.now).toBeCloseTo(stack, 6);
    expect(real.asBuilt?.heightOff).toBeCloseTo(real.outside.height - inches(52), 9);
  });
});

describe('solve: laws over arbitrary panels', () => {
  const specs = fc.record({
    width: fc.integer({ min: 450, max: 4000 }),
    height: fc.integer({ min: 300, max: 2400 }),
    rail: fc.integer({ min: 25, max: 90 }),
    stile: fc.integer({ min: 25, max: 90 }),
    count: fc.integer({ min: 3, max: 7 }),
    weave: fc.constantFrom('plain', 'two-over-two twill', 'two-over-one twill', 'paired courses'),
    start: fc.constantFrom('front', 'behind'),
  });
  const build = ({
    width,
    height,
    rail,
    stile,
    count,
    weave,
    start,
  }: typeof specs extends fc.Arbitrary<infer T> ? T : never) => ({
    size: { width, height },
    rail: { height: rail, depth: 38 },
    stile: { width: stile, depth: 38 },
    groove: { depth: 10 },
    stave: { width: 18, depth: 12, count },
    fit: { vary: 'outside' },
    slat: { height: 40, thickness: 4 },
    weave: { pattern: weave, start },
  });

  test('members and gaps make the outside size; staves stand evenly between the stiles', () => {
    fc.assert(
      fc.property(specs, (spec) => {
        const panel = panelOf(build(spec), { unit: 'mm' });
        const { staves, courses, clear, outside } = panel;
        expect(2 * panel.stile.width + staves.count * staves.width + (staves.count - 1) * staves.bay).toBeCloseTo(
          outside.width,
          6,
        );
        expect(
          2 * panel.rail.height +
            courses.count * courses.height +
            (courses.count - 1) * courses.gap +
            courses.allowance,
        ).toBeCloseTo(outside.height, 6);
        expect(staves.length).toBeCloseTo(clear.height + 2 * panel.groove.depth, 6);
        for (const { bend, cutLength } of panel.rows) {
          expect(cutLength).toBeLessThanOrEqual(bend.cutLength + 1e-6);
          for (const force of bend.staveForces) expect(force).toBeGreaterThanOrEqual(0);
        }
        expect(courses.bottoms).toHaveLength(courses.count);
        expect(Math.abs(sideAt(panel, 0, 0))).toBe(1);
      }),
      { seed, numRuns: 300 },
    );
  });

  test('inch and millimetre forms of one job agree', () => {
    fc.assert(
      fc.property(specs, (spec) => {
        const mm = panelOf(build(spec), { unit: 'mm' });
        const asText = JSON.parse(JSON.stringify(build(spec)), (key, value) =>
          typeof value === 'number' && key !== 'count' ? `${value / 25.4} in` : value,
        );
        const inch = solve(
          jobOf(
            {
              ...asText,
              groove: { depth: '10 mm', clearance: '1 mm' },
              top: { allowance: `${mm.courses.allowance} mm`, cover: 0 },
            },
            { unit: 'mm' },
          ),
        )[0] as Panel;
        expect(inch.staves.pitch).toBeCloseTo(mm.staves.pitch, 6);
        expect(inch.courses.count).toBe(mm.courses.count);
        expect(inch.rows[0]?.bend.use).toBeCloseTo(mm.rows[0]?.bend.use as number, 9);
      }),
      { seed, numRuns: 100 },
    );
  });

  test('the same job solves to the same data', () => {
    const job = jobOf({ size: { width: 40, height: 52 } });
    expect(JSON.stringify(solve(job))).toBe(JSON.stringify(solve(job)));
  });
});
