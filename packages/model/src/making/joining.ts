import { mostUse, SLAT_USE } from '../findings/weave.ts';
import type { Drill } from '../hardware/pilot.ts';
import type { ScrewRow } from '../hardware/row.ts';
import { screwSchedule } from '../hardware/schedule.ts';
import { formatLength } from '../length.ts';
import { type Panel, sideAt } from '../panel/panel.ts';
import { insertionFactor } from '../weave/insertion.ts';
import { changesOfSide } from '../weave/pattern.ts';
import { eachPanel, fineIn, lengthIn, type Making, type StepFigure, type StepText } from './step.ts';

/** Steps from the grooves to the dry fit. */
export function frameSteps(making: Making): StepText[] {
  return [grooves(making), sticks(making), dryFit(making)];
}

/** Steps from the bottom joints to the square panel. */
export function weavingSteps(making: Making): StepText[] {
  return [bottom(making), setStaves(making), weave(making), cap(making), square(making)];
}

/** Screws of one joint, panel by panel, with their holes. */
export function jointFigures({ job, panels }: Making, joint: ScrewRow['joint']): StepFigure[] {
  const inch = job.display.unit === 'in';
  const hole = ({ inch: fraction, diameter }: Drill, step: number) =>
    inch ? `${fraction} in` : `${(Math.round(diameter / step) * step).toFixed(1)} mm`;
  return eachPanel(panels, joint, (panel) => {
    const row = screwSchedule(panel).find((each) => each.joint === joint);
    if (!row) return undefined;
    const drills = row.holes
      ? `; pilot ${hole(row.holes.pilot, 0.1)}, clearance ${hole(row.holes.clearance, 0.5)}`
      : '';
    const sunk =
      row.fastener.kind === 'screw' && row.fastener.counterbore > 0
        ? `; head sunk ${formatLength(row.fastener.counterbore, job.display, { named: true })}`
        : '';
    return `${row.count} of ${row.name}, ${row.material}${drills}${sunk}`;
  });
}

function grooves(making: Making): StepText {
  const { panels } = making;
  const show = fineIn(making);
  return {
    title: 'Cut the grooves in the rails',
    cautions: [
      'Groove long rails only, pressed to fence and table by featherboards before and over the cutter; hands never over it. Sneak up on the depth in two or three passes.',
    ],
    text: [
      'Along the inner edge of both rails, from end to end, in the middle of their depth. Cut from both faces with one fence setting, so that the groove is centred.',
      'Try the width with a stave: it slides by hand and does not rattle.',
    ],
    figures: [
      ...eachPanel(panels, 'groove depth', ({ groove }) => show(groove.depth)),
      ...eachPanel(panels, 'groove width', ({ groove }) => show(groove.width)),
      ...eachPanel(panels, 'from each face to the groove', ({ groove, rail }) => show((rail.depth - groove.width) / 2)),
    ],
  };
}

function sticks(making: Making): StepText {
  const { panels } = making;
  const show = lengthIn(making);
  return {
    title: 'Mark with the sticks',
    cautions: [
      'Measure the printed check bar before any stick is used: a page printed at the wrong size is wrong everywhere.',
    ],
    text: [
      'Lay the stave stick along both rails together and square across the left face of every stave. The end staves stand against the stiles and need no mark.',
      'Mark from the stick only, never from stave to stave: a pitch stepped off drifts.',
      'Lay the course stick on both stiles from the bottom and mark the lower edge of the courses.',
    ],
    figures: [
      ...eachPanel(panels, 'staves', ({ staves }) => String(staves.count)),
      ...eachPanel(panels, 'left faces from the left end of the rail', ({ staves }) =>
        staves.lefts.map(show).join(', '),
      ),
    ],
  };
}

function dryFit(making: Making): StepText {
  const show = lengthIn(making);
  return {
    title: 'Dry fit with the top rail on',
    cautions: [],
    text: [
      'Before anything is woven or glued, set the frame up with every stave in both grooves and the top rail on. With slats in, no stave can be changed any more.',
      'Every stave has to stand in both grooves without touching bottom above. Measure both diagonals. Drill the screw holes now.',
      'Mark top, front and left on the frame, and take it apart.',
    ],
    figures: eachPanel(making.panels, 'diagonals, both', ({ diagonal }) => show(diagonal)),
  };
}

function bottom(making: Making): StepText {
  return {
    title: 'Fix the bottom rail to the stiles',
    cautions: [],
    text: ['Glue and screw the bottom corners on a flat bench, a square in each corner. The top stays open.'],
    figures: jointFigures(making, 'rail to stile'),
  };
}

