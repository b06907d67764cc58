import { contains, grown, overlaps } from '../layout/clearance.ts';
import type { Box } from '../mark.ts';
import type { Extent } from '../scale.ts';

/** The largest free rectangles of a sheet; they may overlap. */
export type FreeRooms = readonly Box[];

/**
 * The highest, then leftmost place for something `width` by `height` mm; undefined when there is none. The maximal
 * rectangles method (J. Jylänki, "A Thousand Ways to Pack the Bin", 2010) with the bottom-left rule turned to the top.
 */
export function placeIn(free: FreeRooms, { width, height }: Extent): Box | undefined {
  const slack = 1e-6;
  let best: Box | undefined;
  for (const { u0, v0, u1, v1 } of free) {
    if (u1 - u0 < width - slack || v1 - v0 < height - slack) continue;
    if (!best || v0 < best.v0 - slack || (Math.abs(v0 - best.v0) <= slack && u0 < best.u0))
      best = { u0, v0, u1: u0 + width, v1: v0 + height };
  }
  return best;
}

/** What is left free when a box, with `gap` mm round it, is taken. */
export function without(free: FreeRooms, taken: Box, gap: number): Box[] {
  const hole = grown(taken, gap);
  const cut = free.flatMap((room): Box[] => {
    if (!overlaps(room, hole)) return [room];
    const strips: Box[] = [
      { ...room, v1: hole.v0 },
      { ...room, v0: hole.v1 },
      { ...room, u1: hole.u0 },
      { ...room, u0: hole.u1 },
    ];
    return strips.filter(({ u0, v0, u1, v1 }) => u1 - u0 > 1 && v1 - v0 > 1);
  });
  return cut.filter(
    (room, i) => !cut.some((other, j) => contains(other, room) && (j < i || !contains(room, other)) && j !== i),
  );
}
