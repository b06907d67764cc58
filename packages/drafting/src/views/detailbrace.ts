import { type BracePlate, bracePlates, INCH, type Panel, type PanelPlace, type Part } from '@wattlewright/model';
import type { NoteTarget } from '../layout/notes.ts';
import type { Drawing, Mark, Point } from '../mark.ts';
import { stroke } from '../mark.ts';
import { circle, line, polygon, rectangle } from '../path.ts';
import type { ViewMaker } from '../sheet/fit.ts';
import { type View, view, viewBox } from '../view.ts';
import { dimensioned, type StatedOptions, stated } from './detaildrawing.ts';
import { screwName, screwsOf, screwsSide } from './detailscrew.ts';
import { breakLine, seenFace } from './grain.ts';
import { partOf } from './partof.ts';
import type { SectionOptions } from './weavesection.ts';

/** The eye that stands up from its plate, seen from over it, and a clip, as drawn, mm; common practice, no source. */
const EYE = { width: 12, thick: 4, foot: 5 } as const;
const CLIP = 5;

/** A turnbuckle as drawn, mm: its jaw from the eye, its body from there on, their widths; common practice, no source. */
const TURNBUCKLE = { jaw: 18, rod: 10, width: 14, rodWidth: 7 } as const;

/** How much of the corner is shown along and down, mm. */
function reachOf({ stile, rail }: Panel): { readonly x: number; readonly y: number } {
  return { x: stile.width * 2.2, y: rail.height + stile.width * 1.6 };
}

/** Where the end of a brace lies, and how its corner maps to paper. */
interface BraceEnd {
  readonly upper: boolean;
  readonly plate: BracePlate;
  readonly at: View;
  readonly scale: number;
  /** A place along the brace, mm from the eye of this end; and beside it. */
  readonly along: (length: number, beside?: number) => Point;
}

/**
 * A corner of a cable brace from behind: rail and stile with the corner's own screws hidden in them, the plate with its
 * standing eye and the places of its screws; at the upper end the wire with thimble and clips, at the lower the turnbuckle.
 */
function braceCorner(
  panel: Panel,
  { scale, parts = [], upper }: SectionOptions & { readonly upper: boolean },
): Drawing {
  const { outside, rail, stile, display, name } = panel;
  const plates = bracePlates(panel) as [BracePlate, BracePlate];
  const [plate, other] = upper ? plates : [plates[1], plates[0]];
  const s = scale.ratio;
  const reach = reachOf(panel);
  const isRight = plate.eye.x > outside.width / 2;
  const straight = view(s);
  // Seen from behind: what is right in the panel frame is left on paper. The origin is the corner itself.
  const corner = isRight ? outside.width : 0;
  const edge = upper ? outside.height : 0;
  const into = upper ? -1 : 1;
  const at: View = (x, y) => straight(corner - x, y - edge);
  const inward = isRight ? -1 : 1;
  const face = (x: number, y: number, w: number, h: number, role: Part['role']): Mark[] =>
    seenFace(rectangle(viewBox(at, [x, y], [x + inward * w, y + into * h])), partOf(parts, panel, role)?.letter);
  const joint = edge + into * rail.height;
  const far = edge + into * reach.y;
  const inner = corner + inward * reach.x;
  const own = screwsOf(panel, 'rail to stile');
  // The nearest from behind first.
  const hidden = (own?.places ?? [])
    .filter(({ x, y }) => x > outside.width / 2 === isRight && y > outside.height / 2 === upper)
    .toSorted((a, b) => a.z - b.z);
  const whole = Math.hypot(other.eye.x - plate.eye.x, other.eye.y - plate.eye.y);
  const [cx, cy] = [(other.eye.x - plate.eye.x) / whole, (other.eye.y - plate.eye.y) / whole];
  const along = (length: number, beside = 0): Point =>
    at(plate.eye.x + cx * length - cy * beside, plate.eye.y + cy * length + cx * beside);
  const end: BraceEnd = { upper, plate, at, scale: s, along };
  // As far along as the corner is shown.
  const shown = Math.min((Math.abs(far - plate.eye.y) / Math.abs(cy)) * 0.98, whole / 2);
  const pull = upper ? wireInk(end, shown) : turnbuckleInk(end, shown);
  const screw = screwsOf(panel, 'brace plate to frame');
  const across: StatedOptions = { display, along: (x) => at(x, 0)[0] };
  const up: StatedOptions = { display, along: (y) => at(0, y)[1] };
  const xs = [...plate.screws, plate.eye].map(({ x }) => x);
  // The eye on the line of the joint: one size for both.
  const ys = [...plate.screws, plate.eye].map(({ y }) => (Math.abs(y - joint) < 1e-6 ? joint : y));
  const box = rectangle(viewBox(at, [plate.from.x, plate.from.y], [plate.to.x, plate.to.y]));
  const which = upper ? 'Upper' : 'Lower';
  return dimensioned({
    name: upper ? 'brace-corner' : 'brace-foot',
    title: `${which} end of the brace, from behind`,
    alt: `The ${which.toLowerCase()} end of the cable brace of ${name} from behind: the plate over the joint of rail and stile, its screws and its eye.`,
    scale,
    ink: [
      ...face(corner, edge, reach.x, rail.height, 'rail'),
      ...face(corner, joint, stile.width, reach.y - rail.height, 'stile'),
      ...(own
        ? screwsSide(
            own,
            hidden.map(({ x, y }) => ({ from: at(x, y), way: [0, upper ? 1 : -1], scale: s })),
          )
        : []),
      { ...stroke('edge', box), shade: 0.82 },
      stroke('edge', box),
      ...plate.screws.flatMap(({ x, y }): Mark[] => [
        stroke('paper', circle(at(x, y), 2.4 * s)),
        stroke('edge-light', circle(at(x, y), 2.4 * s)),
      ]),
      ...pull.marks,
      breakLine(at(inner, edge), at(inner, joint)),
      breakLine(at(corner, far), at(corner + inward * stile.width, far)),
    ],
    sizes: {
      [upper ? 'above' : 'below']: [...new Set(xs)].flatMap((x) => stated(corner, x, across)),
      [isRight ? 'left' : 'right']: [...new Set([...ys, joint])].flatMap((y) => stated(edge, y, up)),
    },
    notes: [
      {
        at: at(plate.from.x + (plate.to.x - plate.from.x) * (isRight ? 0.12 : 0.88), plate.from.y + 2),
        text: 'Plate over the joint, its eye in its middle, standing up on the line between rail and stile',
      },
      ...(screw && upper
        ? [
            {
              at: at(...atOf(plate.screws[0] as PanelPlace)),
              text: `${screwName(screw)}, one in the rail, one in the stile, clear of the corner’s own screws (dashed the one nearer the back, the other by its centre line)`,
            },
          ]
        : []),
      pull.note,
    ],
    noteSide: isRight ? 'right' : 'left',
    noteWidth: 44,
  });
}

