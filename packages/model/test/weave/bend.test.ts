import { describe, expect, test } from 'vitest';
import { bendSlat, sampleSlat } from '../../src/weave/bend.ts';
import { plainWeave } from '../../src/weave/plain.ts';
import { inch } from '../../src/wood/inchpound.ts';
import { inInches, inPounds, offset, plainRow, sidesOf, typical, typicalPlain, withStaves } from './typical.ts';

describe('bendSlat() of the typical panel, f b f b f', () => {
  const bend = bendSlat({ ...typical, sides: sidesOf('fbfbf') });

  // κ at the arrises that touch, 0.75, 11.6875, 21.875, 22.625 ... in: 2(p + b) m₂ − b m₃ = 12A(1/p + 1/b) and
  // −b m₂ + (2b + 3w) m₃ = 12A/b with p 10.9375, b 10.1875, w 0.75: m₂ = 0.0302609254, m₃ = 0.0347761673 1/in.
  test('touches both arrises of the middle stave and the inner one of the others', () => {
    expect(bend.knots.map(({ x }) => Number(inInches(x).toFixed(9)))).toEqual([
      0.75, 11.6875, 21.875, 22.625, 32.8125, 43.75,
    ]);
    const curvatures = [0, 0.0302609254, -0.0347761673, -0.0347761673, 0.0302609254, 0];
    bend.knots.forEach(({ curvature }, i) => {
      expect(curvature * inch).toBeCloseTo(curvatures[i] ?? 0, 10);
    });
  });

  // Stress 1.42e6 * 0.0347761673 * 0.09375 = 4629.577 psi, over 11 100 = 0.417079; radius 1/κ = 28.7553 in.
  test('takes 0.417 of the strength at a radius of 28.755 in', () => {
    expect(bend.use).toBeCloseTo(0.417079033, 9);
    expect(bend.maxStress / typical.strength).toBeCloseTo(4629.57727 / 11100, 9);
    expect(inInches(bend.minRadius ?? 0)).toBeCloseTo(28.7553252, 7);
  });

  // EI = 1.42e6 * 1.625 * 0.1875³ / 12 = 1267.54761 lb in²; outer force EI * m₂ / b ... = 3.50694067 lb.
  test('presses on the staves with 3.507, 11.599, 16.184, 11.599, 3.507 lb', () => {
    const pounds = [3.50694067, 11.5989761, 16.1840709, 11.5989761, 3.50694067];
    bend.staveForces.forEach((force, j) => {
      expect(inPounds(force)).toBeCloseTo(pounds[j] ?? 0, 7);
    });
    expect(bend.touched).toEqual([1, 2, 3, 4, 5]);
    expect(bend.gripped).toBe(true);
  });

  // 44.5 + 0.171033305 − 0.09375 * 2 * 0.129448860 = 44.6467616 in, 44 41/64.
  test('is 0.171 in longer than straight, and cut square at 44.6468 in', () => {
    expect(inInches(bend.extraLength)).toBeCloseTo(0.171033305, 9);
    expect(inInches(bend.pathLength)).toBeCloseTo(44.671033305, 8);
    expect(inInches(bend.cutLength)).toBeCloseTo(44.6467616, 7);
    expect(bend.endSlopes[1]).toBeCloseTo(0.12944886, 8);
    expect(bend.endSlopes[0]).toBeCloseTo(-0.12944886, 8);
    for (const end of bend.endOffsets) expect(inInches(end)).toBeCloseTo(0.503336645, 8);
  });
});

// Shares of strength and lengths: exact from the true elastica with rolling contact, model the worked values. in.
test.each([
  [8, 0.771533, 0.779856, 0.243458],
  [9, 0.610833, 0.616021, 0.212809],
  [10, 0.495538, 0.498938, 0.188992],
  [11, 0.410034, 0.412354, 0.169956],
  [12, 0.344882, 0.346519, 0.154396],
  [13, 0.294102, 0.29529, 0.141441],
  [14, 0.253761, 0.254644, 0.130488],
  [16, 0.194495, 0.195012, 0.112982],
])('bendSlat() at a pitch of %d in is up to 1.1 percent over the exact %d', (pitch, exact, use, extra) => {
  const bend = bendSlat({ ...withStaves(5, pitch), sides: sidesOf('fbfbf') });
  expect(bend.use).toBeCloseTo(use, 6);
  expect(inInches(bend.extraLength)).toBeCloseTo(extra, 6);
  expect(bend.use / exact).toBeGreaterThan(1);
  expect(bend.use / exact).toBeLessThan(1.011);
});

