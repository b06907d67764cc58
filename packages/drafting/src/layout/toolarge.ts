/** Thrown for something that does not fit the paper it is laid on and cannot be made smaller or cut. */
export class TooLarge extends RangeError {
  override readonly name = 'TooLarge';
  /** What it is, for the reader, such as `Run: Seaward edge, at 1:100`. */
  readonly what: string;
  /** What it takes and what room there is, such as `2040 × 96 mm, room for 172 × 218 mm`. */
  readonly sizes: string;

  constructor(what: string, sizes: string, paper = 'its room') {
    super(`invalid paper: ${what} does not fit ${paper} (${sizes})`);
    this.what = what;
    this.sizes = sizes;
  }
}
