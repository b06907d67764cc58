import { crossesBox, segmentsCross } from './clearance.ts';
import { ASCENT, DESCENT, TEXT_CLEAR, TEXT_LIFT } from './style.ts';

/** A label put in its place in the frame of a side: `s` along it, `d` outward, mm. */
export interface PlacedLabel {
  readonly s0: number;
  readonly s1: number;
  readonly d0: number;
  readonly d1: number;
  /** Middle of the baseline. */
  readonly at: readonly [s: number, d: number];
  /** Where the dimension line is drawn on to, when the label stands beside its span. */
  readonly reach?: number;
  /** From the dimension line to the label, when it had to be pushed out. */
  readonly leader?: Line;
}

/** What a label must keep clear of in its row. */
export interface Room {
  /** Distance of the row's dimension line. */
  readonly line: number;
  /** 1 where text stands on the outer side of the line, -1 where on the inner. */
  readonly up: 1 | -1;
  /** Positions of extension lines that reach or pass the row. */
  readonly reaching: readonly number[];
  /** Positions of extension lines that pass the row. */
  readonly passing: readonly number[];
  /** Spans of the row's own sizes and of dimension lines drawn on beside them. */
  readonly taken: readonly (readonly [number, number])[];
  readonly labels: readonly PlacedLabel[];
}

/** A label to place: its span, and the size of its text. */
export interface Wanted {
  readonly a: number;
  readonly b: number;
  readonly width: number;
  readonly height: number;
}

const EDGE = 1e-6;

/** The label's box when it stands on the dimension line with its middle at `s`. */
function onLine({ line, up }: Room, { width, height }: Wanted, s: number): PlacedLabel {
  const base = line + up * TEXT_LIFT;
  const [low, high] = [base - up * DESCENT * height, base + up * ASCENT * height];
  return { s0: s - width / 2, s1: s + width / 2, d0: Math.min(low, high), d1: Math.max(low, high), at: [s, base] };
}

/** Within its own span: in the middle, or between the lines that cut the span up. */
export function within(room: Room, wanted: Wanted): PlacedLabel | undefined {
  const { a, b, width } = wanted;
  const cuts = [a, ...room.reaching.filter((p) => p > a + EDGE && p < b - EDGE), b].sort((p, q) => p - q);
  const middle = (a + b) / 2;
  let best: number | undefined;
  for (let i = 0; i + 1 < cuts.length; i++) {
    const low = (cuts[i] as number) + TEXT_CLEAR + width / 2;
    const high = (cuts[i + 1] as number) - TEXT_CLEAR - width / 2;
    if (low > high + EDGE) continue;
    const s = Math.min(Math.max(middle, low), high);
    if (best === undefined || Math.abs(s - middle) < Math.abs(best - middle)) best = s;
  }
  return best === undefined ? undefined : onLine(room, wanted, best);
}

/** Beside its span on the dimension line drawn on, on the side nearer an end of the outline first. */
export function beside(room: Room, wanted: Wanted, ends: readonly [number, number]): PlacedLabel | undefined {
  const { a, b, width } = wanted;
  const length = width + 2 * TEXT_CLEAR;
  const outward = Math.abs(a - ends[0]) <= Math.abs(b - ends[1]) ? -1 : 1;
  for (const way of [outward, -outward]) {
    const [from, to] = way > 0 ? [b, b + length] : [a - length, a];
    const free =
      !room.reaching.some(
        (p) => p > from + EDGE - (way > 0 ? 0 : TEXT_CLEAR) && p < to - EDGE + (way > 0 ? TEXT_CLEAR : 0),
      ) && !room.taken.some(([p, q]) => p < to - EDGE && from < q - EDGE);
    if (free) return { ...onLine(room, wanted, (from + to) / 2), reach: way > 0 ? to : from };
  }
  return undefined;
}

/** Lanes outside the dimension line: the distances between which the text of lane `k` stands. */
function lane({ line, up }: Room, k: number, height: number): readonly [number, number] {
  const first = up > 0 ? line + TEXT_LIFT + ASCENT * height + TEXT_CLEAR : line + 2 + TEXT_CLEAR;
  const d0 = first + k * ((ASCENT + DESCENT) * height + TEXT_CLEAR);
  return [d0, d0 + (ASCENT + DESCENT) * height];
}

