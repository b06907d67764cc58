import {
  type Panel,
  partsOf,
  readJob,
  type SlatBend,
  sampleSlat,
  screwSchedule,
  sideAt,
  solve,
} from '@wattlewright/model';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arbitraryJob } from '../../../../test/support/jobs.ts';
import { boxOf } from '../../src/ink.ts';
import type { Box, Drawing } from '../../src/mark.ts';
import { type Scale, scalesOf, standardScale } from '../../src/scale.ts';
import { detail } from '../../src/views/detail.ts';
import { cutPlanes } from '../../src/views/detailkey.ts';
import { partOf } from '../../src/views/partof.ts';
import { example, examples, inkOf, isWithinBounds, measured, onPath, plain, type Solved } from './read.ts';

/** Real places read from the ink: z to the front, y from the rail's upper edge, which is the panel's top. */
interface Read {
  readonly z: (u: number) => number;
  readonly y: (v: number) => number;
  readonly boxes: (role: Parameters<typeof partOf>[2], ...ink: ('edge' | 'edge-light')[]) => Box[];
  readonly rail: { readonly z: number; readonly y: number }[];
}

/** The drawing measured by the panel's depth and its top alone, without asking how it was laid out. */
function read(drawing: Drawing, { panel, parts }: Solved): Read {
  const of = partOf(parts, panel, 'rail')?.letter;
  const outline = inkOf(drawing, of, 'edge', 'edge-light').map(onPath);
  const box = boxOf(outline.flat());
  // The front lies on the left.
  const z = (u: number): number => -(u - (box.u0 + box.u1) / 2) / drawing.scale;
  const y = (v: number): number => panel.outside.height - (v - box.v0) / drawing.scale;
  return {
    z,
    y,
    rail: outline.flat().map(([u, v]) => ({ z: z(u), y: y(v) })),
    boxes: (role, ...ink) => {
      const letters = new Set(parts.filter((part) => part.role === role).map(({ letter }) => letter));
      return [...letters].flatMap((letter) => inkOf(drawing, letter, ...ink).map((mark) => boxOf(onPath(mark))));
    },
  };
}

/** What the marks of the detail must say of the panel, at any scale. */
function expectTrue(solved: Solved, scale: Scale): void {
  const { panel, parts } = solved;
  const { clear, courses, cover, groove, rail, staves, outside } = panel;
  const drawing = detail(panel, 'stave head', { scale, parts });
  const top = clear.bottom + clear.height;
  const { z, y, boxes, rail: corners } = read(drawing, solved);

  // The rail, hollowed by its groove.
  for (const side of [-1, 1]) {
    const near = (far: number, high: number): unknown => ({
      z: expect.closeTo(side * far, 6),
      y: expect.closeTo(high, 6),
    });
    expect(corners).toContainEqual(near(rail.depth / 2, outside.height));
    expect(corners).toContainEqual(near(rail.depth / 2, top));
    expect(corners).toContainEqual(near(groove.width / 2, top));
    expect(corners).toContainEqual(near(groove.width / 2, top + groove.depth));
  }

  // The stave's head in the groove.
  const [stave] = boxes('stave', 'edge', 'edge-light') as [Box];
  expect(y(stave.v0)).toBeCloseTo(staves.bottom + staves.length, 6);
  expect([z(stave.u1), z(stave.u0)]).toEqual([-1, 1].map((side) => expect.closeTo((side * staves.depth) / 2, 6)));

  // The top course, on its side of the stave, and the room over it.
  const slats = boxes('slat', 'edge', 'edge-light');
  const upper = Math.min(...slats.map(({ v0 }) => v0));
  expect(y(upper)).toBeCloseTo(clear.bottom + courses.stack, 6);
  expect(top - y(upper)).toBeCloseTo(courses.allowance, 6);
  const highest = slats.filter(({ v0 }) => Math.abs(v0 - upper) < 1e-6);
  const { x, stave: at } = cutPlanes(panel).across;
  const side = sideAt(panel, courses.count - 1, at);
  const bend = panel.rows[panel.weave.rowOfCourse[courses.count - 1] as number]?.bend as SlatBend;
  const middle = sampleSlat(bend, x - clear.left).z;
  const cut = highest.find(({ u0, u1 }) => Math.abs((z(u0) + z(u1)) / 2 - middle) < 1e-6) as Box;
  const faces = [z(cut.u0), z(cut.u1)].map((face) => side * face).toSorted((a, b) => a - b) as [number, number];
  // It crosses the stave's middle askew: no nearer than the stave's face, and no thinner than it is.
  expect(faces[0]).toBeGreaterThan(staves.depth / 2 - 1e-6);
  expect(faces[1] - faces[0]).toBeGreaterThan(courses.thickness - 1e-6);
  expect(faces[1] - faces[0]).toBeLessThan(courses.thickness * 1.5);

  // Cover strips outside the outermost slats, hanging from the rail, as thick and high as the parts list has them.
  const strips = boxes('cover strip', 'edge', 'edge-light');
  expect(strips).toHaveLength(cover.height > 0 ? 2 : 0);
  for (const box of strips) {
    expect(y(box.v0)).toBeCloseTo(top, 6);
    expect(y(box.v0) - y(box.v1)).toBeCloseTo(cover.height, 6);
    const [inner, outer] = [z(box.u0), z(box.u1)].map(Math.abs).toSorted((a, b) => a - b);
    expect(inner).toBeCloseTo(cover.face, 6);
    expect((outer as number) - (inner as number)).toBeCloseTo(cover.thickness, 6);
    // Nothing of a slat that comes as high as a strip reaches it, leaning ends behind the plane included.
    for (const slat of slats.filter(({ v0 }) => y(v0) > top - cover.height + 1e-6))
      for (const u of [slat.u0, slat.u1]) expect(Math.abs(z(u))).toBeLessThan((inner as number) - 0.5);
  }
  expectPins(panel, drawing, { z, y });

  expect(isWithinBounds(drawing)).toBe(true);
  const sizes = measured(drawing, panel.display.unit);
  for (const size of [groove.depth, rail.height, rail.depth])
    expect(sizes.some(({ measures }) => Math.abs(measures - size) < 1e-6)).toBe(true);
  for (const { says, measures } of sizes) expect(Math.abs(says - measures)).toBeLessThan(panel.display.mark / 2 + 1e-6);
}

