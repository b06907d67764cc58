import { floorIndex, normalPositions } from './positions.ts';
import { mayPart, type Ripping } from './section.ts';
import { gcd } from './ticks.ts';

/**
 * Every way worth looking at of parting a board's section by rips, as a graph: rectangles, smaller ones first, each with
 * the pairs of rectangles that one rip leaves. It knows no rule of narrowest or deepest rip, so that what it is worth
 * at given worths of sticks is never less than what the saw can make of it. Sizes hold one loss, so that pieces simply
 * add up. A rectangle stands for its mirror over the diagonal too; its longer side comes first.
 */
export interface Divisions {
  /** Per rectangle: where its cuts begin, and at the end where the last one's stop. */
  readonly cuts: Int32Array;
  /** Per cut: the rectangles either side of it. */
  readonly a: Int32Array;
  readonly b: Int32Array;
  /** Per cut, bits: 1, the shorter side is parted; 2 and 4, `a` or `b` lies turned; 8, the saw's rules forbid it. */
  readonly how: Uint8Array;
  /** Per rectangle: where the sections that fit it begin in `sticks`, and at the end where the last one's stop. */
  readonly fits: Int32Array;
  readonly sticks: Int32Array;
  /** Whether the board's longer side is the rectangle's shorter one. */
  readonly turned: boolean;
}

/** A division with the most worth of each rectangle under worths of sticks. */
export interface Valued {
  readonly worth: Float64Array;
  /** Per rectangle: its cut, or -1 less the section it is one stick of; the count of cuts where it is waste. */
  readonly by: Int32Array;
}

/** Shares of a board's width that sizes are rounded to, in turn, where the true sizes make too many rectangles. */
const GRIDS = [0, 1 / 800, 1 / 400, 1 / 200, 1 / 100, 1 / 50];

/**
 * The divisions of a board's section with at most `most` cuts. Where the true sizes make more, sticks are rounded down
 * and the board up to a grid, which can only raise what the section is worth; `undefined` where even that is too much.
 */
export function divisionsOf(rip: Ripping, most = 150_000): Divisions | undefined {
  const sides = rip.sections.flatMap((s) => [s.thickness + rip.loss, s.width + rip.loss]);
  const whole = [rip.width + rip.loss, rip.thickness + rip.loss];
  const exact = [...sides, ...whole].reduce(gcd, 0) || 1;
  for (const share of GRIDS) {
    const unit = Math.max(exact, Math.ceil(share * (rip.width + rip.loss)));
    if (unit > Math.min(...sides)) return undefined;
    const made = partUp(rip, unit, most);
    if (made !== undefined) return made;
  }
  return undefined;
}

type Rectangle = readonly [node: number, turned: boolean];

/** Lists of normal positions for a size across: they depend only on which sides fit across. */
function placesOf(rip: Ripping, unit: number, most: number): ((across: number) => Int32Array) | undefined {
  const pairs = rip.sections.flatMap(({ thickness, width }) => {
    const [t, w] = [Math.floor((thickness + rip.loss) / unit), Math.floor((width + rip.loss) / unit)];
    return [
      { side: t, across: w },
      { side: w, across: t },
    ];
  });
  const steps = [...new Set(pairs.map((p) => p.across))].sort((a, b) => a - b);
  const end = Math.ceil((rip.width + rip.loss) / unit);
  const cap = Math.max(64, Math.floor(Math.sqrt(8 * most)));
  const lists: Int32Array[] = [Int32Array.of(0)];
  for (const step of steps) {
    const sizes = [...new Set(pairs.filter((p) => p.across <= step).map((p) => p.side))].sort((a, b) => a - b);
    const { at, complete } = normalPositions(
      sizes.map((size) => ({ size, most: end })),
      end,
      cap,
    );
    if (!complete) return undefined;
    lists.push(at);
  }
  const index = Int32Array.from(steps);
  return (across) => lists[floorIndex(index, across) + 1] as Int32Array;
}

