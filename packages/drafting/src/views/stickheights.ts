import { formatLength, gateDetails, type Panel, screwSchedule } from '@wattlewright/model';
import { ASCENT, DESCENT, TEXT } from '../layout/style.ts';
import type { Mark } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { line, polyline } from '../path.ts';
import { pointer } from './stick.ts';

/** Something on a stile whose height a course stick marks, mm from the foot of the stile. */
export interface StileHeight {
  readonly y: number;
  readonly what: string;
  /** The one stile that has it; both unless given. */
  readonly stile?: 'left' | 'right';
}

/** Joints whose screws stand along a stile, and what they are called on the stick. */
const SCREWED = { 'end stave to stile': 'screw', mounting: 'fixing' } as const;

/** Heights on the stiles, from the foot up: screws of the end staves, fixings, and a gate's hinges and latch. */
export function stileHeights(panel: Panel): StileHeight[] {
  const { clear, stile, details } = panel;
  const rows = screwSchedule(panel);
  const screws = Object.entries(SCREWED).flatMap(([joint, what]): StileHeight[] =>
    (rows.find((row) => row.joint === joint)?.places ?? []).map(({ y }) => ({ y, what })),
  );
  const all = [...screws, ...(details.use === 'gate' ? hung(panel, details.hinge) : [])].map((one) => ({
    ...one,
    y: one.y - clear.bottom,
  }));
  const once = all.filter(
    (one, i) => all.findIndex((other) => other.what === one.what && Math.abs(other.y - one.y) < 0.01) === i,
  );
  return once.filter(({ y }) => y > 0 && y < stile.length).toSorted((a, b) => a.y - b.y);
}

/** Middles of a gate's hinges on the one stile and of its latch on the other, from the foot of the frame. */
function hung(panel: Panel, hinge: 'left' | 'right'): StileHeight[] {
  const { hinges, latch } = gateDetails(panel);
  return [
    ...hinges.map(({ y }): StileHeight => ({ y, what: 'hinge', stile: hinge })),
    ...(latch.inside ? [{ y: latch.y, what: 'latch', stile: hinge === 'left' ? 'right' : 'left' } as const] : []),
  ];
}

/** What the triangles at the edges mean, of the heights that there are; empty for none. */
export function heightWords(heights: readonly StileHeight[]): string {
  const has = (what: string): boolean => heights.some((one) => one.what === what);
  const names = [
    ...(has('screw') ? ['screws of the end staves (square them over to the inner edge)'] : []),
    ...(has('fixing') ? ['fixings'] : []),
    ...(has('hinge') ? ['middles of the hinges'] : []),
    ...(has('latch') ? ['middle of the latch'] : []),
  ];
  if (names.length === 0) return '';
  const only = heights.some(({ stile }) => stile !== undefined)
    ? ' What one stile alone has is marked at its edge alone.'
    : '';
  return `Black triangles with dashed lines: heights of ${names.join(', ')}; no courses.${only}`;
}

/** From baseline to baseline of two heights' texts at the least, mm. */
const STEP: number = (ASCENT + DESCENT) * TEXT + 0.4;

/** Length of the dashes that go on from a triangle, mm from the edge. */
const DASHED = 11;

/** From the end of a text to the line that leads to its ring, mm. */
const APART = 0.8;

/** Where the heights stand on a stick: the right end of their column, and the width of the stick, mm. */
export interface HeightColumn {
  readonly panel: Panel;
  readonly to: number;
  readonly width: number;
  readonly of?: string | undefined;
}

/**
 * A triangle with its tip at the stick's edge for each height, at the edge of the one stile that has it or at both, and
 * its name with its distance from the foot, clear of the one below. The right edge is laid on the left stile.
 */
export function heightMarks(heights: readonly StileHeight[], { panel, to, width, of }: HeightColumn): Mark[] {
  const marks: Mark[] = [];
  let free = DESCENT * TEXT + 0.4;
  for (const { y, what, stile } of heights) {
    const base = Math.max(y - TEXT / 2, free);
    free = base + STEP;
    const only = stile === undefined ? '' : `, ${stile} stile only`;
    const text = `${what} ${formatLength(y, panel.display, { fractions: 'stacked' })}${only}`;
    if (stile !== 'left') marks.push(pointer([0, -y], 'left'), stroke('hidden', line([4, -y], [DASHED, -y]), of));
    if (stile !== 'right') {
      const lead = polyline([
        [width - 4, -y],
        [to + 3, -y],
        [to + APART, -(base + TEXT / 2)],
      ]);
      marks.push(pointer([width, -y], 'right'), stroke('hidden', lead, of));
    }
    marks.push(write('label', text, [to, -base], { height: TEXT, anchor: 'end', ...(of === undefined ? {} : { of }) }));
  }
  return marks;
}
