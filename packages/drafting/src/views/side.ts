import { bracePlates, type Panel, type Part, partsOf, sampleSlat } from '@wattlewright/model';
import { union } from '../ink.ts';
import { dimensionRows } from '../layout/dimension.ts';
import type { Size } from '../layout/rows.ts';
import { TEXT, TEXT_CLEAR, TEXT_LIFT } from '../layout/style.ts';
import type { Drawing, Mark, PathMark } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { line, rectangle } from '../path.ts';
import type { Extent, Scale } from '../scale.ts';
import type { ViewMaker } from '../sheet/fit.ts';
import { type View, view } from '../view.ts';
import { TURNBUCKLE } from './backfittings.ts';
import { stated } from './detaildrawing.ts';
import { inkBox } from './elevation.ts';
import { heightsOver, printed } from './elevationsizes.ts';
import { braceOutline, type Fitting, fittings, grounds } from './fittings.ts';
import { faceBox, letterOf, woodFace } from './front.ts';
import { partOf } from './partof.ts';

/** What `sideElevation` needs to know. */
export interface SideOptions {
  readonly scale: Scale;
  /** The job's parts list, so that letters agree with it; the panel's own unless given. */
  readonly parts?: readonly Part[];
}

interface Scene {
  readonly panel: Panel;
  readonly parts: readonly Part[];
  /** Maps distance behind mid-depth, and height, to paper: the front is on the left. */
  readonly at: View;
  /** Paper mm for a real mm. */
  readonly ratio: number;
}

/** How far a floor line runs on beyond the panel on both sides, paper mm. */
const FLOOR_PAST = 6;

/** Real size of what the side elevation shows, mm, sizes apart. */
export function sideExtent(panel: Panel, parts: readonly Part[] = partsOf(panel)): Extent {
  const [low, high] = heightsOver(panel);
  const [front, back] = depthsOver(panel, parts);
  return { width: back - front, height: high - low };
}

/**
 * Side elevation: the panel from its right, front on the left. The weave lies hidden behind the stile: dashed, as wide as
 * its slats swing to the front and to the back, unless the lines would run together.
 */
export function sideElevation(panel: Panel, { scale, parts = partsOf(panel) }: SideOptions): Drawing {
  const at = view(scale.ratio);
  const scene: Scene = { panel, parts, at, ratio: scale.ratio };
  const [low, high] = heightsOver(panel);
  const [front, back] = depthsOver(panel, parts);
  const outline = faceBox(at, { x0: front, y0: low, x1: back, y1: high });
  const ink = [...sideInk(scene), ...floorLines(scene, [outline.u0 - FLOOR_PAST, outline.u1 + FLOOR_PAST])];
  const top = outline.v0 - 2 * TEXT_LIFT;
  const middle = at(0, 0)[0];
  const names: Mark[] = [
    write('note', 'front', [middle - 2 * TEXT_CLEAR, top], { height: TEXT, anchor: 'end' }),
    write('note', 'back', [middle + 2 * TEXT_CLEAR, top], { height: TEXT }),
  ];
  const below = dimensionRows({ side: 'below', outline, sizes: depthSizes(scene) });
  const left = dimensionRows({ side: 'left', outline, sizes: heightSizes(scene) });
  return {
    name: 'side',
    title: 'Side elevation, from the right',
    scale: scale.ratio,
    scaleText: scale.text,
    marks: [...ink, ...names, ...below.marks, ...left.marks],
    bounds: union([inkBox([...ink, ...names]), below.bounds, left.bounds]),
    alt: `${panel.name} from its right side: the depth of the frame, with the weave hidden in it.`,
    chains: [...below.chains, ...left.chains],
  };
}

/** The side elevation as a view whose scale the sheet chooses. */
export function sideMaker(panel: Panel, options: Omit<SideOptions, 'scale'> = {}): ViewMaker {
  return {
    name: 'side',
    real: sideExtent(panel, options.parts),
    make: (scale) => sideElevation(panel, { ...options, scale }),
  };
}

