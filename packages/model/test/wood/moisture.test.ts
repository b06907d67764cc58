import { expect, test } from 'vitest';
import { builtMoisture, moistureContent } from '../../src/wood/moisture.ts';

// Wood Handbook FPL-GTR-190, Table 4-2, as printed: humidity 5 to 95 % in steps of 5, percent.
const printed: readonly (readonly [fahrenheit: number, cells: readonly number[]])[] = [
  [30, [1.4, 2.6, 3.7, 4.6, 5.5, 6.3, 7.1, 7.9, 8.7, 9.5, 10.4, 11.3, 12.4, 13.5, 14.9, 16.5, 18.5, 21, 24.3]],
  [50, [1.4, 2.6, 3.6, 4.6, 5.5, 6.3, 7.1, 7.9, 8.7, 9.5, 10.3, 11.2, 12.3, 13.4, 14.8, 16.4, 18.4, 20.9, 24.3]],
  [70, [1.3, 2.5, 3.5, 4.5, 5.4, 6.2, 6.9, 7.7, 8.5, 9.2, 10.1, 11, 12, 13.1, 14.4, 16, 17.9, 20.5, 23.9]],
  [90, [1.2, 2.3, 3.4, 4.3, 5.1, 5.9, 6.7, 7.4, 8.1, 8.9, 9.7, 10.5, 11.5, 12.6, 13.9, 15.4, 17.3, 19.8, 23.3]],
  [110, [1.1, 2.2, 3.2, 4, 4.9, 5.6, 6.3, 7, 7.7, 8.4, 9.2, 10, 11, 12, 13.2, 14.7, 16.6, 19.1, 22.4]],
  [130, [1, 2, 2.9, 3.7, 4.5, 5.2, 5.9, 6.6, 7.2, 7.9, 8.7, 9.4, 10.3, 11.3, 12.5, 14, 15.8, 18.2, 21.5]],
];

test.each(printed)('moistureContent() at %d °F is within 0.1 of each printed figure', (fahrenheit, cells) => {
  const temperature = ((fahrenheit - 32) * 5) / 9;
  for (const [i, cell] of cells.entries())
    expect(Math.abs(moistureContent({ temperature, humidity: 5 * (i + 1) }) - cell)).toBeLessThan(0.1);
});

test('moistureContent() is 0 in dry air, grows with humidity and falls with warmth', () => {
  expect(moistureContent({ temperature: 20, humidity: 0 })).toBe(0);
  for (let humidity = 5; humidity <= 95; humidity += 5) {
    const here = moistureContent({ temperature: 20, humidity });
    expect(here).toBeGreaterThan(moistureContent({ temperature: 20, humidity: humidity - 5 }));
    expect(here).toBeGreaterThan(moistureContent({ temperature: 30, humidity }));
  }
});

test.each([
  [{ temperature: 20, humidity: 101 }, 'invalid humidity: 101'],
  [{ temperature: 20, humidity: Number.NaN }, 'invalid humidity: NaN'],
  [{ temperature: 70, humidity: 50 }, 'invalid temperature: 70'],
])('moistureContent(%o) is refused', (air, message) => {
  expect(() => moistureContent(air)).toThrow(message);
});

test('builtMoisture() is 12 percent outdoors in most places and 8 indoors', () => {
  expect(builtMoisture({ use: 'exterior', region: 'most of the United States' })).toEqual({
    average: 12,
    range: [9, 14],
  });
  expect(builtMoisture({ use: 'interior', region: 'most of the United States' })).toEqual({
    average: 8,
    range: [6, 10],
  });
});
