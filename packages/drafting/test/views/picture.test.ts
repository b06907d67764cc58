import { type Panel, type Part, partsOf, sampleSlat } from '@wattlewright/model';
import { describe, expect, test } from 'vitest';
import type { Point } from '../../src/mark.ts';
import { toSvg } from '../../src/svg.ts';
import { axonometry, TO_LIGHT, TO_VIEWER } from '../../src/views/axonometry.ts';
import { fittings } from '../../src/views/fittings.ts';
import { partOf } from '../../src/views/partof.ts';
import { picture, pictureExtent } from '../../src/views/picture.ts';
import { fills, panelsOf, screen, topmost } from './seen.ts';

type Place = readonly [x: number, y: number, z: number];

interface Solid {
  readonly letter: string | undefined;
  readonly from: Place;
  readonly to: Place;
}

const ratio = 0.1;
const scale = { ratio, text: '' };

/** No wood is this far from mid-depth, mm: feet reach 200, and free ends of slats less. */
const FAR = 260;

/** Everything of the panel that is a block, by the solved numbers. */
function solids(panel: Panel, parts: readonly Part[]): Solid[] {
  const { outside, rail, stile, clear, staves, cover } = panel;
  const letter = (role: Part['role']) => partOf(parts, panel, role)?.letter;
  const top = clear.bottom + clear.height;
  const right = clear.left + clear.width;
  const stop = partOf(parts, panel, 'stop');
  const near = cover.face;
  const inset = (clear.width - cover.length) / 2;
  const deep = stile.depth / 2;
  const solid = (role: Part['role'], from: Place, to: Place): Solid => ({ letter: letter(role), from, to });
  return [
    ...[0, top].map((y) => solid('rail', [0, y, -rail.depth / 2], [outside.width, y + rail.height, rail.depth / 2])),
    ...[0, right].map((x) => solid('stile', [x, clear.bottom, -deep], [x + stile.width, top, deep])),
    ...staves.lefts.map((x) =>
      solid('stave', [x, clear.bottom, -staves.depth / 2], [x + staves.width, top, staves.depth / 2]),
    ),
    ...(cover.height > 0
      ? [1, -1].map((way) => {
          const [z0, z1] = way > 0 ? [near, near + cover.thickness] : [-near - cover.thickness, -near];
          return solid('cover strip', [clear.left + inset, top - cover.height, z0], [right - inset, top, z1]);
        })
      : []),
    ...(stop
      ? [clear.left, right - stop.width].flatMap((x) =>
          [deep - stop.thickness, -deep].map((z) =>
            solid('stop', [x, clear.bottom, z], [x + stop.width, top, z + stop.thickness]),
          ),
        )
      : []),
    ...fittings(panel).map(({ role, from, to }) => ({
      letter: role && letter(role),
      from: [from.x, from.y, from.z] as const,
      to: [to.x, to.y, to.z] as const,
    })),
  ];
}

/** Where a line of sight through a point of the paper first meets wood, by walking along it in small steps. */
function firstHit(panel: Panel, parts: readonly Part[], all: readonly Solid[]): (point: Point) => string | undefined {
  const { courses, clear, weave, rows } = panel;
  const { x: vx, y: vy, z: vz } = TO_VIEWER;
  const level = Math.hypot(vx, vz);
  const across: Place = [vz / level, 0, -vx / level];
  const up: Place = [(-vy * vx) / level, level, (-vy * vz) / level];
  const letters = rows.map((row) => partOf(parts, panel, 'slat', row.cutLength)?.letter);
  const inSlat = ([x, y, z]: Place): string | undefined => {
    if (x < clear.left || x > clear.left + clear.width) return undefined;
    const course = Math.floor((y - clear.bottom) / courses.pitch);
    const bottom = courses.bottoms[course];
    if (bottom === undefined || y < bottom || y > bottom + courses.height) return undefined;
    const row = weave.rowOfCourse[course] as number;
    const bend = (rows[row] as (typeof rows)[number]).bend;
    return Math.abs(z - sampleSlat(bend, x - clear.left).z) <= courses.thickness / 2 ? letters[row] : undefined;
  };
  return ([u, v]) => {
    const base = [0, 1, 2].map(
      (i) => (across[i] as number) * (u / ratio) - (up[i] as number) * (v / ratio),
    ) as unknown as Place;
    // From before to behind all that is there, as distances along the line of sight.
    const [start, end] = [FAR, -FAR].map((z) => (z - base[2]) / vz) as [number, number];
    for (let s = start; s > end; s -= 0.25) {
      const p: Place = [base[0] + s * vx, base[1] + s * vy, base[2] + s * vz];
      const hit = all.find(({ from, to }) => p.every((c, i) => c >= (from[i] as number) && c <= (to[i] as number)));
      if (hit) return hit.letter ?? 'hardware';
      const slat = inSlat(p);
      if (slat) return slat;
    }
    return undefined;
  };
}

