import { union } from '../ink.ts';
import { textWidth } from '../lettering.ts';
import type { Box, Mark, Path } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { line, polyline } from '../path.ts';
import type { Rows, Unsaid } from './remark.ts';
import { say } from './remark.ts';
import type { PlacedLabel, Room, Wanted } from './room.ts';
import { beside, outside, stairs, within } from './room.ts';
import type { Size } from './rows.ts';
import { addsUp, chainsOf, rowsOf, SAME, span } from './rows.ts';
import type { Side, SideFrame } from './side.ts';
import { sideFrame } from './side.ts';
import {
  ASCENT,
  EXTENSION_GAP,
  EXTENSION_PAST,
  FIRST_ROW,
  ROW_STEP,
  TEXT,
  TEXT_CLEAR,
  TEXT_LARGE,
  TEXT_LIFT,
} from './style.ts';
import { obliqueStroke, STROKE_HALF } from './terminator.ts';

export type { Rows } from './remark.ts';

/** What `dimensionRows` needs to know. */
export interface DimensionOptions {
  readonly side: Side;
  /** Outline of what is measured, paper mm; extension lines start at its edge. */
  readonly outline: Box;
  readonly sizes: readonly Size[];
  /** Distance from the outline that is already used on this side, mm; 0 unless given. */
  readonly start?: number;
}

interface Laid {
  readonly size: Size;
  readonly line: number;
  readonly label: PlacedLabel;
}

/**
 * Dimension rows along one side of an outline. The caller declares sizes; the engine finds their rows (shorter nearer the
 * outline, totals outermost), draws extension lines with a gap, writes each text on its line clear of every other line,
 * and pushes it beside or outside with a leader where its span is too small (ISO 129-1). Sizes in a row that together span
 * a size further out are returned as chains; where they do not add up, a note beside them says so.
 */
export function dimensionRows(options: DimensionOptions): Rows {
  return say(layDimensions(options), sideFrame(options.side, options.outline));
}

const ROUNDED = 'Each size is rounded by itself; the row does not add up exactly.';

/** `dimensionRows` with its remarks still to be printed, so that they can go outside other rows. */
export function layDimensions({ side, outline, sizes, start = 0 }: DimensionOptions): Unsaid {
  const frame = sideFrame(side, outline);
  if (sizes.length === 0) return { marks: [], bounds: outline, depth: start, chains: [], remarks: [] };
  const rows = rowsOf(sizes);
  const { laid, depth } = layRows(frame, sizes, rows, start);
  const chains = chainsOf(sizes, rows, side);
  const boxes = laid.map(({ size, line: d, label }) => {
    const [a, b] = span(size);
    const along = [a - STROKE_HALF, b + STROKE_HALF, label.s0, label.s1, label.reach ?? a];
    return frame.box(Math.min(...along), Math.max(...along), 0, Math.max(d + EXTENSION_PAST, label.d1));
  });
  return {
    marks: [...extensionLines(frame, laid), ...laid.flatMap((one) => sizeInk(frame, one))],
    bounds: union(boxes),
    depth,
    chains,
    remarks: chains.some((chain) => !addsUp(chain)) ? [ROUNDED] : [],
  };
}

const heightOf = (size: Size): number => (size.total ? TEXT_LARGE : TEXT);

/** Lays rows from the inside out, each as far out as the one before and its pushed-out labels ask. */
function layRows(
  frame: SideFrame,
  sizes: readonly Size[],
  rows: readonly number[],
  start: number,
): { laid: Laid[]; depth: number } {
  const laid: Laid[] = [];
  let depth = start;
  for (let row = 0; row <= Math.max(...rows); row++) {
    const own = sizes.filter((_, i) => rows[i] === row);
    const under = frame.up > 0 ? TEXT_CLEAR : TEXT_LIFT + ASCENT * Math.max(...own.map(heightOf)) + TEXT_CLEAR / 3;
    const at =
      row === 0
        ? Math.max(FIRST_ROW, start + ROW_STEP)
        : Math.max((laid.at(-1) as Laid).line + ROW_STEP, depth + under);
    const passing = sizes.flatMap((size, i) => ((rows[i] as number) > row ? span(size) : []));
    const labels = layLabels(frame, own, at, passing);
    own.forEach((size, i) => {
      laid.push({ size, line: at, label: labels[i] as PlacedLabel });
    });
    depth = Math.max(at + EXTENSION_PAST, ...labels.map((label) => label.d1));
  }
  return { laid, depth };
}

