import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arbitraryJob, uses } from '../../../../test/support/jobs.ts';
import { isClear, meetings, roomBetween, type Stretch, stretchesAt } from '../../src/hardware/meet.ts';
import { type Panel, readJob, type ScrewRow, screwSchedule, solve } from '../../src/index.ts';
import { inches, panelOf } from '../support.ts';

const examples = fileURLToPath(new URL('../../../../examples/', import.meta.url));
const shaft = (from: [number, number, number], to: [number, number, number], radius = 2): Stretch => ({
  from: { x: from[0], y: from[1], z: from[2] },
  to: { x: to[0], y: to[1], z: to[2] },
  radius,
  head: false,
});

describe('roomBetween', () => {
  test.each([
    // Side by side 10 apart: 10 - 2 - 2 - 3.
    [shaft([0, 0, 0], [0, 50, 0]), shaft([10, 0, 0], [10, 50, 0]), 3],
    // Crossing, 8 apart in depth: 8 - 7.
    [shaft([0, 20, 8], [40, 20, 8]), shaft([20, 0, 0], [20, 50, 0]), 1],
    // One ends 10 under the other: 10 - 7.
    [shaft([0, 0, 0], [0, 40, 0]), shaft([-20, 50, 0], [20, 50, 0]), 3],
    // Corner to corner, 3 and 4 off: 5 - 7.
    [shaft([0, 0, 0], [0, 40, 0]), shaft([3, 44, 0], [30, 44, 0]), -2],
  ])('%j and %j leave %d', (one, other, room) => {
    expect(roomBetween([one], [other])).toBeCloseTo(room, 9);
    expect(roomBetween([other], [one])).toBeCloseTo(room, 9);
    expect(isClear([one], [[other]])).toBe(room >= 0);
  });

  test('never more than the distance of any two points on them, less radii and 3 mm', () => {
    const size = fc.integer({ min: -60, max: 60 });
    const line = fc.tuple(size, size, size, fc.constantFrom('x', 'y', 'z'), size).map(([x, y, z, axis, by]) => {
      const from = { x, y, z };
      return { from, to: { ...from, [axis]: from[axis as 'x'] + by }, radius: 2, head: false };
    });
    const on = ({ from, to }: Stretch, share: number) =>
      (['x', 'y', 'z'] as const).map((axis) => from[axis] + (to[axis] - from[axis]) * share);
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(line, line, share, share, (a, b, s, t) => {
        const [p, q] = [on(a, s), on(b, t)];
        const apart = Math.hypot(...p.map((value, i) => value - (q[i] as number)));
        expect(roomBetween([a], [b])).toBeLessThanOrEqual(apart - 7 + 1e-9);
      }),
      { seed: 20261124, numRuns: 300 },
    );
  });
});

describe('stretchesAt', () => {
  const panel = panelOf({ size: { width: 44, height: 52 }, rail: { height: 2.5 } });
  const corner = screwSchedule(panel)[0] as ScrewRow;

  test('a sunk screw starts at the bottom of its bore and goes towards the panel’s middle, an outward one away', () => {
    const [shank, bore] = stretchesAt(corner, { x: 30, y: 0, z: 5 }, panel);
    expect([shank?.from.y, shank?.to.y]).toEqual([inches(1), inches(4.5)].map((y) => expect.closeTo(y, 9)));
    expect([bore?.from.y, bore?.radius]).toEqual([0, inches(3 / 16)].map((size) => expect.closeTo(size, 9)));
    const stave = screwSchedule(panel)[1] as ScrewRow;
    const [left] = stretchesAt(stave, { x: 60, y: 200, z: 0 }, panel);
    expect(left?.to.x).toBeLessThan(60);
  });
});

describe('meetings', () => {
  const moved = (panel: Panel, by: number): readonly ScrewRow[] =>
    screwSchedule(panel).map((row) =>
      row.joint === 'mounting' ? { ...row, driven: row.driven.map((place) => ({ ...place, y: place.y - by })) } : row,
    );
  const panel = panelOf({ size: { width: 44, height: 52 } });

  test('fixings moved down among the corner’s screws meet them, and are told once with the wood left', () => {
    expect(meetings(moved(panel, 0), panel)).toEqual([]);
    const [met, ...more] = meetings(moved(panel, inches(3)), panel);
    expect(met?.joints).toEqual(['rail to stile', 'mounting']);
    expect(met?.wood).toBeLessThan(3);
    expect(more).toEqual([]);
  });

  test.each(readdirSync(examples).filter((name) => name.endsWith('.yaml')))('%s: no two screws meet', (name) => {
    for (const each of solve(readJob(readFileSync(`${examples}${name}`, 'utf8'))))
      expect(meetings(screwSchedule(each), each)).toEqual([]);
  });

  // Less than this and there is no room for two screws, a plate and a hinge: the finding tells it.
  const roomy = ({ stile, rail, outside, details }: Panel) =>
    Math.min(stile.width, stile.depth, rail.height, rail.depth) >= 32 &&
    (details.use !== 'gate' || (outside.height >= 650 && details.hingeInset >= rail.height + inches(4)));

  test.each(uses)('no two screws of an arbitrary %s meet, unless its sections leave no room', (use) => {
    let judged = 0;
    fc.assert(
      fc.property(arbitraryJob({ use, panels: 1 }), (file) => {
        for (const each of solve(readJob(JSON.stringify(file)))) {
          if (!roomy(each)) continue;
          judged += 1;
          expect(meetings(screwSchedule(each), each)).toEqual([]);
        }
      }),
      { seed: 20261124, numRuns: 60 },
    );
    expect(judged).toBeGreaterThan(5);
  });
});

