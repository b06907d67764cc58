import type { Marks } from '../length.ts';
import type { Wood } from '../wood/wood.ts';
import type { Assumptions } from './assume.ts';
import type { Site } from './job.ts';
import type { FieldPath } from './problem.ts';

/** Something between fields that keeps the job from being one. */
export interface Fault {
  readonly path: FieldPath;
  readonly message: string;
}

/** What completing a panel needs from the job round it. */
export interface PanelContext {
  readonly at: FieldPath;
  readonly display: Marks;
  readonly assume: Assumptions;
  readonly faults: Fault[];
  readonly woods: readonly Wood[];
  readonly site: Site;
}
