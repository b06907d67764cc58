import { changesOfSide, type Side } from './pattern.ts';
import { type Curve, naturalCurvatures, sampleCurve, thirdDerivativeJumps } from './spline.ts';

/** The sizes that decide how a slat lies between the staves, mm. */
export interface SlatPath {
  /** Between the inner faces of the stiles. */
  readonly clearWidth: number;
  /** `width` along the panel, `depth` through it; evenly spaced, the first and the last against the stiles. */
  readonly staves: { readonly count: number; readonly width: number; readonly depth: number };
  /** `thickness` through the panel. */
  readonly slat: { readonly thickness: number };
  /** Side of each stave that the slat passes, from the left. */
  readonly sides: readonly Side[];
  /** Stops at the stiles, or a groove in them, that hold the slat's centre line within ± this; absent: free ends. */
  readonly endStop?: number;
}

/** A slat's centre line and what presses on it. */
export interface Contact extends Curve {
  /** Contact force on each stave over the slat's bending stiffness, 1/mm², never negative. */
  readonly staveLoads: readonly number[];
  /** The same on the left and the right stop. */
  readonly stopLoads: readonly [left: number, right: number];
}

/** A place that the line must pass on its right side: side · z ≥ least. */
interface Hold {
  readonly x: number;
  readonly side: Side;
  readonly least: number;
  /** Place of the stave from 0, or the stop. */
  readonly of: number | 'left' | 'right';
}

/** Centre to centre of neighbouring staves, mm; the first and the last stand against the stiles. */
export function stavePitch(path: Pick<SlatPath, 'clearWidth' | 'staves'>): number {
  return (path.clearWidth - path.staves.width) / (path.staves.count - 1);
}

/**
 * The centre line of a slat woven between rigid staves: of all lines that pass every arris (the long edges of each
 * stave's face) at least half a slat off on the right side, the one of least bending. The line is a natural cubic
 * spline through the arrises that it really presses on, straight outside them, free to slide lengthwise, without
 * friction. Arrises that would have to pull are let go, arrises that it would cut through are taken in, until neither
 * is left.
 *
 * Derived for this project; checked against the exact elastica with rolling contact (bending +0.1 to +1.1 % at usual
 * sizes, never low) and against a chain of rigid links. A spline through the staves' middles, which is easier, lets
 * staves pull and misses the length by up to 5 mm. Small slopes: good while a slat bends under its strength.
 *
 * @throws RangeError for fewer than two staves, sides that do not match them, staves that leave no bay between them, or
 *   an `endStop` that the slat cannot reach beside an end stave.
 */
export function slatContact(path: SlatPath): Contact {
  checkPath(path);
  const { clearWidth, staves, slat, sides } = path;
  const offset = (staves.depth + slat.thickness) / 2;
  const changes = changesOfSide(sides);
  const none = { staveLoads: sides.map(() => 0), stopLoads: [0, 0] as const };
  if (changes.length === 0) {
    const z = (sides[0] ?? 1) * offset;
    const flat = (x: number) => ({ x, z, curvature: 0 });
    return { knots: [flat(0), flat(clearWidth)], ...none };
  }
  const holds = holdsOf(path, offset);
  const pitch = stavePitch(path);
  const { active, curve, loads } = settle(holds, firstGuess(path, holds, changes), offset, pitch);
  const loadOf = (of: Hold['of']) =>
    active.reduce((sum, i, k) => (hold(holds, i).of === of ? sum + Math.max(0, loads[k] ?? 0) : sum), 0);
  // Without a load above rounding the line is straight and lies loose.
  const noise = loadNoise(offset, pitch);
  if (loads.every((load) => load <= noise)) return { ...curve, ...none };
  return { ...curve, staveLoads: sides.map((_, j) => loadOf(j)), stopLoads: [loadOf('left'), loadOf('right')] };
}

