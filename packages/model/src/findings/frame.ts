import { INCH } from '../length.ts';
import { panelCentre } from '../uses/weight.ts';
import { panelRule, type Rule } from './rule.ts';
import { lengthText, massText } from './words.ts';

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
        figure: lengthText(groove.depth, display),
        limit: `${lengthText(FRAME.shallow, display)} to ${lengthText(deepest, display)}`,
        mend: 'a groove a third as deep as the rail is high',
      };
    },
  }),
  panelRule({
    code: 'groove-wide',
    reason: 'staves rattle and turn in a wide groove, and the weave loses its line',
    source: 'common practice, no source',
    judge: ({ groove, display }) => {
      if (groove.clearance <= FRAME.clearance + 1e-9) return undefined;
      return {
        level: 'caution',
        text: 'The grooves are much wider than the staves.',
        figure: `${lengthText(groove.clearance, display)} of play`,
        limit: lengthText(FRAME.clearance, display),
        mend: 'cut the groove to the stave: 1/32 in or 1 mm of play slides by hand',
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
      return {
        level: 'caution',
        text: 'The groove leaves thin walls on the rail.',
        figure: lengthText(wall, display),
        limit: lengthText(FRAME.wall, display),
        mend: 'deeper rails, or thinner staves',
      };
    },
  }),
  panelRule({
    code: 'stave-wide',
    reason:
      'the bending was checked for staves up to three tenths of the pitch; wider ones leave slats no room to turn',
    source: 'derived for this project',
    judge: ({ staves }) => {
      const share = staves.width / staves.pitch;
      if (share <= FRAME.staveShare + 1e-9) return undefined;
      return {
        level: 'caution',
        text: 'The staves are wide for their pitch.',
        figure: `${share.toFixed(2)} of the pitch`,
        limit: String(FRAME.staveShare),
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
      return {
        level: 'caution',
        text: 'The panel is large for one frame.',
        figure: lengthText(side, display),
        limit: lengthText(FRAME.side, display),
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
      return {
        level: 'note',
        text: 'The panel is too heavy for one to lift.',
        figure: massText(mass, panel.display),
        limit: massText(FRAME.lift, panel.display),
        mend: 'two people, or a hoist; prop it before the first screw',
      };
    },
  }),
  panelRule({
    code: 'diagonals',
    reason:
      'a frame out of square leans by its difference of diagonals × diagonal / (2 × width) and jams in its opening',
    source: 'geometry; 1/8 in of difference is what a good shop holds (common practice, no source)',
    judge: ({ opening, outside, diagonal, display }) => {
      if (!opening) return undefined;
      const gap = Math.min(opening.gaps.left, opening.gaps.right);
      const difference = (2 * outside.width * gap) / diagonal;
      if (difference >= FRAME.square - 1e-9) return undefined;
      return {
        level: 'caution',
        text: 'The side gaps leave little for a frame out of square.',
        figure: `diagonals alike within ${lengthText(difference, display)}`,
        limit: lengthText(FRAME.square, display),
        mend: 'wider side gaps, or check the diagonals twice before the glue sets',
      };
    },
  }),
];
