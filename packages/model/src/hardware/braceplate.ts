import type { Panel } from '../panel/panel.ts';
import { gateDetails } from '../uses/gate.ts';
import type { Place } from '../uses/place.ts';
import { screwSchedule } from './schedule.ts';

/** The plate at one end of a cable brace: its eye, its screws, and as far as it must reach for them, panel frame, mm. */
export interface BracePlate {
  readonly eye: Place;
  readonly screws: readonly Place[];
  readonly from: Pick<Place, 'x' | 'y'>;
  readonly to: Pick<Place, 'x' | 'y'>;
}

/** Metal of a plate round its holes, mm; common practice, no source. */
const ROUND = 9;

/** The plates of a cable brace, the upper one first; none for a panel without a cable. */
export function bracePlates(panel: Panel): BracePlate[] {
  const brace = panel.details.use === 'gate' ? gateDetails(panel).brace : undefined;
  const row = screwSchedule(panel).find(({ joint }) => joint === 'brace plate to frame');
  if (brace?.kind !== 'cable' || !row) return [];
  const { width, height } = panel.outside;
  return [brace.hinge, brace.latch]
    .toSorted((a, b) => b.y - a.y)
    .map((eye) => {
      const near = ({ x, y }: Place): boolean =>
        x > width / 2 === eye.x > width / 2 && y > height / 2 === eye.y > height / 2;
      const screws = row.places.filter(near);
      // The eye of a plate as it is sold stands in its middle.
      const half = (at: (place: Place) => number) =>
        Math.max(...screws.map((screw) => Math.abs(at(screw) - at(eye)))) + ROUND;
      const [across, up] = [half(({ x }) => x), half(({ y }) => y)];
      return {
        eye,
        screws,
        from: { x: Math.max(0, eye.x - across), y: Math.max(0, eye.y - up) },
        to: { x: Math.min(width, eye.x + across), y: Math.min(height, eye.y + up) },
      };
    });
}
