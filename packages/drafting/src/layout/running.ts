import { union } from '../ink.ts';
import { textWidth } from '../lettering.ts';
import type { Box, Mark } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { line } from '../path.ts';
import type { DimensionOptions } from './dimension.ts';
import { layDimensions } from './dimension.ts';
import type { Rows, Unsaid } from './remark.ts';
import { say } from './remark.ts';
import { SAME } from './rows.ts';
import type { Side, SideFrame } from './side.ts';
import { sideFrame } from './side.ts';
import { ASCENT, DESCENT, EXTENSION_GAP, FIRST_ROW, ROW_STEP, TEXT, TEXT_LIFT } from './style.ts';
import { obliqueStroke, originCircle, STROKE_HALF } from './terminator.ts';

/** One position measured from the datum. */
export interface RunningValue {
  /** Where it lies, paper mm along the side. */
  readonly at: number;
  /** Its printed distance from the datum. */
  readonly text: string;
  readonly of?: string;
}

/** What `runningRow` needs to know. */
export interface RunningOptions {
  readonly side: Side;
  /** Outline of what is measured, paper mm. */
  readonly outline: Box;
  /** The datum, paper mm along the side. */
  readonly origin: number;
  /** Positions in the order they are counted. */
  readonly values: readonly RunningValue[];
  /** What is counted, in the singular: `course`, `stave`. */
  readonly word: string;
  /** What the last position is, where it is more than the last of its kind, such as `the top of the stack`. */
  readonly last?: string;
  /** Distance from the outline that is already used on this side, mm. */
  readonly start?: number;
  /** Positions where extension lines of rows further out will pass, paper mm along the side. */
  readonly through?: readonly number[];
}

/** A shown position, and where the baseline of its text lies along the side. */
interface Shown {
  readonly value: RunningValue;
  readonly base: number;
}

/** How many positions make one shown, tried in turn until the texts have room. */
const STEPS = [1, 2, 3, 4, 5, 10, 20, 25, 50, 100, 200, 500, 1000];

/** From the row's line to the start of a text, mm: clears an oblique stroke. */
const TEXT_START = 1.6;

/**
 * A row of running dimensions from one datum: an open circle at the datum, one line, and each distance written along its
 * own extension line (ISO 129-1). Where they are too close to read, every second, third ... and the last are shown, and a
 * note outside the row says so.
 */
export function runningRow(options: RunningOptions): Rows {
  return say(layRunning(options), sideFrame(options.side, options.outline));
}

function layRunning({ side, outline, origin, values, word, last, start = 0, through = [] }: RunningOptions): Unsaid {
  const frame = sideFrame(side, outline);
  const others = values.filter(({ at }) => Math.abs(at - origin) > SAME);
  if (others.length === 0) return { marks: [], bounds: outline, depth: start, chains: [], remarks: [] };
  const row = Math.max(FIRST_ROW, start + ROW_STEP);
  const { shown, datum, remarks } = thin(others, { word, last: last ?? 'the last' }, { origin, through });
  const texts = datum ? [datum, ...shown] : shown;
  const positions = [origin, ...shown.map(({ value }) => value.at)];
  const [low, high] = [Math.min(...positions), Math.max(...positions)];
  const end = row + TEXT_START + Math.max(0, ...texts.map(({ value }) => textWidth(value.text, TEXT))) + 0.5;
  const tops = texts.map(({ base }) => frame.box(base - ASCENT * TEXT, base + DESCENT * TEXT, row, end));
  return {
    marks: [
      stroke('dimension', line(frame.at(low, row), frame.at(high, row))),
      ...texts.flatMap((one) => valueInk(frame, one, row, { side, origin })),
      originCircle(frame.at(origin, row)),
    ],
    bounds: union([frame.box(low - STROKE_HALF, high + STROKE_HALF, 0, end), ...tops]),
    depth: end,
    chains: [],
    remarks,
  };
}

/** Baseline of a text that stands on its extension line, as read. */
const standing = (at: number): number => at - TEXT_LIFT;

/** Baseline of a text that hangs under its extension line, as read. */
const hanging = (at: number): number => at + TEXT_LIFT + ASCENT * TEXT;

/** What of a row is shown, and what the reader must be told about the rest. */
interface Thinned {
  readonly shown: readonly Shown[];
  /** The datum's own text, where there is room for it. */
  readonly datum: Shown | undefined;
  readonly remarks: readonly string[];
}

