import { describe, expect, test } from 'vitest';
import { bendSlat, type SlatToBend, sampleSlat } from '../../src/weave/bend.ts';
import type { Side } from '../../src/weave/pattern.ts';
import { plainWeave } from '../../src/weave/plain.ts';
import { inch } from '../../src/wood/inchpound.ts';
import { restingStrip } from './strip.ts';
import { everyRow, offset, sidesOf, typical, typicalPlain, withStaves } from './typical.ts';

const floats = { ...typical, clearWidth: 52.25 * inch, staves: { count: 7, width: 0.75 * inch, depth: 0.75 * inch } };

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
