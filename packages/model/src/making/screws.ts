import { gluedStrips } from '../hardware/framejoints.ts';
import { drillText } from '../hardware/pilot.ts';
import type { ScrewRow } from '../hardware/row.ts';
import { screwSchedule } from '../hardware/schedule.ts';
import type { Panel } from '../panel/panel.ts';
import { sideFixings } from '../uses/fixings.ts';
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
  const { panels, job } = making;
  return eachPanel(panels, joint, (panel) => {
    const row = rowOf(panel, joint);
    if (!row) return gluedText(panel, joint);
    const { holes } = row;
    const clearance = holes.clearance ? `, clearance ${drillText(holes.clearance, job.display.unit)}` : '';
    return `${countText(making, row, share)}; pilot ${drillText(holes.pilot, job.display.unit)}${clearance}${headText(making, row, panel)}`;
  });
}

/** How many of which screws or pins one step drives, where an earlier one drilled for them. */
export function drivenFigures(making: Making, joint: ScrewRow['joint'], share = 1): StepFigure[] {
  return eachPanel(making.panels, joint, (panel) => {
    const row = rowOf(panel, joint);
    return row && countText(making, row, share);
  });
}

/** Holes for shank and head of one joint, and where they stand. */
export function holeFigures(making: Making, joint: ScrewRow['joint']): StepFigure[] {
  const { panels, job } = making;
  return [
    ...eachPanel(panels, `${joint}, hole`, (panel) => {
      const row = rowOf(panel, joint);
      return (
        row?.holes.clearance &&
        `${drillText(row.holes.clearance, job.display.unit)} for ${row.name}${headText(making, row, panel)}`
      );
    }),
    ...eachPanel(panels, `${joint}, where`, (panel) => rowOf(panel, joint)?.where),
  ];
}

/** The pilot of one joint and how deep it goes from the face under the head. */
export function pilotFigures(making: Making, joint: ScrewRow['joint']): StepFigure[] {
  const { panels, job } = making;
  const fine = fineIn(making);
  return eachPanel(panels, `${joint}, pilot`, (panel) => {
    const row = rowOf(panel, joint);
    const sunk = row?.plug?.depth ?? 0;
    return (
      row && `${drillText(row.holes.pilot, job.display.unit)}, ${fine(row.fastener.length + sunk)} deep from the face`
    );
  });
}

function countText(making: Making, row: ScrewRow, share: number): string {
  return `${row.count * share}${isMany(making) ? ' in each panel,' : ''} of ${row.name}, ${row.material}`;
}

/** Joints whose heads lie in a plate. */
const IN_METAL: readonly ScrewRow['joint'][] = ['hinge to stile', 'hinge to post', 'brace plate to frame'];

/** How the head lies: sunk under a plug, or flush in a countersink. */
function headText(making: Making, { joint, holes, plug }: ScrewRow, panel: Panel): string {
  const show = fineIn(making);
  const { unit } = making.job.display;
  if (plug)
    return `; head sunk ${show(plug.depth)} in a ${drillText(plug.drill, unit)} hole bored first, plugged after`;
  const inMetal = IN_METAL.includes(joint) || (joint === 'mounting' && sideFixings(panel).kind === 'bracket');
  return holes.countersink && !inMetal ? `; countersunk ${show(holes.countersink)} wide` : '';
}

/** Of strips that no pin fits: that glue alone holds them. */
function gluedText(panel: Panel, joint: ScrewRow['joint']): string | undefined {
  const glued = gluedStrips(panel).find((strip) => strip.joint === joint);
  return glued && `glue alone, ${glued.where}; ${glued.why}`;
}

function rowOf(panel: Panel, joint: ScrewRow['joint']): ScrewRow | undefined {
  return screwSchedule(panel).find((row) => row.joint === joint);
}
