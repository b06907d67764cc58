import { type Panel, type Part, type PartRole, partsOf, sideAt } from '@wattlewright/model';
import { boxOf, pointsOf, union } from '../ink.ts';
import type { Drawing, PathMark } from '../mark.ts';
import { stroke } from '../mark.ts';
import { polygon, polyline } from '../path.ts';
import type { Extent, Scale } from '../scale.ts';
import type { ViewMaker } from '../sheet/fit.ts';
import { extentOf } from '../sheet/frame.ts';
import { type Axonometry, axonometry } from './axonometry.ts';
import { type Block, braceOutline, type Fitting, fittings } from './fittings.ts';
import { letterOf } from './front.ts';
import { partOf } from './partof.ts';
import { blockInk, type Seen, shaded, uprightInk } from './pictureblock.ts';
import { slatFacets, slatInk } from './pictureslat.ts';

/** What `picture` needs to know. */
export interface PictureOptions {
  readonly scale: Scale;
  /** The job's parts list, so that letters agree with it; the panel's own unless given. */
  readonly parts?: readonly Part[];
}

interface Scene {
  readonly panel: Panel;
  readonly parts: readonly Part[];
  readonly to: Axonometry;
}

/** Real size of the picture of a panel, mm, as it is projected. */
export function pictureExtent(panel: Panel): Extent {
  const to = axonometry(1);
  const solids = [frameBlock(panel), ...fittings(panel)];
  const corners = solids.flatMap(({ from: a, to: b }) =>
    [a.x, b.x].flatMap((x) => [a.y, b.y].flatMap((y) => [a.z, b.z].map((z) => to(x, y, z)))),
  );
  return extentOf(boxOf(corners));
}

/**
 * The panel as seen from the right and above, shaded, light from the upper left, hidden surfaces removed. Painted back to
 * front: everything lies on one side or the other of planes that separate it, so that the order is exact, not guessed.
 */
export function picture(panel: Panel, options: PictureOptions): Drawing {
  const { ratio } = options.scale;
  const scene: Scene = { panel, parts: options.parts ?? partsOf(panel), to: axonometry(ratio) };
  const marks = paint(scene);
  return {
    name: 'picture',
    title: panel.name,
    scale: ratio,
    scaleText: '',
    marks,
    bounds: union(marks.map(({ path }) => boxOf(pointsOf(path)))),
    alt: `${panel.name} as it will look: a woven panel in its frame, seen from the right and above.`,
  };
}

/** The picture as a view whose size the sheet chooses. */
export function pictureMaker(panel: Panel, options: Omit<PictureOptions, 'scale'> = {}): ViewMaker {
  return { name: 'picture', real: pictureExtent(panel), make: (scale) => picture(panel, { ...options, scale }) };
}

/**
 * Back to front. Planes that separate: the frame's back from what is behind it; the bottom rail's lower and upper edge;
 * the left stile's inner face; the courses' edges, of which the viewer stands above; the right stile's inner face; the top
 * rail's edges. Stops and cover strips lie in front of every slat, and no slat slopes as much as a line of sight.
 */
function paint(scene: Scene): PathMark[] {
  const { panel } = scene;
  const { outside, clear, rail, stile } = panel;
  const added = fittings(panel);
  const where = (test: (fitting: Fitting) => boolean) => added.filter(test).flatMap((one) => fittingInk(scene, one));
  const isBelow = ({ to }: Fitting) => to.y <= 1e-6;
  const isAbove = ({ from }: Fitting) => from.y >= outside.height - 1e-6;
  const isBack = (one: Fitting) => !isBelow(one) && !isAbove(one) && (one.to.z <= 0 || one.to.x <= 1e-6);
  const [right, top] = [clear.left + clear.width, clear.bottom + clear.height];
  const railAt = (y: number) => block([0, y, -rail.depth / 2], [outside.width, y + rail.height, rail.depth / 2]);
  const stileAt = (x: number) => block([x, clear.bottom, -stile.depth / 2], [x + stile.width, top, stile.depth / 2]);
  return [
    ...where(isBelow),
    ...where(isBack),
    ...braceInk(scene),
    ...partInk(scene, 'rail', railAt(0)),
    ...partInk(scene, 'stile', stileAt(0), ['right', 'front']),
    ...strips(scene, 'back'),
    ...weave(scene),
    ...strips(scene, 'front'),
    ...partInk(scene, 'stile', stileAt(right), ['right', 'front']),
    ...partInk(scene, 'rail', railAt(top)),
    ...where((one) => !isBelow(one) && !isAbove(one) && !isBack(one)),
    ...where(isAbove),
  ];
}

