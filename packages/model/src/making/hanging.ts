import { FRAME } from '../findings/frame.ts';
import { forceText, massText } from '../findings/words.ts';
import { carrierReach } from '../hardware/fittings.ts';
import type { Use } from '../job/job.ts';
import type { Panel } from '../panel/panel.ts';
import { dividerDetails } from '../uses/divider.ts';
import { sideFixings } from '../uses/fixings.ts';
import { layRuns } from '../uses/run.ts';
import { panelCentre } from '../uses/weight.ts';
import { escapeScreens } from './escape.ts';
import { hangGate } from './gatehanging.ts';
import { jointFigures } from './screws.ts';
import { eachPanel, isMany, lengthIn, type Making, type StepText } from './step.ts';

/** One step of hanging or fixing for each use that the job has. */
export function hangingSteps(making: Making): StepText[] {
  return (['screen', 'guard', 'divider', 'gate'] as const).flatMap((use) => {
    const panels = making.panels.filter(({ details }) => details.use === use);
    if (panels.length === 0) return [];
    const step = HANG[use]({ ...making, panels });
    const heavy = panels.filter((panel) => panelCentre(panel).mass > FRAME.lift);
    const weights = eachPanel(panels, 'weight of one', (panel) =>
      massText(panelCentre(panel).mass, making.job.display),
    );
    const lift = heavy.length > 0 ? ['Too heavy for one: lift with two, and prop it before the first screw.'] : [];
    return [{ ...step, cautions: [...lift, ...step.cautions], figures: [...weights, ...step.figures] }];
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
  const opened = escapes.length === panels.length ? '' : `${escapes.map(({ name }) => name).join(', ')}: `;
  return {
    title: 'Fix the screen',
    cautions: windowCautions(panels),
    text: [
      ...(escapes.length > 0
        ? [
            `${opened}do not screw it fast. It hangs on hinges or lift-off hooks, with a catch that opens from inside without key or tool. These sheets plan none, and the screws of a fixed panel are not told here: settle it with whoever knows the building, before the frame is made.`,
          ]
        : []),
      ...(blocks ? ['Set a stand-off block behind every fixing; bevel its top so that water runs off.'] : []),
      ...(brackets
        ? [
            'Level the panel on wedges between its posts and screw the brackets to the back of the stiles at the heights below, measured from the foot of the frame, then to the posts.',
          ]
        : []),
      ...(through
        ? [
            'Level the panel on wedges and drive the screws evenly through the holes in its stiles; their heights below are from the foot of the frame. Drill masonry for plugs.',
          ]
        : []),
    ],
    figures: jointFigures({ ...making, panels: fixed }, 'mounting'),
  };
}

/** What a screen over a window has to allow for, by what is known of the room behind. */
function windowCautions(panels: readonly Panel[]): string[] {
  const screens = panels.flatMap(({ details }) => (details.use === 'screen' ? [details] : []));
  if (screens.some(({ bedroom }) => bedroom))
    return ['The window behind is an escape: hang the panel so that it opens from inside without key or tool.'];
  if (screens.some(({ glass }) => glass !== undefined))
    return [
      'There is a window behind. Before you fix a screen over it, make sure that nobody may need it as an escape; if someone may, hang the panel so that it opens from inside without key or tool.',
    ];
  return [];
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
      `Lay ${several ? 'each' : 'the'} panel on blocks as high as the gap over the floor and screw the brackets to the back${caps ? ', then put on the cap' : ''}.`,
    ],
    figures: [
      ...eachPanel(panels, 'gap over the floor', ({ details }) =>
        details.use === 'guard' ? show(details.floorGap) : undefined,
      ),
      ...layRuns(job, panels).map(({ name, total }) => ({ what: `length of ${name}`, value: show(total), where: '' })),
      ...jointFigures(making, 'mounting'),
      ...jointFigures(making, 'cap rail to top rail'),
    ],
  };
}

function divider(making: Making): StepText {
  const { job, panels } = making;
  const show = lengthIn(making);
  const details = (panel: Panel) => dividerDetails(panel);
  return {
    title: 'Set up the divider',
    cautions: panels.some((panel) => details(panel).tipping)
      ? ['Try its balance with a hand before anyone walks past.']
      : [],
    text: panels.some((panel) => details(panel).feet)
      ? [
          'Lay the panel down, screw the feet across the ends from below, heads sunk, felt under them. Stand it up and try it on the floor.',
        ]
      : [
          'Screw the carriers to the top rail just inside the stiles, on its middle, clear of the corner screws, with screws that end over the groove; hang the panel and set its height by their bolts.',
        ],
    figures: [
      ...eachPanel(panels, 'height over all', (panel) => show(details(panel).height)),
      ...eachPanel(panels, 'a level push that tips it', (panel) => {
        const { tipping } = details(panel);
        return tipping ? `${forceText(tipping.push, job.display)} at ${show(tipping.at)}` : undefined;
      }),
      ...eachPanel(panels, 'middles of the carriers, from the ends of the top rail', (panel) => {
        const [carrier] = details(panel).track?.carriers ?? [];
        return carrier && show(carrier.x);
      }),
      ...eachPanel(panels, 'screws of the carriers go into the rail by at most', (panel) =>
        details(panel).track ? show(carrierReach(panel)) : undefined,
      ),
      ...eachPanel(panels, 'opening height for the track', (panel) => {
        const { track } = details(panel);
        return track ? show(track.opening) : undefined;
      }),
      ...jointFigures(making, 'foot to bottom rail'),
    ],
  };
}
