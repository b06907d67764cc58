import { screwSchedule } from '../hardware/schedule.ts';
import { type Panel, sideAt } from '../panel/panel.ts';
import { coverStripSteps } from './fitting.ts';
import { jointFigures, screwFigures } from './screws.ts';
import { eachPanel, fineIn, lengthIn, type Making, type StepText } from './step.ts';

/** Steps from the bottom joints to the square panel. */
export function weavingSteps(making: Making): StepText[] {
  return [
    bottom(making),
    setStaves(making),
    ...coverStripSteps(making),
    weave(making),
    topRail(making),
    square(making),
  ];
}

/** Whether any corner screw's head is sunk and wants a plug. */
function plugged({ panels }: Making): boolean {
  return panels.some((panel) => screwSchedule(panel).some(({ joint, plug }) => joint === 'rail to stile' && plug));
}

function bottom(making: Making): StepText {
  return {
    title: 'Fix the bottom rail to the stiles',
    cautions: [],
    text: [
      'Glue and screw the bottom corners on a flat bench, a square in each corner: half of the corner screws go in now, the other half with the top rail.',
      ...(plugged(making)
        ? ['Glue a plug over every sunk head, its grain with the rail’s, and pare it flush when the glue is hard.']
        : []),
      'The top stays open.',
    ],
    figures: jointFigures(making, 'rail to stile', 0.5),
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
    ],
  };
}

function topRail(making: Making): StepText {
  const { panels } = making;
  const show = fineIn(making);
  const room = panels.some(({ courses }) => courses.allowance > 0);
  return {
    title: 'Put on the top rail',
    cautions: [],
    text: [
      `Bring the stave tops into the groove one after the other from one end, and draw the rail down to the stiles. Glue and screw the corners with the other half of the corner screws, placed as at the bottom${plugged(making) ? ', and plug them' : ''}; no glue in the groove.`,
      ...(room ? ['The room over the stack stays open: it is what the wood swells into. Never fill or wedge it.'] : []),
      ...(panels.some(({ cover }) => cover.height > 0)
        ? ['The cover strips come down over the top course, front and back, without pinching it.']
        : []),
      ...(panels.some(({ spec }) => spec.endStop !== undefined) ? ['Pin the stop strips of the open face.'] : []),
    ],
    figures: [
      ...eachPanel(panels, 'room over the stack', ({ courses }) =>
        courses.allowance > 0 ? show(courses.allowance) : undefined,
      ),
      ...screwFigures(making, 'rail to stile', 0.5),
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
