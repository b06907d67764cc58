/** A set of whole numbers from 0 to a last one, a bit each. */
export function emptySums(last: number): Int32Array {
  return new Int32Array((last >> 5) + 1);
}

/** Adds a size to every sum in a set, up to a last one, and says whether that gave any new; tells each of those. */
export function addSize(sums: Int32Array, size: number, last: number, tell?: (sum: number) => void): boolean {
  const [words, bits] = [size >> 5, size & 31];
  let grown = false;
  for (let w = last >> 5; w >= words; w--) {
    const low = bits === 0 || w === words ? 0 : (sums[w - words - 1] as number) >>> (32 - bits);
    let fresh = (((sums[w - words] as number) << bits) | low) & ~(sums[w] as number);
    if (w === last >> 5) fresh &= UP_TO[last & 31] as number;
    if (fresh === 0) continue;
    sums[w] = (sums[w] as number) | fresh;
    grown = true;
    if (tell !== undefined) eachIn(fresh, 32 * w, tell);
  }
  return grown;
}

/** Tells every sum in a set, smallest first. */
export function eachSum(sums: Int32Array, tell: (sum: number) => void): void {
  for (let w = 0; w < sums.length; w++) eachIn(sums[w] as number, 32 * w, tell);
}

/** The lowest bits of a word, up to each place. */
const UP_TO = Int32Array.from({ length: 32 }, (_, bit) => (bit === 31 ? -1 : (1 << (bit + 1)) - 1));

function eachIn(word: number, from: number, tell: (sum: number) => void): void {
  for (let open = word; open !== 0; open &= open - 1) tell(from + 31 - Math.clz32(open & -open));
}
