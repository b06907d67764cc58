import { floorIndex, normalPositions } from './positions.ts';

/** Where a section may be ripped: sums of stick sides, each with its loss. Sizes in ticks. */
export interface Places {
  /** Normal positions for a piece so deep through the blade, each with one loss added. */
  readonly places: (across: number) => Int32Array;
  /** Whether `at` is one of them. */
  readonly isPlace: (across: number, at: number) => boolean;
  /** False once some list was cut short. */
  readonly complete: () => boolean;
}

const MOST = 4000;

/** The places of a board's section. They depend only on which sticks fit across, so there are few different lists. */
export function placesOf(rip: {
  readonly width: number;
  readonly loss: number;
  readonly sections: readonly { readonly thickness: number; readonly width: number }[];
}): Places {
  let all = true;
  const lists = new Map<string, Int32Array>();
  const byAcross = new Map<number, Int32Array>();
  const among = (across: number): Int32Array => {
    const sides = new Set<number>();
    for (const s of rip.sections) {
      if (s.width <= across) sides.add(s.thickness);
      if (s.thickness <= across) sides.add(s.width);
    }
    const sorted = [...sides].sort((a, b) => a - b);
    const key = sorted.join();
    const known = lists.get(key);
    if (known) return known;
    const runs = sorted.map((side) => ({ size: side + rip.loss, most: rip.width }));
    const { at, complete } = normalPositions(runs, rip.width + rip.loss, MOST);
    all &&= complete;
    lists.set(key, at);
    return at;
  };
  const places = (across: number): Int32Array => {
    const known = byAcross.get(across);
    if (known) return known;
    const at = among(across);
    byAcross.set(across, at);
    return at;
  };
  const isPlace = (across: number, at: number): boolean => {
    const list = places(across);
    return list[floorIndex(list, at + rip.loss)] === at + rip.loss;
  };
  return { places, isPlace, complete: () => all };
}
