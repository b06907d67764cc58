import { bracePlates, type Panel, type Part, partsOf, sampleSlat } from '@wattlewright/model';
import { union } from '../ink.ts';
import { dimensionRows } from '../layout/dimension.ts';
import { lines } from '../layout/lines.ts';
import { placeNotes, textBoxes } from '../layout/notes.ts';
import { dimensionSide } from '../layout/running.ts';
import { FIRST_ROW, LINE_STEP, TEXT, TEXT_CLEAR, TEXT_LIFT } from '../layout/style.ts';
import type { Box, Drawing, Mark, PathMark } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { line, rectangle } from '../path.ts';
import type { Extent, Scale } from '../scale.ts';
import type { ViewMaker } from '../sheet/fit.ts';
import { type View, view } from '../view.ts';
import { inkBox } from './elevation.ts';
import { heightsOver } from './elevationsizes.ts';
import { braceOutline, type Fitting, fittings, grounds } from './fittings.ts';
import { fixedHeights } from './fixedheights.ts';
import { faceBox, letterOf, woodFace } from './front.ts';
import { partOf } from './partof.ts';
import { CABLE_OUT, cableInk, turnbuckleFace } from './sidecable.ts';
import { depthSizes, heightSizes, proudReach } from './sidesizes.ts';

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
  const sized = { panel, at, strut: strutOf(scene) };
  const below = dimensionRows({ side: 'below', outline, sizes: depthSizes(sized) });
  const left = dimensionRows({ side: 'left', outline, sizes: heightSizes(sized) });
  const v = (y: number): number => at(0, y)[1];
  const { values, what } = fixedHeights(panel, v);
  const right = dimensionSide({
    side: 'right',
    outline,
    sizes: [],
    running: { origin: v(0), values, what, from: 'the foot of the frame', aside: true },
  });
  const words = heightWords(
    right.aside,
    { ...outline, v0: Math.min(outline.v0, right.bounds.v0) },
    inkBox(names).u1 + 2 * TEXT_CLEAR,
  );
  const named = turnbuckleName(scene, { ...outline, u1: right.bounds.u1 }, textBoxes(right.marks));
  return {
    name: 'side',
    title: 'End view from the right',
    scale: scale.ratio,
    scaleText: scale.text,
    marks: [...ink, ...names, ...below.marks, ...left.marks, ...right.marks, ...words, ...named],
    bounds: union([inkBox([...ink, ...names, ...words, ...named]), below.bounds, left.bounds, right.bounds]),
    alt: `${panel.name} from its right side: the depth of the frame, with the weave hidden in it.`,
    chains: [...below.chains, ...left.chains, ...right.chains],
  };
}

/** Widest line of the words on the heights at the right, mm. */
const WORDS = 22;

/** What the heights at the right are, over them and clear of the word for the back. */
function heightWords(text: string | undefined, { u1, v0 }: Box, from: number): Mark[] {
  if (text === undefined) return [];
  const wrapped = lines(text, WORDS);
  const base = v0 - 2 * TEXT_LIFT - (wrapped.length - 1) * LINE_STEP * TEXT;
  const u = Math.max(u1 + FIRST_ROW, from);
  return wrapped.map((one, i) => write('note', one, [u, base + i * LINE_STEP * TEXT], { height: TEXT }));
}

/** The turnbuckle by its name, outside the heights. */
function turnbuckleName(scene: Scene, around: Box, keepOut: readonly Box[]): Mark[] {
  const body = turnbuckleFace(scene.panel);
  if (!body) return [];
  const at = scene.at((body.x0 + body.x1) / 2, body.y0 + (body.y1 - body.y0) * 0.3);
  return placeNotes({ around, targets: [{ at, text: 'turnbuckle' }], sides: ['right'], aside: 4, keepOut }).marks;
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
    ...proudInk(scene),
    ...rails,
    ...woodFace(at, face, { of: letterOf(scene, 'stile') }),
    ...hiddenWeave(scene),
    ...added.filter(near).flatMap((one) => fittingInk(scene, one)),
    ...cableInk(panel, at),
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

/** Slats as far as they stand out of the frame. */
function proudInk(scene: Scene): PathMark[] {
  const { panel, at } = scene;
  const { clear, courses, outside } = panel;
  const half = outside.depth / 2;
  const { front, back } = proudReach(panel);
  const [y0, y1] = [clear.bottom, clear.bottom + courses.stack];
  return [
    ...(front > half ? [{ x0: -front, y0, x1: -half, y1 }] : []),
    ...(back > half ? [{ x0: half, y0, x1: back, y1 }] : []),
  ].flatMap((face) => woodFace(at, face, { of: letterOf(scene, 'slat'), edge: 'edge-light' }));
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
  const proud = proudReach(panel);
  const added = fittings(panel);
  const strut = half + (strutOf({ panel, parts })?.thickness ?? (bracePlates(panel).length > 0 ? CABLE_OUT : 0));
  return [
    Math.min(-proud.front, ...added.map(({ to }) => -to.z)),
    Math.max(strut, proud.back, ...added.map(({ from }) => -from.z)),
  ];
}
