import type { DividerUse, Panel, Part } from '@wattlewright/model';
import type { Drawing, Mark } from '../mark.ts';
import { stroke } from '../mark.ts';
import { line, rectangle } from '../path.ts';
import type { Extent } from '../scale.ts';
import { view, viewBox } from '../view.ts';
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
  const place = screws?.places.find(({ x }) => x > outside.width / 2);
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
      ...(screws && place ? screwSide(screws, { from: at(place.x, place.y), way: [0, -1], scale: s }) : []),
      breakLine(at(left, 0), at(left, rail.height)),
      breakLine(at(right - stile.width, top), at(right, top)),
    ],
    sizes: {
      left: [...stated(-feet.height, 0, up), ...stated(0, rail.height, up)],
      below: [...stated(right - feet.width, right, along)],
      above: stated(right - stile.width, right, along),
    },
    notes: [
      {
        at: at(right - feet.width * 0.2, -feet.height * 0.4),
        text: `Foot, ${said(feet.length, display)} long across the panel`,
      },
      ...(screws && place
        ? [{ at: at(place.x, -feet.height * 0.85), text: `Two screws ${screwName(screws)}, counterbored` }]
        : []),
      { at: at(right + 6 / s, -feet.height), text: 'Floor', end: 'arrow' },
    ],
    noteWidth: 42,
  });
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
      stroke('centre', line(at(0, outside.height - rail.height * 0.5), at(0, track + 3 / s))),
      breakLine(at(half, low), at(-half, low)),
    ],
    sizes: {
      left: [...stated(outside.height - rail.height, outside.height, up), ...stated(outside.height, track, up)],
      below: stated(-rail.depth / 2, rail.depth / 2, through),
    },
    notes: [
      { at: at(-half - 6 / s, track), text: 'Ceiling track', end: 'arrow' },
      { at: at(0, outside.height + above * 0.5), text: 'Carrier on the centre line, as its maker says' },
    ],
    noteWidth: 42,
  });
}
