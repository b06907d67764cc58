/** How much a finding matters: `stop` do not build this, `caution` think first, `note` know this. */
export type FindingLevel = 'stop' | 'caution' | 'note';

/** Something the design makes true that the maker must know, with the figure and what it was judged by. */
export interface Finding {
  /** Short fixed name of the rule, such as `slat-strength`. */
  readonly code: string;
  readonly level: FindingLevel;
  /** Panel, part or sheet that it is about, in the reader's words. */
  readonly where: string;
  /** One plain sentence: what is so. */
  readonly text: string;
  /** The figure found, ready to read, such as `0.61 of the strength`. */
  readonly figure: string;
  /** What the figure was judged by, ready to read, such as `0.55`. */
  readonly limit: string;
  /** Figure and limit in a plain sentence or two; absent where nothing more is to be said of them. */
  readonly judged?: string;
  /** The field of the job file that would mend it, such as `gate.latch`, for whoever writes the job. */
  readonly field?: string;
  /** Why the limit is what it is. */
  readonly reason: string;
  /** Published source, or "common practice, no source". */
  readonly source: string;
  /** What would mend it. */
  readonly mend: string;
}
