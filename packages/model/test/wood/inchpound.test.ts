import { expect, test } from 'vitest';
import { inch, mph, pound, poundForce, psf, psi } from '../../src/wood/inchpound.ts';

test.each([
  ['inch, mm', inch, 25.4],
  ['pound, kg', pound, 0.45359237],
  ['pound-force, N', poundForce, 4.4482216152605],
  ['psi, MPa', psi, 0.00689475729316836],
  ['psf, Pa', psf, 47.8802589803358],
  ['mph, m/s', mph, 0.44704],
])('one %s is the exact figure', (_, unit, exact) => {
  expect(unit).toBeCloseTo(exact, 12);
});
