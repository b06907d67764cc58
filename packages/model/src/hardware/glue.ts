import type { Panel } from '../panel/panel.ts';
import { screwSchedule } from './schedule.ts';

/** Glue that one panel's frame takes: corners, cover strips, plugs. Nothing else is glued. */
export interface GlueAmount {
  readonly name: string;
  /** Glued area, m². */
  readonly area: number;
  readonly litres: number;
}

/** Litres for each square metre glued: 200 g, and twice as much for end grain and waste; common practice, no source. */
const SPREAD = 0.4;

/** A small bottle, litres: 8 US fluid ounces, or a quarter litre. */
export const BOTTLE: number = 0.25;

/** Glue for one panel, waterproof where the site is outdoors. */
export function glueFor(panel: Panel): GlueAmount {
  const { stile, rail, cover, site, display } = panel;
  const corners = 4 * stile.width * Math.min(stile.depth, rail.depth);
  const strips = 2 * cover.length * cover.thickness;
  const plugs = screwSchedule(panel).reduce(
    (sum, { plug, count }) => sum + (plug ? count * Math.PI * plug.diameter * plug.depth : 0),
    0,
  );
  const area = (corners + strips + plugs) / 1e6;
  const bottle = display.unit === 'in' ? '8 oz bottle' : '250 ml bottle';
  const kind = site.where === 'outdoors' ? 'waterproof exterior wood glue' : 'wood glue';
  return { name: `${kind}, ${bottle}`, area, litres: area * SPREAD };
}
