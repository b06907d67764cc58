import { type ChosenScrew, chooseScrew } from '../hardware/choose.ts';
import { cornerScrew } from '../hardware/corner.ts';
import { screwWithdrawal, WITHDRAWAL_FACTORS } from '../hardware/withdrawal.ts';
import { ceilToMark, INCH } from '../length.ts';
import type { Panel } from '../panel/panel.ts';
import { type Place, spread } from './place.ts';
import { panelWind } from './wind.ts';

/** What holds a panel to what it is fixed to. */
export interface Fixings {
  /** `screw`: through the stile from its front; `bracket`: an angle bracket at the back, stile to post. */
  readonly kind: 'screw' | 'bracket';
  /** Where they stand: screws on the front face, brackets at the stile's outer edge on the back. */
  readonly places: readonly Place[];
  /** Heads of their screws in the panel. */
  readonly driven: readonly Place[];
  readonly perSide: number;
  /** Between neighbours on one side, mm; 0 for one. */
  readonly spacing: number;
  readonly screw: ChosenScrew;
  /** Screws in each fixing. */
  readonly screwsEach: number;
  /** Pull of the wind on the worst fixing, allowable-stress level, N; 0 where no wind is reckoned. */
  readonly pull: number;
  /** What one fixing resists in withdrawal under wind, N; absent where it is not reckoned (masonry, brackets). */
  readonly resistance?: number;
}

/**
 * Widest and closest spacing of fixings up a stile, how far the first and last stand clear of the tips of the corner's
 * screws, and the step their heights are rounded to, mm; common practice, no source.
 */
const SPACING = { most: 24 * INCH, least: 6 * INCH, clear: 20, step: { in: INCH / 4, mm: 5 } } as const;

/**
 * Specific gravity taken for wood that is already there: spruce-pine-fir, the weakest common framing. NDS Table 12.3.3A.
 */
export const WALL_GRAVITY = 0.42;

/** An angle bracket: its leg, its metal, and its two screws one above the other; 1 1/2 in, mm; common practice, no source. */
export const BRACKET: { readonly leg: number; readonly metal: number; readonly screws: number } = {
  leg: 1.5 * INCH,
  metal: 2.5,
  // 3/4 in to the nearest millimetre.
  screws: 19,
};

/** Thread in the wall or plug at most, mm; common practice, no source. */
const WALL_ROOM = 2.5 * INCH;

/**
 * Fixings up both stiles: no further apart than 24 in, and as many as the wind's pull asks for where it is reckoned,
 * down to 6 in apart, all clear of the screws in the corners.
 */
export function sideFixings(panel: Panel): Fixings {
  const { details, stile, rail, outside, display, site } = panel;
  const bracket = details.use === 'guard' || (details.use === 'screen' && details.mounting === 'posts');
  const standoff = details.use === 'screen' ? details.standoff : 0;
  const masonry = details.use === 'screen' && details.into === 'masonry';
  const screw = bracket
    ? chooseScrew({ gauges: [8, 6], through: BRACKET.metal, room: stile.depth - 3, unit: display.unit })
    : chooseScrew({ gauges: [8, 10, 12, 14], through: stile.depth + standoff, room: WALL_ROOM, unit: display.unit });
  const wet = site.where === 'outdoors' ? WITHDRAWAL_FACTORS.wet : 1;
  const resistance = screwWithdrawal({ gravity: WALL_GRAVITY, ...screw }) * WITHDRAWAL_FACTORS.wind * wet;
  const wind = panelWind(panel);
  const sidePull = wind ? 0.6 * wind.worseSideForce : 0;
  const from = ceilToMark(rail.height + cornerScrew(panel).penetration + SPACING.clear, SPACING.step[display.unit]);
  const to = outside.height - from;
  const byLoad = bracket || masonry ? 1 : Math.max(1, Math.ceil(sidePull / Math.max(resistance, 1e-9)) - 1);
  const most = Math.min(SPACING.most, Math.max(SPACING.least, (to - from) / byLoad));
  const ys = spread(from, to, most);
  const z = bracket ? -stile.depth / 2 : stile.depth / 2;
  const xs = bracket ? [0, outside.width] : [stile.width / 2, outside.width - stile.width / 2];
  const places = xs.flatMap((x) => ys.map((y) => ({ x, y, z })));
  return {
    kind: bracket ? 'bracket' : 'screw',
    places,
    driven: bracket ? places.flatMap((place) => bracketScrews(place, panel)) : places,
    perSide: ys.length,
    spacing: ys.length > 1 ? (ys[1] as number) - (ys[0] as number) : 0,
    screw,
    screwsEach: bracket ? 4 : 1,
    pull: sidePull / ys.length,
    ...(!bracket && !masonry && { resistance }),
  };
}

/** Heads of the two screws that hold a bracket to its stile: in the middle of its leg, or of a narrower stile. */
function bracketScrews({ x, y, z }: Place, { stile, outside }: Panel): Place[] {
  const inwards = Math.min(0.6 * BRACKET.leg, stile.width / 2);
  const at = x < outside.width / 2 ? x + inwards : x - inwards;
  return [-1, 1].map((way) => ({ x: at, y: y + (way * BRACKET.screws) / 2, z: z - BRACKET.metal }));
}