function setStaves(making: Making): StepText {
  return {
    title: 'Set the staves',
    cautions: [],
    text: [
      'Screw the two end staves to the stiles, heads flush. Stand the others in the bottom groove on their marks; no glue. The first courses hold them up: until then one hand does, or wedges of paper in the groove.',
      ...(making.panels.some(({ spec }) => spec.endStop !== undefined)
        ? ['Pin the stop strips of one face; those of the other face go on after weaving.']
        : []),
    ],
    figures: jointFigures(making, 'end stave to stile'),
  };
}

function weave(making: Making): StepText {
  const { panels } = making;
  const show = fineIn(making);
  const rows = (panel: Panel) =>
    panel.weave.rows.map((row, i) => `row ${i + 1} ${row.map((side) => (side > 0 ? '+' : '-')).join('')}`).join(', ');
  return {
    title: 'Weave',
    cautions: [
      'A slat under bending flies when it slips: wear eye protection and keep your face out of its line. Set a slat aside that creaks or shows a crack.',
    ],
    text: [
      'Weave each slat over the free tops of the staves, in front and behind as the weave chart shows (+ in front, - behind), and slide it down onto the course below. No step bends it further than it stays bent.',
      'Do not push a slat aside to slip a stave in afterwards: that bends it more for a moment.',
      'Check every course against the course stick on both stiles before the next one. Take up a hair by hand while it can still be moved; change a slat that is off.',
      ...(panels.some(({ courses }) => courses.gap > 0)
        ? ['Set each course on two spacers as thick as the gap; the grip of the staves keeps it there.']
        : []),
      'Ends lie free between the stiles: never drive one in. A slat that is too long bows.',
    ],
    figures: [
      ...eachPanel(panels, 'courses', ({ courses }) => String(courses.count)),
      ...eachPanel(panels, 'first course passes the left stave', (panel) =>
        sideAt(panel, 0, 0) > 0 ? 'in front' : 'behind',
      ),
      ...eachPanel(panels, 'rows of the weave, bottom up', rows),
      ...eachPanel(panels, 'course to course', ({ courses }) => show(courses.pitch)),
      ...eachPanel(panels, 'bent to', (panel) => `${mostUse(panel).toFixed(2)} of its strength`),
      ...eachPanel(panels, 'pushed aside for a late stave', (panel) => {
        if (!panel.rows.some(({ sides }) => changesOfSide(sides).length >= 2)) return undefined;
        const factor = insertionFactor({ staveDepth: panel.staves.depth, slatThickness: panel.courses.thickness });
        return `${(factor * mostUse(panel)).toFixed(2)} of its strength (at most ${SLAT_USE.weaving})`;
      }),
    ],
  };
}

function cap(making: Making): StepText {
  const { panels } = making;
  const show = fineIn(making);
  const room = panels.some(({ courses }) => courses.allowance > 0);
  return {
    title: 'Put on the top rail',
    cautions: [],
    text: [
      'Bring the stave tops into the groove one after the other from one end, and draw the rail down to the stiles. Glue and screw the corners; no glue in the groove.',
      ...(room ? ['The room over the stack stays open: it is what the wood swells into. Never fill or wedge it.'] : []),
      ...(panels.some(({ cover }) => cover.height > 0)
        ? ['Pin and glue the cover strips to the rail, front and back; never to a slat.']
        : []),
      ...(panels.some(({ spec }) => spec.endStop !== undefined) ? ['Pin the stop strips of the open face.'] : []),
    ],
    figures: [
      ...eachPanel(panels, 'room over the stack', ({ courses }) =>
        courses.allowance > 0 ? show(courses.allowance) : undefined,
      ),
      ...jointFigures(making, 'cover strip to top rail'),
      ...jointFigures(making, 'stop strip to stile'),
    ],
  };
}

function square(making: Making): StepText {
  const show = lengthIn(making);
  return {
    title: 'Square it',
    cautions: [],
    text: [
      'Measure both diagonals before the glue sets. Draw the longer one in with a clamp until both are alike, and leave the clamp on overnight.',
      'Sight across the two stiles: they must not be in wind.',
    ],
    figures: [
      ...eachPanel(making.panels, 'diagonals, both', ({ diagonal }) => show(diagonal)),
      ...eachPanel(
        making.panels,
        'outside, width by height',
        ({ outside }) => `${show(outside.width)} by ${show(outside.height)}`,
      ),
    ],
  };
}