/** The labels of one row: within their spans first, then beside them, then pushed outside. */
function layLabels(frame: SideFrame, own: readonly Size[], at: number, passing: readonly number[]): PlacedLabel[] {
  const labels: (PlacedLabel | undefined)[] = own.map(() => undefined);
  const taken = own.map(span);
  const room = (): Room => ({
    line: at,
    up: frame.up,
    reaching: [...passing, ...own.flatMap(span)],
    passing,
    taken,
    labels: labels.filter((label) => label !== undefined),
  });
  const wanted = own.map((size): Wanted => {
    const [a, b] = span(size);
    return { a, b, width: textWidth(size.text, heightOf(size)), height: heightOf(size) };
  });
  const attempt = (how: (want: Wanted) => PlacedLabel | undefined): void => {
    wanted.forEach((want, i) => {
      const label = labels[i] ?? how(want);
      if (label && !labels[i] && label.reach !== undefined)
        taken.push(label.reach > want.b ? [want.b, label.reach] : [label.reach, want.a]);
      labels[i] = label;
    });
  };
  attempt((want) => within(room(), want));
  attempt((want) => beside(room(), want, frame.ends));
  const onLine = labels.slice();
  attempt((want) => outside(room(), want));
  if (labels.every((label) => label !== undefined)) return labels;
  const rest = wanted.filter((_, i) => !onLine[i]);
  const pushed = stairs({ ...room(), labels: onLine.filter((label) => label !== undefined) }, rest);
  return onLine.map((label, i) => label ?? (pushed[rest.indexOf(wanted[i] as Wanted)] as PlacedLabel));
}

/** One extension line for each position, to the outermost row that uses it. */
function extensionLines(frame: SideFrame, laid: readonly Laid[]): Mark[] {
  const reach: { s: number; d: number }[] = [];
  for (const { size, line: d } of laid)
    for (const s of span(size)) {
      const known = reach.find((one) => Math.abs(one.s - s) <= SAME);
      if (known) known.d = Math.max(known.d, d);
      else reach.push({ s, d });
    }
  return reach.map(({ s, d }) =>
    stroke('dimension', line(frame.at(s, EXTENSION_GAP), frame.at(s, d + EXTENSION_PAST))),
  );
}

/** Half the length and half the height of the zigzag in a broken dimension line, mm. */
const ZIGZAG = { length: 1.2, height: 1.2 } as const;

/** Where the zigzag of a broken size stands: at the break of the view, or past the text where that stands over it. */
function brokenAt({ broken }: Size, { s0, s1 }: PlacedLabel): number | undefined {
  const clear = 2 * ZIGZAG.length;
  return broken !== undefined && broken > s0 - clear && broken < s1 + clear ? s1 + clear : broken;
}

/** A dimension line, with a zigzag where it is broken. */
function dimensionLine(
  frame: SideFrame,
  { from, to, at: d, broken }: { from: number; to: number; at: number; broken: number | undefined },
): Path {
  if (broken === undefined) return line(frame.at(from, d), frame.at(to, d));
  const { length, height } = ZIGZAG;
  return polyline([
    frame.at(from, d),
    frame.at(broken - length, d),
    frame.at(broken - length / 2, d + height),
    frame.at(broken + length / 2, d - height),
    frame.at(broken + length, d),
    frame.at(to, d),
  ]);
}

/** The dimension line of one size with its ends, its text and its leader. */
function sizeInk(frame: SideFrame, { size, line: d, label }: Laid): Mark[] {
  const [a, b] = span(size);
  const [from, to] = [Math.min(a, label.reach ?? a), Math.max(b, label.reach ?? b)];
  return [
    stroke('dimension', dimensionLine(frame, { from, to, at: d, broken: brokenAt(size, label) }), size.of),
    obliqueStroke(frame.at(a, d)),
    obliqueStroke(frame.at(b, d)),
    ...(label.leader ? [stroke('dimension', polyline(label.leader.map(([s, out]) => frame.at(s, out))))] : []),
    write('label', size.text, frame.at(...label.at), {
      height: heightOf(size),
      angle: frame.angle,
      anchor: 'middle',
      ...(size.of === undefined ? {} : { of: size.of }),
    }),
  ];
}
