import { forceText } from '../findings/words.ts';
import { carrierReach } from '../hardware/fittings.ts';
import { screwSchedule } from '../hardware/schedule.ts';
import type { Panel } from '../panel/panel.ts';
import { dividerDetails } from '../uses/divider.ts';
import { jointFigures } from './screws.ts';
import { eachPanel, lengthIn, type Making, type StepText } from './step.ts';

/** The step that stands or hangs a divider. */
export function divider(making: Making): StepText {
  const { job, panels } = making;
  const show = lengthIn(making);
  const details = (panel: Panel) => dividerDetails(panel);
  const sunk = panels.some((panel) =>
    screwSchedule(panel).some(({ joint, plug }) => joint === 'foot to bottom rail' && plug),
  );
  return {
    title: 'Set up the divider',
    cautions: panels.some((panel) => details(panel).tipping)
      ? ['Try its balance with a hand before anyone walks past.']
      : [],
    text: panels.some((panel) => details(panel).feet)
      ? [
          `Lay the panel down and screw the finished feet across its ends from below, without glue, so that they come off again; drill through each foot and on into the rail, held in its place.${sunk ? ' The holes over the sunk heads stay open: nobody sees them, and the screws can be taken out.' : ''} Felt goes under the feet, flush with their ends: the push that tips it is figured about the end of the foot. Stand it up and try it on the floor.`,
        ]
      : [
          'Put up the track as its maker has it. Screw the carriers to the top rail just inside the stiles, on its middle, clear of the corner screws, with the screws that they come with, their pilots as the maker has them, and none longer than told below: they end over the groove. Hang the panel and set its height by their bolts.',
          'The guide in the floor comes last, where the leaf then hangs: one that grips it from both faces wants no groove. A groove in the foot of the bottom rail has only the wood under the groove of the staves, and the corner screws cross it.',
        ],
    figures: [
      ...eachPanel(
        panels,
        `height over all${panels.some((panel) => details(panel).feet) ? ', felt apart' : ''}`,
        (panel) => show(details(panel).height),
      ),
      ...eachPanel(panels, 'foot beyond the frame, to the front and to the back', (panel) => {
        const { feet } = details(panel);
        return (
          feet &&
          `${show((feet.length - panel.rail.depth) / 2)} each; ${Math.abs(feet.width - panel.stile.width) < 0.05 ? 'outer face flush with the end of the rail' : `middle ${show(panel.stile.width / 2)} in from the end of the rail`}`
        );
      }),
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
      ...eachPanel(panels, 'from the floor to the underside of the track', (panel) => {
        const { track } = details(panel);
        return track ? show(track.opening) : undefined;
      }),
      ...jointFigures(making, 'foot to bottom rail'),
    ],
  };
}