function partUp(rip: Ripping, unit: number, most: number): Divisions | undefined {
  const places = placesOf(rip, unit, most);
  if (places === undefined) return undefined;
  const sections = rip.sections.map((s) => [
    Math.floor((s.width + rip.loss) / unit),
    Math.floor((s.thickness + rip.loss) / unit),
  ]) as [number, number][];
  const [cuts, fits]: [number[], number[]] = [[0], [0]];
  const [a, b, how, sticks]: [number[], number[], number[], number[]] = [[], [], [], []];
  const known = new Map<number, number>();
  const floor = (size: number, across: number): number => {
    const at = places(across);
    return at[floorIndex(at, size)] as number;
  };
  const real = (size: number): number => size * unit - rip.loss;

  /** The rectangle that one of these sizes comes down to; -1 where nothing fits; `undefined` past the limit. */
  const rectangle = (x: number, y: number): Rectangle | undefined => {
    let [w, t] = [x, y];
    for (let before = -1; before !== w + t; ) {
      before = w + t;
      w = floor(w, t);
      t = floor(t, w);
    }
    if (w === 0 || t === 0) return [-1, false];
    const turned = w < t;
    if (turned) [w, t] = [t, w];
    const key = w * 2_097_152 + t;
    const node = known.get(key);
    if (node !== undefined) return [node, turned];
    const own: [Rectangle, Rectangle, number][] = [];
    for (const bit of [0, 1]) {
      const [along, across] = bit === 0 ? [w, t] : [t, w];
      const barred = mayPart(rip, real(along), real(across)) ? 0 : 8;
      const at = places(across);
      let last = -1;
      for (let i = 1; i < at.length && 2 * (at[i] as number) <= along; i++) {
        const rest = floor(along - (at[i] as number), across);
        const first = floor(along - rest, across);
        if (rest === 0 || first === last) continue;
        last = first;
        const one = bit === 0 ? rectangle(first, t) : rectangle(w, first);
        const other = one && (bit === 0 ? rectangle(rest, t) : rectangle(w, rest));
        if (one === undefined || other === undefined || a.length + own.length >= most) return undefined;
        if (one[0] >= 0 && other[0] >= 0) own.push([one, other, bit + barred]);
      }
    }
    for (const [one, other, bits] of own) {
      a.push(one[0]);
      b.push(other[0]);
      how.push(bits + (one[1] ? 2 : 0) + (other[1] ? 4 : 0));
    }
    sections.forEach(([sw, st], s) => {
      if (sw <= w && st <= t) sticks.push(s);
    });
    cuts.push(a.length);
    fits.push(sticks.length);
    known.set(key, known.size);
    return [known.size - 1, turned];
  };

  const top = rectangle(Math.ceil((rip.width + rip.loss) / unit), Math.ceil((rip.thickness + rip.loss) / unit));
  if (top === undefined || top[0] < 0) return undefined;
  return {
    cuts: Int32Array.from(cuts),
    a: Int32Array.from(a),
    b: Int32Array.from(b),
    how: Uint8Array.from(how),
    fits: Int32Array.from(fits),
    sticks: Int32Array.from(sticks),
    turned: top[1],
  };
}

/** The best division at these worths of sticks; `ruled` keeps to cuts that the saw's rules allow. */
export function valued(division: Divisions, worths: ArrayLike<number>, ruled: boolean): Valued {
  const { cuts, a, b, how, fits, sticks } = division;
  const count = cuts.length - 1;
  const worth = new Float64Array(count);
  const by = new Int32Array(count).fill(a.length);
  const barred = ruled ? 8 : 16;
  for (let i = 0; i < count; i++) {
    let best = 0;
    let from = a.length;
    for (let k = fits[i] as number; k < (fits[i + 1] as number); k++) {
      const value = worths[sticks[k] as number] as number;
      if (value > best) {
        best = value;
        from = -1 - (sticks[k] as number);
      }
    }
    for (let k = cuts[i] as number; k < (cuts[i + 1] as number); k++) {
      const value = (worth[a[k] as number] as number) + (worth[b[k] as number] as number);
      if (value > best && ((how[k] as number) & barred) === 0) {
        best = value;
        from = k;
      }
    }
    worth[i] = best;
    by[i] = from;
  }
  return { worth, by };
}
