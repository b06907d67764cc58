import { gluedStrips } from '../hardware/framejoints.ts';
import { drillText } from '../hardware/pilot.ts';
import type { ScrewRow } from '../hardware/row.ts';
import { screwSchedule } from '../hardware/schedule.ts';
import type { Panel } from '../panel/panel.ts';
import { eachPanel, fineIn, isMany, type Making, type StepFigure } from './step.ts';

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
export function screwFigures(making: Making, joint: ScrewRow['joint'], share = 1): StepFigure[] {
  const { job, panels } = making;
  const { unit } = job.display;
  const show = fineIn(making);
  const each = isMany(making) ? ' in each panel,' : '';
  return eachPanel(panels, joint, (panel) => {
    const row = rowOf(panel, joint);
    if (!row) return gluedText(panel, joint);
    const { holes, plug } = row;
    const sunk = plug
      ? `; head sunk ${show(plug.depth)} in a ${drillText(plug.drill, unit)} hole bored first, plugged after`
      : '';
    const clearance = holes.clearance ? `, clearance ${drillText(holes.clearance, unit)}` : '';
    const drills = `; pilot ${drillText(holes.pilot, unit)}${clearance}`;
    return `${row.count * share}${each} of ${row.name}, ${row.material}${drills}${sunk}`;
  });
}

/** Of strips that no pin fits: that glue alone holds them. */
function gluedText(panel: Panel, joint: ScrewRow['joint']): string | undefined {
  const glued = gluedStrips(panel).find((strip) => strip.joint === joint);
  return glued && `glue alone, ${glued.where}; ${glued.why}`;
}

function rowOf(panel: Panel, joint: ScrewRow['joint']): ScrewRow | undefined {
  return screwSchedule(panel).find((row) => row.joint === joint);
}