function sideInk(scene: Scene): PathMark[] {
  const { panel, at } = scene;
  const { rail, stile, outside, clear } = panel;
  const top = clear.bottom + clear.height;
  const rails = [0, top].flatMap((y0) =>
    woodFace(
      at,
      { x0: -rail.depth / 2, y0, x1: rail.depth / 2, y1: y0 + rail.height },
      { of: letterOf(scene, 'rail') },
    ),
  );
  const face = { x0: -stile.depth / 2, y0: clear.bottom, x1: stile.depth / 2, y1: top };
  const added = fittings(panel);
  const near = (one: Fitting): boolean => one.to.x > outside.width / 2;
  return [
    ...added.filter((one) => !near(one)).flatMap((one) => fittingInk(scene, one)),
    ...strutInk(scene),
    ...rails,
    ...woodFace(at, face, { of: letterOf(scene, 'stile') }),
    ...hiddenWeave(scene),
    ...added.filter(near).flatMap((one) => fittingInk(scene, one)),
    ...cableInk(scene),
  ];
}

/** Hidden lines nearer each other than this on paper, mm, would run together and are left out. */
const APART = 1;

/** A stave between the rails, and the slats as far as they swing. The grooves stop at the stiles: the rails' ends are plain. */
function hiddenWeave(scene: Scene): PathMark[] {
  const { panel, at, ratio } = scene;
  const { staves, clear, courses, rows, stile } = panel;
  const top = clear.bottom + clear.height;
  const swings = rows.map((row) => swing(panel, row));
  const [front, back] = [Math.max(...swings.map((one) => one[0])), Math.min(...swings.map((one) => one[1]))];
  const last = (courses.bottoms.at(-1) as number) + courses.height;
  const slats = [front, back].map((z) => line(at(-z, clear.bottom), at(-z, last)));
  const faces = [-1, 1].map((way) => (way * staves.depth) / 2);
  const stave = faces.map((z) => line(at(z, clear.bottom), at(z, top)));
  const between = Math.min(front - staves.depth / 2, -back - staves.depth / 2, staves.depth) * ratio;
  const within = (stile.depth / 2 - Math.max(front, -back)) * ratio;
  return [
    ...(within >= APART ? slats : []).map((path) => stroke('hidden', path, letterOf(scene, 'slat'))),
    ...(within >= APART && between >= APART ? stave : []).map((path) =>
      stroke('hidden', path, letterOf(scene, 'stave')),
    ),
  ];
}

/** The strut of a gate that has one. */
function strutOf({ panel, parts }: Pick<Scene, 'panel' | 'parts'>): Part | undefined {
  const role = braceOutline(panel)?.role;
  return role && partOf(parts, panel, role);
}

/** A gate's strut on the back of its frame. */
function strutInk(scene: Scene): PathMark[] {
  const { panel, at } = scene;
  const brace = braceOutline(panel);
  const part = strutOf(scene);
  if (!part || !brace) return [];
  const ys = brace.outline.map(([, y]) => y);
  const back = panel.stile.depth / 2;
  const face = { x0: back, y0: Math.min(...ys), x1: back + part.thickness, y1: Math.max(...ys) };
  return woodFace(at, face, { of: part.letter, edge: 'edge-light' });
}

/** A cable brace's plates, and how far its eyes and its turnbuckle stand out behind the frame, as drawn, mm; common practice, no source. */
const CABLE = { plate: 3, axis: 9, out: 16 } as const;

/** A cable brace behind the frame: its plates, the wire, and the turnbuckle at the lower end. */
function cableInk({ panel, at }: Scene): PathMark[] {
  const plates = bracePlates(panel).toSorted((a, b) => b.eye.y - a.eye.y);
  const [high, low] = plates;
  if (!high || !low) return [];
  const back = panel.stile.depth / 2;
  const whole = Math.hypot(high.eye.x - low.eye.x, high.eye.y - low.eye.y);
  const rise = (along: number): number => low.eye.y + ((high.eye.y - low.eye.y) * along) / whole;
  const start = Math.min(panel.stile.width, panel.rail.height) * 0.6;
  const box = (x0: number, y0: number, x1: number, y1: number): PathMark[] => {
    const path = rectangle(faceBox(at, { x0, y0, x1, y1 }));
    return [stroke('paper', path), stroke('edge-light', path)];
  };
  return [
    ...plates.flatMap(({ from, to }) => box(back, from.y, back + CABLE.plate, to.y)),
    stroke('edge-light', line(at(back + CABLE.axis, low.eye.y), at(back + CABLE.axis, high.eye.y))),
    ...plates.map(({ eye }) => stroke('edge-light', line(at(back, eye.y), at(back + CABLE.axis, eye.y)))),
    ...box(back + 2 * CABLE.axis - CABLE.out, rise(start), back + CABLE.out, rise(start + TURNBUCKLE)),
  ];
}