// Seven staves 3/4 x 3/4 in 52 1/4 in. Model: use, extra length, forces (lb); exact: square cut length, ends (in).
const floats = { ...typical, clearWidth: 52.25 * inch, staves: { count: 7, width: 0.75 * inch, depth: 0.75 * inch } };
test.each([
  [
    'fbfbfbf',
    0.858265,
    0.424782,
    [8.4622, 28.2284, 42.8943, 46.2561, 42.8943, 28.2284, 8.4622],
    52.638369,
    0.61516,
    0.61516,
  ],
  ['fbbffbb', 0.261697, 0.292081, [2.4245, 1.496, 7.9902, 7.9902, 1.496, 2.4245, 0], 52.515615, 0.57442, -1.77332],
  ['ffbbffb', 0.261697, 0.292081, [0, 2.4245, 1.496, 7.9902, 7.9902, 1.496, 2.4245], 52.515615, 1.77332, -0.57442],
  ['fbffbff', 0.573269, 0.435675, [7.0588, 18.8419, 11.7831, 11.7831, 18.8419, 7.0588, 0], 52.652775, 0.6044, 2.13977],
  ['fbbbfbb', 0.554158, 0.374386, [1.2238, 0.4613, 0, 11.207, 17.268, 6.8235, 0], 52.596098, 0.56692, -2.11779],
])(
  'bendSlat() of %s lets no stave pull and leaves untouched ones at zero',
  (row, use, extra, forces, cut, left, right) => {
    const bend = bendSlat({ ...floats, sides: sidesOf(row) });
    expect(bend.use).toBeCloseTo(use, 6);
    expect(inInches(bend.extraLength)).toBeCloseTo(extra, 6);
    bend.staveForces.forEach((force, j) => {
      expect(inPounds(force)).toBeCloseTo(forces[j] ?? 0, 4);
    });
    expect(Math.abs(inInches(bend.cutLength) - cut)).toBeLessThan(0.0006);
    expect(Math.abs(inInches(bend.endOffsets[0]) / left - 1)).toBeLessThan(0.01);
    expect(Math.abs(inInches(bend.endOffsets[1]) / right - 1)).toBeLessThan(0.01);
  },
);

// Closed forms of the model for few staves: 3: 12A/[b(2b + 3w)]; 4: 12A(p + b)/[pb(2p + b)]; 5 and 6 as worked, 1/in.
test.each([
  [3, 0.0211503915],
  [4, 0.0288262579],
  [5, 0.0347761673],
  [6, 0.0387216918],
])('bendSlat() of %d staves in plain weave bends to its closed form', (count, curvature) => {
  expect(bendSlat({ ...withStaves(count), sides: plainRow(count) }).maxCurvature * inch).toBeCloseTo(curvature, 10);
});

// While weaving, a slat is a panel of fewer staves: 0.550, 0.749, 0.904, 1.006, 1.004 of the long panel's curvature.
test.each([
  [3, 0.55],
  [4, 0.749],
  [5, 0.904],
  [6, 1.006],
  [7, 1.004],
])('bendSlat() of %d staves comes to %d of plainWeave()', (count, share) => {
  const bend = bendSlat({ ...withStaves(count), sides: plainRow(count) });
  expect(bend.maxCurvature / plainWeave(typicalPlain).curvature).toBeCloseTo(share, 3);
});

test('bendSlat() far from the ends of forty staves is plainWeave()', () => {
  const panel = withStaves(41);
  const bend = bendSlat({ ...panel, sides: plainRow(41) });
  const { curvature, forcePerHeight, midSlope, arrisSlope } = plainWeave(typicalPlain);
  const middle = panel.clearWidth / 2;
  expect(sampleSlat(bend, middle).curvature / -curvature).toBeCloseTo(1, 8);
  expect(sampleSlat(bend, middle - panel.staves.width / 2).slope / arrisSlope).toBeCloseTo(1, 8);
  expect(sampleSlat(bend, middle - typicalPlain.pitch / 2).slope / midSlope).toBeCloseTo(1, 8);
  expect((bend.staveForces[20] ?? 0) / (forcePerHeight * panel.slat.height)).toBeCloseTo(1, 8);
});

describe('bendSlat() of rows that grip nothing', () => {
  test('a row without a change of side lies flat on the staves', () => {
    const bend = bendSlat({ ...typical, sides: sidesOf('bbbbb') });
    expect(bend).toMatchObject({
      gripped: false,
      maxCurvature: 0,
      minRadius: null,
      use: 0,
      extraLength: 0,
      touched: [],
    });
    expect(bend.endOffsets).toEqual([-offset, -offset]);
    expect(bend.cutLength).toBe(typical.clearWidth);
  });

  // Through the facing arrises of staves 2 and 3, 10.1875 in apart: slope −2 * 0.40625 / 10.1875 = −0.0797546.
  test('a row with one change is straight and tilted', () => {
    const bend = bendSlat({ ...typical, sides: sidesOf('ffbbb') });
    expect(bend).toMatchObject({ gripped: false, maxCurvature: 0, touched: [] });
    expect(bend.endSlopes[0]).toBeCloseTo(-0.0797546, 7);
    expect(bend.extraLength).toBeCloseTo((bend.endSlopes[0] ** 2 * typical.clearWidth) / 2, 9);
  });

  test('end stops grip a row with one change only if its straight line would overrun them', () => {
    const bend = (stop: number) => bendSlat({ ...typical, sides: sidesOf('ffbbb'), endStop: stop * inch });
    expect(bend(0.45).gripped).toBe(true);
    expect(Math.abs(inInches(bend(0.45).endOffsets[1]))).toBeCloseTo(0.45, 9);
    expect(bend(3)).toMatchObject({ gripped: false, stopForces: [0, 0] });
  });
});

test.each([
  [{ sides: sidesOf('fbf') }, 'invalid number of sides: 3 (expected one a stave, 5)'],
  [{ staves: { count: 1, width: 19, depth: 15 }, sides: sidesOf('f') }, 'invalid number of staves: 1'],
  [{ clearWidth: 95 }, 'invalid clear width: 95'],
  [{ endStop: 5 }, 'invalid end stop: 5'],
  [{ modulus: 0 }, 'invalid modulus: 0'],
  [{ slat: { thickness: -1, height: 40 } }, 'invalid thickness: -1'],
])('bendSlat() with %o is refused', (wrong, message) => {
  expect(() => bendSlat({ ...typical, sides: sidesOf('fbfbf'), ...wrong })).toThrow(message);
});
