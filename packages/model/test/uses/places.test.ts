import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arbitraryJob } from '../../../../test/support/jobs.ts';
import {
  dividerDetails,
  ESCAPE_CODE,
  facesOf,
  GUARD_CODE,
  guardDetails,
  largestBall,
  layRun,
  massOf,
  openworkOf,
  POOL_CODE,
  panelBall,
  panelCentre,
  readJob,
  screenDetails,
  sideFixings,
  solve,
  windLoad,
} from '../../src/index.ts';
import { spread } from '../../src/uses/place.ts';
import { inches, jobOf, panelOf } from '../support.ts';

const settings = { seed: 20261124, numRuns: 60 };

describe('spread', () => {
  test.each([
    [0, 1000, 400, [0, 1000 / 3, 2000 / 3, 1000]],
    [0, 1000, 500, [0, 500, 1000]],
    [100, 140, 500, [120]],
  ])('spread(%d, %d, %d)', (from, to, most, places) => {
    expect(spread(from, to, most)).toEqual(places.map((place) => expect.closeTo(place, 9)));
  });
});

describe('code figures, with their sections', () => {
  // IRC and IBC in inches and pounds; millimetres as printed in brackets there.
  test.each([
    [GUARD_CODE.drop, 762, 'R312.1.1'],
    [GUARD_CODE.height, 914, 'R312.1.2'],
    [GUARD_CODE.heightElsewhere, 1067, '1015.3'],
    [GUARD_CODE.sphere, 102, 'R312.1.3'],
    [ESCAPE_CODE.height, 610, 'R310.2.1'],
    [ESCAPE_CODE.width, 508, 'R310.2.1'],
    [POOL_CODE.height, 1219, '305.2'],
    [POOL_CODE.horizontals, 1143, '305.2.5'],
    [POOL_CODE.latch, 1372, '305.3.3'],
  ])('%j is %d mm, section %s', (figure, mm, section) => {
    expect(Math.round(figure.value)).toBe(mm);
    expect(figure.source).toContain(section);
  });

  test('200 lb is 0.89 kN, 50 lb 0.22 kN, 50 lb/ft 0.73 kN/m, 5.7 square feet 0.53 m²', () => {
    expect(GUARD_CODE.topLoad.value / 1000).toBeCloseTo(0.89, 2);
    expect(GUARD_CODE.infillLoad.value / 1000).toBeCloseTo(0.22, 2);
    expect(GUARD_CODE.lineLoad.value).toBeCloseTo(0.73, 2);
    expect(ESCAPE_CODE.area.value / 1e6).toBeCloseTo(0.53, 2);
  });
});

describe('screenDetails', () => {
  const panel = panelOf({ size: { width: 44, height: 52 }, screen: { mounting: 'blocks', standoff: 1.5, glass: 3 } });
  const details = screenDetails(panel);

  test('blocks stand behind the fixings, fixings on the middles of the stiles', () => {
    expect(details.blocks?.places.map(({ x, y }) => [x, y])).toEqual(details.fixings.places.map(({ x, y }) => [x, y]));
    for (const { x } of details.fixings.places)
      expect(Math.min(x, panel.outside.width - x)).toBeCloseTo(panel.stile.width / 2, 9);
  });

  test('the screw goes through stile and block into the wall', () => {
    expect(details.fixings.screw.through).toBeCloseTo(inches(3), 9);
    expect(details.fixings.screw.length).toBeGreaterThan(inches(3));
  });

  test('before glass the tip stays an inch short where enough thread still holds; else it is the shortest that holds', () => {
    const tip = (glass: number) => {
      const near = panelOf({ size: { width: 44, height: 52 }, screen: { mounting: 'blocks', standoff: 1.5, glass } });
      return screenDetails(near).fixings.screw.length - near.stile.depth;
    };
    // Through 1 1/2 in of stile and of block: No. 10 is sold to 4 in, less than six diameters, 1.14 in, of thread; No. 12 of
    // 4 1/2 in holds 1 1/2 in, its tip 3 in behind the frame.
    expect(tip(4)).toBeCloseTo(inches(3), 6);
    expect(tip(3.5)).toBeCloseTo(inches(3), 6);
    expect(tip(3)).toBeCloseTo(inches(3), 6);
    for (const glass of [2.5, 3, 4, 6]) {
      const near = panelOf({ size: { width: 44, height: 52 }, screen: { mounting: 'blocks', standoff: 1, glass } });
      const { screw } = screenDetails(near).fixings;
      expect(screw.penetration).toBeGreaterThanOrEqual(6 * screw.diameter - 1e-6);
    }
  });

  test('all fixings bear the weight together; the weave is further from the glass than the frame', () => {
    expect(details.shear * details.fixings.places.length).toBeCloseTo(details.mass * 9.80665, 6);
    expect((details.glass?.weave ?? 0) - (details.glass?.frame ?? 0)).toBeCloseTo(
      (inches(1.5) - inches(0.5) - 2 * inches(3 / 16)) / 2,
      6,
    );
  });

  test('the wind’s pull on the worst fixing is 0.6 × 0.7 of the force, over the fixings of one side', () => {
    const windy = panelOf({ size: { width: 44, height: 52 } }, { site: { wind: { speed: 50, exposure: 'C' } } });
    const { pull, perSide } = sideFixings(windy);
    const { outside } = windy;
    const load = windLoad({ width: outside.width, height: outside.height, speed: 50, exposure: 'C' });
    expect(pull).toBeCloseTo((0.6 * 0.7 * Math.max(load.force, load.leastForce)) / perSide, 6);
  });

  test('more wind never means fewer fixings, and they stay between the rails', () => {
    const counts = [10, 40, 70, 100, 119].map((speed) => {
      const windy = panelOf({ size: { width: 150, height: 90 } }, { site: { wind: { speed, exposure: 'D' } } });
      const { places, perSide, spacing } = sideFixings(windy);
      expect(spacing).toBeLessThanOrEqual(inches(24));
      for (const { y } of places) {
        expect(y).toBeGreaterThan(windy.rail.height);
        expect(y).toBeLessThan(windy.outside.height - windy.rail.height);
      }
      return perSide;
    });
    expect(counts).toEqual([...counts].sort((a, b) => a - b));
    expect(counts.at(-1)).toBeGreaterThan(counts[0] ?? 0);
  });
});

