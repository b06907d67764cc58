import type { DividerUse, Panel, Part } from '@wattlewright/model';
import type { Drawing, Mark } from '../mark.ts';
import { stroke } from '../mark.ts';
import { circle, line, polyline, rectangle } from '../path.ts';
import type { Extent } from '../scale.ts';
import { type View, view, viewBox } from '../view.ts';
import { dimensioned, type StatedOptions, said, stated } from './detaildrawing.ts';
import type { DetailLetter } from './detailkey.ts';
import { screwName, screwSide, screwsOf } from './detailscrew.ts';
import { breakLine, seenFace } from './grain.ts';
import { partOf } from './partof.ts';
import { uprightInk, uprightView } from './verticalsectionink.ts';
import type { SectionOptions } from './weavesection.ts';

/** How far the detail of a foot or a track reaches along and up the panel beyond the frame's own sizes, shares of them. */
const PAST = 0.8;

/** Real size of a divider's detail, mm. */
export function standExtent({ rail, stile, outside }: Panel, { feet, track }: DividerUse): Extent {
  if (feet)
    return { width: Math.max(stile.width, feet.width) * (1 + PAST), height: feet.height + rail.height * (1 + PAST) };
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
  const top = rail.height * (1 + PAST);
  const letter = (role: Part['role']): string | undefined => partOf(parts, panel, role)?.letter;
  const face = (x0: number, y0: number, y1: number, role: Part['role'], x1 = right): Mark[] =>
    seenFace(rectangle(viewBox(at, [x0, y0], [x1, y1])), letter(role));
  const screws = screwsOf(panel, 'foot to bottom rail');
  const places = (screws?.places ?? []).filter(({ x }) => x > outside.width / 2);
  // The outermost, towards the notes: a leader to the other would cross it.
  const last = places.toSorted((a, b) => b.x - a.x)[0];
  const up: StatedOptions = { display, along: (y) => at(0, y)[1] };
  const along: StatedOptions = { display, along: (x) => at(x, 0)[0] };
  return dimensioned({
    name: `detail-${key.letter.toLowerCase()}`,
    title: `Detail ${key.letter}  ${key.title}`,
    alt: `The right foot of ${panel.name} from the front, under its bottom rail and stile.`,
    scale,
    ink: [
      ...face(left, 0, rail.height, 'rail'),
      ...face(right - stile.width, rail.height, top, 'stile'),
      ...face(right - feet.width, -feet.height, 0, 'foot'),
      stroke('neighbour', line(at(left, -feet.height), at(right + 8 / s, -feet.height))),
      ...(screws ? places.flatMap(({ x, y }) => screwSide(screws, { from: at(x, y), way: [0, -1], scale: s })) : []),
      breakLine(at(left, 0), at(left, rail.height)),
      breakLine(at(right - stile.width, top), at(right, top)),
    ],
    sizes: {
      left: [...stated(-feet.height, 0, up), ...stated(0, rail.height, up)],
      below: [...places.flatMap(({ x }) => stated(x, right, along)), ...stated(right - feet.width, right, along)],
      above: stated(right - stile.width, right, along),
    },
    notes: [
      {
        at: at(right - feet.width * 0.2, -feet.height * 0.4),
        text: `Foot, ${said(feet.length, display)} long across the panel`,
      },
      ...(screws && last
        ? [
            {
              at: at(last.x, -feet.height * 0.85),
              text: `${places.length === 1 ? 'A screw' : 'Two screws'} ${screwName(screws)}, counterbored, one nearer the front, one nearer the back`,
            },
          ]
        : []),
      { at: at(right + 6 / s, -feet.height), text: 'Floor', end: 'arrow' },
    ],
    noteWidth: 42,
  });
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
      {
        at: at(BOLT / 2, outside.height + above * 0.5),
        text: 'Carrier, its bolt on the centre line; track, carrier and what they need are their maker’s, drawn for the place only',
      },
    ],
    noteWidth: 42,
  });
}
