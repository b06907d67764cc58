import type { GateUse } from '../job/job.ts';
import { INCH } from '../length.ts';
import {
  braceSag,
  braceTakeUp,
  type GateBrace,
  gateBrace,
  gateHinges,
  type HingeForces,
  strutBuckling,
} from '../loads/gate.ts';
import type { WindLoad } from '../loads/wind.ts';
import type { Panel } from '../panel/panel.ts';
import { type BraceLine, braceEnds, braceLine, strutThickness } from './brace.ts';
import type { Place } from './place.ts';
import { GRAVITY, panelCentre } from './weight.ts';
import { panelWind } from './wind.ts';

/** The brace of a gate and what it bears, mm and N. */
export interface BraceDetails extends BraceLine {
  readonly length: number;
  /** Force by the leaf's own weight, and with the load at the latch too; positive pulls, negative pushes. */
  readonly force: number;
  readonly forceLoaded: number;
  /** Shortening (strut: lengthening) that lifts the latch side by `lift`. */
  readonly lift: number;
  readonly takeUp: number;
  /** The same in turns of the turnbuckle, up to the next quarter. */
  readonly turns: number;
  /** Drop of the latch side by the brace's own stretch under the load. */
  readonly drop: number;
  /** Force that the brace may bear: a share of the cable's breaking load, a third of the strut's buckling load. */
  readonly most: number;
}

/** A gate leaf, mm, N, kg; places in the panel frame. */
export interface GateDetails {
  readonly use: 'gate';
  readonly hinge: GateUse['hinge'];
  readonly swing: GateUse['swing'];
  readonly clear: GateUse['clear'];
  readonly mass: number;
  /** Hinge side to the centre of mass. */
  readonly centre: number;
  /** Clear width between the posts, and height of the leaf's top above the ground. */
  readonly opening: { readonly width: number; readonly height: number };
  /** Radius that the leaf sweeps. */
  readonly swingRadius: number;
  /** Middles of the hinges, at the hinge side's edge, top one first. */
  readonly hinges: readonly Place[];
  /** Middle of the latch at the latch side's edge; `inside` tells whether it falls within the stile. */
  readonly latch: Place & { readonly inside: boolean };
  readonly brace?: BraceDetails;
  /** Forces by weight alone and with the load at the latch; absent where the hinges are not apart. */
  readonly hingeForces?: { readonly own: HingeForces; readonly loaded: HingeForces };
  /** What the hinge post has to take at the ground by weight and latch load, N mm, and the wind's force on the leaf, N. */
  readonly post: { readonly moment: number; readonly wind: number };
  readonly wind?: WindLoad;
}

/** Lift that a sagging gate is set back by: 3/16 in, mm. */
const LIFT = (3 / 16) * INCH;

/**
 * Wire rope 1/8 in, 7 strands of 7 wires, stainless: metal area mm², modulus MPa, and a fifth of its breaking load of
 * 7500 N. Catalogue figures, from memory.
 */
export const CABLE: {
  readonly diameter: number;
  readonly area: number;
  readonly modulus: number;
  readonly most: number;
} = { diameter: INCH / 8, area: 4.9, modulus: 90000, most: 1500 };

/**
 * Turnbuckles by the job's unit: the thread with its pitch, and what a turn takes up, mm, both its ends moving by one pitch. M8 has a
 * pitch of 1.25 mm, 5/16 in has 18 threads to the inch; which turnbuckle is bought is common practice, no source.
 */
export const TURNBUCKLE: Readonly<Record<'in' | 'mm', { readonly name: string; readonly turn: number }>> = {
  in: { name: '5/16-18', turn: (2 * INCH) / 18 },
  mm: { name: 'M8 x 1.25', turn: 2 * 1.25 },
};

/**
 * How a gate hangs, what its brace, hinges and post bear.
 * @throws RangeError for a panel of another use
 */
export function gateDetails(panel: Panel): GateDetails {
  const { details, outside, opening } = panel;
  if (details.use !== 'gate') throw new RangeError(`invalid use: ${details.use} (expected gate)`);
  const { mass, x } = panelCentre(panel);
  const centre = details.hinge === 'left' ? x : outside.width - x;
  const own = { width: outside.width, weight: mass * GRAVITY, centre };
  const loaded = { ...own, latchLoad: details.load };
  const [hingeX, latchX] = details.hinge === 'left' ? [0, outside.width] : [outside.width, 0];
  const hinges = hingeHeights(details, outside.height).map((y) => ({ x: hingeX, y, z: 0 }));
  const apart = (hinges[0]?.y ?? 0) - (hinges.at(-1)?.y ?? 0);
  const latchY = details.latch - details.clear.ground;
  const brace = braceOf(panel, details, loaded);
  const wind = panelWind(panel);
  return {
    use: 'gate',
    hinge: details.hinge,
    swing: details.swing,
    clear: details.clear,
    mass,
    centre,
    opening: {
      width: opening?.width ?? details.clear.hinge + outside.width + details.clear.latch,
      height: details.clear.ground + outside.height,
    },
    swingRadius: Math.hypot(outside.width, outside.depth),
    hinges,
    latch: { x: latchX, y: latchY, z: 0, inside: latchY > 0 && latchY < outside.height },
    ...(brace && { brace }),
    ...(apart > 0 && {
      hingeForces: { own: gateHinges({ ...own, apart }), loaded: gateHinges({ ...loaded, apart }) },
    }),
    post: { moment: own.weight * centre + details.load * outside.width, wind: wind?.allowableForce ?? 0 },
    ...(wind && { wind }),
  };
}

/** Heights of the hinges in the panel frame, top one first: an inset from each end, the others at equal steps. */
function hingeHeights({ hinges, hingeInset }: GateUse, height: number): number[] {
  const step = (height - 2 * hingeInset) / (hinges - 1);
  return Array.from({ length: hinges }, (_, i) => height - hingeInset - i * step);
}

function braceOf(
  panel: Panel,
  gate: GateUse,
  load: { readonly width: number; readonly weight: number; readonly centre: number; readonly latchLoad: number },
): BraceDetails | undefined {
  const line = braceLine(panel, gate);
  if (!line) return undefined;
  const ends = braceEnds(line, load.width, gate.hinge);
  const own: GateBrace = gateBrace({ ...load, latchLoad: 0, ...ends });
  const strut = {
    width: panel.stile.width,
    thickness: strutThickness(panel),
    modulus: panel.spec.wood.rail.wood.modulus,
  };
  const section = line.kind === 'cable' ? CABLE : { area: strut.width * strut.thickness, modulus: strut.modulus };
  const takeUp = Math.abs(braceTakeUp({ width: load.width, lift: LIFT, ...ends }));
  return {
    ...line,
    length: own.length,
    force: own.tension,
    forceLoaded: gateBrace({ ...load, ...ends }).tension,
    lift: LIFT,
    takeUp,
    turns: Math.ceil((4 * takeUp) / TURNBUCKLE[panel.display.unit].turn - 1e-9) / 4,
    drop: Math.abs(braceSag({ ...load, ...ends, ...section }).drop),
    most: line.kind === 'cable' ? CABLE.most : strutBuckling({ ...strut, length: own.length }) / 3,
  };
}
