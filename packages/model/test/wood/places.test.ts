import { expect, test } from 'vitest';
import { places, siteMoisture } from '../../src/wood/places.ts';

test('places have twelve months each, between 4 and 19 percent, and names of their own', () => {
  expect(new Set(places.map(({ name }) => name)).size).toBe(places.length);
  for (const { months } of places) {
    expect(months).toHaveLength(12);
    for (const month of months) expect(month >= 4 && month < 19).toBe(true);
  }
});

test.each([
  ['Portland, OR', { place: 'Portland, OR', driest: 11.7, wettest: 17.4, driestMonth: 7, wettestMonth: 12 }],
  ['las vegas nv', { place: 'Las Vegas, NV', driest: 4, wettest: 8.5, driestMonth: 6, wettestMonth: 1 }],
  ['Seattle', { place: 'Seattle-Tacoma, WA', driest: 12.2, wettest: 16.5, driestMonth: 7, wettestMonth: 12 }],
  ['boise', { place: 'Boise, ID', driest: 7.3, wettest: 15.2, driestMonth: 7, wettestMonth: 1 }],
])('siteMoisture(%s) finds the driest and the wettest month', (place, expected) => {
  expect(siteMoisture(place)).toEqual(expected);
});

test.each(['Portland', 'Charleston', 'Tern Hollow', ''])('siteMoisture(%s) is undefined: none, or two', (place) => {
  expect(siteMoisture(place)).toBeUndefined();
});
