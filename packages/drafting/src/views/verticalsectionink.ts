import { type Panel, type Part, type RowBehaviour, slatReach } from '@wattlewright/model';
import type { Mark } from '../mark.ts';
import { polygon, rectangle } from '../path.ts';
import { type View, view, viewBox } from '../view.ts';
import { cutPlanes } from './detailkey.ts';
import { slatAcross } from './detailslat.ts';
import { cutFace, seenFace } from './grain.ts';
import { partOf } from './partof.ts';
import { stopBox } from './weavesectionink.ts';

/** What of the vertical section is to be drawn. */
export interface UprightInk {
  readonly panel: Panel;
  readonly parts: readonly Part[];
  /** Maps z to the front and y up to paper; see `uprightView`. */
  readonly at: View;
  /** From which to which height, y in mm; parts that reach out of it are cut off there. */
  readonly span: readonly [from: number, to: number];
}

/**
 * Maps a place in the vertical section to paper: z to the front, y up. The section looks to the left from inside the
 * panel, so the front lies on the left. `lowered` mm are taken from every height, for a view broken in the middle.
 */
export function uprightView(scale: number, lowered = 0): View {
  const at = view(scale);
  return (z, y) => at(-z, y - lowered);
}

/**
 * The panel cut from front to back through the middle of a stave: rails and slats cross the plane and show end grain, the
 * stave runs along it and shows long grain. Behind the plane: the left stile, its stops, and each slat where it bends away.
 */
export function uprightInk(ink: UprightInk): Mark[] {
  return [...beyond(ink), ...slatInk(ink), ...staveInk(ink), ...coverInk(ink), ...railInk(ink)];
}

const letter = (part: Part | undefined): { of?: string } => (part ? { of: part.letter } : {});

/** The box of a face given by z and y, kept within the span; undefined when it lies outside. */
function clipped(
  { at, span }: UprightInk,
  [z0, z1]: readonly [number, number],
  [y0, y1]: readonly [number, number],
): ReturnType<typeof viewBox> | undefined {
  const [low, high] = [Math.max(y0, span[0]), Math.min(y1, span[1])];
  return high - low > 1e-9 ? viewBox(at, [z0, low], [z1, high]) : undefined;
}

function beyond(ink: UprightInk): Mark[] {
  const { panel, parts } = ink;
  const { stile, clear } = panel;
  const inside = [clear.bottom, clear.bottom + clear.height] as const;
  const stilePart = partOf(parts, panel, 'stile');
  const face = clipped(ink, [-stile.depth / 2, stile.depth / 2], inside);
  const stop = partOf(parts, panel, 'stop');
  const strip = stopBox(panel, stop);
  const strips = strip
    ? ([1, -1] as const).map((side) => clipped(ink, [side * strip.from, side * strip.to], inside))
    : [];
  return [
    ...(face ? seenFace(rectangle(face), stilePart?.letter) : []),
    ...strips.flatMap((box) => (box ? seenFace(rectangle(box), stop?.letter) : [])),
  ];
}

/** Each course: what of its slat lies behind the plane, then the slat where the plane cuts it. */
function slatInk(ink: UprightInk): Mark[] {
  const { panel, parts } = ink;
  const { courses, clear, weave, rows } = panel;
  const x = cutPlanes(panel).across.x - clear.left;
  const t = courses.thickness;
  const shapes = rows.map((row: RowBehaviour) => {
    const { z, through } = slatAcross(row, x, t);
    return {
      reach: slatReach(row.bend, { from: 0, to: x, thickness: t }),
      cut: [z - through / 2, z + through / 2] as const,
      of: (partOf(parts, panel, 'slat', row.cutLength) ?? partOf(parts, panel, 'slat'))?.letter,
    };
  });
  return courses.bottoms.flatMap((bottom, course) => {
    const shape = shapes[weave.rowOfCourse[course] as number] as (typeof shapes)[number];
    const height = [bottom, bottom + courses.height] as const;
    // A slat that bends out before the frame beyond the plane would stand there as a box of its own: left out.
    const far = shape.reach.every((z) => Math.abs(z) <= panel.outside.depth / 2) && clipped(ink, shape.reach, height);
    const near = clipped(ink, shape.cut, height);
    const of = shape.of === undefined ? {} : { of: shape.of };
    return [
      ...(far ? seenFace(rectangle(far), shape.of) : []),
      ...(near ? cutFace(rectangle(near), { grain: 'end', angle: course % 2 === 0 ? 45 : -45, ...of }) : []),
    ];
  });
}

function staveInk(ink: UprightInk): Mark[] {
  const { panel, parts } = ink;
  const { staves } = panel;
  const box = clipped(ink, [-staves.depth / 2, staves.depth / 2], [staves.bottom, staves.bottom + staves.length]);
  return box ? cutFace(rectangle(box), { grain: 'long', angle: 90, ...letter(partOf(parts, panel, 'stave')) }) : [];
}

/** From where to where the cover strip in front lies, z and y: outside the slats, under the rail that it is pinned to. */
export function coverBox({
  cover,
  clear,
}: Panel): { readonly z: readonly [number, number]; readonly y: readonly [number, number] } | undefined {
  if (cover.height <= 0) return undefined;
  const top = clear.bottom + clear.height;
  return { z: [cover.face, cover.face + cover.thickness], y: [top - cover.height, top] };
}

function coverInk(ink: UprightInk): Mark[] {
  const { panel, parts } = ink;
  const strip = coverBox(panel);
  if (!strip) return [];
  // Lined the other way than the top course beside it.
  const angle = panel.courses.count % 2 === 0 ? 45 : -45;
  return ([1, -1] as const).flatMap((side) => {
    const box = clipped(ink, [side * strip.z[0], side * strip.z[1]], strip.y);
    const of = letter(partOf(parts, panel, 'cover strip'));
    return box ? cutFace(rectangle(box), { grain: 'end', angle, ...of }) : [];
  });
}

/** Both rails with their grooves; the stave's end stands in the groove. */
function railInk({ panel, parts, at, span }: UprightInk): Mark[] {
  const { rail, groove, clear } = panel;
  const half = rail.depth / 2;
  const side = groove.width / 2;
  const top = clear.bottom + clear.height;
  const rails = [
    { y: [0, rail.height] as const, inner: rail.height, bed: rail.height - groove.depth, outer: 0 },
    { y: [top, top + rail.height] as const, inner: top, bed: top + groove.depth, outer: top + rail.height },
  ];
  return rails.flatMap(({ y, inner, bed, outer }) => {
    if (y[0] < span[0] - 1e-9 || y[1] > span[1] + 1e-9) return [];
    const outline = polygon([
      at(-half, outer),
      at(half, outer),
      at(half, inner),
      at(side, inner),
      at(side, bed),
      at(-side, bed),
      at(-side, inner),
      at(-half, inner),
    ]);
    return cutFace(outline, { grain: 'end', ...letter(partOf(parts, panel, 'rail')) });
  });
}
