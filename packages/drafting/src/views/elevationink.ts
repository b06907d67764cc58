import type { PathMark } from '../mark.ts';
import { stroke } from '../mark.ts';
import { line, polygon, polyline } from '../path.ts';
import { fittings, grounds } from './fittings.ts';
import { type Front, frameFront, letterOf, weaveFront, woodFace } from './front.ts';

/** How far a floor or ground line runs on beyond the panel to the right, paper mm. */
const GROUND_PAST = 6;

/** The panel from the front, all of it but sizes and names: back to front, then what is hidden, then what is around. */
export function elevationInk(front: Front, detail: 'shop' | 'client'): PathMark[] {
  return [
    ...weaveFront(front),
    ...frameFront(front),
    ...strips(front),
    ...(detail === 'shop' ? grooveLines(front) : []),
    ...fittingInk(front, detail),
    ...groundLines(front),
  ];
}

/** Stops on the stiles, and over them the cover strip under the top rail. */
function strips(front: Front): PathMark[] {
  const { panel, parts, at } = front;
  const { clear, cover } = panel;
  const [right, top] = [clear.left + clear.width, clear.bottom + clear.height];
  const stop = parts.find(({ letter }) => letter === letterOf(front, 'stop'));
  const stops = stop
    ? [clear.left, right - stop.width].flatMap((x0) =>
        woodFace(at, { x0, y0: clear.bottom, x1: x0 + stop.width, y1: top }, { of: stop.letter, edge: 'edge-light' }),
      )
    : [];
  const strip = { x0: clear.left, y0: top - cover.height, x1: right, y1: top };
  const covers =
    cover.height > 0 ? woodFace(at, strip, { of: letterOf(front, 'cover strip'), edge: 'edge-light' }) : [];
  return [...stops, ...covers];
}

/** The groove's bottom in each rail, hidden. */
function grooveLines(front: Front): PathMark[] {
  const { panel, at } = front;
  const { clear, groove, outside } = panel;
  return [clear.bottom - groove.depth, clear.bottom + clear.height + groove.depth].map((y) =>
    stroke('hidden', line(at(0, y), at(outside.width, y)), letterOf(front, 'rail')),
  );
}

function fittingInk(front: Front, detail: 'shop' | 'client'): PathMark[] {
  return fittings(front.panel).flatMap(({ shown, outline, role }) => {
    if (shown === 'hidden' && detail === 'client') return [];
    const points = outline.map(([x, y]) => front.at(x, y));
    const path = points.length > 2 ? polygon(points) : polyline(points);
    const of = role && letterOf(front, role);
    if (shown === 'wood') return [stroke('wood', path, of), stroke('edge', path, of)];
    return [stroke(shown, path, of)];
  });
}

/** Floor, ground or ceiling, each a line as wide as the panel and a little on to the right. */
function groundLines({ panel, at, ratio }: Front): PathMark[] {
  return grounds(panel).map(({ y }) =>
    stroke('neighbour', line(at(0, y), at(panel.outside.width + GROUND_PAST / ratio, y))),
  );
}
