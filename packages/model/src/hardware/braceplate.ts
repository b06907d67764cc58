import type { Panel } from '../panel/panel.ts';
import { screwSchedule } from './schedule.ts';

/** The plate at one end of a cable, over the joint of rail and stile: its middle in the panel frame, and its size, mm. */
export interface BracePlate {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Metal kept round the holes of a plate, mm: common practice, no source. */
const ROUND = 10;

/** The plates of a gate's cable, the hinge side's first: as large as their screws ask for. None without a cable. */
export function bracePlates(panel: Panel): BracePlate[] {
  const row = screwSchedule(panel).find(({ joint }) => joint === 'brace plate to frame');
  const places = row?.places ?? [];
  const { stile, outside } = panel;
  return [places.slice(0, 2), places.slice(2)].flatMap((pair) => {
    const [one, other] = pair;
    if (!one || !other) return [];
    const middle = one.x < outside.width / 2 ? stile.width / 2 : outside.width - stile.width / 2;
    const off = Math.max(...pair.map(({ x }) => Math.abs(x - middle)));
    const width = Math.min(stile.width, 2 * (off + ROUND));
    return { x: middle, y: (one.y + other.y) / 2, width, height: Math.abs(one.y - other.y) + 2 * ROUND };
  });
}
