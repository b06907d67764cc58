import type { Drill } from '../hardware/pilot.ts';
import type { ScrewRow } from '../hardware/row.ts';
import { screwSchedule } from '../hardware/schedule.ts';
import { formatLength } from '../length.ts';
import type { Panel } from '../panel/panel.ts';
import { eachPanel, type Making, type StepFigure } from './step.ts';

/**
 * Screws of one joint, panel by panel: how many of what, the drills, and where they stand.
 * @param share part of them that one step drives, such as a half for the corners of one rail; all if absent
 */
export function jointFigures(making: Making, joint: ScrewRow['joint'], share = 1): StepFigure[] {
  return [
    ...screwFigures(making, joint, share),
    ...eachPanel(making.panels, `${joint}, where`, (panel) => rowOf(panel, joint)?.where),
  ];
}

/** The same without where they stand, for a step that drives more of those that an earlier one placed. */
export function screwFigures({ job, panels }: Making, joint: ScrewRow['joint'], share = 1): StepFigure[] {
  const bit = ({ inch, diameter }: Drill, step: number) =>
    job.display.unit === 'in' ? `${inch} in` : `${(Math.round(diameter / step) * step).toFixed(1)} mm`;
  return eachPanel(panels, joint, (panel) => {
    const row = rowOf(panel, joint);
    if (!row) return undefined;
    const { holes, plug } = row;
    const sunk = plug
      ? `; head sunk ${formatLength(plug.depth, job.display, { named: true })} in a ${bit(plug.drill, 0.1)} hole bored first, plugged after`
      : '';
    const drills = holes ? `; pilot ${bit(holes.pilot, 0.1)}, clearance ${bit(holes.clearance, 0.5)}` : '';
    return `${row.count * share} of ${row.name}, ${row.material}${drills}${sunk}`;
  });
}

function rowOf(panel: Panel, joint: ScrewRow['joint']): ScrewRow | undefined {
  return screwSchedule(panel).find((row) => row.joint === joint);
}
