import { place, union } from '../ink.ts';
import type { Box, Drawing } from '../mark.ts';
import { SAFE_MARGIN, TILE_PAPERS } from '../paper.ts';
import { extentOf } from '../sheet/frame.ts';
import { placeIn, without } from '../sheet/pack.ts';
import { windowOf } from './format.ts';
import { LEAST } from './headroom.ts';
import type { TileOptions } from './tile.ts';

/** Between two drawings on a page, mm: to cut between them. */
const BETWEEN = 8;

/** Drawings that share a page, and the room left on it. */
interface Shared {
  readonly drawings: Drawing[];
  free: readonly Box[];
}

/**
 * Full-size drawings that one page holds side by side or over each other, put together as one drawing each; those that
 * want several pages stay by themselves. On a roll a page is as long as its longest drawing.
 */
export function gather(drawings: readonly Drawing[], options: Omit<TileOptions, 'series'>): Drawing[] {
  const { margin = SAFE_MARGIN, printed = { across: 100, along: 100 } } = options;
  const paper = TILE_PAPERS[options.paper];
  const windows = [false, true].map((lying) => {
    const { u, v } = windowOf({ paper, lying, margin, printed });
    return { width: u - 2 * LEAST, height: v - 2 * LEAST };
  });
  const ways = [windows, windows.toReversed()].map((order) => packed(drawings, order));
  return ways.reduce((best, other) => (other.length < best.length ? other : best)).map(together);
}

interface Window {
  readonly width: number;
  readonly height: number;
}

/** Each drawing on the first page with room for it, else on a new one that lies the first way that holds it. */
function packed(drawings: readonly Drawing[], windows: readonly Window[]): Drawing[][] {
  const shared: Shared[] = [];
  const alone: Drawing[][] = [];
  const pages: Drawing[][] = [];
  for (const drawing of drawings) {
    const { width, height } = extentOf(drawing.bounds);
    const size = { width: width + 1e-6, height: height + 1e-6 };
    const holds = windows.filter((window) => width <= window.width && height <= window.height);
    const window = holds.find((one) => Number.isFinite(one.width) === width <= height) ?? holds[0];
    if (!window) {
      alone.push([drawing]);
      pages.push(alone.at(-1) as Drawing[]);
      continue;
    }
    let page = shared.find(({ free }) => placeIn(free, size));
    if (!page) {
      const room = roomOf(window, drawings);
      page = { drawings: [], free: [room] };
      shared.push(page);
      pages.push(page.drawings);
    }
    const box = placeIn(page.free, size) as Box;
    page.free = without(page.free, box, BETWEEN);
    page.drawings.push(place(drawing, { du: box.u0 - drawing.bounds.u0, dv: box.v0 - drawing.bounds.v0 }));
  }
  return pages;
}

/** Room on a page; along a roll as much as the longest of the drawings takes that lie that way. */
function roomOf({ width, height }: Window, drawings: readonly Drawing[]): Box {
  const sizes = drawings.map(({ bounds }) => extentOf(bounds));
  const longest = (side: 'width' | 'height', across: 'width' | 'height', most: number): number =>
    Math.max(...sizes.filter((size) => size[across] <= most).map((size) => size[side]));
  return {
    u0: 0,
    v0: 0,
    u1: Number.isFinite(width) ? width : longest('width', 'height', height) + 1e-3,
    v1: Number.isFinite(height) ? height : longest('height', 'width', width) + 1e-3,
  };
}

/** Several drawings of a page as one. */
function together(drawings: readonly Drawing[]): Drawing {
  const [first] = drawings as [Drawing];
  if (drawings.length === 1) return first;
  return {
    ...first,
    name: drawings.map(({ name }) => name).join('-'),
    title: drawings.map(({ title }) => title).join('; '),
    marks: drawings.flatMap(({ marks }) => marks),
    bounds: union(drawings.map(({ bounds }) => bounds)),
    alt: drawings.map(({ alt }) => alt).join(' '),
    chains: drawings.flatMap(({ chains = [] }) => chains),
  };
}
