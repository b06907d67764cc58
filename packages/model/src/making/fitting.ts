import type { ScrewRow } from '../hardware/row.ts';
import { screwSchedule } from '../hardware/schedule.ts';
import { lengthsText } from '../hardware/where.ts';
import type { Panel } from '../panel/panel.ts';
import { sideFixings } from '../uses/fixings.ts';
import { escapeScreens } from './escape.ts';
import { eachPanel, fineIn, lengthIn, type Making, roundIn, type StepText } from './step.ts';

/** Steps from the grooves to parts that are ready to be joined. */
export function frameSteps(making: Making): StepText[] {
  return [grooves(making), sticks(making), dryFit(making), ease(making)];
}

/** Shortest piece that is run over a cutter: 12 in or 300 mm, common practice, no source. */
const SHORTEST_GROOVED = 300;

function grooves(making: Making): StepText {
  const { panels, job } = making;
  const show = fineIn(making);
  const size = lengthIn(making);
  const short = panels.filter(({ rail }) => rail.length < SHORTEST_GROOVED);
  const drains = job.site.where === 'outdoors';
  const drill = roundIn(making, 6, '1/4');
  return {
    title: 'Cut the grooves in the rails',
    cautions: [
      'Measure the printed check bar of every stick and template before any of them is used: a page printed at the wrong size is wrong everywhere.',
      `Groove nothing shorter than ${roundIn(making, SHORTEST_GROOVED, '12')} over a cutter. Press the rail to fence and table by featherboards before and over the cutter; hands never over it. Sneak up on the depth in two or three passes. Never lower a rail onto a turning saw blade or dado set.`,
    ],
    text: [
      'In the middle of the inner edge of both rails, with a router and straight bit, with a dado set, or with a saw blade in as many passes beside one another as it takes until the width is out. Cut from both faces with one fence setting, so that the groove is centred.',
      ...(short.length > 0
        ? [
            `The rails of ${short.map(({ name }) => name).join(', ')} are too short for that: groove both as one piece, end to end, and crosscut them afterwards.`,
          ]
        : []),
      'The groove runs from stile to stile and stops there: the end staves stand against the stiles. The rail end template shows its end. With the router, clamp a stop at either end and square the ends with a chisel. With saw or dado set, run it through and glue plugs of the same wood into the ends, over the stiles; the corner screws pass along their edges, so let the glue harden before they are bored.',
      'Try the width with a stave: it slides in by hand without force and does not twist.',
      ...(drains
        ? [
            `Outdoors the groove of the bottom rail is a gutter. Drill drain holes of ${drill} down through the rail, in the middle of the groove, one half-way between every two staves (common practice, no source).`,
          ]
        : []),
    ],
    figures: [
      ...eachPanel(panels, 'groove depth', ({ groove }) => show(groove.depth)),
      ...eachPanel(panels, 'groove width', ({ groove }) => `${show(groove.width)}, ${playText(groove, show)}`),
      ...eachPanel(panels, 'from each face to the groove', ({ groove, rail }) => show((rail.depth - groove.width) / 2)),
      ...eachPanel(panels, 'groove, from the end of the rail', ({ stile }) => size(stile.width)),
      ...eachPanel(panels, 'groove, its length', ({ clear }) => size(clear.width)),
      ...(drains
        ? eachPanel(panels, `drain holes of ${drill} in the bottom rail`, ({ staves }) => String(staves.count - 1))
        : []),
    ],
  };
}

function playText({ clearance }: Panel['groove'], show: (length: number) => string): string {
  return clearance > 0.05 ? `${show(clearance)} more than the stave` : 'as the stave';
}