describe('guardDetails', () => {
  const guard = (own: object = {}, panel: object = {}) =>
    guardDetails(panelOf({ use: 'guard', size: { width: 48, height: 30 }, guard: own, ...panel }));

  test('top is floor gap, panel and cap, unless the job says where it is', () => {
    const withCap = panelOf({
      use: 'guard',
      size: { width: 48, height: 30 },
      guard: { floor: 3, cap: { height: 1, depth: 4 } },
    });
    expect(guardDetails(withCap).top).toBeCloseTo(withCap.outside.height + inches(4), 9);
    expect(guard({ top: 42 }).top).toBeCloseTo(inches(42), 9);
  });

  test('the infill load on one stave: M = P L/4 − P a/8, stress 6 M/(w d²)', () => {
    const panel = panelOf({ use: 'guard', size: { width: 48, height: 30 } });
    const stave = guardDetails(panel).bending.find(({ of }) => of === 'stave');
    // 50 lb over 12 in of the clear height; staves 3/4 × 1/2 in.
    const clear = panel.clear.height / 25.4;
    const psi = (6 * ((50 * clear) / 4 - (50 * 12) / 8)) / (0.75 * 0.25);
    expect((stave?.stress ?? 0) / 0.006894757).toBeCloseTo(psi, 1);
  });

  test('the top load bends the cap where there is one, else the rail, and nothing under a handrail', () => {
    const of = (own: object) => guard(own).bending.map((bending) => bending.of);
    expect(of({})).toEqual(['slat', 'stave', 'rail']);
    expect(of({ cap: { height: 1, depth: 4 } })).toEqual(['slat', 'stave', 'cap rail']);
    expect(of({ top: 40 })).toEqual(['slat', 'stave']);
  });

  test('openings: slat to slat by the largest ball in the dry, post gap, floor gap, handrail gap', () => {
    const panel = panelOf({
      use: 'guard',
      opening: { width: 49, height: 36, gap: { sides: '1/2', top: 2, bottom: 3 } },
      guard: { floor: 3 },
    });
    const openings = Object.fromEntries(guardDetails(panel).openings.map(({ where, ball }) => [where, ball]));
    const slack = panel.courses.allowance - panel.movement.shrink;
    expect(openings['slat to slat']).toBeCloseTo(largestBall({ ...openworkOf(panel), slack }), 9);
    expect(openings['panel to post']).toBeCloseTo(inches(0.5), 9);
    expect(openings['panel to floor']).toBeCloseTo(inches(3), 9);
    expect(openings['panel to handrail']).toBeCloseTo(inches(2), 9);
    expect(panelBall(panel)).toBe(openings['slat to slat']);
  });
});