describe('picture(panel).marks', () => {
  const panels: [string, Panel][] = [
    ['a plain screen on blocks', screen('plain', { screen: { mounting: 'blocks', standoff: 40 } })],
    ['a twill with stops', screen(['++--', '-++-', '--++', '+--+'], { slat: { thickness: 4, height: 40, stop: 10 } })],
    ['a basket with open gaps', screen('two-over-two basket', { fit: { vary: 'gaps', from: 3, to: 12 } })],
    [
      'a guard with a cap',
      screen('plain', { use: 'guard', guard: { drop: 1000, dwelling: 'other', cap: { height: 28, depth: 120 } } }),
    ],
    [
      'a divider on feet',
      screen('paired courses', {
        use: 'divider',
        divider: { stand: 'feet', feet: { length: 400, height: 60, width: 45 } },
      }),
    ],
  ];
  test.each(panels)('of %s show at each place the wood that a line of sight meets first', (_, panel) => {
    const parts = partsOf(panel);
    const drawing = picture(panel, { scale, parts });
    const on = topmost(fills(drawing.marks));
    const seen = firstHit(panel, parts, solids(panel, parts));
    const { u0, v0, u1, v1 } = drawing.bounds;
    let [asked, wrong] = [0, 0];
    for (let i = 0; i < 700; i++) {
      const [u, v] = [u0 + (u1 - u0) * ((i * 0.618034 + 0.5) % 1), v0 + (v1 - v0) * ((i * 0.7548777 + 0.3) % 1)];
      const expected = seen([u, v]);
      // Within a line's width of an edge the walk's steps and the rounding of the ink decide; such places say nothing.
      const clear = [
        [0.1, 0],
        [-0.1, 0],
        [0, 0.1],
        [0, -0.1],
      ].every(([du, dv]) => seen([u + (du as number), v + (dv as number)]) === expected);
      if (!clear) continue;
      asked++;
      if ((on([u, v]) ?? 'hardware') !== (expected ?? 'hardware')) wrong++;
    }
    expect(asked).toBeGreaterThan(350);
    expect(wrong).toBe(0);
  });

  test('stay under 1 MB as SVG for 60 courses', () => {
    const panel = screen('plain', { size: { width: 1800, height: 2500 }, stave: { width: 20, depth: 13, count: 9 } });
    expect(panel.courses.count).toBeGreaterThanOrEqual(55);
    expect(toSvg(picture(panel, { scale })).length).toBeLessThan(1_000_000);
  });

  test('depict every part of the list but a strut’s hidden face', () => {
    const [panel] = panelsOf([{ name: 'Gate', use: 'gate', size: { width: 900, height: 1200 }, wood: 'white oak' }]);
    const parts = partsOf(panel as Panel);
    const drawn = new Set(picture(panel as Panel, { scale, parts }).marks.flatMap(({ of }) => of ?? []));
    expect([...drawn].sort()).toEqual(parts.map(({ letter }) => letter).sort());
  });
});

describe('pictureExtent(panel)', () => {
  test('is the size of the picture at full size', () => {
    const panel = screen('plain', { screen: { mounting: 'blocks', standoff: 40 } });
    const { u0, v0, u1, v1 } = picture(panel, { scale }).bounds;
    const { width, height } = pictureExtent(panel);
    expect((u1 - u0) / ratio).toBeCloseTo(width, 0);
    expect((v1 - v0) / ratio).toBeCloseTo(height, 0);
  });
});

describe('axonometry(1)', () => {
  test('maps every point of a line of sight to one place, and uprights to uprights', () => {
    const to = axonometry(1);
    const { x, y, z } = TO_VIEWER;
    const [u, v] = to(400, 300, 20);
    const further = to(400 + 90 * x, 300 + 90 * y, 20 + 90 * z);
    expect(further[0]).toBeCloseTo(u, 1);
    expect(further[1]).toBeCloseTo(v, 1);
    expect(to(400, 700, 20)[0]).toBeCloseTo(u, 6);
  });

  test('takes unit vectors to the viewer and to the light', () => {
    for (const { x, y, z } of [TO_VIEWER, TO_LIGHT]) expect(Math.hypot(x, y, z)).toBeCloseTo(1, 2);
  });
});