function sticks(making: Making): StepText {
  const { panels } = making;
  const show = lengthIn(making);
  return {
    title: 'Mark with the sticks and templates',
    cautions: ['Only with sticks and templates whose check bar was measured, as the step before tells.'],
    text: [
      'Clamp both rails together, ends flush, lay the stave stick along them and square across the left face of every stave. The end staves stand against the stiles and need no mark.',
      'Mark from the stick only, never from stave to stave: a pitch stepped off drifts.',
      'Lay the course stick on each stile, the foot of the stick flush with the foot of the stile, and mark the lower edge of every course.',
      `The steps below give the heights of screws${making.panels.some(({ details }) => details.use === 'gate') ? ' and hinges' : ' and fixings'} from the foot of the frame, which is the lower edge of the bottom rail. On the stile and on its stick the same hole stands lower by the height of that rail: mark it from the stick.`,
      'Fold the rail end template round each end of the rails, and lay the stile end template on the ends of the stiles: they place groove, corner screws and first stave.',
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
  const fine = fineIn(making);
  const { panels, job } = making;
  const later = drilledLater(panels);
  const tight = panels.some(({ spec }) => spec.stave.clearance <= 0);
  const throughStiles = panels.some((panel) => isScrewedThrough(panel) && !escapeScreens([panel]).length);
  return {
    title: 'Dry fit with the top rail on',
    cautions: [],
    text: [
      'Before anything is woven or glued, set the frame up with every stave in both grooves and the top rail on. With slats in, no stave can be changed any more.',
      `Every stave stands on the bed of the bottom groove${tight ? '. The rails have to close on the stiles: plane up to ' : ', with room over it in the top one.'}${tight ? `${roundIn(making, 3, '1/8')} off the top end of a stave that holds them apart.` : ''}`,
      'Lay the lower left corner on the corner template: rail, stile and first stave lie where it shows them.',
      'Measure both diagonals.',
      'Mark top, front and left on the frame, and take it apart.',
      `Drill all holes of the frame now, where the sticks and templates have them: corners and end staves${throughStiles ? ', and the fixings through the stiles' : ''}.${later.length > 0 ? ` Holes for ${later.join(', ')} are drilled in the steps that fix them.` : ' Later steps only drive the screws.'}`,
    ],
    figures: [
      ...eachPanel(panels, 'diagonals, both', ({ diagonal }) => show(diagonal)),
      ...eachPanel(panels, 'room over the staves', ({ spec }) =>
        spec.stave.clearance > 0 ? fine(spec.stave.clearance) : undefined,
      ),
      ...eachPanel(panels, 'end stave screws, up the stave from its own foot, which stands in the groove', (panel) =>
        staveHoles(panel, job),
      ),
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

/** Joints that are drilled in the steps that close them, each in a word. */
const LATER: Readonly<Partial<Record<ScrewRow['joint'], string>>> = {
  'cover strip to top rail': 'pins of the cover strips',
  'stop strip to stile': 'pins of the stop strips',
  'foot to bottom rail': 'the feet',
  'cap rail to top rail': 'the cap rail',
  'hinge to stile': 'hinges',
  'brace plate to frame': 'brace plates',
  'strut to frame': 'the strut',
};

function drilledLater(panels: readonly Panel[]): string[] {
  const joints = panels.flatMap((panel) => screwSchedule(panel).map(({ joint }) => joint));
  const brackets = panels.some((panel) => hasFixings(panel) && sideFixings(panel).kind === 'bracket');
  return [...new Set(joints.flatMap((joint) => LATER[joint] ?? [])), ...(brackets ? ['brackets'] : [])];
}

function hasFixings({ details }: Panel): boolean {
  return details.use === 'screen' || details.use === 'guard';
}

/** Whether the panel is held by screws that pass through its stiles. */
function isScrewedThrough({ details }: Panel): boolean {
  return details.use === 'screen' && details.mounting !== 'posts';
}

function ease(making: Making): StepText {
  const arris = roundIn(making, 1, '1/32');
  return {
    title: 'Ease and sand the parts',
    cautions: [],
    text: [
      'Now, for once woven no paper gets between: sand staves, strips and the inner faces of the frame. The slats were smoothed before they were measured: take no more off them.',
      `Ease every arris of staves and slats by about ${arris}: a slat bears on the arris of a stave, and a sharp one marks it. Leave the ends of the stiles and the faces that are glued as the saw left them.`,
    ],
    figures: [],
  };
}
