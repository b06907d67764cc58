import { describe, expect, test } from 'vitest';
import { check, findingSentences, type Panel, partsOf, sampleSlat, screwSchedule, solve } from '../../src/index.ts';
import { alikeStrips, hidingHeight, stopThickness } from '../../src/panel/cover.ts';
import { jobOf, panelOf } from '../support.ts';

const base = { size: { width: 1000, height: 1200 }, stave: { count: 4 }, fit: { vary: 'outside' } };
const solved = (more: object = {}) => panelOf({ ...base, ...more }, { unit: 'mm' });

/** Rows that want slats of 929.99, 930.33 and 930.41 mm without clearance; a single stave at the ends of the third only. */
const SHUTTER = {
  size: { width: 1000, height: 900 },
  stave: { count: 7 },
  slat: { thickness: 3, height: 30 },
  weave: { rows: ['++-++--', '+--+-++', '-+-+-+-'] },
};

/** Greatest |z| of any face of the top course, by sampling it densely, mm. */
function reachOfTop({ weave, rows, courses, clear }: Panel): number {
  const bend = rows[weave.rowOfCourse[courses.count - 1] as number]?.bend;
  let most = 0;
  for (let x = 0; x <= clear.width; x += 0.5) {
    const { z, slope } = sampleSlat(bend as NonNullable<typeof bend>, x);
    most = Math.max(most, Math.abs(z) + courses.thickness / 2 / Math.hypot(1, slope));
  }
  return most;
}

