/** How far a figure can be trusted: seen in a copy of its source, recalled without the page, or worked out here. */
export type Confidence = 'read' | 'from memory' | 'derived';

/** Decay groups of average heartwood, as the Wood Handbook divides them; sapwood of every wood is in the last. */
export type DecayGroup = 'very resistant' | 'resistant' | 'moderately resistant' | 'slightly or nonresistant';

/** A value across the growth rings (radial) and along them (tangential). */
export interface RingPair {
  readonly radial: number;
  readonly tangential: number;
}

/** What the heartwood does outdoors. */
export interface Decay {
  readonly group: DecayGroup;
  /** Where the group does not hold for all wood sold, such as `old growth only`. */
  readonly remark?: string;
}

/**
 * A wood as the computations need it. A row of the wood table is one; so is whatever a job says of a wood of its own,
 * for which the first four fields are enough to bend and weigh, and `shrinkage` or `coefficients` to move.
 */
export interface Wood {
  /** Such as `western redcedar`. */
  readonly name: string;
  /** Modulus of elasticity of clear straight-grained wood at 12 % moisture, MPa. */
  readonly modulus: number;
  /** Modulus of rupture of the same, MPa: an average of short tests, not a design value. */
  readonly strength: number;
  /** Oven-dry mass over volume at 12 % moisture, relative to water. */
  readonly specificGravity12: number;
  /** Shrinkage from green to oven-dry, percent of the green size. */
  readonly shrinkage?: RingPair;
  /** Change of size per size and per 1 % of moisture, for 6 to 14 % moisture. */
  readonly coefficients?: RingPair;
  /** Moisture at which shrinking sets in, percent; 30 where absent. */
  readonly fibreSaturation?: number;
  readonly decay?: Decay;
  /** Modified ball hardness of the side faces, N. */
  readonly hardness?: number;
  /** Specific gravity, oven-dry mass and volume, for the strength of screws: not `specificGravity12`. */
  readonly fastenerGravity?: number;
  /** Stains and eats plain and electroplated steel where wet. */
  readonly tannic?: boolean;
  /** What the sawdust is known for. */
  readonly dust?: string;
  /** Where the figures come from. */
  readonly source?: string;
}

/** A row of the wood table. */
export interface Species extends Wood {
  /** Such as `western-redcedar`. */
  readonly id: string;
  readonly botanical: string;
  readonly kind: 'softwood' | 'hardwood';
  readonly shrinkage: RingPair;
  readonly coefficients: RingPair;
  readonly fibreSaturation: number;
  readonly decay: Decay;
  readonly hardness: number;
  readonly tannic: boolean;
  readonly source: string;
  /** Combination of woods that `fastenerGravity` stands for, as the fastener table names it. */
  readonly fastenerGroup?: string;
  /** How each block of figures was come by. */
  readonly confidence: {
    /** Modulus, strength and hardness. */
    readonly strength: Confidence;
    readonly specificGravity12: Confidence;
    readonly shrinkage: Confidence;
    readonly coefficients: Confidence;
    readonly decay: Confidence;
  };
}
