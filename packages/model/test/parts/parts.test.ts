import { describe, expect, test } from 'vitest';
import { massOf, partsOf, solve, VIEW_LETTERS } from '../../src/index.ts';
import { inches, jobOf, panelOf } from '../support.ts';

const spec = { size: { width: '44 1/2', height: 52 }, fit: { vary: 'slats', from: '1 3/8', to: '1 3/4' } };

describe('partsOf', () => {
  test('partsOf(panel) lists every kind of piece once, finished size, larger side as width', () => {
    const panel = panelOf(spec);
    const parts = partsOf(panel);
    expect(parts.map(({ name, count }) => [name, count])).toEqual([
      ['rail', 2],
      ['stile', 2],
      ['stave', panel.staves.count],
      ['slat', panel.courses.count],
      ['cover strip', 2],
    ]);
    for (const { width, thickness } of parts) expect(width).toBeGreaterThanOrEqual(thickness);
    expect(new Set(parts.map(({ letter }) => letter)).size).toBe(parts.length);
  });

  test('partsOf(30 unlike panels) gives each part a letter of its own, none of them a section’s or a detail’s', () => {
    const panels = Array.from({ length: 30 }, (_, i) => ({
      name: `P${i + 1}`,
      ...spec,
      size: { width: 30 + i, height: 52 + i },
    }));
    const letters = partsOf(solve(jobOf({}, { panels }))).map(({ letter }) => letter);
    expect(letters.length).toBeGreaterThan(100);
    expect(new Set(letters).size).toBe(letters.length);
    // 17 single letters, without I and O, then pairs of them.
    expect(letters.slice(15, 20)).toEqual(['R', 'S', 'AA', 'AB', 'AC']);
    for (const letter of letters) for (const taken of [...VIEW_LETTERS, 'I', 'O']) expect(letter).not.toContain(taken);
  });

  test('stiles, staves and stop strips alone are cut long at first, and not once the stack is measured', () => {
    const long = (more: object): [string, number][] =>
      partsOf(panelOf({ ...spec, ...more }), { long: 25 })
        .filter(({ over }) => over > 0)
        .map(({ role, over }) => [role, over]);
    expect(long({})).toEqual([
      ['stile', 25],
      ['stave', 25],
    ]);
    expect(long({ slat: { stop: '1/2' } })).toContainEqual(['stop', 25]);
    expect(long({ measured: { stack: 48 } })).toEqual([]);
    expect(partsOf(panelOf(spec)).every(({ over }) => over === 0)).toBe(true);
  });

  test('equal pieces of several panels are one row that says where each goes', () => {
    const job = jobOf(
      { ...spec, count: 3 },
      {
        panels: [
          { name: 'a', count: 3, ...spec },
          { name: 'b', ...spec },
        ],
      },
    );
    const rails = partsOf(solve(job)).filter(({ role }) => role === 'rail');
    expect(rails).toHaveLength(1);
    expect(rails[0]?.where).toEqual([
      { panel: 'a', count: 6 },
      { panel: 'b', count: 2 },
    ]);
    expect(rails[0]?.count).toBe(8);
  });

  // ceil(count × (100 + share)/100) in whole numbers: 20 slats + 15 % are 23, 100 + 10 % are 110 and not 111.
  test.each([
    [10, 10, 2],
    [20, 15, 3],
    [32, 10, 4],
    [100, 10, 10],
    [8, 0, 2],
  ])('%i slats with a spare share of %i %% get %i more, at least two', (courses, spare, extra) => {
    const height = `${inches(3) + courses * 40} mm`;
    const panel = panelOf({
      size: { width: 40, height },
      slat: { height: '40 mm' },
      fit: { vary: 'slats', from: '40 mm', to: '40.1 mm', step: '0.1 mm' },
      top: { allowance: 0 },
    });
    const job = {
      ...panel,
      courses: { ...panel.courses, count: courses },
      rows: panel.rows.map((row, i) => ({ ...row, courses: i === 0 ? courses : 0 })),
    };
    expect(partsOf(job, { spare }).find(({ role }) => role === 'slat')?.spare).toBe(extra);
  });
});

describe('massOf', () => {
  test('the typical panel of yellow-cedar: 1194.47 in³ of sections, less the grooves, at 12 %', () => {
    // Rails 2 × 48 × 1.75 × 1.5 = 252.000; stiles 2 × 59.3125 × 1.75 × 1.5 = 311.390625; staves 5 × 60.3125 × 0.75 × 0.625 =
    // 141.357422; slats 36 × 44.6467616 × 0.1875 × 1.625 = 489.718491; density 62.4 × 0.44 × 1.12 = 30.75072 lb/ft³ after
    // Wood Handbook FPL-GTR-190 ch. 4. Slats are cut to the mark below here.
    const panel = panelOf(
      {
        size: { width: 48, height: '62.8125' },
        rail: { height: 1.75 },
        stile: { width: 1.75 },
        stave: { width: 0.75, depth: 0.625, count: 5 },
        slat: { height: 1.625 },
        fit: { vary: 'slats', from: 1.625, to: 1.625, prefer: 1.625 },
        top: { allowance: '13/16', cover: 0 },
        wood: 'Alaska yellow-cedar',
      },
      { site: { built: 12, driest: 7, wettest: 17 } },
    );
    expect(panel.courses.count).toBe(36);
    const { members, mass, boardFeet, volume } = massOf(panel);
    const cubicInches = members.map((member) => member.volume / 25.4 ** 3);
    expect(cubicInches[0]).toBeCloseTo(252, 6);
    expect(cubicInches[1]).toBeCloseTo(311.390625, 6);
    expect(cubicInches[2]).toBeCloseTo(141.357422, 5);
    // 44.6467616 less 1/64 at both ends is 44.6155116, rounded down to 1/16 44.5625: 488.794922 in³.
    expect(cubicInches[3]).toBeCloseTo(36 * 44.5625 * 0.1875 * 1.625, 6);
    expect(volume / 25.4 ** 3).toBeCloseTo(1194.466537 - 36 * (44.6467616 - 44.5625) * 0.1875 * 1.625, 2);
    // The handbook's 62.4 lb/ft³ of water is 1000 kg/m³ to three figures.
    // Two grooves of 5/8 in and 1/32 in play, 1/2 in deep, from stile to stile: 2 × 0.65625 × 0.5 × 44.5 = 29.203125 in³.
    const wood = volume / 25.4 ** 3 - 29.203125;
    expect(mass / 0.45359237 / ((wood / 1728) * 30.75072)).toBeCloseTo(1, 3);
    // A board foot is 144 cubic inches.
    expect(boardFeet).toBeCloseTo(volume / 25.4 ** 3 / 144, 9);
  });
});