/** The pins of the schedule go from their places up into the rail by their length, one on either side. */
function expectPins(panel: Panel, drawing: Drawing, { z, y }: Pick<Read, 'z' | 'y'>): void {
  const row = screwSchedule(panel).find(({ joint }) => joint === 'cover strip to top rail');
  const pins = inkOf(drawing, undefined, 'edge')
    .map((mark) => boxOf(onPath(mark)))
    .filter(({ u0, u1 }) => u1 - u0 < 1e-9);
  expect(pins).toHaveLength(row ? 2 : 0);
  for (const pin of pins) {
    const place = row?.places.find((one) => Math.abs(one.z - z(pin.u0)) < 1e-6);
    expect(y(pin.v1)).toBeCloseTo(place?.y as number, 6);
    expect(y(pin.v0) - y(pin.v1)).toBeCloseTo(row?.fastener.length as number, 6);
  }
}

const panels: Readonly<Record<string, Solved>> = {
  ...Object.fromEntries(examples.map((name) => [name, example(name)])),
  'light of 300 mm': plain({ size: { width: 300, height: 320 }, stave: { count: 3 } }),
  'with stops': plain({ size: { width: 800, height: 900 }, slat: { thickness: 4, stop: 11 } }),
  'without strips': plain({ size: { width: 800, height: 900 }, top: { cover: 0 } }),
};

describe('detail of the stave head measured against the solved panel', () => {
  test.each(Object.keys(panels))('detail(%s, stave head): groove, stave, top course, strips and pins', (name) => {
    const solved = panels[name] as Solved;
    const { unit } = solved.panel.display;
    for (const ratio of [1, 0.5]) expectTrue(solved, standardScale(ratio, unit));
  });

  test('detail(panel, stave head) of arbitrary jobs', () => {
    fc.assert(
      fc.property(arbitraryJob({ panels: 1 }), fc.nat(3), (file, k) => {
        const job = readJob(JSON.stringify(file));
        const panel = solve(job)[0] as Panel;
        const scale = scalesOf(panel.display.unit).slice(1)[k] as Scale;
        expectTrue({ panel, parts: partsOf(panel, { spare: job.spare }) }, scale);
      }),
      { seed: 20261124, numRuns: 60 },
    );
  });
});
