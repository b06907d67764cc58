import type { Grade } from '../parts/part.ts';

/** What a price is for. */
export type PricePer = 'board' | 'metre' | 'foot' | 'board foot';

/** Boards of one kind that can be bought, or (among the offcuts) that are already there. Sizes are actual, mm. */
export interface Stock {
  /** Such as `2x4 x 8 ft`. */
  readonly name: string;
  readonly thickness: number;
  readonly width: number;
  readonly length: number;
  readonly wood: string;
  readonly grade: Grade;
  /** `rough` stock loses two dressed faces on each side of its section before anything else. */
  readonly surface: 'surfaced' | 'rough';
  /** Absent: the plan then uses the least wood. */
  readonly price?: { readonly amount: number; readonly per: PricePer };
  /** How many there are; absent: as many as wanted. */
  readonly count?: number;
  /** Trim of both ends of this stock where it differs from the saw's, mm; 0: its ends are used as they are. */
  readonly trim?: number;
}

/** The saw and the shop's rules. Lengths in mm. */
export interface Saw {
  /** Width of wood the ripping blade turns to dust. */
  readonly ripKerf: number;
  /** The same for crosscuts. */
  readonly crossKerf: number;
  /** Planed off each sawn lengthwise face. */
  readonly planing: number;
  /** Planed off each face of a rough board before anything else; absent: as much as `planing`. */
  readonly dressing?: number;
  /** A piece is brought to size by the plane where no more than this comes off a side; absent: always by a rip. */
  readonly shaving?: number;
  /** Cut off the head and the tail of each board to square it; 0: the factory end is used, no cut is made. */
  readonly trimHead: number;
  readonly trimTail: number;
  /** The shortest piece that may be ripped, by its length. */
  readonly shortestRip: number;
  /** The narrowest piece that may be ripped, by its size across the cut. */
  readonly narrowestRip: number;
  /** The deepest piece that may be ripped, by its size through the blade; absent: no limit. */
  readonly deepest?: number;
  /** Leftovers of at least this length, with their full section, are kept. */
  readonly keepFrom: number;
}
