import { type Panel, type Part, partsOf, type RunLayout, type RunPanel } from '@wattlewright/model';
import { union } from '../ink.ts';
import { overlaps } from '../layout/clearance.ts';
import { dimensionRows } from '../layout/dimension.ts';
import type { Size } from '../layout/rows.ts';
import { ASCENT, DESCENT, TEXT, TEXT_CLEAR, TEXT_LIFT } from '../layout/style.ts';
import { textWidth } from '../lettering.ts';
import type { Box, Drawing, Mark, PathMark, Point } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { line, rectangle } from '../path.ts';
import type { Extent, Scale } from '../scale.ts';
import type { ViewMaker } from '../sheet/fit.ts';
import { view } from '../view.ts';
import { inkBox } from './elevation.ts';
import { fittingInk, stripsFront } from './elevationink.ts';
import { printed } from './elevationsizes.ts';
import { fittings } from './fittings.ts';
import { type Front, faceBox, frameFront, weaveFront } from './front.ts';

/** What `runElevation` needs to know. */
export interface RunOptions {
  readonly scale: Scale;
  /** The run's own panels among others; those that it names are drawn. */
  readonly panels: readonly Panel[];
  /** The job's parts list, so that letters agree with it; that of the panels unless given. */
  readonly parts?: readonly Part[];
}

interface Drawn {
  readonly panel: Panel;
  readonly place: RunPanel;
}

/** How far the floor runs on beyond the run, paper mm. */
const FLOOR_PAST = 6;

/** Sizes and gaps smaller than this, real mm, are none. */
const NOTHING = 1e-6;

/** Real size of what the key elevation of a run shows, mm, sizes and names apart. */
export function runExtent(run: RunLayout): Extent {
  return { width: run.total, height: run.top };
}

/**
 * Key elevation of a run: its panels in their places between posts, with names, the sizes from post to post, and the
 * heights above the floor.
 */
export function runElevation(run: RunLayout, { scale, panels, parts = partsOf(panels) }: RunOptions): Drawing {
  const { ratio } = scale;
  const at = view(ratio);
  const drawn = run.panels.flatMap((place): Drawn[] => {
    const panel = panels.find(({ name }) => name === place.name);
    return panel ? [{ panel, place }] : [];
  });
  const outline = faceBox(at, { x0: 0, y0: 0, x1: run.total, y1: run.top });
  const panelsInk = drawn.flatMap(({ panel, place }) =>
    panelInk({ panel, parts, at: view(ratio, at(place.x, place.y)), ratio }),
  );
  const ink = [
    ...posts(run, ratio),
    ...panelsInk,
    ...postNames(run, ratio, panelsInk),
    stroke('neighbour', line([outline.u0 - FLOOR_PAST, 0], [outline.u1 + FLOOR_PAST, 0])),
  ];
  const heights = heightRows(run, drawn, { outline, ratio });
  // Labels of heights that are pushed below the floor come first, then the widths.
  const start = Math.max(0, ...heights.map(({ bounds }) => bounds.v1 - outline.v1));
  const below = dimensionRows({ side: 'below', outline, sizes: widths(run, drawn, ratio), start });
  const names = nameInk(drawn, ratio, { outline, top: Math.min(...heights.map(({ bounds }) => bounds.v0)) });
  return {
    name: 'run',
    title: `${run.name}, key elevation`,
    scale: ratio,
    scaleText: scale.text,
    marks: [...ink, ...names, ...below.marks, ...heights.flatMap(({ marks }) => marks)],
    bounds: union([inkBox([...ink, ...names]), below.bounds, ...heights.map(({ bounds }) => bounds)]),
    alt: `${run.name}: ${drawn.map(({ panel }) => panel.name).join(', ')} side by side${run.posts.length > 0 ? ' between posts' : ''}.`,
    chains: [...below.chains, ...heights.flatMap(({ chains }) => chains)],
  };
}

/** The key elevation as a view whose scale the sheet chooses. */
export function runMaker(run: RunLayout, options: Omit<RunOptions, 'scale'>): ViewMaker {
  return { name: 'run', real: runExtent(run), make: (scale) => runElevation(run, { ...options, scale }) };
}

/** Grey of posts, as in the view of a panel in its opening. */
const TONE = 0.88;

/** A post narrower than this on paper, mm, has no room for its word. */
const NAMED_FROM = 3.4;

/** Posts, grey. */
function posts(run: RunLayout, ratio: number): Mark[] {
  return postBoxes(run, ratio).flatMap((box) => {
    const path = rectangle(box);
    return [{ ...stroke('paper', path), shade: TONE }, stroke('edge-light', path)];
  });
}

function postBoxes({ posts: all, top }: RunLayout, ratio: number): Box[] {
  const at = view(ratio);
  return all.map(({ x, width }) => faceBox(at, { x0: x, y0: 0, x1: x + width, y1: top }));
}