describe('places that keep clear', () => {
  test('foot screws differ from the corner’s, and lie within foot and rail', () => {
    const panel = panelOf({ use: 'divider', size: { width: 48, height: 66 } });
    const rows = screwSchedule(panel);
    const of = (joint: string) => rows.find((row) => row.joint === joint)?.places ?? [];
    expect(of('foot to bottom rail')).toHaveLength(4);
    for (const foot of of('foot to bottom rail'))
      for (const corner of of('rail to stile').filter(({ y }) => y === 0))
        expect(Math.hypot(foot.x - corner.x, foot.z - corner.z)).toBeGreaterThan(inches(0.164) + 3 - 1e-9);
  });

  test.each(['cable', 'strut'] as const)('a %s has one screw in the rail and one in the stile at each end', (kind) => {
    const panel = panelOf({ use: 'gate', size: { width: 34, height: 60 }, gate: { brace: { kind } } });
    const row = screwSchedule(panel).find(({ along }) => along === 'z');
    const { rail, stile, outside } = panel;
    const heights = (row?.places ?? []).map(({ y }) => Math.min(y, outside.height - y));
    expect(heights.filter((y) => y < rail.height)).toHaveLength(2);
    expect(heights.filter((y) => y > rail.height)).toHaveLength(2);
    for (const { x } of row?.places ?? []) expect(Math.min(x, outside.width - x)).toBeLessThan(stile.width);
  });

  test('corner screws are of a thinner gauge where two of No. 8 would touch', () => {
    const names = (size: number) =>
      screwSchedule(
        panelOf(
          { size: { width: 300, height: 300 }, stile: { width: size }, rail: { height: size, depth: size } },
          { unit: 'mm' },
        ),
      )[0]?.name;
    expect(names(38)).toMatch(/^No[.] 8 /);
    expect(names(30)).toMatch(/^No[.] 6 /);
  });

  test('the schedule says which corner screw stands in front', () => {
    const panel = panelOf({ size: { width: 44, height: 52 } });
    const row = screwSchedule(panel)[0];
    expect(row?.where).toContain('in front the one at 7/8 in at the bottom left and top right corners');
    const front = row?.places.filter(({ z }) => z > 0) ?? [];
    for (const { x, y } of front) {
      const near = Math.min(x, panel.outside.width - x);
      const left = x < panel.outside.width / 2;
      expect(near).toBeCloseTo(inches(left === (y === 0) ? 7 / 8 : 17 / 16), 6);
    }
  });
});

describe('screws of end staves', () => {
  test('they stand evenly, and as far from the foot as from the head', () => {
    for (const use of ['screen', 'guard', 'divider', 'gate'] as const) {
      const panel = panelOf({ use, size: { width: 40, height: 60 } });
      const row = screwSchedule(panel).find(({ joint }) => joint === 'end stave to stile');
      const ys = (row?.places ?? []).filter(({ x }) => x < panel.outside.width / 2).map(({ y }) => y);
      const steps = ys.slice(1).map((y, i) => y - (ys[i] as number));
      expect(Math.max(...steps) - Math.min(...steps)).toBeLessThan(1e-6);
      expect((ys[0] as number) + (ys.at(-1) as number)).toBeCloseTo(2 * panel.clear.bottom + panel.clear.height, 6);
      expect(row?.where).toContain('inner edge');
    }
  });
});

describe('cap screws', () => {
  const guard = (cap: object, panel: object = {}) =>
    panelOf(
      {
        use: 'guard',
        size: { width: 1448, height: 965 },
        rail: { height: 45 },
        groove: { depth: 15 },
        stave: { width: 23 },
        guard: { cap },
        ...panel,
      },
      { unit: 'mm' },
    );
  const capOf = (panel: Panel) => screwSchedule(panel).find(({ joint }) => joint === 'cap rail to top rail');

  test('31 mm of cap and 30 over the groove take 50 mm sunk 7: the tip stays 1/8 in or more over the groove', () => {
    const panel = guard({ height: 31, depth: 120 });
    const row = capOf(panel);
    expect(row?.fastener.length).toBe(50);
    expect(row?.plug?.depth).toBe(7);
    // 31 + 30 - 7 - 50 = 4.
    expect(31 + panel.rail.height - panel.groove.depth - 7 - 50).toBeGreaterThanOrEqual(inches(1 / 8));
  });

  test('none where no screw is short enough, and none without a cap', () => {
    expect(capOf(guard({ height: 31, depth: 120 }, { rail: { height: 20 }, groove: { depth: 12 } }))).toBeUndefined();
    expect(capOf(guard({ height: 12, depth: 120 }))).toBeUndefined();
  });

  test('of any guard they end over the groove and stand clear of every stave', () => {
    let judged = 0;
    fc.assert(
      fc.property(arbitraryJob({ use: 'guard', panels: 1 }), (file) => {
        for (const panel of solve(readJob(JSON.stringify(file)))) {
          const row = capOf(panel);
          if (!row || panel.details.use !== 'guard' || row.fastener.kind !== 'screw') continue;
          judged += 1;
          const { length, counterbore } = row.fastener;
          const over = (panel.details.cap?.height ?? 0) + panel.rail.height - panel.groove.depth - counterbore - length;
          expect(over).toBeGreaterThanOrEqual(inches(1 / 8) - 1e-6);
          for (const { x } of row.places)
            for (const left of panel.staves.lefts)
              expect(Math.max(left - x, x - left - panel.staves.width)).toBeGreaterThan(row.fastener.diameter / 2);
        }
      }),
      { seed: 20261124, numRuns: 80 },
    );
    expect(judged).toBeGreaterThan(5);
  });
});
