import type { ChosenScrew } from '../hardware/choose.ts';
import { gluedStrips } from '../hardware/framejoints.ts';
import { drillText, screwHoles } from '../hardware/pilot.ts';
import { pilotDepth, type ScrewRow } from '../hardware/row.ts';
import { screwSchedule } from '../hardware/schedule.ts';
import type { Panel } from '../panel/panel.ts';
import { sideFixings } from '../uses/fixings.ts';
import { eachPanel, fineIn, isMany, type Making, type StepFigure } from './step.ts';

/**
 * Screws of one joint, panel by panel: how many of what, the drills, and where they stand.
 * @param share part of them that one step drives, such as a half for the corners of one rail; all if absent
 */
export function jointFigures(making: Making, joint: ScrewRow['joint'], share = 1): StepFigure[] {
  return [...screwFigures(making, joint, share), ...whereFigures(making, joint)];
}

/** Where they stand; where panels differ only in their places, the words before them are said once, in what the row is of. */
function whereFigures({ panels }: Making, joint: ScrewRow['joint']): StepFigure[] {
  const figures = eachPanel(panels, `${joint}, where`, (panel) => rowOf(panel, joint)?.where);
  const heads = new Set(figures.map(({ value }) => value.slice(0, value.lastIndexOf(': ') + 1)));
  const [head = ''] = heads;
  if (figures.length < 2 || heads.size > 1 || head === '') return figures;
  return figures.map((figure) => ({
    ...figure,
    what: `${joint}, ${head.slice(0, -1)}`,
    value: figure.value.slice(head.length + 1),
  }));
}

/** The same without where they stand, for a step that drives more of those that an earlier one placed. */
export function screwFigures(making: Making, joint: ScrewRow['joint'], share = 1): StepFigure[] {
  const { panels, job } = making;
  const { unit } = job.display;
  const rest = (panel: Panel, row: ScrewRow) => {
    const { pilot, clearance } = row.holes;
    const shank = clearance ? `, clearance ${drillText(clearance, unit)}` : '';
    const deep = row.fastener.kind === 'pin' ? `, ${fineIn(making)(pilotDepth(row))} deep` : '';
    return `${nameText(row)}; pilot ${drillText(pilot, unit)}${deep}${shank}${headText(making, row, panel)}`;
  };
  const told = (text: (panel: Panel, row: ScrewRow) => string) => (panel: Panel) => {
    const row = rowOf(panel, joint);
    return row ? text(panel, row) : gluedText(panel, joint);
  };
  const whole = eachPanel(
    panels,
    joint,
    told((panel, row) => `${countText(making, row, share)} of ${rest(panel, row)}`),
  );
  const alike = eachPanel(panels, `${joint}, all of them`, told(rest));
  // Screws alike but for how many: the screw is said once.
  return whole.length > 1 && alike.length === 1
    ? [
        ...eachPanel(
          panels,
          joint,
          told((_, row) => countText(making, row, share).replace(/,$/, '')),
        ),
        ...alike,
      ]
    : whole;
}

/** How many of which screws or pins one step drives, where an earlier one drilled for them. */
export function drivenFigures(making: Making, joint: ScrewRow['joint'], share = 1): StepFigure[] {
  return eachPanel(making.panels, joint, (panel) => {
    const row = rowOf(panel, joint);
    return row && `${countText(making, row, share)} of ${nameText(row)}`;
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
    ...whereFigures(making, joint),
  ];
}

/** The pilot of one joint and how deep it goes from the face under the head. */
export function pilotFigures(making: Making, joint: ScrewRow['joint']): StepFigure[] {
  const { panels, job } = making;
  const fine = fineIn(making);
  return eachPanel(panels, `${joint}, pilot`, (panel) => {
    const row = rowOf(panel, joint);
    return (
      row &&
      `${drillText(row.holes.pilot, job.display.unit)}, ${fine(pilotDepth(row))} deep from the face, ${fine(row.fastener.penetration)} of it in the stile`
    );
  });
}

function countText(making: Making, row: ScrewRow, share: number): string {
  return `${row.count * share}${isMany(making) ? ' in each panel,' : ''}`;
}

function nameText({ name, material }: ScrewRow): string {
  return `${name}, ${material}`;
}

/** Joints whose heads lie in a plate. */
const IN_METAL: readonly ScrewRow['joint'][] = ['hinge to stile', 'hinge to post', 'brace plate to frame'];

/** How the head lies: sunk under a plug, or flush in a countersink. */
function headText(making: Making, { joint, holes, plug }: ScrewRow, panel: Panel): string {
  const show = fineIn(making);
  const { unit } = making.job.display;
  if (plug)
    return `; head sunk ${show(plug.depth)} in a ${drillText(plug.drill, unit)} hole bored first, ${plug.open ? 'left open' : 'plugged after'}`;
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

/** Specific gravity of oak and the like. */
const HARDWOOD = 0.65;

/** The pilot of a screw where what stands already is of hardwood: its own is for the softwood that is taken there. */
export function hardPilot({ gauge }: Pick<ChosenScrew, 'gauge'>, { display }: Making['job']): string {
  return drillText(screwHoles(gauge, { specificGravity: HARDWOOD }).pilot, display.unit);
}
