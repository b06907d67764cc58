import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bendSlat } from '../../src/weave/bend.ts';
import { airShare, seeThrough } from '../../src/weave/light.ts';
import type { PanelOpenwork } from '../../src/weave/openwork.ts';
import { type NamedWeave, swapRow, weaveNames, weaveSides } from '../../src/weave/pattern.ts';
import { inch } from '../../src/wood/inchpound.ts';
import { panelSolid, plainSolid, tracedShare } from './beam.ts';
import { typical, typicalPlain } from './typical.ts';

const { modulus: _modulus, strength: _strength, ...sizes } = typicalPlain;
const plain = { ...sizes, slatHeight: 1.625 * inch };

// Elevation; for azimuths 0, 30, 60 and gaps 0, 1/8, 1/4 in: by bisection on each face, then 10⁷ rays through the solid
// bent to the exact elastica.
const figures = [
  [0, 0, [0, 0.066531, 0.12419], [0, 0.066604, 0.12403]],
  [0, 15, [0.024333, 0.057173, 0.099672], [0.024327, 0.057156, 0.099574]],
  [0, 30, [0.05243, 0.079605, 0.109061], [0.052448, 0.079741, 0.109017]],
  [0, 45, [0.090812, 0.11391, 0.137332], [0.090928, 0.114057, 0.137375]],
  [0, 60, [0.157291, 0.174865, 0.192071], [0.157548, 0.174956, 0.192454]],
  [0, 75, [0.067771, 0.108141, 0.160611], [0.06764, 0.10805, 0.160683]],
  [30, 0, [0, 0.064174, 0.119792], [0, 0.06414, 0.119803]],
  [30, 15, [0.026156, 0.056742, 0.094857], [0.026167, 0.056746, 0.094848]],
  [30, 30, [0.056358, 0.08164, 0.108634], [0.056556, 0.081784, 0.108724]],
  [30, 45, [0.097614, 0.118796, 0.140092], [0.097661, 0.118788, 0.140119]],
  [30, 60, [0.169073, 0.184481, 0.199541], [0.169248, 0.184826, 0.199848]],
  [30, 75, [0.042735, 0.070238, 0.104659], [0.042585, 0.070272, 0.104697]],
  [60, 0, [0, 0.059461, 0.110994], [0, 0.059512, 0.110878]],
  [60, 15, [0.038923, 0.063643, 0.091227], [0.038936, 0.063811, 0.091198]],
  [60, 30, [0.083867, 0.103621, 0.123581], [0.084013, 0.103739, 0.123741]],
  [60, 45, [0.145261, 0.159984, 0.174391], [0.145566, 0.160223, 0.174816]],
  [60, 60, [0.085511, 0.133816, 0.174482], [0.085493, 0.133805, 0.17456]],
  [60, 75, [0.001832, 0.019348, 0.03951], [0.001825, 0.019368, 0.039635]],
] as const;

test.each(figures)('seeThrough() of plain weave at azimuth %d, elevation %d', (azimuth, elevation, worked, traced) => {
  for (const [i, gap] of [0, 0.125, 0.25].entries()) {
    const share = seeThrough({ ...plain, gap: gap * inch, elevation, azimuth });
    expect(Math.abs(share - (worked[i] ?? 0))).toBeLessThan(1.5e-6);
    expect(Math.abs(share - (traced[i] ?? 0))).toBeLessThan(0.00045);
  }
});

// f = (tan θ / 2) a with a = 0.181900105, the slat's thickness taken square through the panel: at 15, 30, 45, 60°.
test.each([
  [15, 0.02437],
  [30, 0.05251],
  [45, 0.0909501],
  [60, 0.15753],
])('seeThrough() at %d° is within 0.2 percent of the closed form %d', (elevation, share) => {
  expect(Math.abs(seeThrough({ ...plain, gap: 0, elevation }) / share - 1)).toBeLessThan(0.002);
});

// tan θ = h/2A = 1.625 / 0.8125: 63.4°; the most is 0.1880 at 65°.
test('seeThrough() is most near 65° with courses edge to edge', () => {
  const at = (elevation: number) => seeThrough({ ...plain, gap: 0, elevation });
  expect(at(65)).toBeCloseTo(0.188, 3);
  for (const elevation of [55, 60, 63, 67, 70]) expect(at(elevation)).toBeLessThan(at(65));
});

describe('seeThrough() against random rays through the solid', () => {
  test.each([
    [0, 30, 0],
    [0, 60, 30],
    [3, 0, 0],
    [3, 45, 60],
  ])('plain weave, gap %d, elevation %d, azimuth %d', (gap, elevation, azimuth) => {
    const { share, error } = tracedShare(plainSolid(gap), elevation, azimuth, 15000);
    expect(Math.abs(seeThrough({ ...plain, gap, elevation, azimuth }) - share)).toBeLessThan(3.5 * error);
  });

  test.each<[NamedWeave, number, number, number]>([
    ['two-over-two twill', 0, 30, 0],
    ['two-over-two twill', 2, -40, 0],
    ['two-over-two basket', 4, 50, 0],
    ['paired courses', 1, 20, 0],
    ['two-over-one twill', 1, 35, 0],
  ])('a panel in %s, gap %d, elevation %d, azimuth %d', (weave, gap, elevation, azimuth) => {
    const { rows, rowOfCourse, repeat } = weaveSides({ weave, courses: 12, staves: 7 });
    const panel = { ...typical, clearWidth: 1327, staves: { ...typical.staves, count: 7 }, gap, rows, rowOfCourse };
    const bends = rows.map((sides) => bendSlat({ ...panel, sides }));
    const solid = panelSolid(panel, bends, rowOfCourse.slice(0, repeat.courses));
    const { share, error } = tracedShare(solid, elevation, azimuth, 15000);
    expect(Math.abs(seeThrough({ ...panel, bends, elevation, azimuth }) - share)).toBeLessThan(3.5 * error);
  });
});

