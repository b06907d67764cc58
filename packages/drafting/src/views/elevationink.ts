import { sideFixings } from '@wattlewright/model';
import type { Box, PathMark } from '../mark.ts';
import { stroke } from '../mark.ts';
import { line, polygon, polyline, rectangle } from '../path.ts';
import { braceOutline, type Fitting, fittings, grounds } from './fittings.ts';
import { type Front, faceBox, frameFront, letterOf, weaveFront, woodFace } from './front.ts';
import { partOf } from './partof.ts';

/** How far a floor or ground line runs on beyond the panel to the right, paper mm. */
const GROUND_PAST = 6;

/** The panel from the front, all of it but sizes and names: back to front, then what is hidden, then what is around. */
export function elevationInk(front: Front, detail: 'shop' | 'client'): PathMark[] {
  return [
    ...weaveFront(front),
    ...frameFront(front),
    ...stripsFront(front),
    ...(detail === 'shop' ? hiddenLines(front) : []),
    ...fittings(front.panel).flatMap((fitting) => fittingInk(front, fitting, detail)),
    ...(detail === 'shop' ? fixingCrosses(front) : []),
    ...groundLines(front),
  ];
}

/** Stops on the stiles, and over them the cover strip under the top rail. */
export function stripsFront(front: Front): PathMark[] {
  const { panel, parts, at } = front;
  const { clear, cover } = panel;
  const [right, top] = [clear.left + clear.width, clear.bottom + clear.height];
  const stop = partOf(parts, panel, 'stop');
  const stops = stop
    ? [clear.left, right - stop.width].flatMap((x0) =>
        woodFace(at, { x0, y0: clear.bottom, x1: x0 + stop.width, y1: top }, { of: stop.letter, edge: 'edge-light' }),
      )
    : [];
  const inset = (clear.width - cover.length) / 2;
  const strip = { x0: clear.left + inset, y0: top - cover.height, x1: right - inset, y1: top };
  const covers =
    cover.height > 0 ? woodFace(at, strip, { of: letterOf(front, 'cover strip'), edge: 'edge-light' }) : [];
  return [...stops, ...covers];
}

/** A groove's bottom nearer than this to the edges of its rail, paper mm, is left out. */
const GROOVE_FROM = 0.7;

/** What frame and weave hide: the bottoms of the grooves in the rails, and a brace at the back. */
function hiddenLines(front: Front): PathMark[] {
  const { panel, at, ratio } = front;
  const { clear, groove, rail } = panel;
  const levels =
    Math.min(groove.depth, rail.height - groove.depth) * ratio < GROOVE_FROM
      ? []
      : [clear.bottom - groove.depth, clear.bottom + clear.height + groove.depth];
  const grooves = levels.map((y) =>
    stroke('hidden', line(at(clear.left, y), at(clear.left + clear.width, y)), letterOf(front, 'rail')),
  );
  const brace = braceOutline(panel);
  if (!brace) return grooves;
  const points = brace.outline.map(([x, y]) => at(x, y));
  const of = brace.role && letterOf(front, brace.role);
  return [...grooves, stroke('hidden', points.length > 2 ? polygon(points) : polyline(points), of)];
}

/** A fitting seen from the front: solid where it stands clear of the frame, dashed where it is behind. */
export function fittingInk(front: Front, fitting: Fitting, detail: 'shop' | 'client'): PathMark[] {
  const { from, to, role } = fitting;
  const path = rectangle(faceBox(front.at, { x0: from.x, y0: from.y, x1: to.x, y1: to.y }));
  if (role === undefined) return [stroke('paper', path), stroke('edge-light', path)];
  const of = letterOf(front, role);
  if (isBehind(front, fitting)) return detail === 'shop' ? [stroke('hidden', path, of)] : [];
  return [stroke('wood', path, of), stroke('edge', path, of)];
}

/** The boxes on paper of what the panel's use adds to it. */
export function fittingBoxes({ panel, at }: Front): Box[] {
  return fittings(panel).map(({ from, to }) => faceBox(at, { x0: from.x, y0: from.y, x1: to.x, y1: to.y }));
}

/** Whether the panel stands before the whole of a fitting. */
export function isBehind({ panel: { outside } }: Pick<Front, 'panel'>, { from, to }: Fitting): boolean {
  const over = from.x < outside.width && to.x > 0 && from.y < outside.height - 1e-6 && to.y > 1e-6;
  return over && to.z <= 0;
}

/** Half the arm of the cross at a fixing screw, paper mm. */
const CROSS = 1.2;

/** Crosses at the screws through the stiles; their heights stand in the end view. */
function fixingCrosses({ panel, at }: Front): PathMark[] {
  if (panel.details.use !== 'screen') return [];
  const { kind, places } = sideFixings(panel);
  if (kind !== 'screw') return [];
  return places.flatMap(({ x, y }) => {
    const [u, v] = at(x, y);
    return [
      stroke('dimension', line([u - CROSS, v], [u + CROSS, v])),
      stroke('dimension', line([u, v - CROSS], [u, v + CROSS])),
    ];
  });
}

/** Floor, ground or ceiling, each a line as wide as the panel and a little on to the right. */
function groundLines({ panel, at, ratio }: Front): PathMark[] {
  return grounds(panel).map(({ y }) =>
    stroke('neighbour', line(at(0, y), at(panel.outside.width + GROUND_PAST / ratio, y))),
  );
}
