import { bracePlates, type Panel } from '@wattlewright/model';
import type { PathMark } from '../mark.ts';
import { stroke } from '../mark.ts';
import { line, rectangle } from '../path.ts';
import type { View } from '../view.ts';
import { TURNBUCKLE } from './backfittings.ts';
import { type Face, faceBox } from './front.ts';

/** A cable brace's plates, and how far its eyes and its turnbuckle stand out behind the frame, as drawn, mm; common practice, no source. */
export const CABLE_OUT = 16;
const CABLE = { plate: 3, axis: 9 } as const;

/** A cable brace behind the frame: its plates, the wire, and the turnbuckle at the lower end. */
export function cableInk(panel: Panel, at: View): PathMark[] {
  const plates = bracePlates(panel).toSorted((a, b) => b.eye.y - a.eye.y);
  const [high, low] = plates;
  if (!high || !low) return [];
  const back = panel.stile.depth / 2;
  const body = turnbuckleFace(panel);
  const box = (x0: number, y0: number, x1: number, y1: number): PathMark[] => {
    const path = rectangle(faceBox(at, { x0, y0, x1, y1 }));
    return [stroke('paper', path), stroke('edge-light', path)];
  };
  return [
    ...plates.flatMap(({ from, to }) => box(back, from.y, back + CABLE.plate, to.y)),
    stroke('edge-light', line(at(back + CABLE.axis, low.eye.y), at(back + CABLE.axis, high.eye.y))),
    ...plates.map(({ eye }) => stroke('edge-light', line(at(back, eye.y), at(back + CABLE.axis, eye.y)))),
    ...(body ? box(body.x0, body.y0, body.x1, body.y1) : []),
  ];
}

/** The turnbuckle at the lower end of a cable brace, from the side. */
export function turnbuckleFace(panel: Panel): Face | undefined {
  const [high, low] = bracePlates(panel).toSorted((a, b) => b.eye.y - a.eye.y);
  if (!high || !low) return undefined;
  const back = panel.stile.depth / 2;
  const whole = Math.hypot(high.eye.x - low.eye.x, high.eye.y - low.eye.y);
  const rise = (along: number): number => low.eye.y + ((high.eye.y - low.eye.y) * along) / whole;
  const start = Math.min(panel.stile.width, panel.rail.height) * 0.6;
  const [x0, x1] = [back + 2 * CABLE.axis - CABLE_OUT, back + CABLE_OUT];
  return { x0, y0: rise(start), x1, y1: rise(start + TURNBUCKLE) };
}
