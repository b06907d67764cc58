import { INCH } from '../length.ts';
import type { Panel } from '../panel/panel.ts';
import { PLATE } from '../uses/brace.ts';
import { gateDetails } from '../uses/gate.ts';
import type { Place } from '../uses/place.ts';
import { type ChosenScrew, chooseScrew } from './choose.ts';
import { isClear, jointStretches, stretchesAt } from './meet.ts';
import type { JointToScrew } from './row.ts';

/** The hinge that the screws are laid out for, mm. */
export interface HingePlate {
  /** Of the plate, along the stile. */
  readonly height: number;
  /** Steps of its three screws along the stile, and how far the middle one stands across from the outer two. */
  readonly step: number;
  readonly across: number;
  readonly screw: ChosenScrew;
  /** Heads of the screws in the leaf. */
  readonly places: readonly Place[];
}

/** Plates that hinges are sold with, the best first: height and steps of three screws, inches; common practice, no source. */
const PLATES = [
  { height: 3, step: 1.25 },
  { height: 2, step: 0.75 },
  { height: 1.5, step: 0.5625 },
] as const;

/** The largest hinge whose screws stand clear of those of the corners; where none does, the smallest. */
export function hingePlate(panel: Panel, corner: JointToScrew): HingePlate {
  const { stile, display } = panel;
  const middles = panel.details.use === 'gate' ? gateDetails(panel).hinges : [];
  const screw = chooseScrew({ gauges: [10, 8], through: PLATE, room: stile.width - 6, unit: display.unit });
  const taken = jointStretches(corner, panel);
  const across = stile.depth / 3;
  const plates = PLATES.map((size): HingePlate => {
    const [height, step] = [size.height * INCH, size.step * INCH];
    const places = middles.flatMap(({ x, y }) =>
      [-1, 0, 1].map((i) => ({ x, y: y + i * step, z: ((i === 0 ? 1 : -1) * across) / 2 })),
    );
    return { height, step, across, screw, places };
  });
  const clear = plates.find(({ places }) =>
    places.every((place) => isClear(stretchesAt({ fastener: screw, along: 'x' }, place, panel), taken)),
  );
  return clear ?? (plates.at(-1) as HingePlate);
}
