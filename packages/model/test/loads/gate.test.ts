import { describe, expect, test } from 'vitest';
import { braceSag, braceTakeUp, gateBrace, gateHinges, strutBuckling } from '../../src/loads/gate.ts';
import { inch, poundForce, psi } from '../../src/wood/inchpound.ts';

/** A gate in inches and pounds-force, as the worked numbers are. */
const gateOf = (width: number, weight: number, centre: number, latchLoad = 0) => ({
  width: width * inch,
  weight: weight * poundForce,
  centre: centre * inch,
  latchLoad: latchLoad * poundForce,
});
const ends = (x1: number, y1: number, x2: number, y2: number) => ({
  hinge: { x: x1 * inch, y: y1 * inch },
  latch: { x: x2 * inch, y: y2 * inch },
});

// 34 x 68 in, 27 lb in its middle, hinges 7 in from each end: a = 54.
const gate = gateOf(34, 27, 17);
const cable = ends(0, 68, 34, 0);
const strut = ends(0, 0, 34, 68);

describe('gateBrace()', () => {
  // ℓ = √(34² + 68²) = 76.0263112; T = 27 * 17 * ℓ / (34 * 68) = 15.0934588 lb; a plane-frame model gave the same.
  test('of the worked gate pulls a cable with 15.09 lb and pushes a strut with as much', () => {
    const pulled = gateBrace({ ...gate, ...cable });
    expect(pulled.length / inch).toBeCloseTo(76.0263112, 7);
    expect(pulled.tension / poundForce).toBeCloseTo(15.0934588, 7);
    expect(pulled.kind).toBe('cable');
    const pushed = gateBrace({ ...gate, ...strut });
    expect(pushed.tension).toBeCloseTo(-pulled.tension, 12);
    expect(pushed.kind).toBe('strut');
  });

  // Corner to corner with the weight in the middle: T = W ℓ / (2H) = 27 * 76.0263112 / 136.
  test('corner to corner is W ℓ / 2H, the weight in the middle unless said', () => {
    const { width, weight } = gate;
    expect(gateBrace({ width, weight, ...cable }).tension / poundForce).toBeCloseTo((27 * 76.0263112) / 136, 6);
  });

  // Ends inset: 459 ℓ / (30.5 * 62.5) with ℓ = √(30.5² + 62.5²) = 69.5449.
  test('with its ends inset pulls harder', () => {
    const inset = gateBrace({ ...gate, ...ends(1.75, 65.25, 32.25, 2.75) });
    expect(inset.tension / poundForce).toBeCloseTo(16.7455118, 7);
  });

  // (459 + 40 * 34) * 76.0263112 / 2312 = 59.8148184 lb.
  test('with 40 lb on the latch pulls with 59.81 lb', () => {
    expect(gateBrace({ ...gateOf(34, 27, 17, 40), ...cable }).tension / poundForce).toBeCloseTo(59.8148184, 7);
  });

  test('of a second gate, 38 x 58, agrees with the plane-frame model', () => {
    const second = gateBrace({ ...gateOf(38, 41, 16, 20), ...ends(0, 53, 38, 5) });
    expect(second.tension / poundForce).toBeCloseTo(47.5267602, 7);
  });

  test.each([
    [ends(0, 10, 0, 0), 'invalid brace: 0 across'],
    [ends(0, 10, 30, 10), 'not level'],
  ])('%o is refused', (wrong, message) => {
    expect(() => gateBrace({ ...gate, ...wrong })).toThrow(message);
  });
});

describe('braceTakeUp()', () => {
  // 3/16 * 34 * 68 / (76.0263112 * 34) = 0.167705 in.
  test('to lift the latch 3/16 in is 0.1677 in', () => {
    expect(braceTakeUp({ ...gate, ...cable, lift: 0.1875 * inch }) / inch).toBeCloseTo(0.167705, 6);
  });

  // The gate as a parallelogram: the latch side goes down by δ. For δ = 0.1: one diagonal +0.0895, the other -0.0894.
  test('is to first order how the diagonals of a dropped gate change', () => {
    const dropped = (y1: number, y2: number) => Math.hypot(34, y1 - (y2 - 0.1)) - Math.hypot(34, y1 - y2);
    expect(dropped(68, 0)).toBeCloseTo(0.0895, 4);
    expect(dropped(0, 68)).toBeCloseTo(-0.0894, 4);
    const takeUp = (brace: typeof cable) => braceTakeUp({ ...gate, ...brace, lift: 0.1 * inch }) / inch;
    expect(takeUp(cable)).toBeCloseTo(dropped(68, 0), 4);
    expect(takeUp(strut)).toBeCloseTo(dropped(0, 68), 4);
  });
});

// Steel rod 0.0276 in², 29e6 psi: T ℓ / EA = 15.0934588 * 76.0263112 / 800 400 = 0.00143366 in; drop 0.00160288 in.
test('braceSag() of a steel rod is next to nothing', () => {
  const { stretch, drop } = braceSag({ ...gate, ...cable, area: 0.0276 * inch ** 2, modulus: 29e6 * psi });
  expect(stretch / inch).toBeCloseTo(0.00143366, 8);
  expect(drop / inch).toBeCloseTo(0.00160288, 8);
  expect(braceTakeUp({ ...gate, ...cable, lift: drop })).toBeCloseTo(stretch, 12);
});

// π² * 1.42e6 * (3.5 * 1.5³ / 12) / 76.0263112² = 2386.83 lb.
test('strutBuckling() of 1.5 x 3.5 in yellow-cedar is 2387 lb, whichever way its section is given', () => {
  const sizes = { length: 76.0263112 * inch, modulus: 1.42e6 * psi };
  const load = strutBuckling({ ...sizes, width: 3.5 * inch, thickness: 1.5 * inch });
  expect(load / poundForce).toBeCloseTo(2386.83, 2);
  expect(strutBuckling({ ...sizes, width: 1.5 * inch, thickness: 3.5 * inch })).toBe(load);
});

describe('gateHinges()', () => {
  // 459/54 = 8.5 lb; (459 + 1360)/54 = 33.6851852; second gate (656 + 760)/43 = 32.9302326.
  test.each([
    [gateOf(34, 27, 17), 54, 8.5, 27],
    [gateOf(34, 27, 17, 40), 54, 33.6851852, 67],
    [gateOf(38, 41, 16, 20), 43, 32.9302326, 61],
  ])('%o, %d in apart: pull %d lb, vertical %d lb', (load, apart, pull, vertical) => {
    const forces = gateHinges({ ...load, apart: apart * inch });
    expect(forces.pull / poundForce).toBeCloseTo(pull, 7);
    expect(forces.vertical / poundForce).toBeCloseTo(vertical, 9);
  });

  test('with hinges in one place is refused', () => {
    expect(() => gateHinges({ ...gate, apart: 0 })).toThrow('invalid distance of the hinges: 0');
  });
});