describe('layRun', () => {
  const panel = { use: 'guard', opening: { width: 1460, height: 1010, gap: { sides: 6, top: 0, bottom: 80 } } };
  const narrow = { ...panel, opening: { ...panel.opening, width: 985 } };
  const job = jobOf(panel, {
    unit: 'mm',
    panels: [
      { name: 'A', ...panel },
      { name: 'B', ...narrow },
    ],
    runs: [{ name: 'Edge', panels: ['A', 'B', 'A'], post: 90, gap: 6 }],
  });
  const run = layRun(job.runs[0] ?? never(), solve(job));

  test('posts, gaps and panels add up: 4 × 90 + 1460 + 985 + 1460 = 4265', () => {
    expect(run.total).toBeCloseTo(4265, 9);
    expect(run.posts.map(({ x }) => x)).toEqual([0, 1550, 2625, 4175].map((x) => expect.closeTo(x, 9)));
    expect(run.bays).toEqual([1460, 985, 1460].map((width) => expect.closeTo(width, 9)));
    expect(run.panels.map(({ x }) => x)).toEqual([96, 1646, 2721].map((x) => expect.closeTo(x, 9)));
  });

  test('level lines run through panels of different widths', () => {
    expect(run.level).toEqual({ equal: true, off: 0 });
    expect(run.panels[0]?.levels).toEqual(run.panels[1]?.levels);
  });

  test('without posts the panels stand side by side, the gap between them only', () => {
    const plain = layRun({ name: 'Row', panels: ['A', 'B'], post: 0, gap: 10 }, solve(job));
    expect(plain.total).toBeCloseTo(1448 + 10 + 973, 9);
    expect(plain.posts).toEqual([]);
  });
});

describe('dividerDetails', () => {
  test('the push that tips it is W × foot/2 over the height of the push', () => {
    const panel = panelOf({ use: 'divider', size: { width: 48, height: 66 }, divider: { feet: { length: 16 } } });
    const { tipping, mass, height } = dividerDetails(panel);
    const at = Math.min(1500, height);
    expect(tipping?.push).toBeCloseTo((mass * 9.80665 * inches(8)) / at, 6);
  });

  test('a track wants the panel and both clearances; two carriers share the weight', () => {
    const panel = panelOf({
      use: 'divider',
      size: { width: 48, height: 66 },
      divider: { stand: 'track', track: { above: 1, below: 1 } },
    });
    const { track, mass } = dividerDetails(panel);
    expect(track?.opening).toBeCloseTo(panel.outside.height + inches(2), 9);
    expect(2 * (track?.carrierLoad ?? 0)).toBeCloseTo(mass * 9.80665, 9);
  });

  test('carriers stand inside of the stiles, 1 1/2 in in, where no corner screw is', () => {
    const panel = panelOf({ use: 'divider', size: { width: 48, height: 66 }, divider: { stand: 'track' } });
    const xs = dividerDetails(panel).track?.carriers.map(({ x }) => x);
    expect(xs).toEqual([inches(3), panel.outside.width - inches(3)].map((x) => expect.closeTo(x, 9)));
  });

  // Plain weave seen from behind: identical for an even count of staves, a course off for an odd one.
  test.each([
    ['plain', 4, 'alike'],
    ['plain', 5, 'alike but shifted'],
    ['two-over-two twill', 8, 'mirrored'],
    ['two-over-two basket', 8, 'alike'],
  ])('facesOf(%s, %d staves) is %s', (weave, count, faces) => {
    expect(facesOf(panelOf({ size: { width: 60, height: 52 }, weave, stave: { count } }))).toBe(faces);
  });

  test('rows that no turn brings back are different', () => {
    const rows = ['++-+-', '-+-+-'];
    expect(facesOf(panelOf({ size: { width: 60, height: 52 }, weave: { rows }, stave: { count: 5 } }))).toBe(
      'different',
    );
  });
});

describe('panelCentre', () => {
  test('its mass is that of massOf, its middle on the panel’s axis, for any job', () => {
    fc.assert(
      fc.property(arbitraryJob({ panels: 1 }), (file) => {
        for (const panel of solve(readJob(JSON.stringify(file)))) {
          const centre = panelCentre(panel);
          expect(centre.mass).toBeCloseTo(massOf(panel).mass, 6);
          expect(centre.x).toBeCloseTo(panel.outside.width / 2, 6);
        }
      }),
      settings,
    );
  });

  test('a cap pulls the centre up: Σ m y / Σ m', () => {
    const bare = panelOf({ use: 'guard', size: { width: 48, height: 30 } });
    const capped = panelOf({ use: 'guard', size: { width: 48, height: 30 }, guard: { cap: { height: 1, depth: 4 } } });
    const cap = massOf(capped).members.find(({ name }) => name === 'cap rail') ?? never();
    const { mass, y } = panelCentre(bare);
    const expected = (mass * y + cap.mass * (bare.outside.height + inches(0.5))) / (mass + cap.mass);
    expect(panelCentre(capped).y).toBeCloseTo(expected, 6);
  });
});

function never(): never {
  throw new Error('missing');
}
