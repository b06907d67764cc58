import { expect, test } from 'vitest';
import { centreOfMass } from '../../src/loads/mass.ts';
import { density } from '../../src/wood/density.ts';
import { inch, pound } from '../../src/wood/inchpound.ts';

const cubicInch = inch ** 3;

// 62.4 lb/ft3 of water in kg/m3; the metric form takes 1000.
const water = (62.4 * pound) / (12 * inch * 1e-3) ** 3;

// Typical panel: rails 252, stiles 311.390625, staves 141.357422, slats 489.718491 in³: 1194.466537 in³ of yellow-cedar,
// 30.75072 lb/ft3 at 12 % = 21.2561956 lb, 31.8072702 at 19 % = 21.9865277 lb.
test.each([
  [12, 21.2561956],
  [19, 21.9865277],
])('centreOfMass() of the typical panel at %d percent weighs %d lb', (moisture, pounds) => {
  const wood = density({ specificGravity12: 0.44, moisture });
  const volumes = [252, 311.390625, 141.357422, 489.718491];
  const { mass } = centreOfMass(volumes.map((volume) => ({ volume: volume * cubicInch, density: wood, x: 0, y: 0 })));
  expect(((mass / pound) * water) / 1000).toBeCloseTo(pounds, 6);
});

// Top rail 3.5 in high. Volume in³, x, y in: the centre comes to 24, 34.3358883.
test('centreOfMass() of the panel with a high top rail is at 24, 34.336 in', () => {
  const pieces = [
    [126, 24, 0.875],
    [252, 24, 62.8125],
    [155.695313, 0.875, 31.40625],
    [155.695313, 47.125, 31.40625],
    [141.357422, 24, 31.40625],
    [489.718491, 24, 31],
  ] as const;
  const solids = pieces.map(([volume, x, y]) => ({
    volume: volume * cubicInch,
    density: 490,
    x: x * inch,
    y: y * inch,
  }));
  const centre = centreOfMass(solids);
  expect(centre.x / inch).toBeCloseTo(24, 9);
  expect(centre.y / inch).toBeCloseTo(34.3358883, 6);
  expect(centre.z).toBe(0);
});

// 1 kg at 0 and 3 kg at 100: 75.
test('centreOfMass() is drawn to the heavier wood', () => {
  const solid = { volume: 1e6, y: 0 };
  expect(
    centreOfMass([
      { ...solid, density: 1000, x: 0 },
      { ...solid, density: 3000, x: 100, z: 4 },
    ]),
  ).toEqual({ mass: 4, x: 75, y: 0, z: 3 });
});

test.each([
  [[], 'no pieces'],
  [[{ volume: 0, density: 400, x: 0, y: 0 }], 'invalid piece: 0 mm3'],
])('centreOfMass(%j) is refused', (solids, message) => {
  expect(() => centreOfMass(solids)).toThrow(message);
});