/** The posts' word along their height, where there is room and no hinge or latch on it. */
function postNames(run: RunLayout, ratio: number, panelsInk: readonly PathMark[]): Mark[] {
  if (run.top * ratio < textWidth('post', TEXT) + 2 * TEXT_CLEAR) return [];
  return postBoxes(run, ratio).flatMap((box): Mark[] => {
    const middle: Point = [(box.u0 + box.u1) / 2 + (TEXT * 0.7) / 2, (box.v0 + box.v1) / 2];
    const word = write('note', 'post', middle, { height: TEXT, angle: 90, anchor: 'middle' });
    const taken = panelsInk.some((mark) => overlaps(inkBox([mark]), inkBox([word])));
    return box.u1 - box.u0 < NAMED_FROM || taken ? [] : [word];
  });
}

/** A panel as in its own elevation for the client, without what only the shop needs. */
function panelInk(front: Front): PathMark[] {
  return [
    ...weaveFront(front),
    ...frameFront(front),
    ...stripsFront(front),
    ...fittings(front.panel).flatMap((fitting) => fittingInk(front, fitting, 'client')),
  ];
}

/**
 * The panels' names and outside sizes over them, in a second or third line where neighbours would touch. Names that run on
 * beyond the run stand over the rows of heights beside it, whose `top` is given.
 */
function nameInk(drawn: readonly Drawn[], ratio: number, { outline, top }: { outline: Box; top: number }): Mark[] {
  const step = (ASCENT + DESCENT) * TEXT + TEXT_CLEAR;
  const names = drawn.map(({ panel, place }) => {
    const { width, height } = panel.outside;
    const text = `${panel.name}, ${printed(panel, width).text} × ${printed(panel, height).text}`;
    return { text, middle: (place.x + place.width / 2) * ratio, half: textWidth(text, TEXT) / 2 + TEXT_CLEAR };
  });
  const past = names.some(({ middle, half }) => middle - half < outline.u0 || middle + half > outline.u1);
  const base = (past ? Math.min(top, outline.v0) : outline.v0) - 2 * TEXT_LIFT;
  const ends: number[] = [];
  return names.map(({ text, middle, half }) => {
    const free = ends.findIndex((end) => end <= middle - half);
    const row = free < 0 ? ends.length : free;
    ends[row] = middle + half;
    return write('note', text, [middle, base - row * step], { height: TEXT, anchor: 'middle' });
  });
}

/** Posts and the clear widths between them, or panels and the gaps between them; the whole run outside. */
function widths(run: RunLayout, drawn: readonly Drawn[], ratio: number): Size[] {
  const size = ([from, to]: readonly [number, number], more: Partial<Size> = {}): Size => ({
    from: from * ratio,
    to: to * ratio,
    ...printed(anyOf(drawn), to - from),
    ...more,
  });
  const links = run.posts.length > 0 ? postsAndBays(run) : panelsAndGaps(drawn);
  return [...links.map((link) => size(link)), ...(links.length > 1 ? [size([0, run.total], { total: true })] : [])];
}

function postsAndBays({ posts: all }: RunLayout): (readonly [number, number])[] {
  return all.flatMap(({ x, width }, i) => {
    const next = all[i + 1];
    return [[x, x + width] as const, ...(next ? [[x + width, next.x] as const] : [])];
  });
}

function panelsAndGaps(drawn: readonly Drawn[]): (readonly [number, number])[] {
  return drawn.flatMap(({ place: { x, width } }, i) => {
    const next = drawn[i + 1]?.place.x ?? x + width;
    return [[x, x + width] as const, ...(next - x - width > NOTHING ? [[x + width, next] as const] : [])];
  });
}

/** Heights above the floor: of the first panel on the left, of the last on the right where it differs. */
function heightRows(run: RunLayout, drawn: readonly Drawn[], { outline, ratio }: { outline: Box; ratio: number }) {
  const [first, last] = [drawn[0], drawn.at(-1)];
  if (!first || !last) return [];
  const left = dimensionRows({ side: 'left', outline, sizes: heightsOf(run, first, ratio) });
  const same = Math.abs(first.place.y - last.place.y) < 0.01 && Math.abs(first.place.height - last.place.height) < 0.01;
  if (same) return [left];
  return [left, dimensionRows({ side: 'right', outline, sizes: heightsOf(run, last, ratio) })];
}

function heightsOf({ top }: RunLayout, { panel, place }: Drawn, ratio: number): Size[] {
  const size = (from: number, to: number, more: Partial<Size> = {}): Size => ({
    from: -from * ratio,
    to: -to * ratio,
    ...printed(panel, to - from),
    ...more,
  });
  const [low, high] = [place.y, place.y + place.height];
  const added = fittings(panel).filter(
    ({ role, from }) => role !== undefined && from.y >= panel.outside.height - NOTHING,
  );
  const over = Math.max(high, ...added.map(({ to }) => place.y + to.y));
  return [
    ...(low > NOTHING ? [size(0, low)] : []),
    size(low, high),
    ...(over > high + NOTHING ? [size(high, over)] : []),
    ...(low > NOTHING || over > high + NOTHING ? [size(0, Math.max(over, top), { total: true })] : []),
  ];
}

function anyOf(drawn: readonly Drawn[]): Panel {
  const first = drawn[0];
  if (!first) throw new RangeError('invalid run: no panels (expected at least one of the names given)');
  return first.panel;
}
