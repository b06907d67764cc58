import {
  type BraceDetails,
  type BracePlate,
  bracePlates,
  formatLength,
  gateDetails,
  INCH,
  type Panel,
  type PanelPlace,
  type Part,
  screenDetails,
  screwSchedule,
  sideFixings,
} from '@wattlewright/model';
import type { NoteTarget } from '../layout/notes.ts';
import type { PathMark, Point } from '../mark.ts';
import { stroke } from '../mark.ts';
import { circle, line, polygon, rectangle } from '../path.ts';
import type { View } from '../view.ts';
import { braceOutline, fittings } from './fittings.ts';
import { faceBox } from './front.ts';
import { partOf } from './partof.ts';

/** What is fixed to the back of a panel: its ink and its names. */
export interface BackInk {
  readonly marks: readonly PathMark[];
  readonly notes: readonly NoteTarget[];
}

/** Where it is drawn: `at` maps the panel frame as seen from behind. */
export interface BackPlace {
  readonly panel: Panel;
  readonly parts: readonly Part[];
  readonly at: View;
  readonly ratio: number;
}

/** Side of a plate and leg of a bracket as drawn, and length of a turnbuckle, mm; common practice, no source. */
const BRACKET = 1.5 * INCH;
export const TURNBUCKLE: number = 6 * INCH;

/** What the use of the panel fixes to its back. */
export function backFittings(place: BackPlace): BackInk {
  const { details } = place.panel;
  switch (details.use) {
    case 'gate':
      return gateBack(place);
    case 'screen':
      return details.mounting === 'blocks' ? blocks(place) : brackets(place);
    case 'guard':
      return brackets(place);
    case 'divider':
      return { marks: [], notes: [] };
  }
}

/** A face of the panel frame, solid. */
function solid(
  { at }: BackPlace,
  [x, y]: readonly [number, number],
  [w, h]: readonly [number, number],
  of?: string,
): PathMark[] {
  const path = rectangle(faceBox(at, { x0: x - w / 2, y0: y - h / 2, x1: x + w / 2, y1: y + h / 2 }));
  return [stroke('wood', path, of), stroke('edge-light', path, of)];
}

/** Grey of metal that must be seen at small scales. */
const METAL = 0.35;

/** A face of metal, dark. */
function metal({ at }: BackPlace, [x, y]: readonly [number, number], [w, h]: readonly [number, number]): PathMark[] {
  const path = rectangle(faceBox(at, { x0: x - w / 2, y0: y - h / 2, x1: x + w / 2, y1: y + h / 2 }));
  return [{ ...stroke('paper', path), shade: METAL }, stroke('edge-light', path)];
}

/** The middle one of those at the right of the view: its name stands clear of the figures at the foot. */
function amid(places: readonly PanelPlace[]): PanelPlace | undefined {
  const least = Math.min(...places.map(({ x }) => x));
  const own = places.filter(({ x }) => x < least + 1e-6).toSorted((a, b) => a.y - b.y);
  return own[Math.floor((own.length - 1) / 2)];
}

/** Stand-off blocks, with the screw through the middle of each. */
function blocks(place: BackPlace): BackInk {
  const { panel, parts, at, ratio } = place;
  const found = screenDetails(panel).blocks;
  if (!found) return { marks: [], notes: [] };
  const of = partOf(parts, panel, 'stand-off block')?.letter;
  const first = amid(found.places);
  return {
    marks: found.places.flatMap(({ x, y }) => [
      ...solid(place, [x, y], [found.width, found.height], of),
      ...cross(at(x, y), Math.max(1.5, 4 * ratio)),
    ]),
    notes: first
      ? [
          {
            at: at(first.x, first.y - found.height * 0.3),
            text: `Stand-off block${of === undefined ? '' : ` ${of}`}, its top sloping down outwards, a screw through its middle`,
          },
        ]
      : [],
  };
}

/** Angle brackets at the stiles' outer edges. */
function brackets(place: BackPlace): BackInk {
  const { panel, at } = place;
  const { places, screw } = sideFixings(panel);
  const leg = Math.min(BRACKET, panel.stile.width);
  const inwards = ({ x }: PanelPlace): number => (x > panel.outside.width / 2 ? x - leg / 2 : x + leg / 2);
  const first = amid(places);
  const { gauge, length } = screw;
  const long = formatLength(length, panel.display, { fractions: 'stacked' });
  return {
    marks: places.flatMap((one) => metal(place, [inwards(one), one.y], [leg, BRACKET])),
    notes: first
      ? [
          {
            at: at(inwards(first) - leg / 2, first.y - BRACKET * 0.3),
            text: `Angle bracket to the post: two screws No. ${gauge} × ${long} in the stile, two in the post`,
            end: 'arrow',
          },
        ]
      : [],
  };
}

