import { describe, expect, test } from 'vitest';
import { chooseScrew } from '../../src/hardware/choose.ts';
import { QUART } from '../../src/hardware/finish.ts';
import { screwLengths } from '../../src/hardware/gauge.ts';
import { finishArea, finishFor, headDiameter, screwDiameter, screwHoles, screwWithdrawal } from '../../src/index.ts';
import { inches, jobOf, panelOf } from '../support.ts';

describe('screwDiameter', () => {
  // ASME B18.6.1, major diameters, inches.
  test.each([
    [4, 0.112],
    [5, 0.125],
    [6, 0.138],
    [8, 0.164],
    [10, 0.19],
    [12, 0.216],
    [14, 0.242],
  ])('screwDiameter(%d) is %d in', (gauge, diameter) => {
    expect(screwDiameter(gauge)).toBeCloseTo(inches(diameter), 9);
    expect(headDiameter(gauge)).toBeCloseTo(inches(2 * diameter), 9);
  });
});

describe('screwHoles', () => {
  // Traditional screw chart: hardwood and softwood pilots and shank clearance, inches.
  test.each([
    [6, '3/32', '1/16', '9/64'],
    [8, '7/64', '5/64', '11/64'],
    [10, '1/8', '3/32', '3/16'],
    [12, '5/32', '7/64', '7/32'],
    [14, '3/16', '7/64', '1/4'],
  ] as const)('screwHoles(%d): %s in hardwood, %s in softwood, clearance %s', (gauge, hard, soft, shank) => {
    expect(screwHoles(gauge, { specificGravity: 0.68 }).pilot.inch).toBe(hard);
    expect(screwHoles(gauge, { specificGravity: 0.36 }).pilot.inch).toBe(soft);
    expect(screwHoles(gauge, { specificGravity: 0.36 }).clearance.inch).toBe(shank);
  });

  test('0.60 is the last specific gravity with the softwood pilot (NDS 12.1.5.2)', () => {
    expect(screwHoles(8, { specificGravity: 0.6 }).pilot.inch).toBe('5/64');
    expect(screwHoles(8, { specificGravity: 0.601 }).pilot.inch).toBe('7/64');
  });

  test.each([6, 8, 10, 12, 14] as const)('pilots of No. %d are under the root, clearance over the screw', (gauge) => {
    // NDS Appendix L root diameters (from memory), inches.
    const root = { 6: 0.113, 8: 0.131, 10: 0.152, 12: 0.171, 14: 0.196 }[gauge];
    const { pilot, clearance } = screwHoles(gauge, { specificGravity: 0.7 });
    expect(pilot.diameter).toBeLessThan(inches(root));
    expect(clearance.diameter).toBeGreaterThanOrEqual(screwDiameter(gauge) - inches(0.005));
  });
});

describe('screwWithdrawal', () => {
  test('a No. 8 screw with 1 in of thread in redcedar: 2850 × 0.36² × 0.164 = 60.6 lb (NDS eq. 12.2-2)', () => {
    const newtons = screwWithdrawal({ gravity: 0.36, diameter: inches(0.164), penetration: 25.4 });
    expect(newtons / 4.4482216152605).toBeCloseTo(2850 * 0.1296 * 0.164, 9);
    expect(newtons).toBeCloseTo(269.45, 1);
  });

  test('it lies between a fifth and a sixth of the Wood Handbook’s ultimate, 108.25 G² D L N (from memory)', () => {
    for (const gravity of [0.31, 0.46, 0.68]) {
      const ultimate = 108.25 * gravity ** 2 * 4.17 * 30;
      const share = screwWithdrawal({ gravity, diameter: 4.17, penetration: 30 }) / ultimate;
      expect(share).toBeGreaterThan(1 / 6);
      expect(share).toBeLessThan(1 / 5);
    }
  });
});

describe('chooseScrew', () => {
  test('through 1 1/2 in into plenty: No. 8 with ten diameters, 1.5 + 1.64 = 3.14, so 3 1/2 in', () => {
    const screw = chooseScrew({ gauges: [8, 10], through: inches(1.5), room: 200, unit: 'in' });
    expect(screw.gauge).toBe(8);
    expect(screw.length).toBeCloseTo(inches(3.5), 9);
    expect(screw.penetration).toBeCloseTo(inches(2), 9);
  });

  test('never longer than the room lets it: 19 mm into 20 mm is 35 mm, not 60', () => {
    expect(chooseScrew({ gauges: [8], through: 19, room: 20, unit: 'mm' }).length).toBe(35);
  });

  test('a thick piece is counterbored to the wood it keeps', () => {
    const screw = chooseScrew({ gauges: [8], through: inches(2.5), keep: inches(1.5), room: 200, unit: 'in' });
    expect(screw.counterbore).toBeCloseTo(inches(1), 9);
    expect(screw.length).toBeCloseTo(inches(3.5), 9);
  });

  test('a gauge too short gives way to a stouter one', () => {
    expect(chooseScrew({ gauges: [8, 10, 12], through: 90, room: 100, unit: 'mm' }).gauge).toBe(12);
  });

  test('lengths rise with the gauge, in both series', () => {
    for (const unit of ['in', 'mm'] as const) {
      const longest = ([4, 6, 8, 10, 12, 14] as const).map((gauge) => screwLengths(gauge, unit).at(-1) ?? 0);
      expect(longest).toEqual([...longest].sort((a, b) => a - b));
    }
  });
});

describe('finishFor', () => {
  test('a US quart is 57.75 cubic inches, 0.946 litres', () => {
    expect(QUART).toBeCloseTo(0.946352946, 9);
  });

  test('area is that of all faces and ends, times the count, over what a litre covers', () => {
    const job = jobOf({ size: { width: 40, height: 50 }, count: 3 }, { finish: { kind: 'penetrating', coats: 2 } });
    const panel = panelOf({ size: { width: 40, height: 50 }, count: 3 });
    const amount = finishFor(panel, job);
    expect(amount.area).toBeCloseTo(3 * finishArea(panel), 12);
    expect(amount.litres).toBeCloseTo((2 * amount.area) / 8, 12);
    expect(amount.quarts * QUART).toBeCloseTo(amount.litres, 12);
  });

  test('finishArea is more than twice the woven face: slats have two faces and the frame four', () => {
    const panel = panelOf({ size: { width: 40, height: 50 } });
    const woven = (panel.clear.width * panel.courses.stack) / 1e6;
    expect(finishArea(panel)).toBeGreaterThan(2 * woven);
  });
});
