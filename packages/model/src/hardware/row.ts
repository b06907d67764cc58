import { INCH } from '../length.ts';
import type { Place } from '../uses/place.ts';
import type { Wood } from '../wood/wood.ts';
import type { ChosenScrew } from './choose.ts';
import type { Holes } from './pilot.ts';
import type { Plug } from './plug.ts';

/** The joints of a panel that screws or pins hold. */
export type JointName =
  | 'rail to stile'
  | 'end stave to stile'
  | 'mounting'
  | 'cap rail to top rail'
  | 'foot to bottom rail'
  | 'hinge to stile'
  | 'hinge to post'
  | 'strut to frame'
  | 'brace plate to frame'
  | 'cover strip to top rail'
  | 'stop strip to stile';

/** A headless pin or brad, mm. */
export interface Pin {
  /** Gauge of the wire that it is made of. */
  readonly wire: 18 | 16;
  readonly diameter: number;
  readonly length: number;
  readonly through: number;
  readonly penetration: number;
}

/** A distance found and the one wanted, mm. */
export interface Distance {
  readonly found: number;
  readonly wanted: number;
}

/** The screws or pins of one joint of one panel, mm. */
export interface ScrewRow {
  readonly joint: JointName;
  readonly fastener: ({ readonly kind: 'screw' } & ChosenScrew) | ({ readonly kind: 'pin' } & Pin);
  /** Such as `No. 8 x 2 1/2 in`. */
  readonly name: string;
  /** In one panel. */
  readonly count: number;
  /** Where the heads are, panel frame; empty where they go into something else than the panel. */
  readonly places: readonly Place[];
  /** Heads of all that go into the panel, each screw of a bracket for itself. */
  readonly driven: readonly Place[];
  /** The way they are driven: towards the panel's middle, or out of it. */
  readonly along: 'x' | 'y' | 'z';
  readonly outward: boolean;
  /** Whether the thread runs across the grain of the piece it bites or into its end. */
  readonly grain: 'side' | 'end';
  readonly holes: Holes;
  /** Where the heads are sunk: the bit for the counterbore, and the plug that fills it, unless it stays open. */
  readonly plug?: Plug & { readonly open?: true };
  readonly material: string;
  /** From the screw's middle to the nearest long edge, and to the nearest end, of the pieces joined. */
  readonly edge: Distance;
  readonly end: Distance;
  /** Where to mark them, in words with sizes: heights are from the foot of the frame. */
  readonly where: string;
  readonly remark?: string;
  readonly source: string;
}

/** A joint that glue alone holds, because no screw or pin fits it. */
export interface GluedJoint {
  readonly joint: JointName;
  readonly where: string;
  readonly why: string;
}

/** A joint before its row is written out: which screw, where, into what. */
export interface JointToScrew {
  readonly joint: JointName;
  readonly screw?: ChosenScrew;
  readonly pin?: Pin;
  readonly places: readonly Place[];
  /** Where they differ from the places. */
  readonly count?: number;
  readonly driven?: readonly Place[];
  readonly along: ScrewRow['along'];
  readonly outward?: boolean;
  readonly grain?: ScrewRow['grain'];
  /** Wood that the thread bites; absent: what is already there. */
  readonly into?: Wood;
  readonly edge: number;
  readonly end: number;
  readonly where: string;
  readonly remark?: string;
}

/** Wanted distances in diameters, prebored: edge, and end where the wood is pressed. NDS C12.1.5.7, from memory. */
export const DISTANCES: { readonly edge: number; readonly end: number } = { edge: 2.5, end: 5 };

/** Wood kept under the head of a screw in a thick piece, mm: 1 1/2 in, common practice, no source. */
export const KEEP: number = 1.5 * INCH;

/** Distance of the first screw up a stave or strip from its end, mm: 3 in, common practice, no source. */
export const FROM_END: number = 3 * INCH;

/** Wood at the point of a pin that is not drilled, so that it grips, mm: 1/8 in; common practice, no source. */
const UNDRILLED: number = INCH / 8;

/** How deep a pilot goes from the face that its screw or pin is driven at, mm. */
export function pilotDepth({ fastener, plug }: Pick<ScrewRow, 'fastener' | 'plug'>): number {
  return fastener.kind === 'pin' ? fastener.length - UNDRILLED : fastener.length + (plug?.depth ?? 0);
}
