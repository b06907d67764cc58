/** Wood grade as the plan sees it: `clear` straight grain without knots, or `knotty` sound knots allowed. */
export type Grade = 'clear' | 'knotty';

/** What a piece is in the panel; the words of the trade. */
export type PartRole =
  | 'rail'
  | 'stile'
  | 'stave'
  | 'slat'
  | 'cover strip'
  | 'filler'
  | 'cap rail'
  | 'stand-off block'
  | 'foot'
  | 'strut'
  | 'stop';

/** Pieces of one finished size: where they go, what they are made of, how many to cut. */
export interface Part {
  /** Cut letter written on the wood and on every sheet, such as `A`. */
  readonly letter: string;
  /** Such as `top rail`. */
  readonly name: string;
  readonly role: PartRole;
  /** Pieces that the panels need. */
  readonly count: number;
  /** Pieces beyond `count`, against breakage. */
  readonly spare: number;
  /** Of these and the spares, good pieces of measured panels that are cut already; absent where there are none. */
  readonly inHand?: number;
  /** Finished length along the grain, mm. */
  readonly length: number;
  /** Cut beyond `length` at first, to be trimmed once the stack is measured, mm; 0 for all but stiles, staves and stop strips. */
  readonly over: number;
  /** Finished larger side of the section, mm. */
  readonly width: number;
  /** Finished smaller side of the section, mm. */
  readonly thickness: number;
  /** Name of the wood as the wood table or the job has it, such as `western redcedar`. */
  readonly wood: string;
  readonly grade: Grade;
  /** Grain always runs along the length. */
  readonly grain: 'length';
  /** Where the pieces go, panel by panel; counts add up to `count`, `inHand` of each are cut already. */
  readonly where: readonly { readonly panel: string; readonly count: number; readonly inHand?: number }[];
  /** What the length is made from, in words for the reader, such as `clear height + 2 grooves`. */
  readonly made: string;
}
