import { union } from '../ink.ts';
import { textWidth } from '../lettering.ts';
import type { Box, Mark } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { line, polyline } from '../path.ts';
import type { DimensionOptions } from './dimension.ts';
import { layDimensions } from './dimension.ts';
import type { Rows, Unsaid } from './remark.ts';
import { say, sayBetween } from './remark.ts';
import { SAME } from './rows.ts';
import type { Place } from './runningplaces.ts';
import { spread } from './runningplaces.ts';
import type { Side, SideFrame } from './side.ts';
import { sideFrame } from './side.ts';
import {
  ASCENT,
  DESCENT,
  EXTENSION_GAP,
  FIRST_ROW,
  ROW_STEP,
  TEXT,
  TEXT_CLEAR,
  TEXT_LARGE,
  TEXT_LIFT,
} from './style.ts';
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
  /** What is measured to, of which things, in the plural: `Lower edges of courses`; nothing where a row beside it says so. */
  readonly what: string;
  /** What the datum is: `the foot of the stile`. */
  readonly from: string;
  /** What the last position is, where it is not one of those counted, such as `the top of the stack`. */
  readonly last?: string;
  /** Where all positions can be read, for a row that has not room for them. */
  readonly rest?: string;
  /** Distance from the outline that is already used on this side, mm. */
  readonly start?: number;
  /** Positions where extension lines of rows further out will pass, paper mm along the side. */
  readonly through?: readonly number[];
  /** What must be said stands in `aside`, for the caller to print; beside the row unless given. */
  readonly aside?: boolean;
}

/** A shown position and its place. */
interface Shown extends Place {
  readonly value: RunningValue;
}

/** How many positions make one shown, tried in turn until the texts have room. */
const STEPS = [1, 2, 3, 4, 5, 10, 20, 25, 50, 100, 200, 500, 1000];

/**
 * A text is pushed along the side by no more than this, mm, before the row is thinned: less than half of the way to the
 * next, so that it stands beside its own line. Those at the ends of a thinned row may give way further.
 */
const MOST_PUSHED = { within: 1.7, ends: 8 } as const;

/** Pushed less than this, mm, a text is where it belongs. */
const STRAIGHT = 0.05;

/** From the row's line to the start of a text, mm: clears an oblique stroke, or the bend of a pushed line. */
const TEXT_START = { straight: 1.6, bent: 3 } as const;

/**
 * A row of running dimensions from one datum: an open circle at the datum, one line, and each distance written along its
 * own extension line (ISO 129-1), which bends where its text has to make room. Where there are too many, every second,
 * third ... is shown with the first and the last. A note says what is measured, from where, and which are shown.
 */
export function runningRow(options: RunningOptions): Rows {
  return say(layRunning(options), sideFrame(options.side, options.outline));
}

function layRunning(options: RunningOptions): Unsaid {
  const { side, outline, origin, values, start = 0 } = options;
  const frame = sideFrame(side, outline);
  if (values.every(({ at }) => Math.abs(at - origin) <= SAME))
    return { marks: [], bounds: outline, depth: start, chains: [], remarks: [] };
  const row = Math.max(FIRST_ROW, start + ROW_STEP);
  const { shown, remark } = thin(options);
  const positions = [origin, ...shown.map(({ at }) => at)];
  const [low, high] = [Math.min(...positions), Math.max(...positions)];
  const from = row + (shown.some(isBent) ? TEXT_START.bent : TEXT_START.straight);
  const end = from + Math.max(0, ...shown.map(({ value }) => textWidth(value.text, TEXT))) + 0.5;
  const tops = shown.map(({ line: s }) => frame.box(s - TEXT_LIFT - ASCENT * TEXT, s + DESCENT * TEXT, row, end));
  return {
    marks: [
      stroke('dimension', line(frame.at(low, row), frame.at(high, row))),
      ...shown.flatMap((one) => valueInk(frame, one, { side, origin, row, from })),
      originCircle(frame.at(origin, row)),
    ],
    bounds: union([frame.box(low - STROKE_HALF, high + STROKE_HALF, 0, end), ...tops]),
    depth: end,
    chains: [],
    remarks: options.what === '' || options.aside ? [] : [remark],
    ...(options.aside && options.what !== '' && { aside: remark }),
  };
}

const isBent = ({ at, line: to }: Place): boolean => Math.abs(at - to) > STRAIGHT;

