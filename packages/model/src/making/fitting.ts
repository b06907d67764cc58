import { screwSchedule } from '../hardware/schedule.ts';
import { lengthsText } from '../hardware/where.ts';
import { drainHoles } from '../panel/drains.ts';
import type { Panel } from '../panel/panel.ts';
import { ease, grooves } from './grooving.ts';
import { drilledLater, isBoredThrough, isBracketed } from './later.ts';
import { holeFigures, pilotFigures } from './screws.ts';
import {
  diagonalFigures,
  eachPanel,
  fineIn,
  lengthIn,
  listed,
  type Making,
  placesIn,
  roundIn,
  type StepText,
} from './step.ts';

/** Steps from the grooves to parts that are ready to be joined. */
export function frameSteps(making: Making): StepText[] {
  return [grooves(making), ease(making), sticks(making), bore(making), dryFit(making)];
}

function sticks(making: Making): StepText {
  const { panels, job } = making;
  const show = lengthIn(making);
  const places = placesIn(making);
  const { kind } = job.finish;
  return {
    title: 'Mark with the sticks and templates',
    cautions: ['Only with sticks and templates whose check bar was measured, as the step of the grooves tells.'],
    text: [
      `Mark with a knife only what is hidden later, the grooved edges of the rails and the inner edges of the stiles: ${kind === 'film' ? 'its line shows through the finish' : kind === 'none' ? 'its line is finer than a pencil’s' : 'its line outlasts the finish'}. On a face that shows make no more than a short tick in soft pencil at the inner arris, and rub it out before ${kind === 'none' ? 'the panel leaves the bench' : 'the finish'}. Where a mark is lost all the same, lay the stick on again.`,
      'Clamp both rails together, ends flush, grooved edges level, lay the stave stick along them and square across the left face of every stave. The end staves stand against the stiles and need no mark.',
      'Mark from the stick only, never from stave to stave: a pitch stepped off drifts.',
      'Lay the course stick on each stile, the foot of the stick flush with the foot of the stile, tick the lower edge of every course at the inner arris in pencil, and square the ticks over the inner edge with the knife.',
      `The steps below give the heights of screws${panels.some(({ details }) => details.use === 'gate') ? ' and hinges' : ' and fixings'} from the foot of the frame, which is the lower edge of the bottom rail. On the stile and on its stick the same hole stands lower by the height of that rail: mark it from the stick.`,
      ...(panels.some(isBracketed)
        ? [
            'Fixings on the stick are the middles of the brackets, which go on the back: carry them over the outer edge to the back in pencil, or leave them until the brackets go on.',
          ]
        : []),
      'Fold the rail end template round each end of the rails: it places the end of the groove, the corner screws and the first stave. The stile end template only shows where their pilots are to come out; they are drilled through the rail, later.',
    ],
    figures: [
      ...eachPanel(panels, 'staves', ({ staves }) => String(staves.count)),
      ...eachPanel(panels, 'left faces from the left end of the rail', ({ staves }) => places(staves.lefts)),
      ...eachPanel(panels, 'from the foot of the frame to the foot of the stile', ({ rail }) => show(rail.height)),
    ],
  };
}

/** Holes for heads and shanks, and drains; no pilot, since two holes marked apart on two pieces never meet. */
function bore(making: Making): StepText {
  const { panels, job } = making;
  const places = placesIn(making);
  const screwed = panels.filter(isBoredThrough);
  const blocks = making.parts.some(({ role }) => role === 'stand-off block');
  const drains = panels.some((panel) => drainHoles(panel).places.length > 0);
  const drill = roundIn(making, 6, '1/4');
  const later = drilledLater(panels);
  return {
    title: `Bore ${listed(['rails', 'end staves', ...(screwed.length > 0 ? ['stiles'] : [])])}`,
    cautions: [],
    text: [
      `Square to the face: through the rails the clearance holes of the corners, where the rail end template has them; through the end staves those of their screws${screwed.length > 0 ? '; through the stiles those of the fixings' : ''}. Where a head is sunk, bore its wide hole first.`,
      'Countersink every hole whose head is to lie flush, as wide as the head: none may stand out where slats, strips or a cap lie.',
      'No pilots yet: two holes marked apart on two pieces never meet. They are drilled through these, with the frame together (next step).',
      ...(blocks ? ['Through the middle of every stand-off block goes a clearance hole too.'] : []),
      ...(drains
        ? [
            `Outdoors the groove of the bottom rail is a gutter. Drill drain holes of ${drill} down through that rail, in the middle of its groove, half-way between every two staves (common practice, no source).`,
          ]
        : []),
      ...(later.length > 0 ? [`Holes for ${listed(later)} are drilled in the steps that fix them.`] : []),
    ],
    figures: [
      ...holeFigures(making, 'rail to stile'),
      ...holeFigures(making, 'end stave to stile'),
      ...eachPanel(panels, 'the same up the stave from its own foot, which stands in the groove', (panel) =>
        staveHoles(panel, job),
      ),
      ...holeFigures({ ...making, panels: screwed }, 'mounting'),
      ...eachPanel(panels, `drain holes of ${drill}, from the left end of the bottom rail`, (panel) => {
        const drain = drainHoles(panel).places;
        return drain.length > 0 ? `${drain.length}: ${places(drain)}` : undefined;
      }),
    ],
  };
}

function dryFit(making: Making): StepText {
  const fine = fineIn(making);
  const { panels } = making;
  const tight = panels.some(({ spec }) => spec.stave.clearance <= 0);
  return {
    title: 'Dry fit with the top rail on, and drill the pilots',
    cautions: [],
    text: [
      'Before anything is woven or glued, set the frame up with every stave in both grooves and the top rail on. With slats in, no stave can be changed any more.',
      `Every stave stands on the bed of the bottom groove${tight ? '. The rails have to close on the stiles: plane up to ' : ', with room over it in the top one.'}${tight ? `${roundIn(making, 3, '1/8')} off the top end of a stave that holds them apart.` : ''}`,
      'Lay the lower left corner on the corner template: rail, stile and first stave lie where it shows them.',
      'Measure both diagonals. Clamp the corners, faces flush and square.',
      'Drill the pilots of the corners through the holes of the rails, straight into the ends of the stiles. Drive the first screw of a corner before its second hole is drilled, so that nothing shifts. Where the bit is too short to reach the stile through the rail, prick instead: with the corner clamped set a screw in each hole and tap it, so that its point marks the end of the stile; take the rail off and drill there, along the stile, as deep as told below.',
      'Take the loose staves out, clamp each end stave to the middle of its stile, its foot on the bed of the groove, and drill its pilots through its own holes in the same way.',
      'Mark top, front, left and every corner on the frame, and take it apart.',
    ],
    figures: [
      ...diagonalFigures(making),
      ...eachPanel(panels, 'room over the staves', ({ spec }) =>
        spec.stave.clearance > 0 ? fine(spec.stave.clearance) : undefined,
      ),
      ...pilotFigures(making, 'rail to stile'),
      ...pilotFigures(making, 'end stave to stile'),
    ],
  };
}

/** Heights of an end stave's holes from the stave's own foot, on the bed of the bottom groove. */
function staveHoles(panel: Panel, { display }: Making['job']): string | undefined {
  const row = screwSchedule(panel).find(({ joint }) => joint === 'end stave to stile');
  const bed = panel.rail.height - panel.groove.depth;
  return (
    row &&
    lengthsText(
      row.places.map(({ y }) => y - bed),
      display,
    )
  );
}
