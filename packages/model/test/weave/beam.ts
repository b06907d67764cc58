import { sampleSlat } from '../../src/weave/bend.ts';
import type { PanelOpenwork } from '../../src/weave/openwork.ts';
import { plainShape } from '../../src/weave/plain.ts';
import type { Curve } from '../../src/weave/spline.ts';
import { inch } from '../../src/wood/inchpound.ts';

// An independent judge of `seeThrough`: rays at random places, walked in small steps through the solid, each step asked
// whether it is inside wood. Only the centre lines are shared with what is judged; for plain weave not even these.

/** A woven solid: what is there to hit. */
export interface Solid {
  readonly from: number;
  readonly to: number;
  readonly thickness: number;
  readonly height: number;
  readonly gap: number;
  readonly staves: { readonly at: (j: number) => number | undefined; readonly width: number; readonly depth: number };
  readonly pitch: number;
  /** No wood is further from the middle plane. */
  readonly reach: number;
  /** Height of the centre line of a course, front positive; courses count from 0 and go on for ever. */
  readonly line: (course: number, x: number) => number;
}

/** Share of the rays that pass, and one standard error of it. */
export function tracedShare(solid: Solid, elevation: number, azimuth: number, rays: number) {
  const random = generator(20261124);
  const along = Math.tan((azimuth * Math.PI) / 180);
  const up = Math.tan((elevation * Math.PI) / 180) / Math.cos((azimuth * Math.PI) / 180);
  const { reach } = solid;
  // No step longer than a fortieth of a slat's thickness, along z or up.
  const steps = Math.ceil((2 * reach * 40 * Math.max(1, Math.abs(up) / 2)) / solid.thickness);
  let passed = 0;
  for (let ray = 0; ray < rays; ray++) {
    const x = solid.from + random() * (solid.to - solid.from);
    const y = 1000 * (solid.height + solid.gap) + random() * 60 * (solid.height + solid.gap);
    let open = true;
    for (let i = 0; i <= steps && open; i++) {
      const z = -reach + (2 * reach * i) / steps;
      open = !inWood(solid, x + z * along, y + z * up, z);
    }
    if (open) passed++;
  }
  const share = passed / rays;
  return { share, error: Math.sqrt(Math.max(share * (1 - share), 1 / rays) / rays) };
}

function inWood(solid: Solid, x: number, y: number, z: number): boolean {
  const { staves, pitch } = solid;
  const near = Math.round((x - (staves.at(0) ?? 0)) / pitch);
  const stave = staves.at(near);
  if (stave !== undefined && Math.abs(x - stave) <= staves.width / 2 && Math.abs(z) <= staves.depth / 2) return true;
  const course = Math.floor(y / (solid.height + solid.gap));
  if (y - course * (solid.height + solid.gap) > solid.height) return false;
  return distance((at) => solid.line(course, at), x, z, solid.thickness) <= solid.thickness / 2;
}

/** Distance from a point to a line that runs mostly along x, by stepping to the foot of the perpendicular. */
function distance(line: (x: number) => number, x: number, z: number, far: number): number {
  if (Math.abs(z - line(x)) > far) return far;
  let foot = x;
  for (let turn = 0; turn < 3; turn++) {
    const slope = (line(foot + 1e-4) - line(foot - 1e-4)) / 2e-4;
    foot = (foot * slope ** 2 + x + (z - line(foot)) * slope) / (1 + slope ** 2);
  }
  return Math.hypot(x - foot, z - line(foot));
}

/** Plain weave without ends; its line from the closed form A(αv + βv³) across the bay and the parabola on the face. */
export function plainSolid(gap: number): Solid {
  const sizes = {
    pitch: 10.9375 * inch,
    staveWidth: 0.75 * inch,
    staveDepth: 0.625 * inch,
    slatThickness: 0.1875 * inch,
  };
  const { offset, bay, curvature, alpha, beta } = plainShape(sizes);
  const { pitch, staveWidth } = sizes;
  const line = (course: number, x: number) => {
    const stave = Math.round(x / pitch);
    const side = (stave + course) % 2 === 0 ? 1 : -1;
    const beside = Math.abs(x - stave * pitch);
    if (beside <= staveWidth / 2) return side * (offset + (curvature * ((staveWidth / 2) ** 2 - beside ** 2)) / 2);
    const v = (beside - staveWidth / 2) / bay - 0.5;
    return -side * offset * (alpha * v + beta * v ** 3);
  };
  const staves = { at: (j: number) => j * pitch, width: staveWidth, depth: sizes.staveDepth };
  const solid = { thickness: sizes.slatThickness, height: 1.625 * inch, gap, staves, pitch, line };
  return { ...solid, from: 0, to: pitch, reach: sizes.staveDepth / 2 + 1.5 * sizes.slatThickness };
}

/** A panel with the curves of its rows; the frame's stiles are not there to hit. */
export function panelSolid(panel: PanelOpenwork, bends: readonly Curve[], courses: readonly number[]): Solid {
  const { clearWidth, staves, slat, gap } = panel;
  const pitch = (clearWidth - staves.width) / (staves.count - 1);
  // Ends that nothing presses fly far out.
  const furthest = [0, clearWidth].flatMap((x) => bends.map((bend) => Math.abs(sampleSlat(bend, x).z)));
  return {
    reach: Math.max(staves.depth / 2 + slat.thickness, ...furthest) + slat.thickness,
    from: 0,
    to: clearWidth,
    ...slat,
    gap,
    pitch,
    staves: { ...staves, at: (j) => (j >= 0 && j < staves.count ? staves.width / 2 + j * pitch : undefined) },
    line: (course, x) => sampleSlat(bends[courses[course % courses.length] ?? 0] as Curve, x).z,
  };
}

/** Numbers from 0 to 1, always the same ones: mulberry32. */
function generator(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
