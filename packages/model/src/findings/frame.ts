import { INCH } from '../length.ts';
import { panelCentre } from '../uses/weight.ts';
import { panelRule, type Rule } from './rule.ts';
import { lengthText, massText, unlike, unlikeLengths, unlikePercents } from './words.ts';

/** Limits of frames, mm and kg; common practice, no source, unless the rule says otherwise. */
export const FRAME: {
  readonly shallow: number;
  readonly deep: number;
  readonly clearance: number;
  readonly wall: number;
  readonly staveShare: number;
  readonly side: number;
  readonly lift: number;
  readonly square: number;
} = {
  shallow: INCH / 4,
  deep: 0.5,
  clearance: INCH / 16,
  wall: INCH / 4,
  staveShare: 0.3,
  side: 96 * INCH,
  lift: 25,
  square: INCH / 8,
};

/** Rules on rails, grooves, staves and the frame as a whole. */
export const frameRules: readonly Rule[] = [
  panelRule({
    code: 'groove-depth',
    reason: 'staves jump out of a shallow groove; a deep one leaves the rail weak and holds water',
    source: 'common practice, no source',
    judge: ({ groove, rail, display }) => {
      const deepest = rail.height * FRAME.deep;
      const shallow = groove.depth < FRAME.shallow - 1e-9;
      if (!shallow && groove.depth <= deepest + 1e-9) return undefined;
      return {
        level: 'caution',
        text: shallow ? 'The grooves are shallow.' : 'The grooves take more than half of the rail’s height.',
        figure: unlikeLengths(groove.depth, shallow ? FRAME.shallow : deepest, display)[0],
        limit: `${lengthText(FRAME.shallow, display)} to ${lengthText(deepest, display)}`,
        judged: (found, limits) => `They are ${found} deep; ${limits} is usual`,
        mend: 'a groove a third as deep as the rail is high',
        field: 'groove.depth',
      };
    },
  }),
  panelRule({
    code: 'groove-wide',
    reason: 'staves rattle and turn in a wide groove, and the weave loses its line',
    source: 'common practice, no source',
    judge: ({ groove, display }) => {
      if (groove.clearance <= FRAME.clearance + 1e-9) return undefined;
      const [figure, limit] = unlikeLengths(groove.clearance, FRAME.clearance, display);
      return {
        level: 'caution',
        text: 'The grooves are much wider than the staves.',
        figure,
        limit,
        judged: (found, most) => `The staves have ${found} of play; ${most} is the most`,
        mend: `cut the groove to the stave: ${display.unit === 'in' ? '1/32 in' : '1 mm'} of play slides by hand`,
        field: 'groove.clearance',
      };
    },
  }),
  panelRule({
    code: 'groove-walls',
    reason: 'thin walls beside a groove split when a stave is forced or a screw comes near',
    source: 'common practice, no source',
    judge: ({ groove, rail, display }) => {
      const wall = (rail.depth - groove.width) / 2;
      if (wall >= FRAME.wall - 1e-9) return undefined;
      const [figure, limit] = unlikeLengths(wall, FRAME.wall, display);
      return {
        level: 'caution',
        text: 'The groove leaves thin walls on the rail.',
        figure,
        limit,
        judged: (found, least) => `The wood beside the groove is ${found} thick; ${least} is the least`,
        mend: 'deeper rails, or thinner staves',
      };
    },
  }),
  panelRule({
    code: 'stave-wide',
    reason:
      'the bending was checked for staves up to three tenths of the pitch; wider ones leave slats no room to turn',
    source: 'the widths for which the bending here was compared with a finer reckoning',
    judge: ({ staves }) => {
      const share = staves.width / staves.pitch;
      if (share <= FRAME.staveShare + 1e-9) return undefined;
      const [figure, limit] = unlikePercents(share, FRAME.staveShare);
      return {
        level: 'caution',
        text: 'The staves are wide for their pitch.',
        figure,
        limit,
        judged: (found, most) => `A stave takes up ${found} of the distance to the next; keep to ${most}`,
        mend: 'narrower staves, or fewer of them',
      };
    },
  }),
  panelRule({
    code: 'frame-size',
    reason: 'a larger frame racks and twists, and boards of that length are seldom straight',
    source: 'common practice, no source',
    judge: ({ outside, display }) => {
      const side = Math.max(outside.width, outside.height);
      if (side <= FRAME.side + 1e-9) return undefined;
      const [figure, limit] = unlikeLengths(side, FRAME.side, display);
      return {
        level: 'caution',
        text: 'The panel is large for one frame.',
        figure,
        limit,
        judged: (found, most) => `Its longer side is ${found}; ${most} is the most for one frame`,
        mend: 'two panels side by side, or a heavier frame with a middle rail',
      };
    },
  }),
  panelRule({
    code: 'frame-weight',
    reason: 'more than one person should lift: wide panels are awkward long before they are heavy',
    source: 'manual handling guideline figure of 25 kg close to the body at waist height (from memory)',
    judge: (panel) => {
      const { mass } = panelCentre(panel);
      if (mass <= FRAME.lift) return undefined;
      const [figure, limit] = unlike(mass, FRAME.lift, (kilos, more) => massText(kilos, panel.display, more));
      return {
        level: 'note',
        text: 'The panel is too heavy for one to lift.',
        figure,
        limit,
        judged: (found, most) => `It weighs ${found} without hardware; ${most} is the most for one`,
        mend: 'two people, or a hoist; prop it before the first screw',
      };
    },
  }),
  panelRule({
    code: 'diagonals',
    reason: 'a frame out of square leans over and jams in its opening',
    source:
      'geometry: it leans by the difference of the diagonals × diagonal / (2 × width); 1/8 in of difference is common practice, no source',
    judge: ({ opening, outside, diagonal, display }) => {
      if (!opening) return undefined;
      const gap = Math.min(opening.gaps.left, opening.gaps.right);
      const difference = (2 * outside.width * gap) / diagonal;
      if (difference >= FRAME.square - 1e-9) return undefined;
      const [figure, limit] = unlikeLengths(difference, FRAME.square, display);
      return {
        level: 'caution',
        text: 'The side gaps leave little for a frame out of square.',
        figure,
        limit,
        judged: (found, held) => `The diagonals must agree within ${found}; a good shop holds ${held}`,
        mend: 'wider side gaps, or check the diagonals twice before the glue sets',
      };
    },
  }),
];