/** How far the faces of a row's slat come to the front and go to the back, mm. */
function swing({ clear, courses }: Panel, { bend }: Panel['rows'][number]): readonly [front: number, back: number] {
  const places = bend.knots.map(({ x }) => Math.min(Math.max(x, 0), clear.width));
  const middles = places.slice(1).map((x, i) => (x + (places[i] as number)) / 2);
  const zs = [0, ...places, ...middles, clear.width].map((x) => sampleSlat(bend, x).z);
  return [Math.max(...zs) + courses.thickness / 2, Math.min(...zs) - courses.thickness / 2];
}

function fittingInk(scene: Scene, { from, to, role }: Fitting): PathMark[] {
  const path = rectangle(faceBox(scene.at, { x0: -to.z, y0: from.y, x1: -from.z, y1: to.y }));
  if (role === undefined) return [stroke('paper', path), stroke('edge-light', path)];
  const of = letterOf(scene, role);
  return [stroke('wood', path, of), stroke('edge', path, of)];
}

function floorLines({ panel, at }: Scene, [u0, u1]: readonly [number, number]): PathMark[] {
  return grounds(panel).map(({ y }) => {
    const [, v] = at(0, y);
    return stroke('neighbour', line([u0, v], [u1, v]));
  });
}

/** The foremost and the hindmost of what is drawn, as distances behind mid-depth, mm. */
function depthsOver(panel: Panel, parts: readonly Part[]): readonly [front: number, back: number] {
  const half = panel.outside.depth / 2;
  const added = fittings(panel);
  const strut = half + (strutOf({ panel, parts })?.thickness ?? (bracePlates(panel).length > 0 ? CABLE.out : 0));
  return [Math.min(-half, ...added.map(({ to }) => -to.z)), Math.max(strut, ...added.map(({ from }) => -from.z))];
}

/** The depth of the frame, with a strut behind it; those of a cap, a foot or a block outside it, a cap's overhang in front and behind. */
function depthSizes(scene: Scene): Size[] {
  const { panel, at } = scene;
  const size = (from: number, to: number): Size =>
    stated(from, to, { display: panel.display, along: (x) => at(x, 0)[0] })[0] as Size;
  const half = panel.outside.depth / 2;
  const seen = new Map<string, Size>();
  for (const { what, role, from, to } of fittings(panel)) {
    if (!role) continue;
    seen.set(what, size(-to.z, -from.z));
    if (what !== 'cap rail') continue;
    if (to.z > half) seen.set('front', size(-to.z, -half));
    if (from.z < -half) seen.set('back', size(half, -from.z));
  }
  const strut = strutOf(scene);
  return [size(-half, half), ...(strut ? [size(half, half + strut.thickness)] : []), ...seen.values()];
}

/** The height of the frame, what stands under or over it, and the whole. */
function heightSizes({ panel, at }: Scene): Size[] {
  const [low, high] = heightsOver(panel);
  const { height } = panel.outside;
  const size = (from: number, to: number): Size => ({
    from: at(0, from)[1],
    to: at(0, to)[1],
    ...printed(panel, to - from),
  });
  const more = low < -1e-6 || high > height + 1e-6;
  return [
    ...(low < -1e-6 ? [size(low, 0)] : []),
    { ...size(0, height), ...(more ? {} : { total: true }) },
    ...(high > height + 1e-6 ? [size(height, high)] : []),
    ...(more ? [{ ...size(low, high), total: true }] : []),
  ];
}