const atOf = ({ x, y }: PanelPlace): readonly [number, number] => [x, y];

/** The eye of a plate, standing across the pull. */
function eyeInk({ along, plate, at, scale }: BraceEnd): Mark[] {
  const bar = polygon(
    [-1, 1].flatMap((end) => [-end, end].map((side) => along((end * EYE.thick) / 2, (side * EYE.width) / 2))),
  );
  const foot = circle(at(plate.eye.x, plate.eye.y), EYE.foot * scale);
  return [
    { ...stroke('edge-light', foot), shade: 0.7 },
    stroke('edge-light', foot),
    stroke('paper', bar),
    stroke('edge', bar),
  ];
}

/** What pulls at an eye, and its note. */
interface PullInk {
  readonly marks: readonly Mark[];
  readonly note: NoteTarget;
}

function wireInk(end: BraceEnd, shown: number): PullInk {
  const clips = [2.2 * INCH, 3.1 * INCH].filter((length) => length < shown - CLIP).map((length) => end.along(length));
  return {
    marks: [
      stroke('edge', line(end.along(0), end.along(shown))),
      ...clips.map((clip) => ({ ...stroke('edge-light', circle(clip, CLIP * end.scale)), shade: 0.6 })),
      ...clips.map((clip) => stroke('edge-light', circle(clip, CLIP * end.scale))),
      ...eyeInk(end),
    ],
    note: { at: clips[0] ?? end.along(shown * 0.7), text: 'Wire back on itself round a thimble in the eye, two clips' },
  };
}

/** The turnbuckle with its jaw over the eye, broken off in its body; the wire follows beyond it as at the upper end. */
function turnbuckleInk(end: BraceEnd, shown: number): PullInk {
  const { jaw, rod, width, rodWidth } = TURNBUCKLE;
  const bar = (from: number, to: number, wide: number): Mark[] => {
    const path = polygon([
      end.along(from, -wide / 2),
      end.along(to, -wide / 2),
      end.along(to, wide / 2),
      end.along(from, wide / 2),
    ]);
    return [{ ...stroke('edge-light', path), shade: 0.9 }, stroke('edge-light', path)];
  };
  const from = Math.min(jaw + rod, shown * 0.6);
  return {
    marks: [
      ...bar(from, shown, width),
      ...bar(jaw * 0.5, from, rodWidth),
      ...eyeInk(end),
      ...bar(-EYE.thick, jaw * 0.6, EYE.thick),
      breakLine(end.along(shown, -width / 2), end.along(shown, width / 2), 1),
    ],
    note: {
      at: end.along((from + shown) / 2),
      text: 'Turnbuckle, its jaw pinned in the eye; at its other end thimble, two clips and the wire',
    },
  };
}

/** Both corners of a cable brace for `arrange`; nothing for other panels. */
export function braceMakers(panel: Panel, parts: readonly Part[] = []): ViewMaker[] {
  if (bracePlates(panel).length === 0) return [];
  const { x, y } = reachOf(panel);
  return [true, false].map((upper) => ({
    name: upper ? 'brace-corner' : 'brace-foot',
    real: { width: x, height: y },
    make: (scale) => braceCorner(panel, { scale, parts, upper }),
  }));
}
