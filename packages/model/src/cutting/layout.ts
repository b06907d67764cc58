import type { Divisions, Valued } from './division.ts';
import { mayPart, mayTrim, type Ripping, type SectionPattern, type SectionTree } from './section.ts';

/** Sticks as they lie in a board's section, before it is settled which rip comes first; sizes in ticks. */
export type Layout = Lies & ({ readonly stick: number } | { readonly axis: Axis; readonly parts: readonly Layout[] });

type Axis = 'width' | 'thickness';

/** The least room that a layout needs. */
interface Lies {
  readonly width: number;
  readonly thickness: number;
}

/** How a rectangle is parted: as `by` of a valued division, with what the two either side of a cut go on from. */
export interface Step<P> {
  readonly by: number;
  readonly a?: P;
  readonly b?: P;
}

/** The layout that choices of cuts make of a rectangle; `undefined` where it is all waste. */
export function layoutFrom<P>(
  rip: Ripping,
  division: Divisions,
  from: { readonly node: number; readonly turned: boolean; readonly pick: P | undefined },
  step: (node: number, pick: P | undefined) => Step<P> | undefined,
): Layout | undefined {
  const { a, b, how } = division;
  const { node, turned, pick } = from;
  const { by, ...picks } = step(node, pick) ?? { by: a.length };
  if (by === a.length) return undefined;
  if (by < 0) {
    const s = rip.sections[-1 - by] as Ripping['sections'][number];
    const [width, thickness] = turned ? [s.thickness, s.width] : [s.width, s.thickness];
    return { stick: -1 - by, width, thickness };
  }
  const bits = how[by] as number;
  const axis = ((bits & 1) === 1) === turned ? 'width' : 'thickness';
  const below = (child: number, bit: number, own: P | undefined): Layout | undefined =>
    layoutFrom(rip, division, { node: child, turned: turned !== ((bits & bit) !== 0), pick: own }, step);
  const parts = [below(a[by] as number, 2, picks.a), below(b[by] as number, 4, picks.b)].filter((p) => p !== undefined);
  return parts.length < 2 ? parts[0] : run(rip, axis, parts);
}

/** The layout that a valued division took for its board, or, with `first`, that which begins with this cut of it. */
export function layoutOf(rip: Ripping, division: Divisions, valued: Valued, first?: number): Layout | undefined {
  const top = valued.by.length - 1;
  return layoutFrom<never>(rip, division, { node: top, turned: division.turned, pick: undefined }, (node) => ({
    by: node === top && first !== undefined ? first : (valued.by[node] as number),
  }));
}

/** Layouts side by side; runs along the same axis become one. */
function run(rip: Ripping, axis: Axis, list: readonly Layout[]): Layout {
  const parts = list.flatMap((part) => ('axis' in part && part.axis === axis ? part.parts : [part]));
  const end = parts.reduce((sum, part) => sum + part[axis] + rip.loss, -rip.loss);
  const across = other(axis);
  const deep = parts.reduce((most, part) => Math.max(most, part[across]), 0);
  const size = axis === 'width' ? { width: end, thickness: deep } : { width: deep, thickness: end };
  return { axis, parts, ...size };
}

function other(axis: Axis): Axis {
  return axis === 'width' ? 'thickness' : 'width';
}

/**
 * The rips that make a layout of a board, in an order in which each is of a piece that may be ripped. Sticks that no
 * order can free are left out, the smallest first; `undefined` where none is left.
 */
export function patternOf(rip: Ripping, layout: Layout): SectionPattern | undefined {
  const tree = lay(rip, layout, rip);
  if (tree === null) return undefined;
  const counts = rip.sections.map(() => 0);
  const fences = new Set<number>();
  let rips = 0;
  const walk = (at: SectionTree): void => {
    if (at === null) return;
    if ('stick' in at) counts[at.stick] = (counts[at.stick] as number) + 1;
    else {
      fences.add(at.at);
      rips++;
      walk(at.a);
      walk(at.b);
    }
  };
  walk(tree);
  return { counts, tree, fences: [...fences].sort((x, y) => x - y), rips };
}

function lay(rip: Ripping, layout: Layout, room: Lies): SectionTree {
  if ('stick' in layout) {
    if (layout.width > room.width || layout.thickness > room.thickness) return null;
    return leaf(rip, layout.stick, layout, room) ?? leaf(rip, layout.stick, layout, room, true) ?? null;
  }
  const { axis } = layout;
  const deep = other(axis);
  const over = room[deep] - layout[deep];
  // A shaving is planed off the whole piece, not off its strips one by one.
  if (over > 0 && over <= (rip.shaving ?? 0)) {
    const row = rowIn(rip, axis, layout.parts, { ...room, [deep]: layout[deep] });
    if (row !== null) return { axis: deep, at: layout[deep], a: row, b: null };
  }
  const inRow = rowIn(rip, layout.axis, layout.parts, room);
  // Where the piece is too deep to be parted so, what is beyond the row goes first.
  if (inRow !== null || layout[deep] >= room[deep] || !mayPart(rip, room[deep], room[axis])) return inRow;
  const a = rowIn(rip, axis, layout.parts, { ...room, [deep]: layout[deep] });
  return a && { axis: deep, at: layout[deep], a, b: null };
}

/** Brings a piece to a stick's size; width first, or with `swapped` thickness first. */
function leaf(rip: Ripping, stick: number, size: Lies, room: Lies, swapped = false): SectionTree | undefined {
  const axis = (['width', 'thickness'] as const)[swapped ? 1 : 0] as Axis;
  const cut = (at: Axis, piece: Lies, a: SectionTree): SectionTree | undefined => {
    if (size[at] === piece[at]) return a;
    return mayTrim(rip, size[at], piece[at], piece[other(at)]) ? { axis: at, at: size[at], a, b: null } : undefined;
  };
  const inner = cut(other(axis), { ...room, [axis]: size[axis] }, { stick });
  return inner === undefined ? undefined : cut(axis, room, inner);
}

/** A row of parts cut off one after the other, what is beyond them last or, where that cannot be, first. */
function rowIn(rip: Ripping, axis: Axis, parts: readonly Layout[], room: Lies): SectionTree {
  const sorted = [...parts].sort((x, y) => x[axis] - y[axis]);
  const made = sorted
    .map((part) => ({ size: part[axis], tree: lay(rip, part, { ...room, [axis]: part[axis] }) }))
    .filter(({ tree }) => tree !== null);
  const across = room[other(axis)];
  const cutOff = (i: number, along: number): SectionTree | undefined => {
    const piece = made[i];
    if (piece === undefined) return null;
    if (piece.size === along) return piece.tree;
    if (!mayTrim(rip, piece.size, along, across)) return undefined;
    const b = cutOff(i + 1, along - piece.size - rip.loss);
    return b === undefined ? undefined : { axis, at: piece.size, a: piece.tree, b };
  };
  for (; made.length > 0; made.shift()) {
    const end = made.reduce((sum, { size }) => sum + size + rip.loss, -rip.loss);
    if (end > room[axis]) continue;
    const last = cutOff(0, room[axis]);
    if (last !== undefined) return last;
    const exact = end < room[axis] && mayPart(rip, room[axis], across) ? cutOff(0, end) : undefined;
    if (exact !== undefined) return { axis, at: end, a: exact, b: null };
  }
  return null;
}