/**
 * The positions that can be shown without a text on a text or on a line: all, or all but a few, or every second, third ...
 * and the last.
 */
function thin(
  values: readonly RunningValue[],
  { word, last: lastWord }: { readonly word: string; readonly last: string },
  lines: { origin: number; through: readonly number[] },
): Thinned {
  const last = values.length - 1;
  let most: Thinned = { shown: [], datum: undefined, remarks: [] };
  for (const step of STEPS) {
    if (step > 1 && step > last) break;
    const chosen = values.filter((_, i) => i === last || ((i + 1) % step === 0 && i <= last - step));
    const { shown, datum } = roomFor(chosen, lines);
    const all = shown.length === chosen.length;
    const said = all
      ? `Every ${ordinal(step)} ${word} and ${lastWord} shown`
      : `${shown.length} of ${values.length} ${word}s shown`;
    const thinned = { shown, datum, remarks: step === 1 && all ? [] : [said] };
    if (all || (step === 1 && shown.length >= MOST_SHOWN * values.length)) return thinned;
    if (shown.length > most.shown.length) most = thinned;
  }
  return most;
}

/** With this share of a row's positions shown, thinning it to an even step would only lose more. */
const MOST_SHOWN = 0.85;

/** Gives the datum, then the last position, then the others in order a place as far as each has room beside those before. */
function roomFor(
  chosen: readonly RunningValue[],
  { origin, through }: { origin: number; through: readonly number[] },
): { shown: Shown[]; datum: Shown | undefined } {
  const placed: Shown[] = [];
  const positions = [...through, origin, ...chosen.map(({ at }) => at)];
  const put = (value: RunningValue): Shown | undefined => {
    const base = [standing(value.at), hanging(value.at)].find((s) => {
      const [top, bottom] = [s - ASCENT * TEXT - 0.3, s + DESCENT * TEXT + 0.3];
      const clear = positions.every((p) => Math.abs(p - value.at) <= SAME || p <= top || p >= bottom);
      return clear && placed.every((one) => Math.abs(one.base - s) >= (ASCENT + DESCENT) * TEXT + 0.3);
    });
    const one = base === undefined ? undefined : { value, base };
    if (one) placed.push(one);
    return one;
  };
  const datum = put({ at: origin, text: '0' });
  const shown = [chosen.at(-1) as RunningValue, ...chosen.slice(0, -1)].flatMap((value) => put(value) ?? []);
  return { shown, datum };
}

function valueInk(
  frame: SideFrame,
  { value, base }: Shown,
  row: number,
  { side, origin }: { side: Side; origin: number },
): Mark[] {
  const { at, text, of } = value;
  const outward = side === 'above' || side === 'right' ? 'start' : 'end';
  return [
    stroke('dimension', line(frame.at(at, EXTENSION_GAP), frame.at(at, row + TEXT_START + textWidth(text, TEXT)))),
    ...(Math.abs(at - origin) > SAME ? [obliqueStroke(frame.at(at, row))] : []),
    write('label', text, frame.at(base, row + TEXT_START), {
      height: TEXT,
      angle: frame.angle === 0 ? 90 : 0,
      anchor: outward,
      ...(of === undefined ? {} : { of }),
    }),
  ];
}

/** `1st`, `2nd`, `3rd`, `4th`, `11th`, `22nd`. */
function ordinal(n: number): string {
  const tens = n % 100;
  const ending = tens >= 11 && tens <= 13 ? 'th' : (['th', 'st', 'nd', 'rd'][n % 10] ?? 'th');
  return `${n}${ending}`;
}

/** Running dimensions nearest the outline and dimension rows outside them, clear of each other, on one side. */
export function dimensionSide(
  options: DimensionOptions & { readonly running?: Pick<RunningOptions, 'origin' | 'values' | 'word' | 'last'> },
): Rows {
  const { running, sizes, side, outline } = options;
  const frame = sideFrame(side, outline);
  if (!running) return say(layDimensions(options), frame);
  const inner = layRunning({ ...options, ...running, through: sizes.flatMap(({ from, to }) => [from, to]) });
  const outer = layDimensions({ ...options, start: inner.depth });
  const both: Unsaid = {
    marks: [...inner.marks, ...outer.marks],
    bounds: union([inner.bounds, outer.bounds]),
    depth: outer.depth,
    chains: outer.chains,
    remarks: [...inner.remarks, ...outer.remarks],
  };
  return say(both, frame);
}
