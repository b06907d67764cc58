import { formatLength, gateDetails, type Panel, screwSchedule } from '@wattlewright/model';
import { ASCENT, DESCENT, TEXT } from '../layout/style.ts';
import type { Mark } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { circle, line, polyline } from '../path.ts';

/** Something on a stile whose height a course stick marks, mm from the foot of the stile. */
export interface StileHeight {
  readonly y: number;
  readonly what: string;
}

/** Joints whose screws stand along a stile, and what they are called on the stick. */
const SCREWED = { 'end stave to stile': 'screw', mounting: 'fixing' } as const;

/** Heights on the stiles, from the foot up: screws of the end staves, fixings, and a gate's hinges and latch. */
export function stileHeights(panel: Panel): StileHeight[] {
  const { clear, stile, details } = panel;
  const rows = screwSchedule(panel);
  const screws = Object.entries(SCREWED).flatMap(([joint, what]) =>
    (rows.find((row) => row.joint === joint)?.places ?? []).map(({ y }) => ({ y, what })),
  );
  const gate = details.use === 'gate' ? gateDetails(panel) : undefined;
  const hung = gate
    ? [
        ...gate.hinges.map(({ y }) => ({ y, what: 'hinge' })),
        ...(gate.latch.inside ? [{ y: gate.latch.y, what: 'latch' }] : []),
      ]
    : [];
  const all = [...screws, ...hung].map(({ y, what }) => ({ y: y - clear.bottom, what }));
  const once = all.filter(
    (one, i) => all.findIndex((other) => other.what === one.what && Math.abs(other.y - one.y) < 0.01) === i,
  );
  return once.filter(({ y }) => y > 0 && y < stile.length).toSorted((a, b) => a.y - b.y);
}

/** From baseline to baseline of two heights' texts at the least, mm. */
const STEP: number = (ASCENT + DESCENT) * TEXT + 0.4;

/** Radius of the ring on the line of a height, mm: where to prick through; and from an edge of the stick to its middle. */
const RING = 1.2;
const IN = 4;

/** From the end of a text to the line that leads to its ring, mm. */
const APART = 0.8;

/** Where the heights stand on a stick: the right end of their column, and the width of the stick, mm. */
export interface HeightColumn {
  readonly panel: Panel;
  readonly to: number;
  readonly width: number;
  readonly of?: string | undefined;
}

/** A ring at both edges for each height, and its name with its distance from the foot, clear of the one below. */
export function heightMarks(heights: readonly StileHeight[], { panel, to, width, of }: HeightColumn): Mark[] {
  const marks: Mark[] = [];
  let free = DESCENT * TEXT + 0.4;
  for (const { y, what } of heights) {
    const base = Math.max(y - TEXT / 2, free);
    free = base + STEP;
    const text = `${what} ${formatLength(y, panel.display, { fractions: 'stacked' })}`;
    for (const u of [IN, width - IN]) marks.push(stroke('tick', circle([u, -y], RING), of));
    const lead = polyline([
      [width, -y],
      [to + 3, -y],
      [to + APART, -(base + TEXT / 2)],
    ]);
    marks.push(
      stroke('dimension', line([0, -y], [2 * IN, -y]), of),
      stroke('dimension', lead, of),
      write('label', text, [to, -base], { height: TEXT, anchor: 'end', ...(of === undefined ? {} : { of }) }),
    );
  }
  return marks;
}
