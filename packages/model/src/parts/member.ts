import type { MemberWood } from '../job/job.ts';
import type { PartRole } from './part.ts';

/** A kind of piece of one panel before it is pooled with its likes and given a letter. Sizes finished, mm. */
export interface Member {
  readonly name: string;
  readonly role: PartRole;
  /** Pieces in one panel. */
  readonly count: number;
  readonly length: number;
  /** The two sides of the section, in any order. */
  readonly section: readonly [number, number];
  readonly wood: MemberWood;
  readonly made: string;
}
