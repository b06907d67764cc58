import { place, union } from '../ink.ts';
import { contains } from '../layout/clearance.ts';
import { TooLarge } from '../layout/toolarge.ts';
import type { Box, Drawing, Sheet } from '../mark.ts';
import { stroke } from '../mark.ts';
import { rectangle } from '../path.ts';
import type { Unit } from '../scale.ts';
import type { Item } from './fit.ts';
import { fit, isMaker, smallest } from './fit.ts';
import type { Frame } from './frame.ts';
import { extentOf } from './frame.ts';
import { placeIn, without } from './pack.ts';
import type { SheetMeta } from './titleblock.ts';
import { titleBlock } from './titleblock.ts';

/** A sheet with its drawings placed, not yet numbered. */
export interface Layout {
  readonly frame: Frame;
  /** What is on the sheet, for its title block; the drawings' titles unless given. */
  readonly subject?: string;
  readonly drawings: readonly Drawing[];
}

/** Between drawings on a sheet, mm, and as near as they may come where that saves a sheet. Common practice, no source. */
const GAP = 10;
const NEAR = 6;

/** An item drawn to fit a sheet. */
interface Fitted {
  readonly drawing: Drawing;
  readonly isView: boolean;
  /** Its number among the items. */
  readonly at: number;
}

/**
 * Places items on as few sheets as they need. Each view gets the largest standard scale that fits its share of a sheet,
 * then each item goes on the first sheet with room for it; tables and text keep their order. Views stand in their order too,
 * unless tallest first, or a little nearer to each other, takes fewer sheets. `TooLarge` when an item fits no empty sheet.
 */
export function lay(items: readonly Item[], frame: Frame, unit: Unit): Layout[] {
  const fitted = items.map((item, at): Fitted => {
    const drawing = fit(item, frame.rooms, unit);
    if (!drawing) throw tooLarge(item, frame, unit);
    return { drawing, isView: isMaker(item), at };
  });
  const tallest = fitted.every(({ isView }) => isView)
    ? fitted.toSorted((a, b) => extentOf(b.drawing.bounds).height - extentOf(a.drawing.bounds).height)
    : fitted;
  const ways = [GAP, NEAR].flatMap((gap) => [fitted, tallest].map((order) => placed(order, frame.rooms, gap)));
  const best = ways.reduce((least, other) => (other.length < least.length ? other : least));
  return best.map((drawings) => ({ frame, drawings: centred(drawings, frame) }));
}

/** Each item on the first sheet with room for it; sheets and what is on them by the numbers of the items. */
function placed(items: readonly Fitted[], rooms: readonly Box[], gap: number): Drawing[][] {
  const sheets: { free: readonly Box[]; readonly on: Fitted[] }[] = [];
  let ordered = 0;
  for (const { drawing, isView, at } of items) {
    const size = extentOf(drawing.bounds);
    let found = sheets.findIndex(({ free }, i) => (isView || i >= ordered) && placeIn(free, size));
    if (found < 0) found = sheets.push({ free: rooms, on: [] }) - 1;
    const sheet = sheets[found] as (typeof sheets)[number];
    const box = placeIn(sheet.free, size) as Box;
    const by = { du: box.u0 - drawing.bounds.u0, dv: box.v0 - drawing.bounds.v0 };
    sheet.on.push({ drawing: place(drawing, by), isView, at });
    sheet.free = without(sheet.free, box, gap);
    if (!isView) ordered = found;
  }
  const first = (on: readonly Fitted[]): number => Math.min(...on.map(({ at }) => at));
  return sheets
    .map(({ on }) => on.toSorted((a, b) => a.at - b.at))
    .toSorted((a, b) => first(a) - first(b))
    .map((on) => on.map(({ drawing }) => drawing));
}

function tooLarge(item: Item, { paper, rooms }: Frame, unit: Unit): TooLarge {
  const drawing = smallest(item, unit);
  const { width, height } = extentOf(drawing.bounds);
  const room = rooms.map(extentOf).map((one) => `${Math.floor(one.width)} × ${Math.floor(one.height)} mm`);
  const name = drawing.title || drawing.name;
  const what = isMaker(item) ? `${name} at ${drawing.scaleText}` : name;
  return new TooLarge(what, `${Math.ceil(width)} × ${Math.ceil(height)} mm, room for ${room.join(' or ')}`, paper);
}

