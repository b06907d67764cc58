import { wallPacker } from '../findings/ends.ts';
import { FRAME } from '../findings/frame.ts';
import { codeText, massText } from '../findings/words.ts';
import type { Use } from '../job/job.ts';
import { ceilToMark, floorToMark } from '../length.ts';
import type { Panel } from '../panel/panel.ts';
import { GUARD_CODE } from '../uses/codes.ts';
import { BRACKET, sideFixings } from '../uses/fixings.ts';
import { layRuns } from '../uses/run.ts';
import { panelCentre } from '../uses/weight.ts';
import { divider } from './dividing.ts';
import { escapeScreens } from './escape.ts';
import { hangGate } from './gatehanging.ts';
import { hardPilot, jointFigures } from './screws.ts';
import {
  eachPanel,
  fineIn,
  isMany,
  lengthIn,
  listed,
  type Making,
  namedOf,
  type StepFigure,
  type StepText,
} from './step.ts';

/** One step of hanging or fixing for each use that the job has. */
export function hangingSteps(making: Making): StepText[] {
  return (['screen', 'guard', 'divider', 'gate'] as const).flatMap((use) => {
    const panels = making.panels.filter(({ details }) => details.use === use);
    if (panels.length === 0) return [];
    const step = HANG[use]({ ...making, panels });
    const own = panels.length < making.panels.length;
    const heavy = panels.filter((panel) => panelCentre(panel).mass > FRAME.lift);
    const weights = eachPanel(panels, 'weight of one', (panel) =>
      massText(panelCentre(panel).mass, making.job.display),
    );
    const lift = heavy.length > 0 ? ['Too heavy for one: lift with two, and prop it before the first screw.'] : [];
    const title = own ? `${step.title}: ${listed(panels.map(({ name }) => name))}` : step.title;
    return [{ ...step, title, cautions: [...lift, ...step.cautions], figures: [...weights, ...step.figures] }];
  });
}

const HANG: Readonly<Record<Use, (making: Making) => StepText>> = { screen, guard, divider, gate: hangGate };

function screen(making: Making): StepText {
  const { panels } = making;
  const escapes = escapeScreens(panels);
  const fixed = panels.filter((panel) => !escapes.includes(panel));
  const blocks = fixed.some(({ details }) => details.use === 'screen' && details.mounting === 'blocks');
  const brackets = fixed.some((panel) => sideFixings(panel).kind === 'bracket');
  const through = fixed.some((panel) => sideFixings(panel).kind !== 'bracket');
  const masonry = fixed.some(({ details }) => details.use === 'screen' && details.into === 'masonry');
  const fine = fineIn(making);
  const tips = eachPanel(fixed, 'tips of the screws, behind the back of the frame', (panel) => {
    const { details, stile } = panel;
    const { kind, screw } = sideFixings(panel);
    return details.use === 'screen' && details.glass !== undefined && kind === 'screw'
      ? `${fine(screw.length - stile.depth)}; glass planned at ${fine(details.glass)}`
      : undefined;
  });
  const several = isMany(making);
  return {
    title: `${fixed.length > 0 ? 'Fix' : 'Hang'} the ${several ? 'screens' : 'screen'}`,
    cautions: [...windowCautions(making, escapes), ...packerCautions(making, fixed)],
    text: [
      ...(escapes.length > 0
        ? [
            `${namedOf(escapes, panels)}${escapes.length < panels.length ? 'hinges' : 'Hinges'} or lift-off hooks hold it, with a catch that opens from inside without key or tool. These sheets plan none, and tell no screws for it: settle that with whoever knows the building, before the frame is made.`,
          ]
        : []),
      ...(blocks
        ? [
            'Set a stand-off block behind every fixing, grain upright, without glue, its bevelled end up, and pass the screw through its hole.',
          ]
        : []),
      ...(brackets
        ? [
            'Level the panel on wedges between its posts and screw the brackets to the back of the stiles at the heights below, measured from the foot of the frame, then to the posts.',
          ]
        : []),
      ...(through
        ? [
            `${fixed.some((panel) => wallPacker(panel) !== undefined) ? 'Once that is settled, level' : 'Level'} the panel on wedges, mark ${masonry ? 'the wall' : 'what is behind it'} through the holes in its stiles, and drill there: ${masonry ? 'for plugs that the screws go with' : 'the pilot told below'}. Drive the screws evenly; their heights below are from the foot of the frame.`,
            ...(masonry
              ? []
              : [
                  'See that there is sound wood at every screw, as thick as told below, before you drill: where there is not, the tip comes out at its back or finds nothing to hold it.',
                ]),
          ]
        : []),
      ...(tips.length > 0
        ? [
            'Before you drill, measure how far the glass stands behind the back of the frame and check it against the tips of the screws below: they stop short of it.',
          ]
        : []),
    ],
    figures: [
      ...jointFigures({ ...making, panels: fixed }, 'mounting'),
      ...tips,
      ...hardPilots(making, fixed),
      ...eachPanel(fixed, 'wood behind at each screw, at least', (panel) => {
        const { details } = panel;
        const { kind, screw } = sideFixings(panel);
        return kind === 'bracket' || (details.use === 'screen' && details.into === 'masonry')
          ? undefined
          : lengthIn(making)(ceilToMark(screw.penetration, making.job.display.mark));
      }),
      ...(brackets ? postFigure(making, fixed) : []),
    ],
  };
}