function checkPath({ clearWidth, staves, slat, sides, endStop }: SlatPath): void {
  if (!(Number.isInteger(staves.count) && staves.count >= 2))
    throw new RangeError(`invalid number of staves: ${staves.count} (expected a whole number from 2)`);
  if (sides.length !== staves.count)
    throw new RangeError(`invalid number of sides: ${sides.length} (expected one a stave, ${staves.count})`);
  for (const [what, size] of Object.entries({ width: staves.width, depth: staves.depth, thickness: slat.thickness }))
    if (!(size > 0)) throw new RangeError(`invalid ${what}: ${size} (expected over 0, mm)`);
  if (!(clearWidth > staves.count * staves.width))
    throw new RangeError(
      `invalid clear width: ${clearWidth} (expected over ${staves.count * staves.width}, the staves)`,
    );
  const offset = (staves.depth + slat.thickness) / 2;
  if (endStop !== undefined && !(endStop >= offset))
    throw new RangeError(
      `invalid end stop: ${endStop} (expected ${offset} or more, where an end stave puts the slat, mm)`,
    );
}

/** Every place that may press on the slat, from left to right; the arrises of stave j are 2j and 2j + 1. */
function holdsOf({ clearWidth, staves, sides, endStop, ...path }: SlatPath, offset: number): Hold[] {
  const pitch = stavePitch({ clearWidth, staves, ...path });
  const arrises = sides.flatMap((side, of): Hold[] => [
    { x: of * pitch, side, least: offset, of },
    { x: of * pitch + staves.width, side, least: offset, of },
  ]);
  if (endStop === undefined) return arrises;
  const stops = ([1, -1] as const).flatMap((side): Hold[] => [
    { x: 0, side, least: -endStop, of: 'left' },
    { x: clearWidth, side, least: -endStop, of: 'right' },
  ]);
  return [...arrises, ...stops];
}

/** The arrises on both sides of every change; for a single change, also the stops that its straight line may overrun. */
function firstGuess({ sides, endStop }: SlatPath, holds: readonly Hold[], changes: readonly number[]): number[] {
  const guess = changes.flatMap((j) => [2 * j + 1, 2 * j + 2]);
  if (changes.length > 1 || endStop === undefined) return guess;
  const stop = (of: 'left' | 'right', end: Side | undefined) =>
    holds.findIndex((candidate) => candidate.of === of && candidate.side !== end);
  return [stop('left', sides[0]), ...guess, stop('right', sides.at(-1))];
}

/** Lets go and takes in holds, one at a time, until all press and none is cut through. */
function settle(
  holds: readonly Hold[],
  guess: readonly number[],
  offset: number,
  pitch: number,
): { active: readonly number[]; curve: Curve; loads: readonly number[] } {
  let active = guess;
  // Never more than 12 turns in 7,867 rows of 3 to 30 staves; the bound only guards against a fault here.
  for (let turn = 0; turn < 8 * holds.length; turn++) {
    const x = active.map((i) => hold(holds, i).x);
    const z = active.map((i) => hold(holds, i).side * hold(holds, i).least);
    const curvatures = naturalCurvatures(x, z);
    const curve = { knots: x.map((place, k) => ({ x: place, z: z[k] ?? 0, curvature: curvatures[k] ?? 0 })) };
    const loads = thirdDerivativeJumps(x, curvatures).map((jump, k) => hold(holds, active[k] ?? 0).side * jump);
    const pulling = loads.reduce((worst, load, k) => (load < (loads[worst] ?? 0) ? k : worst), 0);
    if (active.length > 2 && (loads[pulling] ?? 0) < -loadNoise(offset, pitch)) {
      active = active.filter((_, k) => k !== pulling);
      continue;
    }
    const cut = mostCutThrough(holds, x, curve, offset);
    if (cut === undefined) return { active, curve, loads };
    active = [...active, cut].sort((a, b) => hold(holds, a).x - hold(holds, b).x);
  }
  throw new Error('broken promise: no resting line found for the slat');
}

function mostCutThrough(holds: readonly Hold[], taken: readonly number[], curve: Curve, offset: number) {
  let worst = -1e-11 * offset;
  let found: number | undefined;
  for (const [i, { x, side, least }] of holds.entries()) {
    if (taken.includes(x)) continue;
    const room = side * sampleCurve(curve, x).z - least;
    if (room >= worst) continue;
    worst = room;
    found = i;
  }
  return found;
}

/** Loads below this are rounding: a billionth of offset/pitch³, where real ones are some ten times offset/pitch³. */
function loadNoise(offset: number, pitch: number): number {
  return (1e-9 * offset) / pitch ** 3;
}

function hold(holds: readonly Hold[], i: number): Hold {
  return holds[i] as Hold;
}
