import { cuttingPlane } from '../layout/balloon.ts';
import type { NoteTarget } from '../layout/notes.ts';
import { TEXT, TEXT_LARGE, TEXT_LIFT } from '../layout/style.ts';
import { arrowhead } from '../layout/terminator.ts';
import { textWidth } from '../lettering.ts';
import type { Box, Mark, Point } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { circle, line } from '../path.ts';
import { cutPlanes, type DetailLetter, detailLetters } from './detailkey.ts';
import { type Front, faceBox } from './front.ts';

/** Length of the wide end of a cut line, paper mm, as `cuttingPlane` draws it, and its distance from what it stands by. */
const CUT_END = 6;
const CUT_GAP = 2.5;

/** From the end of a cut line to the far side of its letter, paper mm. */
const CUT_LETTER = 7;

/** The least radius of a circle round a detail, paper mm, so that it can be seen. */
const LEAST_RADIUS = 3;

/**
 * Where the sections are taken. The ends of the cut lines stand outside all sizes and names, that of B above by the panel
 * itself; the thin line between runs over the panel alone, so that it crosses nothing else. `around` is what is drawn.
 */
export function cutMarks({ panel, at }: Front, { outline, around }: { outline: Box; around: Box }): Mark[] {
  const { down, across } = cutPlanes(panel);
  const [, v] = at(0, down.y);
  const [u] = at(across.x, 0);
  const ends = [
    ...cuttingPlane({
      from: [around.u0 - CUT_GAP - CUT_END, v],
      to: [around.u1 + CUT_GAP + CUT_END, v],
      letter: down.letter,
      looking: 'down',
    }),
    ...cuttingPlane({
      from: [u, outline.v0 - CUT_GAP - CUT_END],
      to: [u, around.v1 + CUT_GAP + CUT_END],
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

/** Half the room that a detail's letter takes on the weave, paper mm. */
const LETTER_HALF = 2.9;

/** How far a detail's circle may stand out beyond the panel, paper mm, so that it stays clear of the sizes beside it. */
const MOST_OUT = 6;

/** Circles round what is drawn larger elsewhere; those at the left with their letters. */
export function detailMarks(front: Front, outline: Box): Mark[] {
  return onElevation(front).flatMap((detail): Mark[] => {
    const centre = front.at(detail.at.x, detail.at.y);
    const ring = stroke('dimension', circle(centre, detail.radius));
    if (!isLeft(front, detail)) return [ring];
    const inside = spotOnWeave(front, detail);
    const middle = inside ?? spotOutside(centre, outline);
    const towards = Math.hypot(middle[0] - centre[0], middle[1] - centre[1]);
    const reach = (length: number): Point => [
      centre[0] + ((middle[0] - centre[0]) * length) / towards,
      centre[1] + ((middle[1] - centre[1]) * length) / towards,
    ];
    return [
      ring,
      inside
        ? stroke('paper', circle(middle, LETTER_HALF))
        : stroke('dimension', line(reach(detail.radius), reach(towards - LETTER_HALF))),
      write('label', detail.letter, [middle[0], middle[1] + TEXT_LARGE / 2], {
        height: TEXT_LARGE,
        anchor: 'middle',
      }),
    ];
  });
}

/** The details away from the left, to be named beside the view: their letters, and a point of their circles. */
export function detailTargets(front: Front): NoteTarget[] {
  return onElevation(front).flatMap((detail): NoteTarget[] => {
    if (isLeft(front, detail)) return [];
    const [u, v] = front.at(detail.at.x, detail.at.y);
    return [{ at: [u + detail.radius, v], text: detail.letter, kind: 'letter', end: 'arrow' }];
  });
}

/** The details that the elevation marks, their radius on paper. */
function onElevation({ panel, ratio }: Front): DetailLetter[] {
  const most = (panel.stile.width / 2) * ratio + MOST_OUT;
  return detailLetters(panel)
    .filter(({ on }) => on.includes('elevation'))
    .map((detail) => ({ ...detail, radius: Math.min(most, Math.max(LEAST_RADIUS, detail.radius * ratio)) }));
}

function isLeft({ panel }: Front, { at }: DetailLetter): boolean {
  return at.x < panel.outside.width / 3;
}

/** Where the letter of a detail at the left stands on the weave, beside the circle; absent without room for it. */
function spotOnWeave({ panel, at }: Front, detail: DetailLetter): Point | undefined {
  const { clear } = panel;
  const right = clear.left + clear.width;
  const box = faceBox(at, { x0: clear.left, y0: clear.bottom, x1: right, y1: clear.bottom + clear.height });
  if (box.u1 - box.u0 < 5 * LETTER_HALF || box.v1 - box.v0 < 6 * LETTER_HALF) return undefined;
  const [u, v] = at(detail.at.x, detail.at.y);
  const away = (detail.radius + LETTER_HALF) * Math.SQRT1_2;
  return [
    Math.max(u + away, box.u0 + LETTER_HALF),
    Math.min(Math.max(v - away, box.v0 + LETTER_HALF), box.v1 - LETTER_HALF),
  ];
}

/** Where the letter stands otherwise: off the nearer left corner, between the sizes on the left and those below. */
function spotOutside([, v]: Point, { u0, v0, v1 }: Box): Point {
  const off = LETTER_HALF + 0.5;
  return [u0 - off, v > (v0 + v1) / 2 ? v1 + off : v0 - off];
}

/** Says which face this is and which edge is up. */
const FACE = 'front, this edge up';

/** The face and its upper edge named over the left end of that edge, or over the cut letter where that leaves no room. */
export function frontMark({ panel, at }: Front, { u0, u1, v0 }: Box, detail: 'shop' | 'client'): Mark[] {
  const cut = detail === 'shop' ? at(cutPlanes(panel).across.x, 0)[0] - CUT_LETTER : Infinity;
  const wide = textWidth(FACE, TEXT);
  const beside = u0 + 3 + wide < cut;
  // Over the cut letter it ends with the panel, out of the way of names at the right.
  const text = beside ? u0 + 3 : Math.min(u0 + 3, u1 - wide);
  const shaft = text - 2;
  const base = v0 - 2 * TEXT_LIFT - (beside ? 0 : CUT_ROOM);
  return [
    stroke('dimension', line([shaft, base], [shaft, base - 5])),
    arrowhead([shaft, base - 5.5], [shaft, base]),
    write('note', FACE, [text, base], { height: TEXT }),
  ];
}
