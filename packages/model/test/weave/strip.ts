import type { SlatToBend } from '../../src/weave/bend.ts';

// An independent judge of `bendSlat`: a thin strip cut into hundreds of short pieces, its bending energy made least while
// it keeps clear of the staves. Finite differences on a grid, one-sided springs stiffened by multipliers (augmented
// Lagrangian), Newton steps with a banded factor. No spline, no choice of which arris touches.

/** A strip at rest. */
export interface Strip {
  readonly maxCurvature: number;
  readonly staveForces: readonly number[];
  readonly extraLength: number;
  readonly x: readonly number[];
  readonly z: readonly number[];
}

/**
 * `small`: energy ½∫z″² against the arrises half a slat off and the end stops, the model's own problem.
 * `elastica`: energy ½∫κ² ds of true curvature against staves grown by half a slat all round, with round corners.
 */
export type Kind = 'small' | 'elastica';

/** A place that the strip must pass: side · z is at least `least` at this grid point. */
interface Hold {
  readonly point: number;
  readonly stave: number;
  readonly side: number;
  readonly least: number;
}

/** Solves for the strip at rest. */
export function restingStrip(slat: SlatToBend, kind: Kind): Strip {
  const { x, holds } = gridOf(slat, kind);
  const exact = kind === 'elastica';
  const pitch = (slat.clearWidth - slat.staves.width) / (slat.staves.count - 1);
  const spring = 5000 / pitch ** 3;
  const push = holds.map(() => 0);
  let z = startOf(slat, x);
  const loads = (line: readonly number[]) =>
    holds.map(({ point, side, least }, k) => Math.max(0, at(push, k) + spring * (least - side * at(line, point))));
  const merit = (line: readonly number[]) =>
    bendingOf(x, line, exact).energy + loads(line).reduce((sum, load) => sum + load ** 2 / (2 * spring), 0);
  for (let round = 0; round < 14; round++) {
    for (let turn = 0; turn < 60; turn++) {
      const { gradient, bands } = bendingOf(x, z, exact);
      // A trace of stiffness everywhere, lest a strip that touches nothing floats.
      for (let i = 0; i < x.length; i++) add(bands[0], i, 1e-9 * spring);
      loads(z).forEach((load, k) => {
        const { point, side } = holds[k] as Hold;
        add(gradient, point, -side * load);
        if (load > 0) add(bands[0], point, spring);
      });
      const step = solveBanded(bands, gradient);
      const descent = gradient.reduce((sum, part, i) => sum - part * at(step, i), 0);
      const here = merit(z);
      const moved = (share: number) => z.map((value, i) => value - share * at(step, i));
      let share = 1;
      while (share > 1e-6 && merit(moved(share)) > here + 1e-4 * share * descent) share /= 2;
      z = moved(share);
      if (Math.max(...step.map(Math.abs)) < 1e-11 * pitch) break;
    }
    loads(z).forEach((load, k) => {
      push[k] = load;
    });
  }
  return { ...measured(x, z, exact), staveForces: forcesOf(slat, holds, push), x, z };
}

/** Grid points on every arris, closer beside it where corners are round, and what bounds the strip there. */
function gridOf(slat: SlatToBend, kind: Kind): { readonly x: number[]; readonly holds: Hold[] } {
  const { clearWidth, staves, sides, endStop } = slat;
  const pitch = (clearWidth - staves.width) / (staves.count - 1);
  const half = slat.slat.thickness / 2;
  const corner = kind === 'elastica' ? half : 0;
  const x: number[] = [];
  const holds: Hold[] = [];
  const point = (place: number, stave: number) => {
    x.push(Math.min(place, clearWidth));
    if (stave < 0) return;
    const beside = Math.max(stave * pitch - place, place - stave * pitch - staves.width, 0);
    const least = staves.depth / 2 + Math.sqrt(Math.max(0, half ** 2 - beside ** 2));
    holds.push({ point: x.length - 1, stave, side: sides[stave] ?? 0, least });
  };
  const run = (from: number, to: number, pieces: number, stave: number) => {
    for (let i = 1; i < pieces; i++) point(from + ((to - from) * i) / pieces, stave);
  };
  for (let j = 0; j < staves.count; j++) {
    const left = j * pitch;
    const right = left + staves.width;
    if (corner > 0 && j > 0) run(left - corner, left, 10, j);
    point(left, j);
    // With arrises alone the face between them does not bound the strip.
    run(left, right, 12, corner > 0 ? j : -1);
    point(right, j);
    if (j === staves.count - 1) break;
    if (corner > 0) run(right, right + corner, 10, j);
    run(right + corner, left + pitch - corner, 80, -1);
  }
  if (endStop !== undefined)
    for (const end of [0, x.length - 1])
      for (const side of [1, -1]) holds.push({ point: end, stave: -1, side, least: -endStop });
  return { x, holds };
}

