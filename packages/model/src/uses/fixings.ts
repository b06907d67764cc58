import { type ChosenScrew, chooseScrew, PENETRATION } from '../hardware/choose.ts';
import { cornerScrew } from '../hardware/corner.ts';
import { type Gauge, screwDiameter, screwLengths } from '../hardware/gauge.ts';
import { screwWithdrawal, WITHDRAWAL_FACTORS } from '../hardware/withdrawal.ts';
import { ceilToMark, INCH, type Marks } from '../length.ts';
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

/** An angle bracket: its leg, its metal, its two screws one above the other, and the wood beyond its leg; 1 1/2 in, mm; common practice, no source. */
export const BRACKET: {
  /** Wood of the post beyond the leg. */
  readonly beyond: number;
  readonly leg: number;
  readonly metal: number;
  readonly screws: number;
} = {
  beyond: 6,
  leg: 1.5 * INCH,
  metal: 2.5,
  // 3/4 in to the nearest millimetre.
  screws: 19,
};

/** How far a fixing screw's tip stays short of the plane of the glass, and its least thread in the wall, mm; common practice, no source. */
export const TIP_ROOM: Readonly<Record<Marks['unit'], number>> = { in: INCH, mm: 25 };
const WALL_HOLD: Readonly<Record<Marks['unit'], number>> = { in: INCH, mm: 25 };

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
  const through = stile.depth + standoff;
  const screw = bracket
    ? chooseScrew({ gauges: [8, 6], through: BRACKET.metal, room: stile.depth - 3, unit: display.unit })
    : wallScrew(through, wallRoom(panel), display.unit);
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

/** Most thread in the wall: where glass stands behind, the tip stays `TIP_ROOM` short of its plane. */
function wallRoom({ details, display }: Panel): number {
  if (details.use !== 'screen' || details.glass === undefined) return WALL_ROOM;
  return Math.min(
    WALL_ROOM,
    details.glass - TIP_ROOM[display.unit] - (details.mounting === 'blocks' ? details.standoff : 0),
  );
}

/**
 * The screw through stile and block into the wall. Where the room before the glass holds no sold length with enough
 * thread in the wall, the shortest that has it: its tip is the farthest from the glass.
 */
function wallScrew(through: number, room: number, unit: Marks['unit']): ChosenScrew {
  const gauges = [8, 10, 12, 14] as const;
  const least = (gauge: Gauge) => through + Math.max(WALL_HOLD[unit], PENETRATION.least * screwDiameter(gauge)) - 1e-9;
  if (room >= WALL_ROOM) return chooseScrew({ gauges, through, room, unit });
  const held = (most: number) =>
    gauges.filter((gauge) =>
      screwLengths(gauge, unit).some((length) => length >= least(gauge) && length <= most + 1e-9),
    );
  const fits = held(through + room);
  if (fits.length > 0) return chooseScrew({ gauges: fits, through, room, unit });
  const shortest = Math.min(
    ...gauges.flatMap((gauge) => screwLengths(gauge, unit).filter((length) => length >= least(gauge))),
  );
  if (!Number.isFinite(shortest)) return chooseScrew({ gauges, through, room: WALL_ROOM, unit });
  return chooseScrew({ gauges: held(shortest), through, room: shortest - through, unit });
}

/** Heads of the two screws that hold a bracket to its stile: in the middle of its leg, or of a narrower stile. */
function bracketScrews({ x, y, z }: Place, { stile, outside }: Panel): Place[] {
  const inwards = Math.min(0.6 * BRACKET.leg, stile.width / 2);
  const at = x < outside.width / 2 ? x + inwards : x - inwards;
  return [-1, 1].map((way) => ({ x: at, y: y + (way * BRACKET.screws) / 2, z: z - BRACKET.metal }));
}
