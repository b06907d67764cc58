import { gateDetails, type Panel, type Part, partsOf } from '@wattlewright/model';
import { union } from '../ink.ts';
import { placeNotes, textBoxes } from '../layout/notes.ts';
import type { Rows } from '../layout/remark.ts';
import { dimensionSide } from '../layout/running.ts';
import { TEXT, TEXT_LIFT } from '../layout/style.ts';
import { textBox } from '../lettering.ts';
import type { Box, Drawing, Mark } from '../mark.ts';
import { write } from '../mark.ts';
import type { Extent, Scale } from '../scale.ts';
import type { ViewMaker } from '../sheet/fit.ts';
import { type View, view } from '../view.ts';
import { backFittings } from './backfittings.ts';
import { turned } from './backmirror.ts';
import { inkBox } from './elevation.ts';
import { stripsFront } from './elevationink.ts';
import { printed } from './elevationsizes.ts';
import { cornerWords } from './elevationwords.ts';
import { fixedHeights } from './fixedheights.ts';
import { type Front, faceBox, frameFront, weaveFront } from './front.ts';

/** What `backElevation` needs to know. */
export interface BackOptions {
  readonly scale: Scale;
  /** The job's parts list, so that letters agree with it; the panel's own unless given. */
  readonly parts?: readonly Part[];
}

/** Whether something is fixed to the back of a panel that a view from behind has to show. */
export function hasBack({ details }: Pick<Panel, 'details'>): boolean {
  switch (details.use) {
    case 'gate':
    case 'guard':
      return true;
    case 'screen':
      return details.mounting !== 'stiles';
    case 'divider':
      return false;
  }
}

/** Real size of what the back elevation shows, mm. */
export function backExtent({ outside }: Panel): Extent {
  return { width: outside.width, height: outside.height };
}

/**
 * Back elevation: the panel from behind, its right end at the left, with what is fixed there: a gate's brace with its
 * plates and turnbuckle, its hinges and latch, a screen's stand-off blocks, brackets. Heights run from the foot of the
 * frame at the left, each with the name of what is there.
 */
export function backElevation(panel: Panel, { scale, parts = partsOf(panel) }: BackOptions): Drawing {
  const { ratio } = scale;
  const { width, height } = panel.outside;
  const straight = view(ratio);
  const from: View = (x, y) => straight(width - x, y);
  const front: Front = { panel: turned(panel), parts, at: straight, ratio };
  const outline = faceBox(straight, { x0: 0, y0: 0, x1: width, y1: height });
  const fixed = backFittings({ panel, parts, at: from, ratio });
  const ink = [...weaveFront(front), ...frameFront(front), ...stripsFront(front), ...fixed.marks];
  const heights = heightRow(panel, { at: from, outline });
  const across = widths(panel, { at: from, outline });
  const rows = [heights, across];
  // Sizes of a narrow panel may stand over its top edge: the words go over them too.
  const top = union([outline, ...rows.map(({ bounds }) => bounds)]).v0;
  const up = write('note', 'back, this edge up', [outline.u0 + 3, top - 2 * TEXT_LIFT], { height: TEXT });
  const labels = textBoxes(rows.flatMap((row) => row.marks));
  const words = cornerWords(heights.aside === undefined ? [] : [heights.aside], {
    outline,
    rows: heights.bounds,
    keepOut: labels,
  });
  const marks: Mark[] = [...ink, up, ...rows.flatMap((row) => row.marks), ...words];
  const drawn = union([outline, inkBox(ink), inkBox([up, ...words]), ...rows.map(({ bounds }) => bounds)]);
  const named = placeNotes({
    around: { ...outline, u1: inkBox(ink).u1 },
    targets: fixed.notes,
    sides: ['right'],
    aside: NAME_ASIDE,
    width: NAME_WIDTH,
    keepOut: [...labels, textBox(up)],
  });
  const all = [...marks, ...named.marks];
  return {
    name: 'back',
    title: `${panel.name}, back elevation${hasCap(panel) ? ' (cap rail not shown)' : ''}`,
    scale: ratio,
    scaleText: scale.text,
    marks: all,
    bounds: union([drawn, inkBox(all)]),
    alt: `${panel.name} from behind, with what is fixed to its back, and the heights of it from the foot of the frame.`,
    chains: rows.flatMap(({ chains }) => chains),
  };
}

/** A guard's cap lies over the frame and is sized in the side elevation. */
function hasCap({ details }: Panel): boolean {
  return details.use === 'guard' && details.cap !== undefined;
}

/** Widest line of a name beside the view, and how far from the view they stand, mm. */
const NAME_WIDTH = 28;
const NAME_ASIDE = 8;

interface Sized {
  readonly at: View;
  readonly outline: Box;
}

/** Heights from the foot of the frame of all that is fixed, named, and the whole: names of the rest stand on the other side. */
function heightRow(panel: Panel, { at, outline }: Sized): Rows {
  const v = (y: number): number => at(0, y)[1];
  const { height } = panel.outside;
  return dimensionSide({
    side: 'left',
    outline,
    sizes: [{ from: v(0), to: v(height), ...printed(panel, height), total: true }],
    running: { origin: v(0), ...fixedHeights(panel, v), from: 'the foot of the frame', aside: true },
  });
}

/** The whole width, and how far in the brace's ends are fixed. */
function widths(panel: Panel, { at, outline }: Sized): Rows {
  const { outside } = panel;
  const u = (x: number): number => at(x, 0)[0];
  const brace = panel.details.use === 'gate' ? gateDetails(panel).brace : undefined;
  const ends = brace ? [brace.hinge.x, brace.latch.x] : [];
  return dimensionSide({
    side: 'below',
    outline,
    sizes: [
      ...ends.map((x) => {
        const edge = x < outside.width / 2 ? 0 : outside.width;
        return { from: u(edge), to: u(x), ...printed(panel, Math.abs(x - edge)) };
      }),
      { from: u(0), to: u(outside.width), ...printed(panel, outside.width), total: true },
    ],
  });
}

/** The back elevation as a view whose scale the sheet chooses; nothing for a panel with nothing at its back. */
export function backMakers(panel: Panel, parts: readonly Part[] = partsOf(panel)): ViewMaker[] {
  if (!hasBack(panel)) return [];
  return [{ name: 'back', real: backExtent(panel), make: (scale) => backElevation(panel, { scale, parts }) }];
}