function gateBack(place: BackPlace): BackInk {
  const { panel, at } = place;
  const { brace, swing } = gateDetails(panel);
  const behind = swing === 'towards the back';
  const hardware = fittings(panel).flatMap(({ what, from, to }): PathMark[] => {
    const path = rectangle(faceBox(at, { x0: from.x, y0: from.y, x1: to.x, y1: to.y }));
    const seen = what === 'hinge' && behind;
    return seen ? [stroke('paper', path), stroke('edge-light', path)] : [stroke('hidden', path)];
  });
  const ends = brace ? braceInk(place, brace) : { marks: [], notes: [] };
  return { marks: [...hardware, ...ends.marks], notes: ends.notes };
}

/** A strut, or the wire from plate to plate with its turnbuckle at the lower end. */
function braceInk(place: BackPlace, brace: BraceDetails): BackInk {
  const { panel, parts, at, ratio } = place;
  const found = braceOutline(panel);
  if (!found) return { marks: [], notes: [] };
  if (brace.kind === 'strut') {
    const of = partOf(parts, panel, 'strut')?.letter;
    const path = polygon(found.outline.map(([x, y]) => at(x, y)));
    const along = (share: number): Point =>
      at(
        brace.hinge.x + (brace.latch.x - brace.hinge.x) * share,
        brace.hinge.y + (brace.latch.y - brace.hinge.y) * share,
      );
    return {
      marks: [stroke('wood', path, of), stroke('edge', path, of), ...screws(place, 'strut to frame')],
      notes: [{ at: along(0.4), text: 'Strut over both joints, what stands out past the frame sawn off flush' }],
    };
  }
  const [high, low] = brace.hinge.y > brace.latch.y ? [brace.hinge, brace.latch] : [brace.latch, brace.hinge];
  const length = Math.hypot(high.x - low.x, high.y - low.y);
  const [cx, cy] = [(high.x - low.x) / length, (high.y - low.y) / length];
  const side = Math.min(panel.stile.width, panel.rail.height);
  const on = (from: number, across = 0): Point => at(low.x + cx * from - cy * across, low.y + cy * from + cx * across);
  const start = side * 0.6;
  const plates = bracePlates(panel);
  const [upper] = plates;
  const body = [on(start, 7), on(start + TURNBUCKLE, 7), on(start + TURNBUCKLE, -7), on(start, -7)];
  return {
    marks: [
      stroke('edge', line(on(0), on(length))),
      ...plates.flatMap(({ from, to }) =>
        solid(place, [(from.x + to.x) / 2, (from.y + to.y) / 2], [to.x - from.x, to.y - from.y]),
      ),
      ...screws(place, 'brace plate to frame'),
      stroke('paper', polygon(body)),
      stroke('edge-light', polygon(body)),
      ...plates.map(({ eye }) => stroke('dimension', circle(at(eye.x, eye.y), Math.max(4, side * 1.2 * ratio)))),
    ],
    notes: [
      ...(upper
        ? [{ at: onPlate(upper, at), text: 'Plate with eye over the joint, ringed: see the upper end of the brace' }]
        : []),
      // Between the turnbuckle and the upper end.
      { at: on((start + TURNBUCKLE + length) / 2), text: 'Wire, a thimble and two clips at each end', end: 'arrow' },
      { at: on(start + TURNBUCKLE / 2), text: 'Turnbuckle; ringed: see the lower end of the brace' },
    ],
  };
}

/** A point of a plate clear of its screws and its eye: of its corners, a little in, the one farthest from them. */
function onPlate({ eye, screws, from, to }: BracePlate, at: View): Point {
  const corners = [0.15, 0.85].flatMap((a) =>
    [0.15, 0.85].map((b) => [from.x + (to.x - from.x) * a, from.y + (to.y - from.y) * b] as const),
  );
  const room = ([x, y]: readonly [number, number]): number =>
    Math.min(...[eye, ...screws].map((one) => Math.hypot(one.x - x, one.y - y)));
  const [best] = corners.toSorted((a, b) => room(b) - room(a));
  return at(...(best as readonly [number, number]));
}

/** The screws of a joint as crosses. */
function screws({ panel, at }: BackPlace, joint: 'strut to frame' | 'brace plate to frame'): PathMark[] {
  const row = screwSchedule(panel).find((one) => one.joint === joint);
  return (row?.places ?? []).map(({ x, y }) => stroke('edge-light', circle(at(x, y), 0.4)));
}

function cross([u, v]: Point, arm: number): PathMark[] {
  return [stroke('dimension', line([u - arm, v], [u + arm, v])), stroke('dimension', line([u, v - arm], [u, v + arm]))];
}