/** Views are moved to the middle of the room that holds them all; text and tables stay at its upper left. */
function centred(drawings: readonly Drawing[], { rooms }: Frame): Drawing[] {
  const box = union(drawings.map(({ bounds }) => bounds));
  const room = rooms.find((one) => contains(one, box));
  if (!room || drawings.every(({ scale }) => scale === 0)) return [...drawings];
  const by = { du: (room.u0 + room.u1 - box.u0 - box.u1) / 2, dv: (room.v0 + room.v1 - box.v0 - box.v1) / 2 };
  return drawings.map((drawing) => place(drawing, by));
}

/** A part of a sheet that one item fills, as shares from 0 to 1 of the room above the title block. */
export interface Pane {
  readonly item: Item;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  /** Where the item stands in its pane; in the middle unless given. */
  readonly align?: 'middle' | 'top-left';
}

/**
 * The box on paper of a pane, so that text and tables can be made to its measure. A pane at the bottom that stands clear of
 * the title block reaches down beside it.
 */
export function paneBox({ rooms }: Frame, pane: Omit<Pane, 'item' | 'align'>): Box {
  const [room, beside] = rooms as readonly [Box, Box?];
  const { width, height } = extentOf(room);
  const [u0, v0] = [room.u0 + pane.left * width, room.v0 + pane.top * height];
  const [u1, v1] = [u0 + pane.width * width, v0 + pane.height * height];
  const inner = (edge: number, outer: number): number => (Math.abs(edge - outer) < 1e-6 ? 0 : GAP / 2);
  const box = {
    u0: u0 + inner(u0, room.u0),
    v0: v0 + inner(v0, room.v0),
    u1: u1 - inner(u1, room.u1),
    v1: v1 - inner(v1, room.v1),
  };
  return beside && Math.abs(v1 - room.v1) < 1e-6 && box.u1 <= beside.u1 ? { ...box, v1: beside.v1 } : box;
}

/** One sheet of a fixed layout: each item fills its pane, views at the largest scale that fits it. */
export function compose(
  panes: readonly Pane[],
  frame: Frame,
  { unit, subject }: { readonly unit: Unit; readonly subject?: string },
): Layout {
  const drawings = panes.map((pane) => {
    const box = paneBox(frame, pane);
    const drawing = fit(pane.item, [box], unit);
    if (!drawing) throw tooLarge(pane.item, { ...frame, rooms: [box] }, unit);
    const { bounds } = drawing;
    const middle = pane.align !== 'top-left';
    const du = middle ? (box.u0 + box.u1 - bounds.u0 - bounds.u1) / 2 : box.u0 - bounds.u0;
    const dv = middle ? (box.v0 + box.v1 - bounds.v0 - bounds.v1) / 2 : box.v0 - bounds.v0;
    return place(drawing, { du, dv });
  });
  return { frame, drawings, ...(subject === undefined ? {} : { subject }) };
}

/** The sheets of a set, numbered from 1, each with border and title block. */
export function finish(layouts: readonly Layout[], meta: SheetMeta): Sheet[] {
  return layouts.map(({ frame, drawings, subject }, i) => {
    const title =
      subject ??
      drawings
        .map((drawing) => drawing.title)
        .filter((one) => one !== '')
        .join(', ');
    const facts = { subject: title, scale: scaleOf(drawings), sheet: i + 1, of: layouts.length, paper: frame.paper };
    return {
      width: frame.width,
      height: frame.height,
      paper: frame.paper,
      title,
      label: String(i + 1),
      figures: drawings.map((drawing) => ({
        name: drawing.name,
        title: drawing.title,
        alt: drawing.alt,
        marks: drawing.marks,
      })),
      furniture: [stroke('frame', rectangle(frame.border)), ...titleBlock(frame.block, meta, facts)],
      inside: frame.border,
      chains: drawings.flatMap(({ chains = [] }) => chains),
      fullSize: false,
    };
  });
}

/** The one scale of a sheet, `as shown` for several (ISO 5455: others beside their view), a dash for none. */
function scaleOf(drawings: readonly Drawing[]): string {
  const texts = [...new Set(drawings.filter(({ scale }) => scale > 0).map(({ scaleText }) => scaleText))];
  return texts.length === 0 ? '–' : texts.length === 1 ? (texts[0] as string) : 'as shown';
}
