import { formatLength, gateDetails, type Panel, screwSchedule, sideFixings } from '@wattlewright/model';
import { ASCENT, DESCENT, TEXT } from '../layout/style.ts';
import type { Mark } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { line } from '../path.ts';
import { apart } from './plotnames.ts';
import { pointer, STICK_TICK } from './stick.ts';

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

/** What the triangles inside the edges mean, of the heights that there are; empty for none. */
export function heightWords(panel: Panel, heights: readonly StileHeight[]): string {
  const has = (what: string): boolean => heights.some((one) => one.what === what);
  const names = [
    ...(has('screw') ? ['screws of the end staves (square them over to the inner edge)'] : []),
    ...(has('fixing') ? [fixingWords(panel)] : []),
    ...(has('hinge') ? ['middles of the hinges'] : []),
    ...(has('latch') ? ['middle of the latch'] : []),
  ];
  if (names.length === 0) return '';
  const only = heights.some(({ stile }) => stile !== undefined)
    ? ' What one stile alone has stands at its edge alone.'
    : '';
  return `Dashed lines with black triangles are not course marks: heights of ${names.join(', ')}.${only}`;
}

/** Brackets stand on the other face than the one that the stick is laid on. */
function fixingWords(panel: Panel): string {
  return sideFixings(panel).kind === 'bracket'
    ? 'fixings (middles of the brackets: carry them round to the back)'
    : 'fixings';
}

/** From middle to middle of two heights' texts at the least, mm. */
const STEP: number = (ASCENT + DESCENT) * TEXT + 0.4;

/** Length of the dashes from an edge, mm: as long as the ticks of the courses, so that the triangles stand clear of these. */
const DASHED: number = STICK_TICK;

/** Room beside the dashes at either edge, mm: for a line that leads aside, for the triangle, and from it to its words. */
const ASIDE = 4;
const WORDS = 5;

/** Room of the track inside either edge, mm from it: dashes, triangle, name and distance. */
export const TRACK: number = DASHED + ASIDE + WORDS + 24;

/** Where the heights of one edge are told: their texts a step apart, each as near its height as the others allow. */
export function heightPlaces(
  heights: readonly StileHeight[],
  edge: 'left' | 'right',
): { one: StileHeight; at: number }[] {
  // The right edge is laid on the left stile.
  const own = heights.filter(({ stile }) => stile === undefined || stile !== edge);
  const wishes = own.map(({ y }) => y);
  const places = apart(wishes, STEP);
  // None under the stile's foot.
  const least = STEP / 2;
  return own.map((one, i) => ({ one, at: Math.max(places[i] as number, least + i * STEP) }));
}

/** What heights are drawn with: the panel, the width of the stick, mm, and what the marks depict. */
export interface HeightColumn {
  readonly panel: Panel;
  readonly width: number;
  readonly of?: string | undefined;
}

/**
 * The heights in a track of their own inside either edge of the stick: a dashed line at the edge, and led from it to where
 * it has room a triangle with the name and the distance from the foot.
 */
export function heightMarks(heights: readonly StileHeight[], { panel, width, of }: HeightColumn): Mark[] {
  const own = of === undefined ? {} : { of };
  return (['left', 'right'] as const).flatMap((edge) => {
    const way = edge === 'left' ? 1 : -1;
    const u = (from: number): number => (edge === 'left' ? from : width - from);
    return heightPlaces(heights, edge).flatMap(({ one: { y, what }, at }): Mark[] => {
      const text = `${what} ${formatLength(y, panel.display, { fractions: 'stacked' })}`;
      return [
        stroke('hidden', line([u(0), -y], [u(DASHED), -y]), of),
        stroke('dimension', line([u(DASHED), -y], [u(DASHED + ASIDE), -at]), of),
        pointer([u(DASHED + ASIDE), -at], edge),
        write('label', text, [u(DASHED + ASIDE + WORDS), -at + TEXT / 2], {
          height: TEXT,
          anchor: way > 0 ? 'start' : 'end',
          ...own,
        }),
      ];
    });
  });
}
