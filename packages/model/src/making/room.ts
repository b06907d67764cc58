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

/** Left at the top and at the bottom of an opening, so that a panel goes in: 1/16 in or 2 mm; common practice, no source. */
const LEFT = { in: INCH / 16, mm: 2 } as const;

/** How much taller than planned a frame may come out before it no longer goes where it belongs, mm; undefined where nothing is over it. */
export function growthRoom(panel: Panel): number | undefined {
  const { opening, display } = panel;
  const room = roomAbove(panel, panel.details);
  const ends = opening && panel.details.use === 'screen' ? 2 : 1;
  return room === undefined ? undefined : Math.max(0, room - ends * LEFT[display.unit]);
}

/** Of a screen both gaps may be taken up; a guard and a leaf keep theirs at the foot, a leaf on a track its one at the top. */
function roomAbove({ opening, outside }: Panel, details: UseDetails): number | undefined {
  switch (details.use) {
    case 'screen':
      return opening && opening.gaps.top + opening.gaps.bottom;
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
