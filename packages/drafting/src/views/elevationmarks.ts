import { boxOf } from '../ink.ts';
import { cuttingPlane } from '../layout/balloon.ts';
import { grown, overlaps } from '../layout/clearance.ts';
import { type NoteTarget, textBoxes } from '../layout/notes.ts';
import { TEXT, TEXT_LARGE, TEXT_LIFT } from '../layout/style.ts';
import { arrowhead } from '../layout/terminator.ts';
import { textWidth } from '../lettering.ts';
import type { Box, Mark, Point } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { circle, line, polyline } from '../path.ts';
import { cutPlanes, type DetailLetter, detailLetters } from './detailkey.ts';
import { freeOf } from './freeink.ts';
import type { Front } from './front.ts';

/** Length of the wide end of a cut line, paper mm, as `cuttingPlane` draws it, and its distance from what it stands by. */
const CUT_END = 6;
const CUT_GAP = 2.5;

/** From a cut line to the tip of its arrow and the far side of its letter, paper mm. */
const CUT_ARROW = 7;

/** The least radius of a circle round a detail, paper mm, so that it can be seen. */
const LEAST_RADIUS = 3;

/** What the cut lines need to know of what is drawn already. */
export interface CutPlace {
  readonly outline: Box;
  /** All that is drawn. */
  readonly around: Box;
  /** Where the right end of the level cut stands, when not outside all that is drawn. */
  readonly right?: number;
}

/**
 * Where the sections are taken. The ends of the cut lines stand outside sizes and names, that of U above and that of T at the
 * right by the panel itself where there is room; the thin line between runs over the panel alone, so that it crosses nothing else.
 */
export function cutMarks({ panel, at }: Front, { outline, around, right }: CutPlace): Mark[] {
  const { down, across } = cutPlanes(panel);
  const [, v] = at(0, down.y);
  const [u] = at(across.x, 0);
  const ends = [
    ...cuttingPlane({
      from: [around.u0 - CUT_GAP - CUT_END, v],
      to: [right ?? around.u1 + CUT_GAP + CUT_END, v],
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

/** The right end of the level cut beside the panel, clear of what stands out there, and the room that it takes. */
export function cutBeside(
  { panel, at }: Front,
  { u1 }: Box,
  beside: readonly Box[],
): { readonly right: number; readonly box: Box } {
  const [, v] = at(0, cutPlanes(panel).down.y);
  const [v0, v1] = [v - 1.5, v + 8.5];
  const out = Math.max(u1, ...beside.filter((one) => one.v0 < v1 && one.v1 > v0).map((one) => one.u1));
  const right = out + CUT_GAP + CUT_END;
  return { right, box: { u0: out + CUT_GAP - 1, v0, u1: right + 1, v1 } };
}

/** How much room above the outline the cut letter takes, paper mm. */
const CUT_ROOM = CUT_GAP + CUT_END;

/** From the outline to the middle of a detail's letter off its corner, and from one letter to the next, paper mm. */
const LETTER_OFF = 3.4;
const LETTER_STEP = 6;

/** From the outline to the line that leads along it to a letter, paper mm: extension lines start further out. */
const LEAD_OFF = 0.8;

/** How far a detail's circle may stand out beyond the panel, paper mm, so that it stays clear of the sizes beside it. */
const MOST_OUT = 6;

/** Directions in which a letter is tried beside its circle, to the left and under or over the panel, degrees. */
const BESIDE = [180, 160, 200, 140, 220, 120, 240, 100, 260];

/** From a circle to the middle of the letter beside it, paper mm. */
const BESIDE_OFF = 0.8 + TEXT_LARGE / 2;

/**
 * Circles round what is drawn larger elsewhere. Those at the left have their letters beside them, off the panel, where
 * sizes and fittings in `ink` leave room; else off the nearer corner, at the end of a line along the panel's edge.
 */
export function detailMarks(front: Front, outline: Box, ink: readonly Mark[]): Mark[] {
  const taken = { up: 0, down: 0 };
  const [cut] = front.at(cutPlanes(front.panel).across.x, 0);
  return onElevation(front).flatMap((detail): Mark[] => {
    const centre = front.at(detail.at.x, detail.at.y);
    const ring = stroke('dimension', circle(centre, detail.radius));
    if (!isLeft(front, detail)) return [ring];
    // Clear of the panel, and of the cut's letter over it.
    const beside = BESIDE.map((towards): readonly Mark[] => {
      const turn = (towards * Math.PI) / 180;
      const off = detail.radius + BESIDE_OFF;
      return [detailLetter(detail.letter, [centre[0] + off * Math.cos(turn), centre[1] - off * Math.sin(turn)])];
    });
    const off = beside.filter((marks) =>
      textBoxes(marks).every((box) => !overlaps(box, outline) && (box.v0 > outline.v0 || box.u1 < cut - CUT_ARROW)),
    );
    const free = freeOf(off, ink);
    if (free) return [ring, ...free];
    const way = centre[1] > (outline.v0 + outline.v1) / 2 ? 1 : -1;
    const edge = way > 0 ? outline.v1 : outline.v0;
    const u = outline.u0 - LEAD_OFF;
    const far = Math.min(detail.radius, Math.abs(centre[0] - u));
    const start: Point = [centre[0] - far, centre[1] + way * Math.sqrt(detail.radius ** 2 - far ** 2)];
    const step = taken[way > 0 ? 'down' : 'up']++ * LETTER_STEP;
    // On a narrow panel the upper end of the cut stands over the corner.
    const first = Math.min(outline.u0, way < 0 ? cut - CUT_ARROW : Infinity) - LETTER_OFF;
    const letter: Point = [first - step, edge + way * LETTER_OFF];
    return [
      ring,
      stroke('dimension', polyline([start, [u, edge + way * LEAD_OFF], [u - 0.6, letter[1] - way * 1.6]])),
      detailLetter(detail.letter, letter),
    ];
  });
}

/** The letter of a detail with its middle there. */
function detailLetter(letter: string, [u, v]: Point): Mark {
  return write('label', letter, [u, v + TEXT_LARGE * 0.36], { height: TEXT_LARGE, anchor: 'middle' });
}

/** The details away from the left, to be named beside the view, and a point of their circles. */
export function detailTargets(front: Front): NoteTarget[] {
  return onElevation(front).flatMap((detail): NoteTarget[] => {
    if (isLeft(front, detail)) return [];
    const [u, v] = front.at(detail.at.x, detail.at.y);
    return [{ at: [u + detail.radius, v], text: `see ${detail.letter}`, end: 'arrow' }];
  });
}

/** The boxes of the circles round details. */
export function detailBoxes(front: Front): Box[] {
  return onElevation(front).map(({ at, radius }) => grown(boxOf([front.at(at.x, at.y)]), radius));
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

/** Says which face this is and which edge is up. */
const FACE = 'front, this edge up';

/** The face and its upper edge named over the left end of that edge, or over the cut letter where that leaves no room. */
export function frontMark({ panel, at }: Front, { u0, u1, v0 }: Box, detail: 'shop' | 'client'): Mark[] {
  const cut = detail === 'shop' ? at(cutPlanes(panel).across.x, 0)[0] - CUT_ARROW : Infinity;
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