/** The pilot where what stands already is of hardwood; the others are for the softwood that is taken there. */
function hardPilots({ job }: Making, panels: readonly Panel[]): StepFigure[] {
  return eachPanel(panels, 'pilot where what is behind is hardwood', (panel) => {
    const { details } = panel;
    const { kind, screw } = sideFixings(panel);
    if (kind === 'bracket' || (details.use === 'screen' && details.into === 'masonry')) return undefined;
    return hardPilot(screw, job);
  });
}

/** How much of the post has to stand behind the panel, so that the bracket's leg and its screws find wood. */
function postFigure(making: Making, panels: readonly Panel[]): StepFigure[] {
  const behind = lengthIn(making)(ceilToMark(BRACKET.leg + BRACKET.beyond, making.job.display.mark));
  return eachPanel(panels, 'post behind the back face of the panel, at least', (panel) =>
    sideFixings(panel).kind === 'bracket' ? behind : undefined,
  );
}

/** What a screen over a window has to allow for, by what is known of the room behind. */
function windowCautions({ panels }: Making, escapes: readonly Panel[]): string[] {
  const glazed = panels.filter(
    (panel) => !escapes.includes(panel) && panel.details.use === 'screen' && panel.details.glass !== undefined,
  );
  const what = (some: readonly Panel[]) =>
    some.length === panels.length
      ? panels.length > 1
        ? 'these panels'
        : 'the panel'
      : listed(some.map(({ name }) => name));
  return [
    ...(escapes.length > 0
      ? [
          `The window behind is an escape. Do not screw ${what(escapes)} fast: it has to open from inside without key or tool.`,
        ]
      : []),
    ...(glazed.length > 0
      ? [
          `There is a window behind ${what(glazed)}. Before you fix a screen over it, make sure that nobody may need it as an escape; if someone may, hang the panel so that it opens from inside without key or tool.`,
        ]
      : []),
  ];
}

/** Of panels whose slats would stand in the wall: that they are not fixed as they are. */
function packerCautions(making: Making, panels: readonly Panel[]): string[] {
  const fine = fineIn(making);
  return panels.flatMap((panel) => {
    const packer = wallPacker(panel);
    if (packer === undefined) return [];
    const where =
      panel.details.use === 'screen' && panel.details.mounting === 'blocks' ? 'under its blocks' : 'behind both stiles';
    return [
      `${namedOf([panel], making.panels)}${making.panels.length > 1 ? 's' : 'S'}lats stand out behind the frame, so that it does not lie flat. Do not fix it before the stop in the findings is settled: with packers ${fine(packer)} thick ${where}, of the wood of the frame, as wide as a stile and as long, the screws are those that the finding names, not those below.`,
    ];
  });
}

function guard(making: Making): StepText {
  const { job, panels } = making;
  const show = lengthIn(making);
  const several = isMany(making);
  const caps = panels.some(({ details }) => details.use === 'guard' && details.cap);
  return {
    title: several ? 'Set the panels between their posts' : 'Set the panel between its posts',
    cautions: [
      `Keep the old barrier or a line up until ${several ? 'the last panel' : 'the panel'} is fixed. A woven infill is not a tested guard.`,
    ],
    text: [
      ...(several
        ? [
            'Snap one level line along all posts and set every panel to it, so that the course lines run through from bay to bay. Take it where the floor is highest: elsewhere the gap under the panel grows by what the floor falls.',
          ]
        : []),
      `Lay ${several ? 'each' : 'the'} panel on blocks as high as the gap over the floor and screw the brackets to the back${caps ? ', then put on the cap, its screws from above, glue a plug over every sunk head, pare it and touch it up' : ''}. Set it in the depth of the posts so that enough post stands behind its back face for the brackets.`,
      'Where the floor falls under the panel by more than told below, step the panel down with it or screw a fillet under its bottom rail.',
      `See too that no ball of ${codeText(GUARD_CODE.sphere.value, job.display)} passes between the panel and the handrail over it, or at the posts.${caps ? ' Where a handrail lies on the caps, or close over them, put the cap on at the bench, before the panel goes between its posts.' : ''}`,
    ],
    figures: [
      ...eachPanel(panels, 'gap over the floor', ({ details }) =>
        details.use === 'guard' ? show(details.floorGap) : undefined,
      ),
      ...eachPanel(
        panels,
        `fall of the floor under it, at most, before a ball of ${codeText(GUARD_CODE.sphere.value, job.display)} passes`,
        ({ details }) => (details.use === 'guard' ? fallText(details.floorGap, job.display.mark, show) : undefined),
      ),
      ...postFigure(making, panels),
      ...layRuns(job, panels).map(({ name, total }) => ({ what: `length of ${name}`, value: show(total), where: '' })),
      ...jointFigures(making, 'mounting'),
      ...jointFigures(making, 'cap rail to top rail'),
    ],
  };
}

/** The fall that is still allowed, or that the ball passes on a level floor. */
function fallText(gap: number, mark: number, show: (length: number) => string): string {
  return gap >= GUARD_CODE.sphere.value
    ? 'none: it passes already, with the gap that is planned'
    : show(floorFall(gap, mark));
}

/** What the floor may fall by, to a mark, so that the gap stays under the code's ball. */
function floorFall(gap: number, mark: number): number {
  return Math.max(0, floorToMark(GUARD_CODE.sphere.value - gap - 0.5, mark));
}