describe('cover strips', () => {
  test.each([
    {},
    { weave: 'paired courses' },
    { weave: { pattern: 'plain', start: 'behind' } },
    { rail: { depth: 60 } },
  ])('inner faces stand 0.8 mm or more outside all that the top course reaches: %j', (more) => {
    const panel = solved(more);
    const { cover } = panel;
    expect(cover.height).toBeGreaterThan(0);
    expect(cover.face).toBeGreaterThanOrEqual(reachOfTop(panel) + 0.8 - 1e-6);
    expect(cover.face).toBeGreaterThan(panel.staves.depth / 2 + panel.courses.thickness + 0.8);
  });

  test('are as thick as what is left to the rail’s face, flush with it, and 12 mm at the most', () => {
    const { cover, rail } = solved({ rail: { depth: 46 } });
    expect(cover.face + cover.thickness).toBeCloseTo(rail.depth / 2, 9);
    expect(cover.thickness).toBeGreaterThan(5);
    const deep = solved({ rail: { depth: 80 } });
    expect(deep.cover.thickness).toBe(12);
    expect(deep.cover.face + 12).toBeLessThan(deep.rail.depth / 2);
    // Against the weave, not against the face: what hides a gap far off hides nothing.
    expect(deep.cover.face - reachOfTop(deep)).toBeLessThan(1.4);
  });

  test('never stand out of the frame: in a shallow one they are thinner, 3 mm or 1/8 in at the least', () => {
    const { cover, rail } = solved({ rail: { depth: 36 } });
    expect(cover.thickness).toBeLessThan(5);
    expect(cover.thickness).toBeGreaterThanOrEqual(3);
    expect(cover.face + cover.thickness).toBeCloseTo(rail.depth / 2, 9);
    const inch = panelOf({ size: { width: '44 1/2', height: 52 } });
    expect(inch.cover.thickness).toBeCloseTo((3 * 25.4) / 16, 9);
    const least = (depth: number) => solved({ rail: { depth } }).cover;
    const at = 2 * (cover.reach + 0.8 + 3);
    expect(least(at + 0.01)).toMatchObject({ thickness: 3 });
    expect(least(at - 0.01)).toMatchObject({ height: 0 });
  });

  test.each([
    ['mm', 3, 1],
    ['in', 25.4 / 8, 25.4 / 8],
  ] as const)(
    'in %s hide the gap of the driest season and a lap of %d mm or more, in steps of %d',
    (unit, lap, step) => {
      for (const height of [1000, 1037, 1120]) {
        const size = unit === 'mm' ? { width: 1000, height } : { width: '40', height: String(Math.round(height / 25)) };
        const { cover, movement } = panelOf({ size, stave: { count: 4 } }, { unit });
        expect(cover.height).toBeGreaterThanOrEqual(movement.dryOpening + lap - 1e-6);
        expect(cover.height).toBeLessThan(movement.dryOpening + lap + step - 1e-6);
        expect(Math.abs(cover.height / step - Math.round(cover.height / step))).toBeLessThan(1e-6);
      }
      expect(hidingHeight(10 * step - lap, { unit, mark: step })).toBeCloseTo(10 * step, 9);
      expect(hidingHeight(10 * step - lap + 0.01, { unit, mark: step })).toBeCloseTo(11 * step, 9);
    },
  );

  test('of a height that the job gives are as high as it says', () => {
    expect(solved({ top: { cover: 14 } }).cover.height).toBe(14);
  });

  test('of frames of one depth are made alike, the thinner, where they differ by a millimetre or less', () => {
    const strip = (thickness: number, depth = 45, face = depth / 2 - thickness) => ({
      rail: { depth, height: 45, length: 1000 },
      cover: { height: 20, thickness, face, length: 900, reach: 12 },
    });
    const alike = alikeStrips([strip(5), strip(4), strip(6.5), strip(4.5), strip(5, 38), strip(5.5, 45, 10)]);
    expect(alike.map(({ cover }) => cover.thickness)).toEqual([4, 4, 6.5, 4, 5, 5.5]);
    for (const { rail, cover } of alike.slice(0, 5))
      expect(cover.face + cover.thickness).toBeCloseTo(rail.depth / 2, 9);
    const none = { ...strip(5), cover: { height: 0, thickness: 0, face: 0, length: 0, reach: 0 } };
    expect(alikeStrips([none, strip(5)])[0]).toBe(none);
  });

  test('are left out where the ends of the top course stand out so far that no strip would bear on the rail', () => {
    const { cover, rail } = solved({
      stave: { count: 8, depth: 14 },
      weave: 'two-over-two basket',
      rail: { depth: 38 },
    });
    expect(cover).toMatchObject({ height: 0, thickness: 0, length: 0 });
    expect(cover.reach).toBeGreaterThan(rail.depth / 2 - 4);
  });

  test('that are left out are told of, with how far the top course reaches', () => {
    const job = jobOf(
      { size: { width: 1800, height: 900 }, stave: { count: 12 }, weave: 'two-over-two basket' },
      { unit: 'mm' },
    );
    const panels = solve(job);
    const reach = panels[0]?.cover.reach ?? 0;
    const told = check(job, { panels }).find(({ code }) => code === 'dry-opening');
    const said = findingSentences(told as NonNullable<typeof told>).join(' ');
    expect(said).toContain(`the top course reaches ${reach.toFixed(1)} mm from mid-depth`);
    // The cure is one: in a frame so deep there are strips.
    const depth = Number(/frame (\d+) mm deep/.exec(said)?.[1]);
    const deeper = (by: number) =>
      panelOf(
        {
          size: { width: 1800, height: 900 },
          stave: { count: 12 },
          weave: 'two-over-two basket',
          rail: { depth: depth + by },
        },
        { unit: 'mm' },
      ).cover.height;
    expect(deeper(0)).toBeGreaterThan(0);
    expect(deeper(-1)).toBe(0);
    expect(`${told?.text} ${told?.judged}`).not.toMatch(/strip|cover/);
  });

  test('a strip as high as a course and more stands clear of the courses under it as well', () => {
    const shutter = (cover: number) => panelOf({ ...SHUTTER, top: { cover } }, { unit: 'mm' });
    const low = shutter(18);
    // The top course has the third row, whose ends are single.
    expect(low.weave.rowOfCourse.at(-1)).toBe(2);
    expect(low.cover.reach).toBeCloseTo(reachOfTop(low), 1);
    expect(shutter(60).cover.reach).toBeGreaterThan(low.cover.reach + 5);
  });

  test('run between the stop strips, and their pins stand in what lies on the rail', () => {
    const panel = solved({ slat: { thickness: 4, stop: 10.5 }, rail: { depth: 46 }, stile: { depth: 46 } });
    const strip = partsOf(panel).find(({ role }) => role === 'cover strip');
    expect(strip?.length).toBeCloseTo(panel.clear.width - 2 * 12.7, 9);
    const pinned = solved({ rail: { depth: 40 } });
    const pins = screwSchedule(pinned).find(({ joint }) => joint === 'cover strip to top rail');
    expect(pins?.count).toBeGreaterThan(0);
    for (const { z } of pins?.places ?? []) expect(Math.abs(z)).toBeLessThan(pinned.rail.depth / 2);
  });
});

