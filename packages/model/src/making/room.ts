import type { UseDetails } from '../job/job.ts';
import { INCH } from '../length.ts';
import { allowanceMargin } from '../panel/courses.ts';
import type { Panel } from '../panel/panel.ts';
import { woodChange } from '../wood/movement.ts';

/** What the slats of one panel want to swell into when they are woven at some moisture, mm. */
export interface RoomAt {
  /** Percent. */
  readonly moisture: number;
  /** Room that goes with the one planned: as much more or less as the slats have still to swell. */
  readonly room: number;
  /** The least: the swelling up to the wettest season and a margin, or what the job wants. */
  readonly least: number;
}

/** Moistures that a table tells, from the one planned, percent; none under `DRIEST`, none over the wettest season. */
const STEPS: readonly number[] = [0, -2, -4, 2];
const DRIEST = 4;

/**
 * The room that a panel's slats want over them, or in the gaps between them, by the moisture they are woven at: as planned
 * first. What a drier slat has more to swell it has less to shrink, so the same stays open in the driest season.
 */
export function roomsByMoisture(panel: Panel): RoomAt[] {
  const { courses, movement, spec, display } = panel;
  const { wood, rings } = spec.wood.slat;
  const { built, wettest } = movement;
  const size = courses.count * courses.height;
  const swell = (from: number) =>
    Math.max(0, woodChange(wood, { size, from, to: Math.max(from, wettest), ringAngle: rings }));
  const planned = courses.gap > 0 ? courses.gap * (courses.count - 1) + courses.allowance : courses.allowance;
  const margin = Math.min(planned, allowanceMargin(display));
  const least = spec.allowance !== undefined && courses.gap <= 0 ? planned : Math.min(planned, movement.needed);
  const moistures = STEPS.map((step) => (step > 0 ? Math.min(built + step, wettest) : built + step));
  return moistures
    .filter((moisture, i) => i === 0 || (moisture >= DRIEST && (STEPS[i] as number) * (moisture - built) > 0))
    .map((moisture) => {
      const more = swell(moisture) - swell(built);
      return { moisture, room: Math.max(margin, planned + more), least: Math.max(margin, least + more) };
    });
}

/**
 * What a panel's slats want more for every percent that they are drier than the driest of the table, mm; never too little,
 * since the wood swells most for a percent where it is driest.
 */
export function roomPerPercent(panel: Panel): { readonly below: number; readonly room: number } {
  const { courses, movement, spec } = panel;
  const below = Math.min(...roomsByMoisture(panel).map(({ moisture }) => moisture));
  const { wood, rings } = spec.wood.slat;
  const size = courses.count * courses.height;
  const swell = (from: number) =>
    woodChange(wood, { size, from, to: Math.max(below, movement.wettest), ringAngle: rings });
  const to = Math.max(0, below - 2);
  return { below, room: below > to ? Math.max(0, swell(to) - swell(below)) / (below - to) : 0 };
}

/** Left at an edge of an opening, so that a panel goes in: 1/16 in or 2 mm; common practice, no source. */
export const LEFT: { readonly in: number; readonly mm: number } = { in: INCH / 16, mm: 2 };

/**
 * How much taller than planned a frame may come out before it no longer goes where it belongs, mm; undefined where nothing
 * is over it. The gap under it stays as planned, and what a fitter needs stays over it.
 */
export function growthRoom(panel: Panel): number | undefined {
  const room = roomAbove(panel, panel.details);
  return room === undefined ? undefined : Math.max(0, room - LEFT[panel.display.unit]);
}

/** Room over a panel; a leaf on a track has it under it, since its gap at the top is the track's. */
function roomAbove({ opening, outside }: Panel, details: UseDetails): number | undefined {
  switch (details.use) {
    case 'screen':
      return opening?.gaps.top;
    case 'guard':
      if (details.top !== undefined && details.cap === undefined)
        return Math.max(0, details.top - details.floorGap - outside.height) || undefined;
      return opening?.gaps.top || undefined;
    case 'divider':
      return details.track?.below;
    case 'gate':
      return opening?.gaps.top || undefined;
  }
}
