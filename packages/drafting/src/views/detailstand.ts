import type { DividerUse, Panel, PanelPlace, Part, ScrewRow } from '@wattlewright/model';
import { TEXT } from '../layout/style.ts';
import type { Drawing, Mark } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { circle, line, polyline, rectangle } from '../path.ts';
import type { Extent } from '../scale.ts';
import { type View, view, viewBox } from '../view.ts';
import { dimensioned, planFacing, type StatedOptions, said, stated } from './detaildrawing.ts';
import type { DetailLetter } from './detailkey.ts';
import { hasShape, screwEnd, screwName, screwsOf, screwsSide, sunkBy } from './detailscrew.ts';
import { breakLine, seenFace } from './grain.ts';
import { partOf } from './partof.ts';
import { uprightInk, uprightView } from './verticalsectionink.ts';
import type { SectionOptions } from './weavesection.ts';

/** How far the detail of a foot or a track reaches along and up the panel beyond the frame's own sizes, shares of them. */
const PAST = 0.8;

/** How much of the stile the detail of a foot shows over the rail, share of the rail's height. */
const OVER = 0.35;

/** Real size of a divider's detail, mm. */
export function standExtent({ rail, stile, outside }: Panel, { feet, track }: DividerUse): Extent {
  if (feet) {
    const below = Math.min(rail.depth + 2 * FOOT_PAST, feet.length);
    return {
      width: Math.max(stile.width, feet.width) * (1 + PAST),
      height: feet.height + rail.height * (1 + OVER) + below,
    };
  }
  return { width: outside.depth, height: rail.height * (1 + PAST) + (track?.above ?? 0) };
}

/** The foot of a divider under its right stile from the front, or its top rail under the track from front to back. */
export function stand(
  panel: Panel,
  key: DetailLetter,
  options: SectionOptions & { readonly divider: DividerUse },
): Drawing {
  return options.divider.feet ? onFeet(panel, key, options) : underTrack(panel, key, options);
}

function onFeet(
  panel: Panel,
  key: DetailLetter,
  { scale, parts = [], divider }: SectionOptions & { readonly divider: DividerUse },
): Drawing {
  const { outside, rail, stile, display } = panel;
  const feet = divider.feet as NonNullable<DividerUse['feet']>;
  const s = scale.ratio;
  const at = view(s, [-outside.width * s, 0]);
  const right = outside.width;
  const left = right - Math.max(stile.width, feet.width) * (1 + PAST);
  const top = rail.height * (1 + OVER);
  const letter = (role: Part['role']): string | undefined => partOf(parts, panel, role)?.letter;
  const face = (x0: number, y0: number, y1: number, role: Part['role'], x1 = right): Mark[] =>
    seenFace(rectangle(viewBox(at, [x0, y0], [x1, y1])), letter(role));
  const screws = screwsOf(panel, 'foot to bottom rail');
  const places = (screws?.places ?? []).filter(({ x }) => x > outside.width / 2).toSorted((a, b) => a.z - b.z);
  // The outermost, towards the notes: a leader to the other would cross it.
  const last = places.toSorted((a, b) => b.x - a.x)[0];
  const up: StatedOptions = { display, along: (y) => at(0, y)[1] };
  const along: StatedOptions = { display, along: (x) => at(x, 0)[0] };
  const below = footBelow({ panel, feet, places, scale: s, at });
  const through: StatedOptions = { display, along: (z) => below.plan(0, z)[1] };
  return dimensioned({
    name: `detail-${key.letter.toLowerCase()}`,
    title: `Detail ${key.letter}  ${key.title}`,
    alt: `The right foot of ${panel.name} from the front, under its bottom rail and stile, and the foot looking down.`,
    scale,
    ink: [
      ...face(left, 0, rail.height, 'rail'),
      ...face(right - stile.width, rail.height, top, 'stile'),
      ...face(right - feet.width, -feet.height, 0, 'foot'),
      stroke('neighbour', line(at(left, -feet.height), at(right + 8 / s, -feet.height))),
      ...(screws
        ? screwsSide(
            screws,
            places.toReversed().map(({ x, y }) => ({ from: at(x, y), way: [0, -1], scale: s })),
          )
        : []),
      breakLine(at(left, 0), at(left, rail.height)),
      breakLine(at(right - stile.width, top), at(right, top)),
      ...below.marks(letter('foot'), screws),
    ],
    sizes: {
      left: [
        ...(screws ? stated(-feet.height, sunkBy(screws) - feet.height, up) : []),
        ...stated(-feet.height, 0, { ...up, level: 1 }),
        ...stated(0, rail.height, up),
        // Each from the face of the rail that it is nearer to.
        ...places.flatMap(({ z }) => stated(z < 0 ? -rail.depth / 2 : rail.depth / 2, z, through)),
        ...stated(-rail.depth / 2, rail.depth / 2, { ...through, level: 1 }),
      ],
      below: [...places.flatMap(({ x }) => stated(x, right, along)), ...stated(right - feet.width, right, along)],
      above: stated(right - stile.width, right, along),
    },
    notes: [
      {
        at: at(right - feet.width * 0.12, -feet.height * 0.25),
        text: `Foot, ${said(feet.length, display)} long across the panel`,
      },
      ...(screws && last
        ? [
            {
              at: at(last.x, -feet.height * 0.85),
              text: screwText(panel, screws, { places, scale: s }),
            },
          ]
        : []),
      { at: at(right + 6 / s, -feet.height), text: 'Floor', end: 'arrow' },
    ],
    noteWidth: 42,
  });
}

