import { type Panel, weaveDepth } from './panel.ts';

/**
 * How far the weave reaches to the front and to the back of the frame's middle plane, mm: over the staves, and where the
 * bent ends of slats stand out further at the stiles.
 */
export function weaveReach(panel: Panel): { readonly front: number; readonly back: number } {
  const half = weaveDepth(panel) / 2;
  const ends = panel.rows.flatMap(({ bend }) => bend.endOffsets);
  const past = panel.courses.thickness / 2;
  return { front: Math.max(half, ...ends.map((z) => z + past)), back: Math.max(half, ...ends.map((z) => past - z)) };
}