/** Straight from the middle of one stave's face to the next. */
function startOf({ clearWidth, staves, slat, sides }: SlatToBend, x: readonly number[]): number[] {
  const pitch = (clearWidth - staves.width) / (staves.count - 1);
  const face = (staves.depth + slat.thickness) / 2;
  return x.map((place) => {
    const along = Math.min(Math.max(0, (place - staves.width / 2) / pitch), staves.count - 1 - 1e-9);
    const j = Math.floor(along);
    const share = along - j;
    return face * ((1 - share) * (sides[j] ?? 0) + share * (sides[j + 1] ?? 0));
  });
}

type Bands = readonly [number[], number[], number[]];

/** Energy, its gradient, and the Gauss-Newton matrix as main diagonal and two upper bands. */
function bendingOf(x: readonly number[], z: readonly number[], exact: boolean) {
  const zeros = () => new Array<number>(x.length).fill(0);
  const gradient = zeros();
  const bands: Bands = [zeros(), zeros(), zeros()];
  let energy = 0;
  for (let i = 1; i < x.length - 1; i++) {
    const a = at(x, i) - at(x, i - 1);
    const b = at(x, i + 1) - at(x, i);
    const weight = (a + b) / 2;
    const bend = [1 / (a * weight), -1 / (a * weight) - 1 / (b * weight), 1 / (b * weight)];
    // Slope in the middle of three points, of the parabola through them.
    const tilt = [-b / (a * (a + b)), (b - a) / (a * b), a / (b * (a + b))];
    const of = (three: readonly number[]) =>
      at(three, 0) * at(z, i - 1) + at(three, 1) * at(z, i) + at(three, 2) * at(z, i + 1);
    const second = of(bend);
    const slope = exact ? of(tilt) : 0;
    const stretch = 1 + slope ** 2;
    // κ² ds = z″² (1 + z′²)^(-5/2) dx
    const residual = second * stretch ** -1.25;
    energy += (weight * residual ** 2) / 2;
    const parts = bend.map(
      (part, k) => stretch ** -1.25 * part - 2.5 * second * slope * stretch ** -2.25 * at(tilt, k),
    );
    for (let k = 0; k < 3; k++) {
      add(gradient, i - 1 + k, weight * residual * at(parts, k));
      for (let m = k; m < 3; m++) add(bands[m - k] ?? [], i - 1 + k, weight * at(parts, k) * at(parts, m));
    }
  }
  return { energy, gradient, bands };
}

/** Solves a symmetric system of two upper bands by L D Lᵀ. */
function solveBanded(bands: Bands, right: readonly number[]): number[] {
  const d: number[] = [];
  const near: number[] = [];
  const far: number[] = [];
  const y: number[] = [];
  const or0 = (list: readonly number[], i: number) => list[i] ?? 0;
  for (let i = 0; i < right.length; i++) {
    d[i] = at(bands[0], i) - or0(near, i - 1) ** 2 * or0(d, i - 1) - or0(far, i - 2) ** 2 * or0(d, i - 2);
    near[i] = (at(bands[1], i) - or0(far, i - 1) * or0(near, i - 1) * or0(d, i - 1)) / at(d, i);
    far[i] = at(bands[2], i) / at(d, i);
    y[i] = at(right, i) - or0(near, i - 1) * or0(y, i - 1) - or0(far, i - 2) * or0(y, i - 2);
  }
  const solved: number[] = [];
  for (let i = right.length - 1; i >= 0; i--)
    solved[i] = at(y, i) / at(d, i) - at(near, i) * or0(solved, i + 1) - at(far, i) * or0(solved, i + 2);
  return solved;
}

function forcesOf(slat: SlatToBend, holds: readonly Hold[], push: readonly number[]): number[] {
  const stiffness = (slat.modulus * slat.slat.height * slat.slat.thickness ** 3) / 12;
  const forces = new Array<number>(slat.staves.count).fill(0);
  holds.forEach(({ stave }, k) => {
    if (stave >= 0) add(forces, stave, stiffness * at(push, k));
  });
  return forces;
}

function measured(x: readonly number[], z: readonly number[], exact: boolean) {
  const pieces = x.slice(1).map((place, i) => ({ run: place - at(x, i), rise: at(z, i + 1) - at(z, i) }));
  const length = ({ run, rise }: { run: number; rise: number }) => (exact ? Math.hypot(run, rise) : run);
  const angle = ({ run, rise }: { run: number; rise: number }) => (exact ? Math.atan2(rise, run) : rise / run);
  const extra = pieces.map((piece) => (exact ? length(piece) - piece.run : piece.rise ** 2 / piece.run / 2));
  const curvatures = pieces.slice(1).map((piece, i) => {
    const before = pieces[i] as { run: number; rise: number };
    return Math.abs((2 * (angle(piece) - angle(before))) / (length(piece) + length(before)));
  });
  return { extraLength: extra.reduce((sum, each) => sum + each, 0), maxCurvature: Math.max(...curvatures) };
}

function at(list: readonly number[], i: number): number {
  return list[i] as number;
}

function add(list: number[], i: number, value: number): void {
  list[i] = at(list, i) + value;
}