/** The positions that can be shown without a text on a text or on a line, and what must be said of them. */
function thin(options: RunningOptions): { readonly shown: readonly Shown[]; readonly remark: string } {
  const { values, origin, through = [], last: extra } = options;
  const counted = values.length - (extra === undefined ? 0 : 1);
  let most: { shown: Shown[]; remark: string } | undefined;
  for (const step of STEPS) {
    if (step > 1 && step >= counted && most) break;
    const chosen = chosenOf(values.length, counted, step);
    const wanted = [
      { value: { at: origin, text: '0' }, i: -1 },
      ...chosen.flatMap((i) => {
        const value = values[i] as RunningValue;
        return Math.abs(value.at - origin) <= SAME ? [] : [{ value, i }];
      }),
    ].toSorted((a, b) => a.value.at - b.value.at);
    const places = spread(
      wanted.map(({ value }) => value.at),
      through,
    );
    const put = wanted.flatMap(({ value, i }, k) => {
      const place = places[k];
      return place ? [{ i, one: { value, ...place } }] : [];
    });
    const shown = put.map(({ one }) => one);
    const missing = new Set(wanted.map(({ i }) => i).filter((i) => i >= 0 && put.every((one) => one.i !== i)));
    const remark = remarkOf(
      options,
      chosen.filter((i) => !missing.has(i)),
    );
    if (missing.size === 0 && put.every(({ i, one }) => isNear(one, i > 0 && i < counted - 1)))
      return { shown, remark };
    if (!most || shown.length > most.shown.length) most = { shown, remark };
  }
  return most as { shown: Shown[]; remark: string };
}

/** Every so many of the positions with the first, the last and what comes after; none so near the last that the two would crowd. */
function chosenOf(all: number, counted: number, step: number): number[] {
  return Array.from({ length: all }, (_, i) => i).filter(
    (i) => i >= counted - 1 || (i % step === 0 && (i === 0 || counted - 1 - i >= Math.ceil(step / 2))),
  );
}

const isNear = ({ at, line: to }: Place, within: boolean): boolean =>
  Math.abs(at - to) <= (within ? MOST_PUSHED.within : MOST_PUSHED.ends);

/** What is measured, from where, and which of it is shown. `shown` holds places in the list of values. */
function remarkOf({ values, what, from, last, rest }: RunningOptions, shown: readonly number[]): string {
  const counted = values.length - (last === undefined ? 0 : 1);
  const own = shown.filter((i) => i < counted).map((i) => i + 1);
  const top = last !== undefined && shown.includes(values.length - 1) ? ` and ${last}` : '';
  if (own.length === counted) return `${what}${top} from ${from}`;
  const more = rest === undefined ? '' : `; ${rest}`;
  return `${what} ${counting(own)}${top} from ${from}${more}`;
}

/** `1, 4 and 7`, or where they are many `1, 4, 7 … 31, 34`. */
function counting(numbers: readonly number[]): string {
  const [first, second, third] = numbers;
  const last = numbers.at(-1);
  if (numbers.length > 5) return `${first}, ${second}, ${third} … ${numbers.at(-2)}, ${last}`;
  return numbers.length < 2 ? `${last ?? ''}` : `${numbers.slice(0, -1).join(', ')} and ${last}`;
}

function valueInk(
  frame: SideFrame,
  { value, at, line: to }: Shown,
  { side, origin, row, from }: { side: Side; origin: number; row: number; from: number },
): Mark[] {
  const { text, of } = value;
  const outward = side === 'above' || side === 'right' ? 'start' : 'end';
  const end = frame.at(to, from + textWidth(text, TEXT));
  const path = isBent({ at, line: to })
    ? polyline([frame.at(at, EXTENSION_GAP), frame.at(at, row), frame.at(to, from - 0.6), end])
    : line(frame.at(at, EXTENSION_GAP), end);
  return [
    stroke('dimension', path),
    ...(Math.abs(at - origin) > SAME ? [obliqueStroke(frame.at(at, row))] : []),
    write('label', text, frame.at(to - TEXT_LIFT, from), {
      height: TEXT,
      angle: frame.angle === 0 ? 90 : 0,
      anchor: outward,
      ...(of === undefined ? {} : { of }),
    }),
  ];
}

/** Running dimensions nearest the outline and dimension rows outside them, clear of each other, on one side. */
export function dimensionSide(
  options: DimensionOptions & { readonly running?: Omit<RunningOptions, 'side' | 'outline' | 'start' | 'through'> },
): Rows {
  const { running, sizes, side, outline } = options;
  const frame = sideFrame(side, outline);
  if (!running) return say(layDimensions(options), frame);
  const through = sizes.flatMap(({ from, to }) => [from, to]);
  const unsaid = layRunning({ ...options, ...running, through });
  const inner = sayBetween(unsaid, frame, through);
  // The first row's own step is room that remarks may use, less that of its texts where they stand inside it.
  const spare = ROW_STEP - TEXT_CLEAR - (frame.up > 0 ? 0 : TEXT_LIFT + ASCENT * TEXT_LARGE);
  const outer = layDimensions({ ...options, start: Math.max(inner.depth - spare, unsaid.depth) });
  const both: Unsaid = {
    marks: [...inner.marks, ...outer.marks],
    bounds: union([inner.bounds, outer.bounds]),
    depth: Math.max(inner.depth, outer.depth),
    chains: outer.chains,
    remarks: [...inner.remarks, ...outer.remarks],
    ...(unsaid.aside !== undefined && { aside: unsaid.aside }),
  };
  return say(both, frame);
}