/** Course by course from the bottom: staves behind the slat, the slat, staves before it, and what shows in open gaps. */
function weave(scene: Scene): PathMark[] {
  const { panel, to } = scene;
  const { courses, clear, staves, rows } = panel;
  const slats = rows.map((row) => ({ drawn: slatFacets(panel, row), of: letterOf(scene, 'slat', row.cutLength) }));
  const all = [...staves.lefts.keys()];
  const top = clear.bottom + clear.height;
  const bands = courses.bottoms.flatMap((y, course): PathMark[] => {
    const row = panel.weave.rowOfCourse[course] as number;
    const { drawn, of } = slats[row] as (typeof slats)[number];
    const under = course === 0 ? clear.bottom : (courses.bottoms[course - 1] as number) + courses.height;
    const behind = all.filter((stave) => sideAt(panel, course, stave) === 1);
    const before = all.filter((stave) => sideAt(panel, course, stave) === -1);
    return [
      ...stavePieces(scene, all, [under, y]),
      ...stavePieces(scene, behind, [y, y + courses.height]),
      ...slatInk(drawn, y, { panel, to, of }),
      ...stavePieces(scene, before, [y, y + courses.height]),
    ];
  });
  const last = (courses.bottoms.at(-1) ?? clear.bottom) + courses.height;
  return [...bands, ...stavePieces(scene, all, [last, top])];
}

/** Pieces of some staves between two heights, from the far left. */
function stavePieces(scene: Scene, which: readonly number[], [y0, y1]: readonly [number, number]): PathMark[] {
  if (y1 - y0 < 1e-6) return [];
  const { staves } = scene.panel;
  const pieces = which.map((stave) => {
    const x = staves.lefts[stave] as number;
    return block([x, y0, -staves.depth / 2], [x + staves.width, y1, staves.depth / 2]);
  });
  return uprightInk(scene.to, pieces, letterOf(scene, 'stave'));
}

/** Cover strips and stops on one face of the panel; they lie between the weave's own surface and the frame's. */
function strips(scene: Scene, face: 'front' | 'back'): PathMark[] {
  const { panel, parts } = scene;
  const { clear, cover, stile } = panel;
  const [right, top] = [clear.left + clear.width, clear.bottom + clear.height];
  const turned = (z0: number, z1: number): [number, number] => (face === 'front' ? [z0, z1] : [-z1, -z0]);
  const stop = partOf(parts, panel, 'stop');
  const stops = (stop ? [clear.left, right - stop.width] : []).flatMap((x) => {
    const { width, thickness } = stop as Part;
    const [z0, z1] = turned(stile.depth / 2 - thickness, stile.depth / 2);
    return partInk(scene, 'stop', block([x, clear.bottom, z0], [x + width, top, z1]));
  });
  if (cover.height <= 0) return stops;
  const [z0, z1] = turned(cover.face, cover.face + cover.thickness);
  const inset = (clear.width - cover.length) / 2;
  return [
    ...stops,
    ...partInk(scene, 'cover strip', block([clear.left + inset, top - cover.height, z0], [right - inset, top, z1]), [
      'front',
    ]),
  ];
}

function partInk(scene: Scene, role: PartRole, solid: Block, faces?: readonly Seen[]): PathMark[] {
  return blockInk(scene.to, solid, { of: letterOf(scene, role), ...(faces && { faces }) });
}

function fittingInk(scene: Scene, fitting: Fitting): PathMark[] {
  return blockInk(scene.to, fitting, { of: fitting.role && letterOf(scene, fitting.role) });
}

/** A brace at the back; the weave is painted over most of it. */
function braceInk(scene: Scene): PathMark[] {
  const brace = braceOutline(scene.panel);
  if (!brace) return [];
  const points = brace.outline.map(([x, y]) => scene.to(x, y, -scene.panel.stile.depth / 2));
  const of = brace.role && letterOf(scene, brace.role);
  if (points.length === 2) return [stroke('edge-light', polyline(points))];
  return [shaded(polygon(points), 0.84, of), stroke('edge-light', polygon(points), of)];
}

function frameBlock({ outside }: Panel): Block {
  return block([0, 0, -outside.depth / 2], [outside.width, outside.height, outside.depth / 2]);
}

function block(from: readonly [number, number, number], to: readonly [number, number, number]): Block {
  return { from: { x: from[0], y: from[1], z: from[2] }, to: { x: to[0], y: to[1], z: to[2] } };
}
