import { expect, test } from 'vitest';
import { bendSlat } from '../../src/index.ts';
import { slatReach } from '../../src/weave/reach.ts';

const slat = {
  clearWidth: 1130.3,
  staves: { count: 5, width: 19.05, depth: 15.875 },
  slat: { thickness: 4.7625, height: 41.275 },
  modulus: 9800,
  strength: 77,
} as const;

test('slatReach of a leaning end: its offset and half the thickness times the cosine of its lean, beyond the staves’ own', () => {
  const bend = bendSlat({ ...slat, sides: [1, -1, 1, -1, 1] });
  const [least, greatest] = slatReach(bend, { from: 0, to: 1130.3, thickness: 4.7625 });
  const lean = Math.atan(bend.endSlopes[0]);
  expect(greatest).toBeCloseTo(bend.endOffsets[0] + 2.38125 * Math.cos(lean), 9);
  // At a stave a slat reaches (15.875 + 2 x 4.7625)/2 = 12.7 mm; the end stands farther out by more than a millimetre.
  expect(greatest).toBeGreaterThan(13.7);
  // Behind, it bows off the inner staves' faces a little.
  expect(-least).toBeGreaterThan(12.7);
  expect(-least).toBeLessThan(13.3);
});

test('slatReach of a straight slat is its two faces', () => {
  const bend = bendSlat({ ...slat, sides: [1, 1, 1, 1, 1] });
  const faces = slatReach(bend, { from: 0, to: 1130.3, thickness: 4.7625 });
  expect(faces).toEqual([7.9375, 12.7].map((z) => expect.closeTo(z, 9)));
});
