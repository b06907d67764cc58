import { type Panel, type Part, partsOf } from '@wattlewright/model';
import { boxOf, pointsOf, union } from '../ink.ts';
import { crossesBox, overlaps } from '../layout/clearance.ts';
import { type Notes, placeNotes, textBoxes } from '../layout/notes.ts';
import { textBox } from '../lettering.ts';
import type { Box, Drawing, Mark, Point } from '../mark.ts';
import type { Extent, Scale } from '../scale.ts';
import type { ViewMaker } from '../sheet/fit.ts';
import { view } from '../view.ts';
import { elevationInk, fittingBoxes } from './elevationink.ts';
import { cutBeside, cutMarks, detailBoxes, detailMarks, detailTargets, frontMark } from './elevationmarks.ts';
import { elevationTargets } from './elevationnotes.ts';
import { heightRows, heightsOver, widthRows } from './elevationsizes.ts';
import { cornerWords } from './elevationwords.ts';
import { faceBox } from './front.ts';

/** What `elevation` needs to know. */
export interface ElevationOptions {
  readonly scale: Scale;
  /** The job's parts list, so that letters agree with it; the panel's own unless given. */
  readonly parts?: readonly Part[];
  /** `shop`: every size, cut letters, balloons; `client`: outside sizes and names. `shop` unless given. */
  readonly detail?: 'shop' | 'client';
}

/** Real size of what the front elevation shows, mm, sizes and notes apart. */
export function elevationExtent(panel: Panel): Extent {
  const [low, high] = heightsOver(panel);
  return { width: panel.outside.width, height: high - low };
}

/**
 * Front elevation: the panel as it looks from the front, with sizes left and below, names and cut letters right and
 * above. What is in front is drawn over what is behind; what is hidden is dashed.
 */
export function elevation(panel: Panel, options: ElevationOptions): Drawing {
  const { scale, detail = 'shop' } = options;
  const parts = options.parts ?? partsOf(panel);
  const at = view(scale.ratio);
  const front = { panel, parts, at, ratio: scale.ratio };
  const [low, high] = heightsOver(panel);
  const outline = faceBox(at, { x0: 0, y0: low, x1: panel.outside.width, y1: high });
  const ink = elevationInk(front, detail);
  const sizes = { panel, at, outline, detail };
  const shop = detail === 'shop';
  const left = heightRows(sizes);
  // Without running sizes below, labels of heights that are pushed under the panel would meet those of widths.
  const below = widthRows(sizes, shop ? 0 : left.bounds.v1 - outline.v1);
  const faces = frontMark(front, outline, detail);
  const said = [left.aside, below.aside].filter((text) => text !== undefined);
  const words = cornerWords(said, {
    outline,
    rows: left.bounds,
    keepOut: textBoxes([...left.marks, ...below.marks]),
  });
  const marks = [
    ...faces,
    ...(shop ? detailMarks(front, outline, [...ink, ...left.marks, ...below.marks, ...faces, ...words]) : []),
    ...words,
  ];
  const drawn = union([outline, inkBox(ink), left.bounds, below.bounds, inkBox(marks)]);
  const targets = [...elevationTargets(front, detail), ...(shop ? detailTargets(front) : [])];
  const added = fittingBoxes(front);
  const cut = shop ? cutBeside(front, outline, [...added, ...detailBoxes(front)]) : undefined;
  // Names stand beside the panel, clear of labels and words that reach further out under or over it.
  const u1 = union([outline, ...added]).u1;
  const notes = (more: readonly Box[]): Notes =>
    placeNotes({
      around: noteColumn({ ...outline, u1 }, targets.length),
      targets,
      sides: ['right'],
      width: NAME_WIDTH,
      aside: NAME_ASIDE,
      keepOut: [...textBoxes([...marks, ...below.marks]), ...more],
    });
  const beside = cut && notes([cut.box]);
  const clear = cut && beside && isClearOf(beside, cut.box) ? { named: beside, right: cut.right } : undefined;
  const named = clear?.named ?? notes([]);
  const around = union([drawn, inkBox(named.marks)]);
  const cuts = shop ? cutMarks(front, { outline, around, ...(clear && { right: clear.right }) }) : [];
  return {
    name: 'elevation',
    title: panel.count > 1 ? `${panel.name}, front elevation (${panel.count} alike)` : `${panel.name}, front elevation`,
    scale: scale.ratio,
    scaleText: scale.text,
    marks: [...ink, ...left.marks, ...below.marks, ...marks, ...named.marks, ...cuts],
    bounds: union([around, inkBox(cuts)]),
    alt: altOf(panel),
    chains: [...left.chains, ...below.chains],
  };
}

/** Whether notes and their leaders keep out of a box. */
function isClearOf({ marks }: Notes, box: Box): boolean {
  return marks.every((mark) => {
    if (mark.kind === 'text') return !overlaps(textBox(mark), box);
    const points = pointsOf(mark.path);
    return points.slice(1).every((to, i) => !crossesBox([points[i] as Point, to], box));
  });
}

/** Widest line of a name beside the elevation, mm: narrow, since its room is taken from the scale. */
const NAME_WIDTH = 24;

/** From the panel to the names, mm: the end of the cut line stands between. */
const NAME_ASIDE = 10;

/** Height of a balloon with the room between it and the next, paper mm. */
const NOTE_STEP = 9.5;

/** Where the column of names stands: beside the panel, or up from its middle where the panel is lower than the column. */
function noteColumn(box: Box, count: number): Box {
  const high = count * NOTE_STEP;
  if (high <= box.v1 - box.v0) return box;
  const v1 = (box.v0 + box.v1 + NOTE_STEP) / 2;
  return { ...box, v0: v1 - high, v1 };
}

/** Smallest scale at which the parts of a panel can be told apart: 1:50. Common practice, no source. */
const LEAST_SCALE = 0.02;

/** The front elevation as a view whose scale the sheet chooses. */
export function elevationMaker(panel: Panel, options: Omit<ElevationOptions, 'scale'> = {}): ViewMaker {
  return {
    name: 'elevation',
    real: elevationExtent(panel),
    atLeast: LEAST_SCALE,
    make: (scale) => elevation(panel, { ...options, scale }),
  };
}

/** The smallest box round marks, texts with their ink. */
export function inkBox(marks: readonly Mark[]): Box {
  return union(marks.map((mark) => (mark.kind === 'text' ? textBox(mark) : boxOf(pointsOf(mark.path)))));
}

function altOf({ name, staves, courses, weave, details }: Panel): string {
  const last = courses.count === 1 ? 'one course' : `${courses.count} courses`;
  return `${name}, a ${details.use}, from the front: a frame of two rails and two stiles with ${staves.count} staves and ${last} of slats in ${weave.name} weave.`;
}
