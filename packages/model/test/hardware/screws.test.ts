import { describe, expect, test } from 'vitest';
import { chooseScrew } from '../../src/hardware/choose.ts';
import { QUART } from '../../src/hardware/finish.ts';
import { screwLengths } from '../../src/hardware/gauge.ts';
import { pinHoles } from '../../src/hardware/pilot.ts';
import { choosePin } from '../../src/hardware/pin.ts';
import { pilotDepth } from '../../src/hardware/row.ts';
import {
  drillText,
  finishArea,
  finishFor,
  hardwareList,
  headDiameter,
  screwDiameter,
  screwHoles,
  screwSchedule,
  screwWithdrawal,
  solve,
} from '../../src/index.ts';
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
  // Traditional screw chart for light wood; NDS Appendix L roots times 0.7 and 0.9 for the others, to the nearest 1/64 in:
  // No. 8 in oak 0.9 x 0.131 = 0.118 in, 7.5/64, so 1/8; in larch 0.7 x 0.131 = 0.092 in, 5.9/64, so 3/32.
  test.each([
    [4, '3/64', '1/16', '5/64', '1/8'],
    [6, '1/16', '5/64', '7/64', '9/64'],
    [8, '5/64', '3/32', '1/8', '11/64'],
    [10, '3/32', '7/64', '9/64', '13/64'],
    [12, '7/64', '1/8', '5/32', '7/32'],
    [14, '7/64', '9/64', '11/64', '1/4'],
  ] as const)(
    'screwHoles(%d): %s in cedar, %s in larch, %s in oak, clearance %s',
    (gauge, light, dense, hard, shank) => {
      const pilot = (specificGravity: number) => screwHoles(gauge, { specificGravity }).pilot.inch;
      expect([pilot(0.36), pilot(0.5), pilot(0.68)]).toEqual([light, dense, hard]);
      expect(screwHoles(gauge, { specificGravity: 0.36 }).clearance.inch).toBe(shank);
    },
  );

  test('No. 8 in millimetres: 2, 2.5 and 3 by the wood, clearance 4.5', () => {
    const metric = (specificGravity: number) => screwHoles(8, { specificGravity }).pilot.metric;
    expect([metric(0.36), metric(0.5), metric(0.68)]).toEqual([2, 2.5, 3]);
    expect(screwHoles(8, { specificGravity: 0.36 }).clearance.metric).toBe(4.5);
  });

  test('pilots grow from 0.50 on and again above 0.60 (NDS 12.1.5.2)', () => {
    const inch = (specificGravity: number) => screwHoles(8, { specificGravity }).pilot.inch;
    expect([inch(0.499), inch(0.5), inch(0.6), inch(0.601)]).toEqual(['5/64', '3/32', '3/32', '1/8']);
  });

  test.each([4, 5, 6, 8, 10, 12, 14] as const)('No. %d: pilots under the root, clearance over the screw', (gauge) => {
    // NDS Appendix L root diameters (from memory), inches; 4 and 5 in the ratio of No. 6.
    const root = { 4: 0.092, 5: 0.102, 6: 0.113, 8: 0.131, 10: 0.152, 12: 0.171, 14: 0.196 }[gauge];
    const inchOf = (text: string) =>
      text
        .split('/')
        .map(Number)
        .reduce((a, b) => a / b);
    for (const specificGravity of [0.36, 0.5, 0.7]) {
      const { pilot, clearance } = screwHoles(gauge, { specificGravity });
      expect(inchOf(pilot.inch)).toBeLessThan(root);
      expect(pilot.metric).toBeLessThan(inches(root));
      expect(inches(inchOf(clearance.inch))).toBeGreaterThan(screwDiameter(gauge));
      expect(clearance.metric).toBeGreaterThan(screwDiameter(gauge));
      expect((2 * clearance.metric) % 1).toBe(0);
    }
  });

  test('drillText names one hole alike everywhere', () => {
    expect(drillText({ inch: '11/64', metric: 4.5 }, 'mm')).toBe('4.5 mm');
    expect(drillText({ inch: '11/64', metric: 4.5 }, 'in')).toBe('11/64 in');
  });

  test('pinHoles: four fifths of the pin, 1 mm or 1/32 in for 18 gauge', () => {
    // 0.8 x 0.047 in = 0.0376 in: 0.955 mm, 2.4/64 in.
    expect(pinHoles(inches(0.047)).pilot).toEqual({ inch: '1/32', metric: 1 });
  });
});

describe('choosePin', () => {
  const wide = { thickness: 8 };

  test('reaches 15 mm into the rail: 25 + 15 is a 40 mm pin, a little more takes 50, and 36 + 15 the 64 of a stouter wire', () => {
    expect(choosePin({ through: 25, ...wide }, 'mm')).toMatchObject({ wire: 18, length: 40, penetration: 15 });
    expect(choosePin({ through: 25.1, ...wide }, 'mm')).toMatchObject({ wire: 18, length: 50 });
    expect(choosePin({ through: 36, ...wide }, 'mm')).toMatchObject({ wire: 16, length: 64 });
  });

  test('no pin where none is long enough: 49 mm and 15 are 64, a 54 mm strip has none', () => {
    expect(choosePin({ through: 49, ...wide }, 'mm')?.length).toBe(64);
    expect(choosePin({ through: 54, ...wide }, 'mm')).toBeUndefined();
  });

  test('no pin in a strip under 5 mm, or 3/16 in', () => {
    expect(choosePin({ through: 20, thickness: 5 }, 'mm')).toBeDefined();
    expect(choosePin({ through: 20, thickness: 4.9 }, 'mm')).toBeUndefined();
    expect(choosePin({ through: 20, thickness: inches(3 / 16) }, 'in')).toBeDefined();
    expect(choosePin({ through: 20, thickness: inches(11 / 64) }, 'in')).toBeUndefined();
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
  test('a head is sunk to a whole millimetre: 45 less 38.1 kept is bored 7', () => {
    const screw = chooseScrew({ gauges: [8], through: 45, keep: inches(1.5), room: 60, unit: 'mm' });
    expect(screw.counterbore).toBe(7);
    expect(screw.through).toBe(38);
  });

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

describe('pilotDepth', () => {
  test('a pin is drilled for but for its last 1/8 in, a screw as deep as it goes, its sunk head counted in', () => {
    const rows = screwSchedule(panelOf({ size: { width: 44, height: 52 }, rail: { height: '2 1/2' } }));
    const pin = rows.find(({ joint }) => joint === 'cover strip to top rail');
    const corner = rows.find(({ joint }) => joint === 'rail to stile');
    if (!pin || !corner?.plug) throw new Error('no such joints');
    expect(pilotDepth(pin)).toBeCloseTo(pin.fastener.length - inches(1 / 8), 9);
    expect(pilotDepth(pin)).toBeGreaterThan(pin.fastener.through);
    expect(pilotDepth(corner)).toBeCloseTo(corner.fastener.length + corner.plug.depth, 9);
  });

  test('sunk heads under a foot stay open: no plug is bought for them', () => {
    const job = jobOf({
      use: 'divider',
      size: { width: 44, height: 52 },
      divider: { stand: 'feet', feet: { length: 30, height: 3, width: '1 1/2' } },
    });
    const panels = solve(job);
    const foot = panels.flatMap(screwSchedule).find(({ joint }) => joint === 'foot to bottom rail');
    expect(foot?.plug?.open).toBe(true);
    expect(hardwareList(job, panels).some(({ kind }) => kind === 'plug')).toBe(false);
  });
});
