import { forceText } from '../findings/words.ts';
import { WIRE_TURNS } from '../hardware/fittings.ts';
import type { Panel } from '../panel/panel.ts';
import { type BraceDetails, type GateDetails, gateDetails, TURNBUCKLE } from '../uses/gate.ts';
import { jointFigures, screwFigures } from './screws.ts';
import { eachPanel, fineIn, lengthIn, type Making, type StepFigure, type StepText } from './step.ts';

/** The step of hanging gates: hinges, brace, latch. */
export function hangGate(making: Making): StepText {
  const { panels } = making;
  const braces = new Set(panels.map((panel) => gateDetails(panel).brace?.kind));
  return {
    title: 'Hang the gate',
    cautions: ['Keep fingers out of the hinge side while the leaf is propped.'],
    text: [
      'Set the leaf in its opening on blocks as high as the ground clearance, wedge it to the gaps, and screw the hinges on, the top one first.',
      ...(braces.has('cable') ? CABLE_TEXT : []),
      ...(braces.has('strut')
        ? [
            'Prop the latch side up by the lift below before the strut goes on. The strut lies on the back of the leaf, from the bottom of the hinge side to the top of the latch side, over the joints of rail and stile. Its screws and glue carry the push: glue it, screw it, saw its ends flush with the frame, and take the prop out when the glue is hard.',
          ]
        : []),
      'Fit the latch last, with the leaf hanging free.',
    ],
    figures: [
      ...leafFigures(making),
      ...braceFigures(making),
      ...screwFigures(making, 'hinge to stile'),
      ...screwFigures(making, 'hinge to post'),
      ...jointFigures(making, 'brace plate to frame'),
      ...jointFigures(making, 'strut to frame'),
    ],
  };
}

/** Order of parts and way of the clips are common practice, no source. */
const CABLE_TEXT: readonly string[] = [
  'Screw the plates with the eyes to the back of the leaf, at the top of the hinge side and the bottom of the latch side, each over the joint of rail and stile: one screw in the rail, one in the stile.',
  'From the top: eye, thimble in a loop of the wire with two clips, the wire, thimble in its other loop with two clips, turnbuckle opened out, eye at the bottom. The saddle of every clip sits on the long wire, its bow on the short end; tighten the clip next to the end first.',
  'On a square leaf the wire only takes up slack: see that both diagonals are alike, draw the turnbuckle until the wire just carries, and stop. More racks the leaf.',
  'Once the leaf has sagged, and only then: prop the latch side up by what it sank, take up the turnbuckle until the wire carries, and take the prop out. What a lift asks of the turnbuckle is told below.',
];

function leafFigures(making: Making): StepFigure[] {
  const { panels } = making;
  const show = lengthIn(making);
  const figure = (what: string, value: (details: GateDetails) => string) =>
    eachPanel(panels, what, (panel) => value(gateDetails(panel)));
  return [
    ...figure('opening between the posts', ({ opening }) => show(opening.width)),
    ...figure('gap between hinge post and leaf', ({ clear }) => show(clear.hinge)),
    ...figure('gap between latch post and leaf', ({ clear }) => show(clear.latch)),
    ...figure('gap over the ground', ({ clear }) => show(clear.ground)),
    ...figure('middles of the hinges, from the foot of the leaf', ({ hinges }) =>
      hinges.map(({ y }) => show(y)).join(', '),
    ),
    ...figure(
      'middle of the latch',
      ({ latch, clear }) =>
        `${show(latch.y + clear.ground)} above the ground, ${show(latch.y)} from the foot of the leaf`,
    ),
  ];
}

/** Turns to a quarter, as they are counted at the buckle. */
function turnsText(turns: number): string {
  const whole = Math.floor(turns);
  const part = ['', '1/4', '1/2', '3/4'][Math.round((turns - whole) * 4)] ?? '';
  return `${[whole || '', part].filter(Boolean).join(' ') || '0'} ${turns <= 1 ? 'turn' : 'turns'}`;
}

function braceFigures(making: Making): StepFigure[] {
  const { job, panels } = making;
  const show = lengthIn(making);
  const fine = fineIn(making);
  const figure = (what: string, value: (brace: BraceDetails, panel: Panel) => string | undefined) =>
    eachPanel(panels, what, (panel) => {
      const { brace } = gateDetails(panel);
      return brace && value(brace, panel);
    });
  const force = (size: number) => forceText(Math.abs(size), job.display);
  return [
    ...figure('brace, middle of plate to middle of plate', ({ kind, length }) =>
      kind === 'cable' ? show(length) : undefined,
    ),
    ...figure('strut, middle to middle of its ends', ({ kind, length }) =>
      kind === 'strut' ? show(length) : undefined,
    ),
    ...figure('wire to cut', ({ kind, length }) =>
      kind === 'cable'
        ? `${show(Math.ceil(length + WIRE_TURNS))}: that distance and ${show(WIRE_TURNS)} for the turns round both thimbles and through the clips, rounded up; trim what the turnbuckle leaves over`
        : undefined,
    ),
    ...figure('lift of the latch side before the strut goes on', ({ kind, lift }) =>
      kind === 'strut' ? fine(lift) : undefined,
    ),
    ...figure('only for a leaf that has sagged', ({ kind, lift, takeUp, turns }) =>
      kind === 'cable'
        ? `a lift of ${fine(lift)} at the latch draws the wire by ${fine(takeUp)}, about ${turnsText(turns)} of a turnbuckle with ${TURNBUCKLE[job.display.unit].name} thread at both ends`
        : undefined,
    ),
    ...figure('force in the brace, the leaf hanging', (brace) => force(brace.force)),
    ...figure('force in the brace with someone on the latch side', (brace, { details }) =>
      details.use === 'gate'
        ? `${force(brace.forceLoaded)}, with ${force(details.load)} pressing down on it`
        : undefined,
    ),
  ];
}
