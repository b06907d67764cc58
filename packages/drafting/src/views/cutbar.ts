import type { Marks } from '@wattlewright/model';
import { ASCENT, DESCENT, TEXT, TEXT_LARGE } from '../layout/style.ts';
import { textWidth } from '../lettering.ts';
import type { Box, Mark } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { line, rectangle } from '../path.ts';
import type { CrossCuts, Stretch } from './cutcross.ts';
import { namedRuns, type Run } from './cutruns.ts';
import { lengthText } from './cutsize.ts';

/** What `cutBar` needs to know. */
export interface BarOptions {
  readonly cuts: CrossCuts;
  /** Where a distance from the left end of the wood falls on paper. */
  readonly at: (x: number) => number;
  readonly v0: number;
  readonly height: number;
  readonly display: Marks;
  /** Paper that names under the bar may use, from and to. */
  readonly across: readonly [number, number];
}

/** A bar and how far down its ink reaches; `thinned` where not every cut's distance had room. */
export interface Bar {
  readonly marks: Mark[];
  readonly v1: number;
  readonly thinned: boolean;
}

/** Room left beside a text within a stretch, both sides together, mm. */
const INSIDE = 1.8;

/** Between a letter and the length beside it, mm. */
const BETWEEN = 1.6;

/**
 * A length of wood seen from the side with its crosscuts to scale: letters and lengths of parts, waste crossed out, what
 * to keep, blades black, and under each cut its distance from the squared end.
 */
export function cutBar({ cuts, at, v0, height, display, across }: BarOptions): Bar {
  const v1 = v0 + height;
  const boxOf = ({ start, length }: Stretch): Box => ({ u0: at(start), v0, u1: at(start + length), v1 });
  const faces = cuts.stretches.flatMap((stretch) => face(stretch, boxOf(stretch)));
  const names = cuts.stretches.flatMap((stretch) => named(stretch, boxOf(stretch), display));
  const blades = cuts.kerfs.map(({ at: x, width }) => {
    const u0 = at(x);
    return stroke('blade', rectangle({ u0, v0, u1: Math.max(at(x + width), u0 + LEAST_BLADE), v1 }));
  });
  const places = distances(cuts, at, v1, display);
  const under = namedRuns(runsOf(cuts.stretches, boxOf, display), places.v1, across);
  return {
    marks: [...faces, ...blades, ...names, ...places.marks, ...under.marks],
    v1: under.v1,
    thinned: places.thinned,
  };
}

/** A blade is drawn at least this wide, mm, so that it shows in print. */
const LEAST_BLADE = 0.25;

function face(stretch: Stretch, box: Box): Mark[] {
  const outline = rectangle(box);
  switch (stretch.kind) {
    case 'waste':
      return [
        stroke('waste', outline),
        stroke('grid', line([box.u0, box.v0], [box.u1, box.v1])),
        stroke('grid', line([box.u0, box.v1], [box.u1, box.v0])),
      ];
    case 'keep':
      return [stroke('keep', outline)];
    case 'ripped':
      return [stroke('wood', outline), stroke('edge-light', outline)];
    case 'part':
      return [stroke('wood', outline, stretch.letter), stroke('edge-light', outline, stretch.letter)];
  }
}

/** The large sign of a stretch: a part's letter, the name of a length that is ripped, what is kept. */
function signOf({ kind, letter, ripped }: Stretch): string {
  if (kind === 'part') return letter ?? '';
  return kind === 'ripped' ? `length ${(ripped ?? 0) + 1}` : kind === 'keep' ? kind : '';
}

interface Fitted {
  readonly sign: string;
  readonly size: string;
  readonly signWidth: number;
  readonly sizeWidth: number;
  /** What has room inside the stretch. */
  readonly shows: 'both' | 'sign' | 'nothing';
}

function fitted(stretch: Stretch, width: number, display: Marks): Fitted {
  const sign = signOf(stretch);
  const size = lengthText(stretch.length, display);
  const [signWidth, sizeWidth] = [textWidth(sign, TEXT_LARGE, 'semibold'), textWidth(size, TEXT)];
  const both = signWidth + BETWEEN + sizeWidth + INSIDE <= width;
  return { sign, size, signWidth, sizeWidth, shows: both ? 'both' : signWidth + INSIDE <= width ? 'sign' : 'nothing' };
}

function named(stretch: Stretch, { u0, v0, u1, v1 }: Box, display: Marks): Mark[] {
  if (stretch.kind === 'waste') return [];
  const { sign, size, signWidth, sizeWidth, shows } = fitted(stretch, u1 - u0, display);
  if (shows === 'nothing') return [];
  const of = stretch.letter === undefined ? {} : { of: stretch.letter };
  const [middle, v] = [(u0 + u1) / 2, (v0 + v1) / 2];
  const start = middle - (shows === 'both' ? signWidth + BETWEEN + sizeWidth : signWidth) / 2;
  const big = write('title', sign, [start, v + TEXT_LARGE / 2], { height: TEXT_LARGE, ...of });
  if (shows === 'sign') return [big];
  return [big, write('label', size, [start + signWidth + BETWEEN, v + TEXT / 2], { height: TEXT, ...of })];
}

/** Neighbours that are alike and have no room for letter and length, to be named under the bar. */
function runsOf(stretches: readonly Stretch[], boxOf: (stretch: Stretch) => Box, display: Marks): Run[] {
  const runs: { first: Stretch; count: number; u0: number; u1: number }[] = [];
  let before: Stretch | undefined;
  for (const stretch of stretches) {
    const { u0, u1 } = boxOf(stretch);
    const last = runs.at(-1);
    const short = stretch.kind !== 'waste' && fitted(stretch, u1 - u0, display).shows !== 'both';
    const alike =
      before?.kind === 'part' && before.letter === stretch.letter && Math.abs(before.length - stretch.length) < 1e-6;
    if (short && last && alike) {
      last.count += 1;
      last.u1 = u1;
    } else if (short) runs.push({ first: stretch, count: 1, u0, u1 });
    before = stretch;
  }
  return runs.map(({ first, count, u0, u1 }) => {
    const size = lengthText(first.length, display);
    const text = count > 1 ? `${count} × ${signOf(first)}, each ${size}` : `${signOf(first)} ${size}`;
    return { u0, u1, text, ...(first.letter === undefined ? {} : { of: first.letter }) };
  });
}

/** From a cut's mark to the distance written before it, and from there to the mark before, mm. */
const MARK_GAP = 0.8;

/** Distances of the cuts from the squared end, each written before its mark; as many as have room, the last always. */
function distances(
  { kerfs, datum }: CrossCuts,
  at: (x: number) => number,
  v: number,
  display: Marks,
): { marks: Mark[]; v1: number; thinned: boolean } {
  const cuts = kerfs.filter((kerf) => kerf.at > datum + 1e-6);
  const base = v + 0.7 + ASCENT * TEXT;
  const marks: Mark[] = [];
  let [free, shown] = [Number.POSITIVE_INFINITY, 0];
  for (const kerf of cuts.toReversed()) {
    const text = lengthText(kerf.at - datum, display);
    const u = at(kerf.at);
    if (u > free - MARK_GAP) continue;
    free = u - MARK_GAP - textWidth(text, TEXT);
    shown += 1;
    marks.push(stroke('dimension', line([u, v], [u, v + 3.6])));
    marks.push(write('label', text, [u - MARK_GAP, base], { height: TEXT, anchor: 'end' }));
  }
  return { marks, v1: cuts.length === 0 ? v : base + DESCENT * TEXT, thinned: shown < cuts.length };
}
