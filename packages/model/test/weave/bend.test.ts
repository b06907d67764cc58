import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bendSlat, type SlatToBend, sampleSlat } from '../../src/weave/bend.ts';
import { mirrorRow, type Side, swapRow } from '../../src/weave/pattern.ts';
import { plainWeave } from '../../src/weave/plain.ts';
import { inch } from '../../src/wood/inchpound.ts';
import { restingStrip } from './strip.ts';
import {
  everyRow,
  inInches,
  inPounds,
  offset,
  plainRow,
  sidesOf,
  typical,
  typicalPlain,
  withStaves,
} from './typical.ts';

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

describe('bendSlat() against a strip of hundreds of pieces at its least energy', () => {
  const cases: readonly (readonly [name: string, slat: SlatToBend])[] = [
    ['fbfbf', { ...typical, sides: sidesOf('fbfbf') }],
    ['fbbffbb', { ...floats, sides: sidesOf('fbbffbb') }],
    ['fbffbff', { ...floats, sides: sidesOf('fbffbff') }],
    ['fbbbfbb', { ...floats, sides: sidesOf('fbbbfbb') }],
    // Narrow staves: the second one is passed without a touch.
    ['fbbfb', { ...typical, clearWidth: 1000, staves: { count: 5, width: 7, depth: 15 }, sides: sidesOf('fbbfb') }],
  ];

  test.each(cases)('%s: the same problem gives the same bending, forces and length', (_, slat) => {
    const bend = bendSlat(slat);
    const strip = restingStrip(slat, 'small');
    expect(Math.abs(bend.maxCurvature / strip.maxCurvature - 1)).toBeLessThan(5e-4);
    expect(Math.abs(bend.extraLength - strip.extraLength)).toBeLessThan(5e-4 * bend.extraLength);
    const most = Math.max(...bend.staveForces);
    bend.staveForces.forEach((force, j) => {
      expect(Math.abs(force - (strip.staveForces[j] ?? 0))).toBeLessThan(5e-4 * most);
    });
    strip.x.forEach((x, i) => {
      expect(Math.abs(sampleSlat(bend, x).z - (strip.z[i] ?? 0))).toBeLessThan(1e-3 * offset);
    });
  });

  test.each(cases)('%s: the true elastica round true corners bends 0 to 1.4 percent less', (_, slat) => {
    const bend = bendSlat(slat);
    const strip = restingStrip(slat, 'elastica');
    const over = bend.maxCurvature / strip.maxCurvature - 1;
    expect(over).toBeGreaterThan(0);
    expect(over).toBeLessThan(0.014);
    expect(Math.abs(bend.extraLength - strip.extraLength)).toBeLessThan(0.006 * inch * 0.1);
  });

  test.each([
    ['ffbbffb', 0.5],
    ['ffbbb', 0.45],
    ['fffff', 0.45],
    ['ffffb', 0.6],
  ])('%s between end stops at %d in is the same line', (row, stop) => {
    const slat = { ...withStaves(row.length), sides: sidesOf(row), endStop: stop * inch };
    const bend = bendSlat(slat);
    const strip = restingStrip(slat, 'small');
    if (bend.gripped) expect(Math.abs(bend.maxCurvature / strip.maxCurvature - 1)).toBeLessThan(5e-4);
    else expect(strip.maxCurvature * slat.clearWidth).toBeLessThan(1e-5);
    const most = Math.max(1, ...bend.staveForces);
    bend.staveForces.forEach((force, j) => {
      expect(Math.abs(force - (strip.staveForces[j] ?? 0))).toBeLessThan(5e-4 * most);
    });
  });
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

describe('bendSlat() of every row of 3 to 9 staves', () => {
  const rows = [3, 4, 5, 6, 7, 8, 9].flatMap((count) => everyRow(count).map((sides) => ({ count, sides })));
  const bendAt = (count: number, sides: readonly Side[], share: number) => {
    const width = share * 277.8125;
    const clearWidth = (count - 1) * 277.8125 + width;
    const slat = { ...typical, clearWidth, staves: { count, width, depth: 15.875 } };
    return { slat: { ...slat, sides }, bend: bendSlat({ ...slat, sides }) };
  };

  // These are all conditions of a least-energy line, so they prove it: clear of every arris, no stave pulls, in balance.
  test.each([0.02, 0.07, 0.2])('with w/p = %d passes every arris, pulls nowhere and is in balance', (share) => {
    for (const { count, sides } of rows) {
      const { slat, bend } = bendAt(count, sides, share);
      for (const [j, side] of sides.entries())
        for (const x of [j * 277.8125, j * 277.8125 + slat.staves.width])
          expect(side * sampleSlat(bend, x).z - offset).toBeGreaterThan(-1e-9 * offset);
      for (const force of bend.staveForces) expect(force).toBeGreaterThanOrEqual(0);
      const net = bend.staveForces.reduce((sum, force, j) => sum + force * (sides[j] ?? 0), 0);
      expect(Math.abs(net)).toBeLessThan(1e-9 * (1 + Math.max(...bend.staveForces)));
    }
  });

  test('touches an end stave just when its neighbour is on the other side, and no stave without a change beside it', () => {
    for (const { count, sides } of rows) {
      const { bend } = bendAt(count, sides, 0.07);
      if (!bend.gripped) continue;
      const touched = new Set(bend.touched.map((stave) => stave - 1));
      expect(touched.has(0)).toBe(sides[0] !== sides[1]);
      expect(touched.has(count - 1)).toBe(sides[count - 1] !== sides[count - 2]);
      for (const j of touched) expect(sides[j - 1] === sides[j] && sides[j] === sides[j + 1]).toBe(false);
    }
  });

  test.each([
    [0.1, 1.008],
    [0.2, 1.04],
  ])('with w/p = %d bends no more than %d of plainWeave()', (share, bound) => {
    const { curvature } = plainWeave({ ...typicalPlain, pitch: 277.8125, staveWidth: share * 277.8125 });
    for (const { count, sides } of rows)
      expect(bendAt(count, sides, share).bend.maxCurvature).toBeLessThanOrEqual(bound * curvature);
  });
});

describe('laws of bendSlat()', () => {
  const slats = fc
    .record({
      sides: fc.array(fc.constantFrom<Side>(1, -1), { minLength: 2, maxLength: 16 }),
      bay: fc.double({ min: 80, max: 500, noNaN: true }),
      width: fc.double({ min: 3, max: 60, noNaN: true }),
      depth: fc.double({ min: 5, max: 40, noNaN: true }),
      thickness: fc.double({ min: 2, max: 10, noNaN: true }),
      height: fc.double({ min: 15, max: 90, noNaN: true }),
      stop: fc.option(fc.double({ min: 1.001, max: 4, noNaN: true }), { nil: undefined }),
    })
    .map(
      ({ sides, bay, width, depth, thickness, height, stop }): SlatToBend => ({
        clearWidth: sides.length * width + (sides.length - 1) * bay,
        staves: { count: sides.length, width, depth },
        slat: { thickness, height },
        sides,
        modulus: 9800,
        strength: 77,
        ...(stop !== undefined && { endStop: (stop * (depth + thickness)) / 2 }),
      }),
    );
  const hold = (law: (slat: SlatToBend) => void) =>
    fc.assert(fc.property(slats, law), { seed: 20261124, numRuns: 300 });
  const near = (a: number, b: number, scale: number) => expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-7 * scale);

  test('stress does not depend on the slat’s height, forces are in proportion to it', () => {
    hold((slat) => {
      const one = bendSlat(slat);
      const two = bendSlat({ ...slat, slat: { ...slat.slat, height: 2 * slat.slat.height } });
      expect(two.maxStress).toBe(one.maxStress);
      two.staveForces.forEach((force, j) => {
        near(force, 2 * (one.staveForces[j] ?? 0), force);
      });
    });
  });

  test('forces are never negative and balance with those of the stops', () => {
    hold((slat) => {
      const { staveForces, stopForces, endOffsets } = bendSlat(slat);
      for (const force of [...staveForces, ...stopForces]) expect(force).toBeGreaterThanOrEqual(0);
      const net = staveForces.reduce((sum, force, j) => sum + force * (slat.sides[j] ?? 0), 0);
      const stops = stopForces.reduce((sum, force, end) => sum - force * Math.sign(endOffsets[end] ?? 0), 0);
      near(net + stops, 0, Math.max(...staveForces));
    });
  });

  test('front and back swapped change no length and turn the curve over', () => {
    hold((slat) => {
      const one = bendSlat(slat);
      const other = bendSlat({ ...slat, sides: swapRow(slat.sides) });
      near(other.cutLength, one.cutLength, one.cutLength);
      near(other.use, one.use, one.use);
      for (const x of [0, 0.3, 0.71, 1])
        near(sampleSlat(other, x * slat.clearWidth).z, -sampleSlat(one, x * slat.clearWidth).z, slat.clearWidth);
    });
  });

  test('the mirror row gives the mirrored curve and forces', () => {
    hold((slat) => {
      const one = bendSlat(slat);
      const mirror = bendSlat({ ...slat, sides: mirrorRow(slat.sides) });
      near(mirror.cutLength, one.cutLength, one.cutLength);
      mirror.staveForces.forEach((force, j) => {
        near(force, one.staveForces.at(-1 - j) ?? 0, Math.max(...one.staveForces));
      });
      for (const x of [0, 0.3, 0.71, 1])
        near(sampleSlat(mirror, x * slat.clearWidth).z, sampleSlat(one, (1 - x) * slat.clearWidth).z, slat.clearWidth);
    });
  });

  test('all lengths times k: lengths times k, the same use, the same staves touched', () => {
    hold((slat) => {
      const k = 25.4;
      const one = bendSlat(slat);
      const big = bendSlat({
        ...slat,
        clearWidth: k * slat.clearWidth,
        staves: { ...slat.staves, width: k * slat.staves.width, depth: k * slat.staves.depth },
        slat: { thickness: k * slat.slat.thickness, height: k * slat.slat.height },
        ...(slat.endStop !== undefined && { endStop: k * slat.endStop }),
      });
      near(big.use, one.use, one.use);
      near(big.cutLength, k * one.cutLength, k * one.cutLength);
      near(big.endOffsets[1], k * one.endOffsets[1], k * slat.clearWidth);
      expect(big.touched).toEqual(one.touched);
    });
  });

  test('the result is data: it comes back from JSON as it was', () => {
    hold((slat) => {
      const bend = bendSlat(slat);
      expect(JSON.parse(JSON.stringify(bend))).toEqual(bend);
    });
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
