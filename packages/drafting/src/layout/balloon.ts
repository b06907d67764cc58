import { textWidth } from '../lettering.ts';
import type { Mark, Point } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { circle, line } from '../path.ts';
import { TEXT, TEXT_HEADING, TEXT_LARGE } from './style.ts';
import { arrowhead } from './terminator.ts';

/** Radius of a balloon, mm: 8 mm across, about twice its letter. Common practice, no source. */
export const BALLOON_RADIUS = 4;

/** From the middle of a capital down to its baseline, in heights. */
const HALF = 0.5;

/** A letter or number of up to three signs, in a circle that ties a part to the parts list; small where it is wide. */
export function balloon([u, v]: Point, text: string, of?: string): Mark[] {
  const chord = 2 * Math.sqrt(BALLOON_RADIUS ** 2 - (TEXT_LARGE / 2) ** 2) - 1;
  const height = textWidth(text, TEXT_LARGE) <= chord ? TEXT_LARGE : TEXT;
  return [
    stroke('dimension', circle([u, v], BALLOON_RADIUS), of),
    write('label', text, [u, v + HALF * height], { height, anchor: 'middle', ...(of === undefined ? {} : { of }) }),
  ];
}

/**
 * A thin circle round what is drawn larger elsewhere, with the letter of that detail outside it.
 * `towards` is the direction of the letter in degrees, anticlockwise from the right; 45 unless given.
 */
export function detailCircle({
  at,
  radius,
  letter,
  towards = 45,
}: {
  readonly at: Point;
  /** Paper mm. */
  readonly radius: number;
  readonly letter: string;
  readonly towards?: number;
}): Mark[] {
  const turn = (towards * Math.PI) / 180;
  const away = radius + 1 + TEXT_HEADING * 0.7;
  const middle: Point = [at[0] + away * Math.cos(turn), at[1] - away * Math.sin(turn)];
  return [
    stroke('dimension', circle(at, radius)),
    write('label', letter, [middle[0], middle[1] + HALF * TEXT_HEADING], { height: TEXT_HEADING, anchor: 'middle' }),
  ];
}

/**
 * The line along which a section is cut: wide at its ends, thin dash and dot between, with arrows the way one looks and
 * the letter beside each arrow, within the line's length (ISO 128-3 practice, from memory). `looking` is the direction on paper.
 */
export function cuttingPlane({
  from,
  to,
  letter,
  looking,
}: {
  readonly from: Point;
  readonly to: Point;
  readonly letter: string;
  readonly looking: 'up' | 'down' | 'left' | 'right';
}): Mark[] {
  const [lu, lv] = { up: [0, -1], down: [0, 1], left: [-1, 0], right: [1, 0] }[looking] as [number, number];
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
  const [cu, cv] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const end = (p: Point, way: 1 | -1): Mark[] => {
    const tip: Point = [p[0] + lu * 7, p[1] + lv * 7];
    const letterAt: Point = [p[0] + way * cu * 3.5 + lu * 4.2, p[1] + way * cv * 3.5 + lv * 4.2];
    return [
      stroke('edge', line(p, [p[0] + way * cu * 6, p[1] + way * cv * 6])),
      stroke('dimension', line(p, tip)),
      arrowhead(tip, p),
      write('label', letter, [letterAt[0], letterAt[1] + HALF * TEXT_HEADING], {
        height: TEXT_HEADING,
        anchor: 'middle',
      }),
    ];
  };
  return [
    stroke('centre', line([from[0] + cu * 6, from[1] + cv * 6], [to[0] - cu * 6, to[1] - cv * 6])),
    ...end(from, 1),
    ...end(to, -1),
  ];
}