/** How many screws hold a foot, how deep they are sunk, and which is nearer the front. */
function screwText(
  { display }: Panel,
  screws: ScrewRow,
  { places, scale }: { readonly places: readonly PanelPlace[]; readonly scale: number },
): string {
  const sunk = sunkBy(screws);
  const bored = sunk > 0 ? `, counterbored ${said(sunk, display)} deep from below` : '';
  const [back, front] = places;
  if (!back || !front) return `A screw ${screwName(screws)}${bored}`;
  const side = front.x < back.x ? 'left' : 'right';
  const shown = hasShape(screws, scale)
    ? `dashed, ${side}: nearer the front; centre line: nearer the back`
    : `the ${side} one is nearer the front`;
  const which = Math.abs(back.x - front.x) < 1e-6 ? '' : `; ${shown}`;
  return `Two screws ${screwName(screws)}${bored}${which}`;
}

/** From the view of a foot from the front to the one looking down, mm on paper. */
const BETWEEN = 14;

/** How far the view looking down shows the foot past the rail, mm. */
const FOOT_PAST = 7;

interface FootBelow {
  readonly panel: Panel;
  readonly feet: NonNullable<DividerUse['feet']>;
  readonly places: readonly PanelPlace[];
  readonly scale: number;
  readonly at: View;
}

/** The foot looking down, under the view from the front: where the rail stands on it, and its screws. */
function footBelow({ panel, feet, places, scale, at }: FootBelow): {
  readonly plan: View;
  readonly marks: (of: string | undefined, screws: ScrewRow | undefined) => Mark[];
} {
  const { outside, rail, stile } = panel;
  const right = outside.width;
  const reach = Math.min(rail.depth / 2 + FOOT_PAST, feet.length / 2);
  const [, floor] = at(0, -feet.height);
  const middle = floor + BETWEEN + reach * scale;
  const plan: View = (x, z) => [at(x, 0)[0], middle + z * scale];
  const from = right - feet.width;
  const far = right - Math.max(stile.width, feet.width) * (1 + PAST);
  return {
    plan,
    marks: (of, screws) => [
      write('note', 'looking down, rail dashed', [plan(far, 0)[0], plan(far, -reach)[1] - 2.6], { height: TEXT }),
      ...seenFace(rectangle(viewBox((x, z) => plan(x, z), [from, -reach], [right, reach])), of),
      ...[-1, 1].map((side) =>
        stroke('hidden', line(plan(far, (side * rail.depth) / 2), plan(right, (side * rail.depth) / 2))),
      ),
      ...(screws ? places.flatMap(({ x, z }) => screwEnd(screws, plan(x, z), scale)) : []),
      breakLine(plan(from, -reach), plan(right, -reach)),
      breakLine(plan(from, reach), plan(right, reach)),
      ...planFacing(plan(right, 0)),
    ],
  };
}

/** Bolt, wheels and channel of a hung divider as drawn, mm; common practice, no source. */
const BOLT = 8;
const TRACK = { width: 34, height: 32, wheel: 9 } as const;

/** A carrier's bolt from the top rail to its wheels, in the channel over the underside of the track. */
function carrierInk(at: View, top: number, track: number): Mark[] {
  const { width, height, wheel } = TRACK;
  const axle = track + height * 0.55;
  const wheels = [-1, 1].map((side) => circle(at((side * width) / 4, axle), Math.abs(at(wheel / 2, 0)[0])));
  return [
    stroke(
      'neighbour',
      polyline([
        at(BOLT, track),
        at(width / 2, track),
        at(width / 2, track + height),
        at(-width / 2, track + height),
        at(-width / 2, track),
        at(-BOLT, track),
      ]),
    ),
    ...wheels.map((path) => stroke('edge-light', path)),
    ...[-1, 1].map((side) =>
      stroke('edge-light', line(at((side * BOLT) / 2, top), at((side * BOLT) / 2, axle - wheel / 2))),
    ),
  ];
}

function underTrack(
  panel: Panel,
  key: DetailLetter,
  { scale, parts = [], divider }: SectionOptions & { readonly divider: DividerUse },
): Drawing {
  const { outside, rail, display } = panel;
  const s = scale.ratio;
  const at = uprightView(s);
  const low = outside.height - rail.height * (1 + PAST);
  const above = divider.track?.above ?? 0;
  const half = outside.depth / 2;
  const up: StatedOptions = { display, along: (y) => at(0, y)[1] };
  const through: StatedOptions = { display, along: (z) => at(z, 0)[0] };
  const track = outside.height + above;
  return dimensioned({
    name: `detail-${key.letter.toLowerCase()}`,
    title: `Detail ${key.letter}  ${key.title}`,
    alt: `The top rail of ${panel.name} under its ceiling track, cut from front to back.`,
    scale,
    ink: [
      ...uprightInk({ panel, parts, at, span: [low, outside.height + 1] }),
      stroke('neighbour', line(at(half + 8 / s, track), at(-half - 8 / s, track))),
      ...carrierInk(at, outside.height, track),
      stroke('centre', line(at(0, outside.height - rail.height * 0.5), at(0, track + 3 / s))),
      breakLine(at(half, low), at(-half, low)),
    ],
    sizes: {
      left: [...stated(outside.height - rail.height, outside.height, up), ...stated(outside.height, track, up)],
      below: stated(-rail.depth / 2, rail.depth / 2, through),
    },
    notes: [
      { at: at(-TRACK.width / 2, track + TRACK.height * 0.6), text: 'Ceiling track', end: 'arrow' },
      { at: at(-half - 6 / s, track), text: 'Underside of track', end: 'arrow' },
      {
        at: at(BOLT / 2, outside.height + above * 0.5),
        text: 'Carrier, its bolt on the centre line; track, carrier and what they need are their maker’s, drawn for the place only',
      },
    ],
    noteWidth: 42,
  });
}
