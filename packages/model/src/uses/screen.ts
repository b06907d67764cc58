import type { ScreenUse } from '../job/job.ts';
import type { WindLoad } from '../loads/wind.ts';
import type { Panel } from '../panel/panel.ts';
import { weaveDepth } from '../panel/panel.ts';
import { type Fixings, sideFixings } from './fixings.ts';
import { BLOCK_HEIGHT, type Place } from './place.ts';
import { GRAVITY, panelCentre } from './weight.ts';
import { panelWind } from './wind.ts';

/** A screen as it is fixed, mm, N, kg. */
export interface ScreenDetails {
  readonly use: 'screen';
  readonly mounting: ScreenUse['mounting'];
  readonly fixings: Fixings;
  /** Stand-off blocks, their middles in the panel frame; absent without. */
  readonly blocks?: {
    readonly width: number;
    readonly height: number;
    readonly depth: number;
    readonly places: readonly Place[];
  };
  readonly mass: number;
  /** Weight that one fixing carries, N. */
  readonly shear: number;
  readonly wind?: WindLoad;
  /** Distances to the glass behind: from the back of the frame, and of the weave; absent where there is none. */
  readonly glass?: { readonly frame: number; readonly weave: number };
  /** From the wall or window frame to the back of the panel. */
  readonly standoff: number;
}

/**
 * How a screen is fixed and what its fixings bear.
 * @throws RangeError for a panel of another use
 */
export function screenDetails(panel: Panel): ScreenDetails {
  const { details, stile, outside } = panel;
  if (details.use !== 'screen') throw new RangeError(`invalid use: ${details.use} (expected screen)`);
  const fixings = sideFixings(panel);
  const { mass } = panelCentre(panel);
  const wind = panelWind(panel);
  const { mounting, standoff, glass } = details;
  return {
    use: 'screen',
    mounting,
    fixings,
    ...(mounting === 'blocks' &&
      standoff > 0 && {
        blocks: {
          width: stile.width,
          height: BLOCK_HEIGHT,
          depth: standoff,
          places: fixings.places.map(({ x, y }) => ({ x, y, z: -(stile.depth + standoff) / 2 })),
        },
      }),
    mass,
    shear: (mass * GRAVITY) / fixings.places.length,
    ...(wind && { wind }),
    ...(glass !== undefined && {
      glass: { frame: glass, weave: glass + Math.max(0, outside.depth - weaveDepth(panel)) / 2 },
    }),
    standoff,
  };
}
