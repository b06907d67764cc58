import type { Drill } from '../hardware/pilot.ts';
import type { ScrewRow } from '../hardware/row.ts';
import { screwSchedule } from '../hardware/schedule.ts';
import { formatLength } from '../length.ts';
import { eachPanel, type Making, type StepFigure } from './step.ts';

/**
 * Screws of one joint, panel by panel: how many of what, the drills, and where they stand.
 * @param share part of them that one step drives, such as a half for the corners of one rail; all if absent
 */
export function jointFigures({ job, panels }: Making, joint: ScrewRow['joint'], share = 1): StepFigure[] {
  const bit = ({ inch, diameter }: Drill, step: number) =>
    job.display.unit === 'in' ? `${inch} in` : `${(Math.round(diameter / step) * step).toFixed(1)} mm`;
  const rowOf = (panel: (typeof panels)[number]) => screwSchedule(panel).find((row) => row.joint === joint);
  return [
    ...eachPanel(panels, joint, (panel) => {
      const row = rowOf(panel);
      if (!row) return undefined;
      const { holes, plug } = row;
      const sunk = plug
        ? `; head sunk ${formatLength(plug.depth, job.display, { named: true })} in a ${bit(plug.drill, 0.1)} hole bored first, plugged after`
        : '';
      const drills = holes ? `; pilot ${bit(holes.pilot, 0.1)}, clearance ${bit(holes.clearance, 0.5)}` : '';
      return `${row.count * share} of ${row.name}, ${row.material}${drills}${sunk}`;
    }),
    ...eachPanel(panels, `where, ${joint}`, (panel) => rowOf(panel)?.where),
  ];
}
