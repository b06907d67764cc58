import { clearStretches, latticeOf, neighbourLines, type Openwork, openingAt } from './openwork.ts';

/** Places looked at in each bay before the search narrows. */
const places = 128;

/**
 * Diameter of the largest rigid ball that can pass the weave, mm: an upper bound, nearly attained while slats are rigid.
 * A ball goes through between two neighbouring courses in one bay; where its middle crosses, it must fit between their
 * facing edges and between the staves. Loose courses can be lifted until all slack of the stack is in one joint, so
 * `slack` (top gap, shrinkage) counts in full with the gap.
 *
 * Slats are flexible: a forced ball prises them apart, and this does not replace the load test of a building code.
 * Derived for this project; checked by a search for paths through a plain weave (99.8 % of the bound pass and more).
 *
 * @param openwork `slack` in mm, 0 if absent.
 * @throws RangeError if the slack or the gap is negative.
 * @example
 * largestBall({ pitch: 277.8125, staveWidth: 19.05, staveDepth: 15.875, slatThickness: 4.7625, slatHeight: 41.275,
 *   gap: 0 }) // → 15.56 (0.6126 in)
 */
export function largestBall(openwork: Openwork & { readonly slack?: number }): number {
  const { slack = 0 } = openwork;
  if (!(slack >= 0)) throw new RangeError(`invalid slack: ${slack} (expected 0 or more, mm)`);
  const lattice = latticeOf(openwork);
  const gap = lattice.gap + slack;
  const bays = clearStretches(lattice);
  const fits = neighbourLines(lattice).flatMap(({ pair }) =>
    bays.map(([from, to]) =>
      highest(from, to, (x) => Math.min(openingAt(lattice, pair, gap, x), 2 * (x - from), 2 * (to - x))),
    ),
  );
  return Math.max(0, ...fits);
}

/** Highest value between two places: the best of many, then thirds of the two steps round it, where it has one top. */
function highest(from: number, to: number, value: (x: number) => number): number {
  const step = (to - from) / places;
  const values = Array.from({ length: places + 1 }, (_, i) => value(from + i * step));
  const best = values.reduce((top, each, i) => (each > (values[top] as number) ? i : top), 0);
  let low = from + Math.max(0, best - 1) * step;
  let high = from + Math.min(places, best + 1) * step;
  for (let turn = 0; turn < 60; turn++) {
    const third = (high - low) / 3;
    if (value(low + third) < value(high - third)) low += third;
    else high -= third;
  }
  return value((low + high) / 2);
}
