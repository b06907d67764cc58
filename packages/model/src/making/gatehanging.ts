import { forceText } from '../findings/words.ts';
import { WIRE_TURNS } from '../hardware/fittings.ts';
import { screwSchedule } from '../hardware/schedule.ts';
import { INCH } from '../length.ts';
import type { Panel } from '../panel/panel.ts';
import { type BraceDetails, type GateDetails, gateDetails, TURNBUCKLE } from '../uses/gate.ts';
import { hardPilot, jointFigures, screwFigures } from './screws.ts';
import { eachPanel, fineIn, lengthIn, type Making, partFigures, type StepFigure, type StepText } from './step.ts';

/** The step of hanging gates: hinges, brace, latch. */
export function hangGate(making: Making): StepText {
  const { panels } = making;
  const braces = new Set(panels.map((panel) => gateDetails(panel).brace?.kind));
  return {
    title: 'Hang the gate',
    cautions: ['Keep fingers out of the hinge side while the leaf is propped.'],
    text: [
      'Set the leaf in its opening on blocks as high as the ground clearance, wedge it to the gaps, and screw the hinges on, the top one first. The face it opens to stands level with the faces of the posts, so that the knuckles of the hinges are clear.',
      ...(braces.has('cable') ? CABLE_TEXT : []),
      ...(braces.has('strut')
        ? [
            'Prop the latch side until both diagonals are alike before the strut goes on: it holds the leaf square, it does not lift it. The strut lies on the back of the leaf, from the bottom of the hinge side to the top of the latch side, its middle over the joints of rail and stile, cut square and longer than it ends up. Its screws and glue carry the push: glue it, screw it, saw off what stands out past the edges of the frame, level with them, and take the prop out when the glue is hard.',
          ]
        : []),
      'Fit the latch last, with the leaf hanging free, in the middle of the stile and clear of the screws in it; what goes through the stile, so that it opens from both sides, is bored as its maker has it.',
      'Either the keep of the latch stops the leaf, or a stop strip on the latch post does, which is in none of these lists: as high as the leaf, screwed to the side of the post that looks at the leaf, its edge where the far face of the closed leaf comes (sizes below), and left out where the brace is in its way.',
    ],
    figures: [
      ...leafFigures(making),
      ...braceFigures(making),
      ...screwFigures(making, 'hinge to stile'),
      ...screwFigures(making, 'hinge to post'),
      ...eachPanel(panels, 'hinge to post, pilot where the post is hardwood', (panel) => {
        const fastener = screwSchedule(panel).find(({ joint }) => joint === 'hinge to post')?.fastener;
        return fastener?.kind === 'screw' ? hardPilot(fastener, making.job) : undefined;
      }),
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

/** How far a stop strip on the latch post reaches over the leaf, mm: 3/8 in or 10 mm; common practice, no source. */
const STOP_LAP = { in: 0.375 * INCH, mm: 10 } as const;

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
    ...eachPanel(panels, 'stop strip, if there is one', (panel) => {
      const { swing, clear } = gateDetails(panel);
      const [opens, stops] = swing === 'towards the front' ? ['front', 'back'] : ['back', 'front'];
      const lap = STOP_LAP[panel.display.unit];
      return `against the ${stops} of the leaf, ${show(panel.outside.depth)} behind the ${opens} faces of the posts; ${show(clear.latch + lap)} thick: the gap at the latch and ${show(lap)} over the leaf`;
    }),
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
      kind === 'cable' ? `${show(length)} if built as planned: measure it on the leaf` : undefined,
    ),
    ...figure('strut, between the middles of the joints it lies over', ({ kind, length }) =>
      kind === 'strut' ? show(length) : undefined,
    ),
    ...partFigures(making, ['strut'], ({ length }) => `cut ${show(length)}`),
    ...figure('wire to cut', ({ kind, length }) =>
      kind === 'cable'
        ? `${show(Math.ceil(length + WIRE_TURNS))}: that distance and ${show(WIRE_TURNS)} for the turns round both thimbles and through the clips, rounded up, for a leaf built as planned; trim what the turnbuckle leaves over`
        : undefined,
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