/**
 * Outside its row with a leader, as near as there is room; leaders cross neither text nor leaders, nor extension lines if
 * they can help it. Undefined when the labels placed before it leave no such room.
 */
export function outside(room: Room, wanted: Wanted): PlacedLabel | undefined {
  for (const strict of [true, false])
    for (let k = 0; k < 6; k++) {
      const found = inLane(room, wanted, k, strict);
      if (found) return found;
    }
  return undefined;
}

/**
 * Outside the row in any case: each label in a lane of its own, the last span's in the first, with a leader straight out
 * from the span and along to the label. No label stands over a span before its own, so no leader meets a text or a leader.
 */
export function stairs(room: Room, wanted: readonly Wanted[]): PlacedLabel[] {
  const steps = [...wanted.keys()].sort((i, j) => (wanted[j] as Wanted).a - (wanted[i] as Wanted).a);
  return wanted.map(({ a, b, width, height }, i) => {
    const [d0, d1] = lane(room, steps.indexOf(i), height);
    const middle = (a + b) / 2;
    let s0 = middle + 2 * TEXT_CLEAR;
    for (const p of [...room.passing].sort((p, q) => p - q))
      if (p > s0 - TEXT_CLEAR && p < s0 + width + TEXT_CLEAR) s0 = p + TEXT_CLEAR + EDGE;
    const base = room.up > 0 ? d0 + DESCENT * height : d1 - DESCENT * height;
    const level = (d0 + d1) / 2;
    const leader: Line = [
      [middle, room.line],
      [middle, level],
      [s0 - 0.5, level],
    ];
    return { s0, s1: s0 + width, d0, d1, at: [s0 + width / 2, base], leader };
  });
}

function inLane(room: Room, { a, b, width, height }: Wanted, k: number, strict: boolean): PlacedLabel | undefined {
  const [d0, d1] = lane(room, k, height);
  const middle = (a + b) / 2;
  const far = Math.max(60, ...room.passing.map((p) => Math.abs(p - middle) + 2 * width));
  const base = room.up > 0 ? d0 + DESCENT * height : d1 - DESCENT * height;
  for (let shift = 0; shift <= far; shift += 0.5)
    for (const s of shift === 0 ? [middle] : [middle + shift, middle - shift]) {
      const [s0, s1] = [s - width / 2, s + width / 2];
      const end = [Math.min(Math.max(middle, s0 + 0.5), s1 - 0.5), d0 - 0.3] as const;
      const leader: Straight = [[middle, room.line], end];
      const label: PlacedLabel = { s0, s1, d0, d1, at: [s, base], leader };
      if (fits(room, { label, leader, strict })) return label;
    }
  return undefined;
}

type At = readonly [s: number, d: number];
type Line = readonly At[];
type Straight = readonly [At, At];

function fits(
  { labels, passing }: Room,
  { label, leader, strict }: { label: PlacedLabel; leader: Straight; strict: boolean },
): boolean {
  if (passing.some((p) => p > label.s0 - TEXT_CLEAR && p < label.s1 + TEXT_CLEAR)) return false;
  const [low, high] = [Math.min(leader[0][0], leader[1][0]), Math.max(leader[0][0], leader[1][0])];
  if (strict && passing.some((p) => p > low + EDGE && p < high - EDGE)) return false;
  return labels.every((other) => {
    const apart = other.s1 + TEXT_CLEAR <= label.s0 || label.s1 + TEXT_CLEAR <= other.s0;
    if (!apart && other.d1 > label.d0 && label.d1 > other.d0) return false;
    if (hits(leader, other)) return false;
    const [from, to] = other.leader ?? [];
    return !from || !to || (!hits([from, to], label) && !segmentsCross(leader, [from, to]));
  });
}

/** Whether a straight leader passes a label, or within 0.4 mm of its ends. */
function hits(leader: Straight, { s0, s1, d0, d1 }: PlacedLabel): boolean {
  return crossesBox(leader, { u0: s0 - 0.4, v0: d0, u1: s1 + 0.4, v1: d1 });
}
