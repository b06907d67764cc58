import { FRAME } from '../findings/frame.ts';
import { forceText, massText } from '../findings/words.ts';
import { finishFor, QUART } from '../hardware/finish.ts';
import type { Use } from '../job/job.ts';
import { INCH } from '../length.ts';
import type { Panel } from '../panel/panel.ts';
import { dividerDetails } from '../uses/divider.ts';
import { sideFixings } from '../uses/fixings.ts';
import { gateDetails } from '../uses/gate.ts';
import { layRuns } from '../uses/run.ts';
import { panelCentre } from '../uses/weight.ts';
import { jointFigures } from './joining.ts';
import { eachPanel, lengthIn, type Making, type StepText } from './step.ts';

/** The step of finishing; absent where the job wants none. */
export function finishStep({ job, panels }: Making): StepText | undefined {
  const { kind, coats, name } = job.finish;
  if (kind === 'none' || coats === 0) return undefined;
  const amounts = panels.map((panel) => finishFor(panel, job));
  const sum = (of: (amount: (typeof amounts)[number]) => number) =>
    amounts.reduce((total, each) => total + of(each), 0);
  const litres = sum((each) => each.litresPerCoat);
  const volume = (size: number) =>
    job.display.unit === 'in' ? `${(size / QUART).toFixed(1)} US quarts` : `${size.toFixed(1)} litres`;
  return {
    title: kind === 'film' ? 'Finish the parts before weaving' : 'Finish',
    cautions: [
      'Rags wet with oil heat up by themselves and burn: spread them out to dry outdoors or drown them in a closed tin of water. Air the room.',
    ],
    text: [`${name}: ${amounts[0]?.when ?? ''}.`, 'Coat the end grain twice; it drinks most.'],
    figures: [
      {
        what: 'all faces',
        value: areaText(
          sum((each) => each.area),
          job.display.unit,
        ),
        where: '',
      },
      { what: 'coats', value: String(coats), where: '' },
      { what: 'a coat takes about', value: volume(litres), where: '' },
      { what: 'in all', value: volume(litres * coats), where: '' },
    ],
  };
}

/** Square metres, or square feet in inch work. */
function areaText(area: number, unit: 'in' | 'mm'): string {
  return unit === 'in' ? `${(area / ((12 * INCH) / 1000) ** 2).toFixed(0)} sq ft` : `${area.toFixed(1)} m²`;
}

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

const HANG: Readonly<Record<Use, (making: Making) => StepText>> = { screen, guard, divider, gate };

function screen(making: Making): StepText {
  const { panels } = making;
  const blocks = panels.some(({ details }) => details.use === 'screen' && details.mounting === 'blocks');
  return {
    title: 'Fix the screen',
    cautions: panels.some(({ details }) => details.use === 'screen' && details.bedroom)
      ? ['The window behind is an escape: hang the panel so that it opens from inside without key or tool.']
      : [],
    text: [
      ...(blocks ? ['Set a stand-off block behind every fixing; bevel its top so that water runs off.'] : []),
      panels.some((panel) => sideFixings(panel).kind === 'bracket')
        ? 'Level the panel on wedges between its posts and screw the brackets to the back of the stiles, then to the posts.'
        : 'Level the panel on wedges, drill through the stiles at the marks, and drive the screws evenly. Drill masonry for plugs.',
    ],
    figures: [...fixingFigures(making), ...jointFigures(making, 'mounting')],
  };
}

function guard(making: Making): StepText {
  const { job, panels } = making;
  const show = lengthIn(making);
  return {
    title: 'Set the panels between their posts',
    cautions: [
      'Keep the old barrier or a line up until the last panel is fixed. A woven infill is not a tested guard.',
    ],
    text: [
      'Snap one level line along all posts and set every panel to it, so that the course lines run through from bay to bay.',
      'Lay each panel on blocks as high as the gap over the floor, screw the brackets to the back, then put on the cap.',
    ],
    figures: [
      ...eachPanel(panels, 'gap over the floor', ({ details }) =>
        details.use === 'guard' ? show(details.floorGap) : undefined,
      ),
      ...layRuns(job, panels).map(({ name, total }) => ({ what: `length of ${name}`, value: show(total), where: '' })),
      ...fixingFigures(making),
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
      : ['Screw the carriers to the top rail over the stiles, hang the panel and set its height by their bolts.'],
    figures: [
      ...eachPanel(panels, 'height over all', (panel) => show(details(panel).height)),
      ...eachPanel(panels, 'a level push that tips it', (panel) => {
        const { tipping } = details(panel);
        return tipping ? `${forceText(tipping.push, job.display)} at ${show(tipping.at)}` : undefined;
      }),
      ...eachPanel(panels, 'opening height for the track', (panel) => {
        const { track } = details(panel);
        return track ? show(track.opening) : undefined;
      }),
      ...jointFigures(making, 'foot to bottom rail'),
    ],
  };
}

function gate(making: Making): StepText {
  const { job, panels } = making;
  const show = lengthIn(making);
  const details = (panel: Panel) => gateDetails(panel);
  const cable = panels.some((panel) => details(panel).brace?.kind === 'cable');
  const strut = panels.some((panel) => details(panel).brace?.kind === 'strut');
  return {
    title: 'Hang the gate',
    cautions: ['Keep fingers out of the hinge side while the leaf is propped.'],
    text: [
      'Set the leaf in its opening on blocks as high as the ground clearance, wedge it to the clearances, and screw the hinges on, the top one first.',
      ...(cable
        ? [
            'Prop the latch side up by the lift below, draw the turnbuckle until the wire just carries, and take the prop out. Half as much again starts to rack the leaf the other way.',
          ]
        : []),
      ...(strut
        ? [
            'The strut pushes: fit it tight from the bottom of the hinge side to the top of the latch side, without a gap at either end.',
          ]
        : []),
      'Fit the latch last, with the leaf hanging free.',
    ],
    figures: [
      ...eachPanel(panels, 'opening between the posts', (panel) => show(details(panel).opening.width)),
      ...eachPanel(panels, 'clearance at hinge, latch, ground', (panel) => {
        const { clear } = details(panel);
        return [clear.hinge, clear.latch, clear.ground].map(show).join(', ');
      }),
      ...eachPanel(panels, 'hinges from the bottom of the leaf', (panel) =>
        details(panel)
          .hinges.map(({ y }) => show(y))
          .join(', '),
      ),
      ...eachPanel(panels, 'brace, end to end', (panel) => {
        const { brace } = details(panel);
        return brace ? show(brace.length) : undefined;
      }),
      ...eachPanel(panels, 'lift while the brace is drawn, and how far it draws', (panel) => {
        const { brace } = details(panel);
        return brace ? `${show(brace.lift)}, ${show(brace.takeUp)}` : undefined;
      }),
      ...eachPanel(panels, 'brace force, hanging and with the load at the latch', (panel) => {
        const { brace } = details(panel);
        return brace
          ? `${forceText(Math.abs(brace.force), job.display)}, ${forceText(Math.abs(brace.forceLoaded), job.display)}`
          : undefined;
      }),
      ...jointFigures(making, 'hinge to stile'),
      ...jointFigures(making, 'brace plate to frame'),
      ...jointFigures(making, 'strut to frame'),
    ],
  };
}

function fixingFigures(making: Making) {
  const show = lengthIn(making);
  return eachPanel(making.panels, 'fixings up each stile, from the bottom', (panel) => {
    const { places, perSide } = sideFixings(panel);
    return places
      .slice(0, perSide)
      .map(({ y }) => show(y))
      .join(', ');
  });
}