describe('stop strips', () => {
  test('are thinner than the room at the slat’s end, by what slats lean out under their width, and flush', () => {
    for (const [unit, fine] of [
      ['mm', 0.5],
      ['in', 25.4 / 64],
    ] as const) {
      const size = unit === 'mm' ? { width: 1200, height: 1650 } : { width: 48, height: 65 };
      const own = unit === 'mm' ? { stop: 12, thickness: 4 } : { stop: '1/2', thickness: '5/32' };
      const deep = unit === 'mm' ? 45 : '1 3/4';
      const panel = panelOf(
        {
          size,
          slat: own,
          rail: { depth: deep },
          stile: { depth: deep },
          stave: { count: 8, width: unit === 'mm' ? 18 : '3/4', depth: unit === 'mm' ? 14 : '9/16' },
          weave: 'two-over-two twill',
        },
        { unit },
      );
      const thickness = stopThickness(panel);
      const face = panel.stile.depth / 2 - thickness;
      let most = 0;
      for (const { bend } of panel.rows)
        for (let x = 0; x <= 12.7; x += 0.1)
          for (const at of [x, panel.clear.width - x]) {
            const { z, slope } = sampleSlat(bend, at);
            most = Math.max(most, Math.abs(z) + panel.courses.thickness / 2 / Math.hypot(1, slope));
          }
      expect(face).toBeGreaterThanOrEqual(most - 1e-6);
      expect(face - most).toBeLessThan(fine + 0.01);
      // At the end itself there is more room: the lean is what takes it.
      expect(most).toBeGreaterThan((panel.spec.endStop ?? 0) + panel.courses.thickness / 2 + 0.1);
    }
  });

  test('there are none without stops, nor where slats fill the depth of the stile', () => {
    expect(stopThickness(solved())).toBe(0);
    expect(stopThickness(solved({ slat: { thickness: 4, stop: 16.9 } }))).toBe(0);
  });
});

describe('slats', () => {
  test('are cut with half a millimetre or more of clearance at both ends, 1/64 in in inch work', () => {
    for (const [panel, least] of [
      [solved(), 1],
      [panelOf({ size: { width: '44 1/2', height: 52 } }), 25.4 / 32],
    ] as const)
      for (const { bend, cutLength } of panel.rows) {
        expect(bend.cutLength - cutLength).toBeGreaterThanOrEqual(least - 1e-9);
        expect(bend.cutLength - cutLength).toBeLessThan(least + panel.display.mark + 1e-6);
      }
  });

  test('of one panel whose rows want lengths a millimetre apart are all cut to the shorter', () => {
    const panel = panelOf(SHUTTER, { unit: 'mm' });
    expect(new Set(panel.rows.map(({ bend }) => Math.floor(bend.cutLength))).size).toBeGreaterThan(1);
    expect(new Set(panel.rows.map(({ cutLength }) => cutLength)).size).toBe(1);
    expect(partsOf(panel).filter(({ role }) => role === 'slat')).toHaveLength(1);
  });
});

test('staves stand on the bed of the bottom groove; their clearance is all at the top', () => {
  const { staves, clear, groove } = solved({ stave: { count: 4, clearance: 3 } });
  expect(staves.bottom).toBeCloseTo(clear.bottom - groove.depth, 9);
  expect(clear.bottom + clear.height + groove.depth - (staves.bottom + staves.length)).toBeCloseTo(3, 9);
});