const panelOf = (weave: NamedWeave, staves = 8, gap = 2): PanelOpenwork => ({
  ...typical,
  clearWidth: (staves - 1) * 277.8125 + 19.05,
  staves: { ...typical.staves, count: staves },
  gap,
  ...weaveSides({ weave, courses: 36, staves }),
});

describe('laws of seeThrough() and airShare()', () => {
  const views = fc.record({
    weave: fc.constantFrom(...weaveNames),
    staves: fc.integer({ min: 4, max: 9 }),
    gap: fc.double({ min: 0, max: 12, noNaN: true }),
    elevation: fc.double({ min: -80, max: 80, noNaN: true }),
    azimuth: fc.double({ min: -60, max: 60, noNaN: true }),
  });
  const hold = (law: (panel: PanelOpenwork, elevation: number, azimuth: number) => void) =>
    fc.assert(
      fc.property(views, ({ weave, staves, gap, elevation, azimuth }) => {
        law(panelOf(weave, staves, gap), elevation, azimuth);
      }),
      { seed: 20261124, numRuns: 40 },
    );

  test('a share lies from 0 to what the staves leave', () => {
    hold((panel, elevation, azimuth) => {
      const bays = 1 - (panel.staves.count * panel.staves.width) / panel.clearWidth;
      for (const share of [seeThrough({ ...panel, elevation, azimuth }), airShare(panel)]) {
        expect(share).toBeGreaterThanOrEqual(0);
        expect(share).toBeLessThanOrEqual(bays + 1e-9);
      }
    });
  });

  test('from the opposite direction the same is open', () => {
    hold((panel, elevation, azimuth) => {
      const turned = { ...panel, rows: panel.rows.map(swapRow) };
      const here = seeThrough({ ...panel, elevation, azimuth });
      expect(Math.abs(seeThrough({ ...turned, elevation: -elevation, azimuth: -azimuth }) - here)).toBeLessThan(1e-6);
    });
  });

  test('curves given or worked out, and rows listed for one repeat or for all courses, make no difference', () => {
    hold((panel, elevation, azimuth) => {
      const bends = panel.rows.map((sides) => bendSlat({ ...typical, ...panel, sides }));
      const all = seeThrough({ ...panel, elevation, azimuth });
      expect(seeThrough({ ...panel, bends, elevation, azimuth })).toBe(all);
      const short = { ...panel, rowOfCourse: panel.rowOfCourse?.slice(0, 12) ?? [] };
      expect(seeThrough({ ...short, elevation, azimuth })).toBe(all);
      expect(airShare(short)).toBe(airShare(panel));
    });
  });

  test('with courses edge to edge nothing is seen level, whatever the azimuth', () => {
    hold((panel, _, azimuth) => {
      expect(seeThrough({ ...panel, gap: 0, elevation: 0, azimuth })).toBeLessThan(1e-12);
    });
  });
});

test('seeThrough() of a wide panel in plain weave comes to that without ends', () => {
  const view = { gap: 3, elevation: 30, azimuth: 0 };
  const wide = seeThrough({ ...panelOf('plain', 41, 3), ...view });
  expect(Math.abs(wide / seeThrough({ ...plain, ...view }) - 1)).toBeLessThan(0.03);
});

// ∫ over the bay of √(g² + (2ζ − t)²) by the pitch and the course: worked, and on the exact shape.
test.each([
  [0, 0.1819, 0.181872],
  [0.125, 0.192713, 0.192709],
  [0.25, 0.216022, 0.216026],
  [0.5, 0.273231, 0.273236],
  [1, 0.379884, 0.379887],
])('airShare() of plain weave with a gap of %d in is %d', (gap, worked, exact) => {
  const share = airShare({ ...plain, gap: gap * inch });
  expect(Math.abs(share - worked)).toBeLessThan(1e-6);
  expect(Math.abs(share - exact)).toBeLessThan(4e-5);
});

test.each([
  [{ elevation: 90 }, 'invalid elevation: 90'],
  [{ elevation: 0, azimuth: 80 }, 'invalid azimuth: 80'],
  [{ elevation: 0, gap: -1 }, 'invalid gap: -1'],
  [{ elevation: 0, pitch: 3 }, 'invalid pitch: 3'],
])('seeThrough() with %o is refused', (wrong, message) => {
  expect(() => seeThrough({ ...plain, gap: 0, ...wrong })).toThrow(message);
});

test('seeThrough() of a panel whose courses name a row that is not there is refused', () => {
  expect(() => seeThrough({ ...panelOf('plain'), rowOfCourse: [0, 5], elevation: 0 })).toThrow(
    'invalid row of a course: 5',
  );
});
