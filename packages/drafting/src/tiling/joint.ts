/** A stretch along one direction, mm. */
export type Span = readonly [from: number, to: number];

/** What joints are laid out by. */
export interface JointOptions {
  /** The stretch to be covered. */
  readonly whole: Span;
  /** How much of it one page can show. */
  readonly window: number;
  /** How much two neighbours show of the same, half of it on either side of the joint. */
  readonly overlap: number;
  /** Stretches taken up by texts, which a joint must not cut. */
  readonly texts: readonly Span[];
  /** Stretches of marks to be used, which a joint keeps clear of as long as it can. */
  readonly marks?: readonly Span[];
}

/** From a joint to the nearest text or mark, mm, where it can keep clear of them: a page is trimmed by hand. */
const CLEAR = 2;

/** How much of a page's window may be given up to spare a text, as a share. */
const give = 0.4;

/**
 * Where pages meet, rising: as few as the window allows, each as far on as it can be: clear of texts and marks, or
 * else of texts, or else without cutting a text, one that lies within the overlap being whole on both pages.
 */
export function joints({ whole: [from, to], window, overlap, texts, marks = [] }: JointOptions): number[] {
  if (overlap * 2 >= window) throw new RangeError(`invalid overlap: ${overlap} (expected under half of ${window}, mm)`);
  const out: number[] = [];
  let shown = from;
  while (shown + window < to - 1e-9) {
    const furthest = shown + window - overlap / 2;
    const least = furthest - give * window;
    const joint =
      clear(furthest, least, [...texts, ...marks]) ??
      clear(furthest, least, texts) ??
      sparing(furthest, least, overlap / 2, texts);
    out.push(joint);
    shown = joint - overlap / 2;
  }
  return out;
}

/** Steps between the smallest and the largest window that even joints are tried with. */
const TRIES = 6;

/** As `joints`, as few, but spread so that no page is left with a sliver, as far as no more is cut for it. */
export function evenJoints(options: JointOptions): number[] {
  const furthest = joints(options);
  const count = furthest.length;
  if (count === 0) return furthest;
  const { whole, window, overlap, texts, marks = [] } = options;
  const least = (whole[1] - whole[0] + overlap * count) / (count + 1);
  const tries = Array.from({ length: TRIES }, (_, i) => least + ((window - least) * (i + 1)) / (TRIES + 1))
    .filter((narrower) => overlap * 2 < narrower)
    .map((narrower) => joints({ ...options, window: narrower }))
    .filter((found) => found.length === count);
  const met = (at: readonly number[], stretches: readonly Span[]): number =>
    stretches.filter(([a, b]) => at.some((joint) => a < joint - 1e-9 && b > joint + 1e-9)).length;
  const cost = (at: readonly number[]): number => met(at, texts) * 1000 + met(at, marks);
  return [...tries, furthest].reduce((best, other) => (cost(other) < cost(best) ? other : best));
}

/** The place nearest before `furthest` that keeps clear of all of some stretches; undefined when there is none. */
function clear(furthest: number, least: number, stretches: readonly Span[]): number | undefined {
  let joint = furthest;
  while (joint >= least) {
    const met = stretches.find(([a, b]) => a - CLEAR < joint - 1e-9 && b + CLEAR > joint + 1e-9);
    if (!met) return joint;
    joint = met[0] - CLEAR;
  }
  return undefined;
}

/** The place nearest before `furthest` where no text is cut; where there is none, `furthest` itself. */
function sparing(furthest: number, least: number, reach: number, texts: readonly Span[]): number {
  let joint = furthest;
  for (;;) {
    const cutText = texts.find(([a, b]) => {
      const cut = a < joint && b > joint;
      return cut && !(a >= joint - reach && b <= joint + reach);
    });
    if (!cutText) return joint;
    // Either before the text, or where its end falls within the overlap: whichever moves the joint less is tried first.
    const [a, b] = cutText;
    joint = b - a <= 2 * reach && a + reach < joint ? a + reach : a;
    if (joint < least) return furthest;
  }
}

/** What each page shows between the joints, overlaps included. */
export function pagesBetween([from, to]: Span, cuts: readonly number[], overlap: number): Span[] {
  const starts = [from, ...cuts.map((cut) => cut - overlap / 2)];
  const ends = [...cuts.map((cut) => cut + overlap / 2), to];
  return starts.map((start, i) => [start, ends[i] as number]);
}
