import { type Panel, weaveDepth } from '../panel/panel.ts';
import { jointFigures } from './screws.ts';
import { eachPanel, fineIn, lengthIn, type Making, type StepText } from './step.ts';

/** Steps from the grooves to the dry fit. */
export function frameSteps(making: Making): StepText[] {
  return [grooves(making), sticks(making), dryFit(making)];
}

function grooves(making: Making): StepText {
  const { panels } = making;
  const show = fineIn(making);
  const size = lengthIn(making);
  return {
    title: 'Cut the grooves in the rails',
    cautions: [
      'Groove long rails only, pressed to fence and table by featherboards before and over the cutter; hands never over it. Sneak up on the depth in two or three passes. Never lower a rail onto a turning saw blade or dado set.',
    ],
    text: [
      'In the middle of the inner edge of both rails, with a router and straight bit, a dado set, or two saw passes. Cut from both faces with one fence setting, so that the groove is centred.',
      'The groove runs from stile to stile and stops there: the end staves stand against the stiles. With the router, clamp a stop at either end and square the ends with a chisel. With saw or dado set, run it through and glue plugs of the same wood into the ends, over the stiles; the corner screws pass along their edges, so let the glue harden first.',
      'Try the width with a stave: it slides by hand and does not rattle.',
    ],
    figures: [
      ...eachPanel(panels, 'groove depth', ({ groove }) => show(groove.depth)),
      ...eachPanel(panels, 'groove width', ({ groove }) => show(groove.width)),
      ...eachPanel(panels, 'from each face to the groove', ({ groove, rail }) => show((rail.depth - groove.width) / 2)),
      ...eachPanel(
        panels,
        'groove, from the end of the rail, and its length',
        ({ stile, clear }) => `${size(stile.width)}, ${size(clear.width)}`,
      ),
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
      'Lay the course stick on both stiles from the foot of the frame and mark the lower edge of the courses. The foot of the frame is the lower edge of the bottom rail: the stile starts a rail’s height above it.',
    ],
    figures: [
      ...eachPanel(panels, 'staves', ({ staves }) => String(staves.count)),
      ...eachPanel(panels, 'left faces from the left end of the rail', ({ staves }) =>
        staves.lefts.map(show).join(', '),
      ),
      ...eachPanel(panels, 'from the foot of the frame to the foot of the stile', ({ rail }) => show(rail.height)),
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
      'Every stave has to stand in both grooves without touching bottom above. Measure both diagonals.',
      'Mark the screws of the corners, end staves and fixings at the places given in the steps below, all heights from the foot of the frame, and drill their holes now.',
      'Mark top, front and left on the frame, and take it apart.',
    ],
    figures: eachPanel(making.panels, 'diagonals, both', ({ diagonal }) => show(diagonal)),
  };
}

/** The step of the cover strips, at the bench; absent where no panel has any. */
export function coverStripSteps(making: Making): StepText[] {
  const panels = making.panels.filter(({ cover }) => cover.height > 0);
  if (panels.length === 0) return [];
  const show = fineIn(making);
  return [
    {
      title: 'Pin the cover strips on at the bench',
      cautions: [],
      text: [
        'Before the top rail goes on, pin and glue the cover strips under its inner edge, one on either side of the groove, from stile to stile; never to a slat. Ease their ends, so that they pass between the stiles.',
        'Try them with a stave and a slat on either side of it: the three slide between the strips.',
      ],
      figures: [
        ...eachPanel(panels, 'from the rail’s face in to the face of the strip', (panel) => show(coverInset(panel))),
        ...eachPanel(panels, 'between the two strips', (panel) => show(weaveDepth(panel))),
        ...jointFigures({ ...making, panels }, 'cover strip to top rail'),
      ],
    },
  ];
}

/** From the rail's face in to the outer face of a cover strip, which lies against the outermost slats. */
function coverInset(panel: Panel): number {
  return (panel.rail.depth - weaveDepth(panel)) / 2 - panel.cover.thickness;
}
