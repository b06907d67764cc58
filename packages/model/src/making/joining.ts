import { hasGluedEnds } from '../hardware/framejoints.ts';
import { screwSchedule } from '../hardware/schedule.ts';
import type { Panel } from '../panel/panel.ts';
import { looseParts } from './finishing.ts';
import { drivenFigures, jointFigures } from './screws.ts';
import {
  diagonalFigures,
  eachPanel,
  fineIn,
  isMany,
  lengthIn,
  type Making,
  namedOf,
  roundIn,
  type StepText,
} from './step.ts';
import { coverStripSteps } from './strips.ts';
import { standTexts, weave } from './weaving.ts';

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

/** Whether the two screws of a corner stand apart along the rail, so that it matters which is in front. */
function isStaggered(panels: readonly Panel[]): boolean {
  return panels.some((panel) => {
    const places = screwSchedule(panel).find(({ joint }) => joint === 'rail to stile')?.places ?? [];
    return new Set(places.map(({ x }) => x.toFixed(3))).size > CORNERS;
  });
}

/** Corners of one rail: screws side by side share a place along it. */
const CORNERS = 2;

/** Whether any corner screw's head is sunk and wants a plug. */
function plugged({ panels }: Making): boolean {
  return panels.some((panel) => screwSchedule(panel).some(({ joint, plug }) => joint === 'rail to stile' && plug));
}

function stopped({ panels }: Making): boolean {
  return panels.some(({ spec }) => spec.endStop !== undefined);
}

function bottom(making: Making): StepText {
  return {
    title: 'Fix the bottom rail to the stiles',
    cautions: [],
    text: [
      `Glue and screw the bottom corners on a flat bench, a square in each: half of the corner screws${isMany(making) ? ' of each panel' : ''} go in now, the other half with the top rail.`,
      'Set the top rail on dry at once, without staves, measure both diagonals, and draw the longer one in with a clamp until both are alike: once this glue is hard the frame no longer moves. Sight across the stiles: they must not be in wind. Take the top rail off when the glue has set.',
    ],
    figures: [...diagonalFigures(making), ...drivenFigures(making, 'rail to stile', 0.5)],
  };
}

/** A stave longer than so many times its thinner side whips while it stands free; common practice, no source. */
const SLENDER = 80;

function setStaves(making: Making): StepText {
  const { panels } = making;
  const slender = panels.filter(({ staves }) => staves.length > SLENDER * Math.min(staves.width, staves.depth));
  return {
    title: 'Set the staves',
    cautions: [],
    text: [
      'Screw the two end staves to the stiles through the holes drilled at the dry fit, standing on the bed of the groove, no head above the face.',
      ...(stopped(making)
        ? [
            'Hold the stop strips of back and front in their places and drill for all their pins, through the strip and on into the stile as deep as told, while there is room for the drill. Mark each strip, pin those of the back, and lay those of the front by: they go on after weaving.',
          ]
        : []),
      ...standTexts(making),
      'Stand the other staves in the bottom groove on their marks; no glue.',
      ...(slender.length > 0
        ? [
            `${namedOf(slender, panels)}${slender.length < panels.length ? 'these' : 'These'} staves are tall and thin: cut notches at the marks of the stave stick into a batten, set this comb over the stave tops, lift it off for each slat and set it back, until ${COMBED} courses hold the staves.`,
          ]
        : [
            'A batten with notches at the marks of the stave stick, set over their tops between one slat and the next, keeps them apart until the first courses do.',
          ]),
    ],
    figures: [...drivenFigures(making, 'end stave to stile'), ...jointFigures(making, 'stop strip to stile', 0.5)],
  };
}

/** Courses after which staves no longer want a comb; common practice, no source. */
const COMBED = 8;

function topRail(making: Making): StepText {
  const { panels } = making;
  const show = fineIn(making);
  const room = panels.some(({ courses }) => courses.allowance > 0);
  return {
    title: 'Put on the top rail',
    cautions: [],
    text: [
      `Glue the tops of the stiles, bring the stave tops into the groove one after the other from one end, and draw the rail down to the stiles; no glue in the groove. Screw the corners with the other half of the corner screws${isStaggered(panels) ? '. They stand the other way round from those of the corner under them: where that has its front screw, this has its back one, as the rail end template shows' : ''}.`,
      ...(room ? ['The room over the stack stays open: it is what the wood swells into. Never fill or wedge it.'] : []),
      ...(panels.some(({ cover }) => cover.height > 0)
        ? [
            `The cover strips come down over the top course, front and back, with play on either side: nothing of a slat touches them. Over slats woven drier than planned they may end above it at first, as the step of the stack tells.${panels.some(hasGluedEnds) ? ' Once the rail is home, run glue into the ends of those that no pin holds.' : ''}`,
          ]
        : []),
      'Measure both diagonals before this glue sets. Draw the longer one in with a clamp until both are alike, and leave the clamp on overnight.',
    ],
    figures: [
      ...eachPanel(panels, 'room over the stack', ({ courses }) =>
        courses.allowance > 0 ? show(courses.allowance) : undefined,
      ),
      ...eachPanel(panels, 'play of the top course between the strips, on either side', ({ cover }) =>
        cover.height > 0 ? `${show(cover.face - cover.reach)} or more` : undefined,
      ),
      ...diagonalFigures(making),
      ...drivenFigures(making, 'rail to stile', 0.5),
    ],
  };
}

function square(making: Making): StepText {
  const show = lengthIn(making);
  const loose = looseParts(making);
  return {
    title: `Square it${plugged(making) ? ', then plug' : ''}${stopped(making) ? ', then pin the last strips' : ''}`,
    cautions: [],
    text: [
      `When the glue is hard, measure both diagonals once more; ${roundIn(making, 3, '1/8')} between them is what a good shop holds.`,
      ...(plugged(making)
        ? [
            'Glue a plug over every sunk head of the corners, its grain with the rail’s, and pare it flush when the glue is hard.',
          ]
        : []),
      ...(stopped(making)
        ? [
            'Pin the stop strips of the front in the holes drilled for them. Slats are in the way of a hammer now: push the pins home with a push pin, or with a long nail set held flat over the slats, the hammer well clear of them.',
          ]
        : []),
      `Then sand the outer faces of the frame, plugs and joints level,${loose === '' ? '' : ` and ${loose},`} and break their outer arrises by ${roundIn(making, 1, '1/32')}, where hands come more.${making.job.finish.kind === 'film' ? ' Touch the finish up where it was cut through.' : ''}`,
    ],
    figures: [
      ...diagonalFigures(making),
      ...eachPanel(
        making.panels,
        'outside, width by height',
        ({ outside }) => `${show(outside.width)} by ${show(outside.height)}`,
      ),
      ...jointFigures(making, 'stop strip to stile', 0.5),
    ],
  };
}
