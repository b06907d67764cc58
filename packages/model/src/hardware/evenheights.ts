import { spread } from '../uses/place.ts';

/** Heights to spread up a stile or a strip, mm. */
export interface EvenHeights {
  /** Lowest and highest wanted. */
  readonly from: number;
  readonly to: number;
  /** How far both may move towards the ends, and towards the middle. */
  readonly out: number;
  readonly in: number;
  /** Widest step, and what the ends are moved by. */
  readonly step: number;
  readonly mark: number;
  /** Whether a height is clear of what else is there. */
  readonly free: (y: number) => boolean;
}

/** Heights to add at most to make an even row find its place; derived: a third one more than halves the steps. */
const MORE = 3;

/**
 * Heights at equal steps, both ends alike far from theirs, so that all are free: with as few as the step lets, the ends
 * moved by as little as it takes. Where no even row is free, each height moves for itself, those above the middle as
 * those below it where both are free.
 */
export function evenHeights(wanted: EvenHeights): number[] {
  const { from, to, step, mark, free } = wanted;
  const steps = spread(from, to, step).length - 1;
  const moves = Array.from({ length: Math.floor(Math.max(wanted.out, wanted.in) / mark) + 1 }, (_, i) => i * mark)
    .flatMap((by) => [by, -by])
    .filter((by) => by <= wanted.in && -by <= wanted.out);
  for (let more = 0; more <= MORE && steps > 0; more++) {
    for (const by of moves) {
      const [low, high] = [from + by, to - by];
      if (high - low < mark || (high - low) / (steps + more) > step + 1e-9) continue;
      const ys = Array.from({ length: steps + more + 1 }, (_, i) => low + ((high - low) * i) / (steps + more));
      if (ys.every(free)) return ys;
    }
  }
  return oneByOne(spread(from, to, step), wanted);
}

function oneByOne(ys: readonly number[], { from, to, out, mark, free }: EvenHeights): number[] {
  const mirror = (y: number) => from + to - y;
  const inside = (y: number) => y >= from - out - 1e-9 && y <= to + out + 1e-9;
  const nearest = (y: number, fits: (y: number) => boolean) => {
    for (let by = 0; by <= (to - from) / 2 + out; by += mark)
      for (const tried of [y + by, y - by]) if (inside(tried) && fits(tried)) return tried;
    return undefined;
  };
  const both = (y: number) => free(y) && free(mirror(y));
  return ys.map((y) => {
    const low = Math.min(y, mirror(y));
    const found = nearest(low, both);
    if (found !== undefined) return y === low ? found : mirror(found);
    return nearest(y, free) ?? y;
  });
}
