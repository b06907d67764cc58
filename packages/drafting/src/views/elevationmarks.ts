import { cuttingPlane } from '../layout/balloon.ts';
import { TEXT, TEXT_HEADING, TEXT_LIFT } from '../layout/style.ts';
import { arrowhead } from '../layout/terminator.ts';
import { textWidth } from '../lettering.ts';
import type { Box, Mark, Point } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { circle, line } from '../path.ts';
import { cutPlanes, detailLetters } from './detailkey.ts';
import type { Front } from './front.ts';

/** Length of the wide end of a cut line, paper mm, as `cuttingPlane` draws it, and its distance from what it stands by. */
const CUT_END = 6;
const CUT_GAP = 2.5;

/** From the end of a cut line to the far side of its letter, paper mm. */
const CUT_LETTER = 7;

/** The least radius of a circle round a detail, paper mm, so that it can be seen. */
const LEAST_RADIUS = 3;

/**
 * Where the sections are taken. Their ends stand outside the sizes on the left and below, and by the panel itself on the
 * right and above; the thin line between runs over the panel alone, so that it crosses no sizes.
 */
export function cutMarks(
  { panel, at }: Front,
  { outline, left, below }: { outline: Box; left: number; below: number },
): Mark[] {
  const { down, across } = cutPlanes(panel);
  const [, v] = at(0, down.y);
  const [u] = at(across.x, 0);
  const ends = [
    ...cuttingPlane({
      from: [left - CUT_GAP - CUT_END, v],
      to: [outline.u1 + CUT_GAP + CUT_END, v],
      letter: down.letter,
      looking: 'down',
    }),
    ...cuttingPlane({
      from: [u, outline.v0 - CUT_GAP - CUT_END],
      to: [u, below + CUT_GAP + CUT_END],
      letter: across.letter,
      looking: 'left',
    }),
  ].filter(({ role }) => role !== 'centre');
  return [
    stroke('centre', line([outline.u0, v], [outline.u1 + CUT_GAP, v])),
    stroke('centre', line([u, outline.v0 - CUT_GAP], [u, outline.v1])),
    ...ends,
  ];
}

/** How much room above the outline the cut letter takes, paper mm. */
const CUT_ROOM = CUT_GAP + CUT_END + CUT_LETTER;

/** Circles round what is drawn larger elsewhere, each with its letter on a clear spot. */
export function detailMarks({ panel, at, ratio }: Front): Mark[] {
  return detailLetters(panel)
    .filter(({ on }) => on.includes('elevation'))
    .flatMap((detail): Mark[] => {
      const centre = at(detail.at.x, detail.at.y);
      const radius = Math.max(LEAST_RADIUS, detail.radius * ratio);
      const away = radius + 1 + TEXT_HEADING * 0.7;
      const middle: Point = [centre[0] + away * Math.SQRT1_2, centre[1] - away * Math.SQRT1_2];
      return [
        stroke('dimension', circle(centre, radius)),
        stroke('paper', circle(middle, TEXT_HEADING * 0.75)),
        write('label', detail.letter, [middle[0], middle[1] + TEXT_HEADING / 2], {
          height: TEXT_HEADING,
          anchor: 'middle',
        }),
      ];
    });
}

/** Says which face this is and which edge is up. */
const FACE = 'front, this edge up';

/** The face and its upper edge named over the left end of that edge, or over the cut letter where that leaves no room. */
export function frontMark({ panel, at }: Front, { u0, v0 }: Box, detail: 'shop' | 'client'): Mark[] {
  const cut = detail === 'shop' ? at(cutPlanes(panel).across.x, 0)[0] - CUT_LETTER : Infinity;
  const [shaft, text] = [u0 + 1, u0 + 3];
  const base = v0 - 2 * TEXT_LIFT - (text + textWidth(FACE, TEXT) < cut ? 0 : CUT_ROOM);
  return [
    stroke('dimension', line([shaft, base], [shaft, base - 5])),
    arrowhead([shaft, base - 5.5], [shaft, base]),
    write('note', FACE, [text, base], { height: TEXT }),
  ];
}
