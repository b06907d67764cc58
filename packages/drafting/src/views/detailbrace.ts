import { type BracePlate, bracePlates, INCH, type Panel, type PanelPlace, type Part } from '@wattlewright/model';
import type { Drawing, Mark, Point } from '../mark.ts';
import { stroke } from '../mark.ts';
import { circle, line, rectangle } from '../path.ts';
import type { ViewMaker } from '../sheet/fit.ts';
import { type View, view, viewBox } from '../view.ts';
import { dimensioned, type StatedOptions, stated } from './detaildrawing.ts';
import { screwName, screwSide, screwsOf } from './detailscrew.ts';
import { breakLine, seenFace } from './grain.ts';
import { partOf } from './partof.ts';
import type { SectionOptions } from './weavesection.ts';

/** Half the width of an eye and a clip as drawn, mm; common practice, no source. */
const EYE = 6;
const CLIP = 5;

/** How much of the corner is shown along and down, mm. */
function reachOf({ stile, rail }: Panel): { readonly x: number; readonly y: number } {
  return { x: stile.width * 2.2, y: rail.height + stile.width * 1.6 };
}

/**
 * The upper corner of a cable brace from behind: rail and stile with the corner's own screws hidden in them, the plate with
 * its eye and the places of its screws, and the wire with thimble and clips.
 */
function braceCorner(panel: Panel, { scale, parts = [] }: SectionOptions): Drawing {
  const { outside, rail, stile, display, name } = panel;
  const plate = bracePlates(panel)[0] as BracePlate;
  const s = scale.ratio;
  const reach = reachOf(panel);
  const isRight = plate.eye.x > outside.width / 2;
  const straight = view(s);
  // Seen from behind: what is right in the panel frame is left on paper. The origin is the corner itself.
  const corner = isRight ? outside.width : 0;
  const at: View = (x, y) => straight(corner - x, y - outside.height);
  const inward = isRight ? -1 : 1;
  const face = (x: number, y: number, w: number, h: number, role: Part['role']): Mark[] =>
    seenFace(rectangle(viewBox(at, [x, y], [x + inward * w, y - h])), partOf(parts, panel, role)?.letter);
  const top = outside.height;
  const joint = top - rail.height;
  const own = screwsOf(panel, 'rail to stile');
  const hidden = (own?.places ?? []).filter(({ x, y }) => x > outside.width / 2 === isRight && y > outside.height / 2);
  const other = bracePlates(panel)[1] as BracePlate;
  const along = (length: number): PanelPlace => {
    const whole = Math.hypot(other.eye.x - plate.eye.x, other.eye.y - plate.eye.y);
    const share = length / whole;
    return {
      ...plate.eye,
      x: plate.eye.x + (other.eye.x - plate.eye.x) * share,
      y: plate.eye.y + (other.eye.y - plate.eye.y) * share,
    };
  };
  const on = ({ x, y }: Pick<PanelPlace, 'x' | 'y'>): Point => at(x, y);
  const end = along((reach.y - (top - plate.eye.y)) * 0.98);
  const clips = [2.2 * INCH, 3.1 * INCH].map((one) => along(one)).filter(({ y }) => y > top - reach.y + CLIP);
  const box = rectangle(viewBox(at, [plate.from.x, plate.from.y], [plate.to.x, plate.to.y]));
  const screw = screwsOf(panel, 'brace plate to frame');
  const across: StatedOptions = { display, along: (x) => at(x, 0)[0] };
  const up: StatedOptions = { display, along: (y) => at(0, y)[1] };
  const xs = [...plate.screws, plate.eye].map(({ x }) => x);
  // The eye on the line of the joint: one size for both.
  const ys = [...plate.screws, plate.eye].map(({ y }) => (Math.abs(y - joint) < 1e-6 ? joint : y));
  const inner = corner + inward * reach.x;
  return dimensioned({
    name: 'brace-corner',
    title: 'Upper end of the brace, from behind',
    alt: `The upper end of the cable brace of ${name} from behind: the plate over the joint of rail and stile, its screws and its eye.`,
    scale,
    ink: [
      ...face(corner, top, reach.x, rail.height, 'rail'),
      ...face(corner, joint, stile.width, reach.y - rail.height, 'stile'),
      ...(own ? hidden.flatMap(({ x, y }) => screwSide(own, { from: at(x, y), way: [0, 1], scale: s })) : []),
      { ...stroke('edge', box), shade: 0.82 },
      stroke('edge', box),
      ...plate.screws.flatMap((place): Mark[] => [
        stroke('paper', circle(on(place), 2.4 * s)),
        stroke('edge-light', circle(on(place), 2.4 * s)),
      ]),
      stroke('edge', line(on(along(EYE)), on(end))),
      ...clips.map((clip) => ({ ...stroke('edge-light', circle(on(clip), CLIP * s)), shade: 0.6 })),
      ...clips.map((clip) => stroke('edge-light', circle(on(clip), CLIP * s))),
      stroke('paper', circle(on(plate.eye), EYE * s)),
      stroke('edge', circle(on(plate.eye), EYE * s)),
      breakLine(at(inner, top), at(inner, joint)),
      breakLine(at(corner, top - reach.y), at(corner + inward * stile.width, top - reach.y)),
    ],
    sizes: {
      above: [...new Set(xs)].flatMap((x) => stated(corner, x, across)),
      [isRight ? 'left' : 'right']: [...new Set([...ys, joint])].flatMap((y) => stated(top, y, up)),
    },
    notes: [
      {
        at: at(plate.from.x + (plate.to.x - plate.from.x) * (isRight ? 0.12 : 0.88), plate.from.y + 2),
        text: 'Plate over the joint, the eye on the line between rail and stile; the lower end of the brace is alike, turned round',
      },
      ...(screw
        ? [
            {
              at: on(plate.screws[0] as PanelPlace),
              text: `${screwName(screw)}, one in the rail, one in the stile, clear of the corner’s own screws (dashed)`,
            },
          ]
        : []),
      ...(clips[0] ? [{ at: on(clips[0]), text: 'Wire back on itself round a thimble in the eye, two clips' }] : []),
    ],
    noteSide: isRight ? 'right' : 'left',
    noteWidth: 44,
  });
}

/** The corner of a cable brace for `arrange`; nothing for other panels. */
export function braceMakers(panel: Panel, parts: readonly Part[] = []): ViewMaker[] {
  if (bracePlates(panel).length === 0) return [];
  const { x, y } = reachOf(panel);
  return [
    { name: 'brace-corner', real: { width: x, height: y }, make: (scale) => braceCorner(panel, { scale, parts }) },
  ];
}
