import type { Path, PathMark, Point } from '../mark.ts';
import { stroke } from '../mark.ts';
import { polygon } from '../path.ts';
import type { Axonometry } from './axonometry.ts';
import { faceShade } from './axonometry.ts';
import type { Block } from './fittings.ts';

/** Which faces of a block are drawn; the viewer sees no others. */
export type Seen = 'front' | 'right' | 'top';

const DIRECTIONS = { front: { x: 0, y: 0, z: 1 }, right: { x: 1, y: 0, z: 0 }, top: { x: 0, y: 1, z: 0 } } as const;

/** The faces of a block that the viewer sees, each shaded by its direction, with their edges. */
export function blockInk(
  to: Axonometry,
  block: Block,
  { of, faces = ['top', 'right', 'front'] }: { readonly of?: string | undefined; readonly faces?: readonly Seen[] },
): PathMark[] {
  return faces.flatMap((face) => {
    const ring = polygon(ringOf(to, block, face));
    return [shaded(ring, faceShade(DIRECTIONS[face]), of), stroke('edge-light', ring, of)];
  });
}

/** Pieces of uprights side by side whose ends go on into others, the far ones first: no lines across them. */
export function uprightInk(to: Axonometry, blocks: readonly Block[], of: string | undefined): PathMark[] {
  if (blocks.length === 0) return [];
  // A front face may hide its left neighbour's right face, never the other way round.
  return (['right', 'front'] as const).flatMap((face) => {
    const rings = blocks.map((block) => ringOf(to, block, face));
    const faces = rings.flatMap((ring) => polygon(ring));
    return [shaded(faces, faceShade(DIRECTIONS[face]), of), stroke('edge-light', rings.flatMap(sides), of)];
  });
}

/** A face of wood with the grey that its direction gives it. */
export function shaded(path: Path, shade: number, of: string | undefined): PathMark {
  return { ...stroke('wood', path, of), shade };
}

/** Corners of one face, from its lower left round. */
function ringOf(to: Axonometry, { from: a, to: b }: Block, face: Seen): readonly [Point, Point, Point, Point] {
  if (face === 'front') return [to(a.x, a.y, b.z), to(b.x, a.y, b.z), to(b.x, b.y, b.z), to(a.x, b.y, b.z)];
  if (face === 'right') return [to(b.x, a.y, b.z), to(b.x, a.y, a.z), to(b.x, b.y, a.z), to(b.x, b.y, b.z)];
  return [to(a.x, b.y, b.z), to(b.x, b.y, b.z), to(b.x, b.y, a.z), to(a.x, b.y, a.z)];
}

/** The two upright edges of a face. */
function sides([a, b, c, d]: readonly [Point, Point, Point, Point]): Path {
  return [
    ['M', ...b],
    ['L', ...c],
    ['M', ...d],
    ['L', ...a],
  ];
}
