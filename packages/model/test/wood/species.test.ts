import { expect, test } from 'vitest';
import { inch, psi } from '../../src/wood/inchpound.ts';
import { woodNamed, woodNames, woods } from '../../src/wood/species.ts';

test.each([
  ['western redcedar', 'western-redcedar'],
  ['Western Red Cedar', 'western-redcedar'],
  ['redcedar', 'western-redcedar'],
  ['Alaska yellow-cedar', 'alaska-yellow-cedar'],
  ['yellow cedar', 'alaska-yellow-cedar'],
  ['larch', 'western-larch'],
  ['WESTERN LARCH', 'western-larch'],
  ['white oak', 'white-oak'],
  ['Quercus alba', 'white-oak'],
  ['douglas fir', 'douglas-fir-coast'],
  ['redwood', 'redwood-young'],
  ['ipé', 'ipe'],
])('woodNamed(%s) is %s', (name, id) => {
  expect(woodNamed(name)?.id).toBe(id);
});

test.each(['cedar', 'oak', 'pine', 'white cedar', 'balsa', ''])('woodNamed(%s) is undefined', (name) => {
  expect(woodNamed(name)).toBeUndefined();
});

test('woods have names and ids of their own, and each is found by its name', () => {
  expect(new Set(woods.map(({ id }) => id)).size).toBe(woods.length);
  expect(woodNames.map((name) => woodNamed(name)?.name)).toEqual(woodNames);
});

test('woods are whole: positive figures, radial shrinkage under tangential, a source', () => {
  for (const wood of woods) {
    for (const figure of [wood.modulus, wood.strength, wood.hardness, wood.specificGravity12])
      expect(figure).toBeGreaterThan(0);
    expect(wood.shrinkage.radial).toBeLessThan(wood.shrinkage.tangential);
    expect(wood.coefficients.radial).toBeLessThan(wood.coefficients.tangential);
    expect(wood.source).toContain('FPL-GTR-190');
  }
});

// The inch-pound table is rounded on its own, so a conversion agrees to its last printed figure and no better.
// Wood Handbook FPL-GTR-190, Table 5-3b: MOE in 10^6 psi, MOR in psi.
test.each([
  ['western redcedar', 1.11, 7500],
  ['northern white-cedar', 0.8, 6500],
  ['redwood, old growth', 1.34, 10000],
  ['eastern white pine', 1.24, 8600],
  ['Douglas-fir, coast', 1.95, 12400],
  ['yellow-poplar', 1.58, 10100],
  ['baldcypress', 1.44, 10600],
  ['white oak', 1.78, 15200],
  ['white ash', 1.74, 15000],
  ['shagbark hickory', 2.16, 20200],
  ['black cherry', 1.49, 12300],
  ['Alaska yellow-cedar', 1.42, 11100],
])('%s agrees with the inch-pound table to 1 percent', (name, modulus, strength) => {
  const wood = woodNamed(name);
  expect(Math.abs((wood?.modulus ?? 0) / (modulus * 1e6 * psi) - 1)).toBeLessThan(0.01);
  expect(Math.abs((wood?.strength ?? 0) / (strength * psi) - 1)).toBeLessThan(0.01);
});

// MOE 1.55e6 psi = 10 687 MPa, MOR 14 600 psi = 100.66 MPa.
test('teak, published in inch-pound units alone, is converted', () => {
  expect(woodNamed('teak')?.modulus).toBeCloseTo((1.55e6 * 4.4482216152605) / inch ** 2, 6);
  expect(woodNamed('teak')?.strength).toBeCloseTo(100.66, 2);
});

test('decay groups and fastener gravities are those of the tables', () => {
  expect(woodNamed('black locust')?.decay).toEqual({ group: 'very resistant' });
  expect(woodNamed('baldcypress')?.decay).toEqual({ group: 'moderately resistant', remark: 'old growth is resistant' });
  expect(woodNamed('white ash')?.decay.group).toBe('slightly or nonresistant');
  expect(woodNamed('western redcedar')?.fastenerGravity).toBe(0.36);
  expect(woodNamed('western redcedar')?.tannic).toBe(true);
  expect(woodNamed('yellow birch')?.tannic).toBe(false);
});
