/** Side of a stave that a slat passes: 1 in front, -1 behind. */
export type Side = 1 | -1;

/** Weaves that have a name. */
export type NamedWeave =
  | 'plain'
  | 'two-over-two twill'
  | 'two-over-two basket'
  | 'two-over-one twill'
  | 'paired courses';

/** Motifs as `+` in front, `-` behind; the bottom course comes first. */
const named: Readonly<Record<NamedWeave, readonly string[]>> = {
  plain: ['+-', '-+'],
  'two-over-two twill': ['++--', '-++-', '--++', '+--+'],
  'two-over-two basket': ['++--', '++--', '--++', '--++'],
  'two-over-one twill': ['++-', '-++', '+-+'],
  'paired courses': ['+-', '+-', '-+', '-+'],
};

/** Names of the weaves that `weaveSides` knows. */
export const weaveNames: readonly NamedWeave[] = Object.keys(named) as NamedWeave[];

/** The weave of one panel. Courses alike share one row, so that what follows from a row is worked out once. */
export interface Weave {
  /** The rows that differ, each from the left stave to the right, in the order in which they first come up. */
  readonly rows: readonly (readonly Side[])[];
  /** For each course from the bottom, its place in `rows`. */
  readonly rowOfCourse: readonly number[];
  /** Courses and staves after which the weave repeats. */
  readonly repeat: { readonly courses: number; readonly staves: number };
}

/**
 * Sides of every course and stave.
 *
 * `start` is the side on which the bottom course passes the left stave, in front if absent. A named weave is shifted
 * along the staves to begin so, and keeps its face. Given rows say it themselves and are taken as written.
 *
 * @param pattern `weave` is a name, or rows of `+` and `-` from the bottom course up, repeated as far as needed.
 * @throws RangeError for an unknown name, a row with anything but `+` and `-`, rows of different lengths, or no rows.
 * @example weaveSides({ weave: 'plain', courses: 3, staves: 3 }) // → rows + - + and - + -, rowOfCourse [0, 1, 0]
 */
export function weaveSides(pattern: {
  readonly weave: NamedWeave | readonly string[];
  readonly start?: 'front' | 'behind';
  readonly courses: number;
  readonly staves: number;
}): Weave {
  const { weave, start, courses, staves } = pattern;
  for (const [what, count] of Object.entries({ courses, staves }))
    if (!(Number.isInteger(count) && count >= 1))
      throw new RangeError(`invalid number of ${what}: ${count} (expected a whole number from 1)`);
  const motif = typeof weave === 'string' ? namedMotif(weave, start) : givenMotif(weave);
  const width = motif[0]?.length ?? 1;
  const seen = new Map<string, number>();
  const rows: (readonly Side[])[] = [];
  const rowOfCourse = Array.from({ length: courses }, (_, course) => {
    const of = motif[course % motif.length] ?? [];
    const row = Array.from({ length: staves }, (_, j): Side => of[j % width] ?? 1);
    const key = row.join();
    const known = seen.get(key) ?? rows.push(row) - 1;
    seen.set(key, known);
    return known;
  });
  return { rows, rowOfCourse, repeat: { courses: motif.length, staves: width } };
}

function namedMotif(name: NamedWeave, start: 'front' | 'behind' = 'front'): Side[][] {
  const motif = named[name];
  if (!motif) throw new RangeError(`invalid weave: ${name} (expected ${weaveNames.join(', ')}, or rows of + and -)`);
  const shift = start === 'front' ? 0 : (motif[0] ?? '').indexOf('-');
  return motif.map((text) => readRow(text.slice(shift) + text.slice(0, shift)));
}

function givenMotif(texts: readonly string[]): Side[][] {
  const motif = texts.map(readRow);
  if (motif.length === 0) throw new RangeError('invalid weave: no rows (expected at least one row of + and -)');
  const ragged = motif.findIndex((row) => row.length !== motif[0]?.length);
  if (ragged > 0)
    throw new RangeError(
      `invalid weave: row ${ragged + 1} is ${texts[ragged]}, row 1 ${texts[0]} (expected one length)`,
    );
  return motif;
}

function readRow(text: string): Side[] {
  if (!/^[+-]+$/.test(text)) throw new RangeError(`invalid weave row: ${text} (expected + and - only)`);
  return Array.from(text, (sign) => (sign === '+' ? 1 : -1));
}

/** The row seen in a mirror: left for right. */
export function mirrorRow(row: readonly Side[]): Side[] {
  return row.toReversed();
}

/** The row with front and back swapped. */
export function swapRow(row: readonly Side[]): Side[] {
  return row.map((side) => (side === 1 ? -1 : 1));
}

/** Places, from 0, of the staves after which the slat changes side on its way to the next one. */
export function changesOfSide(row: readonly Side[]): number[] {
  return row.flatMap((side, j) => (j + 1 < row.length && side !== row[j + 1] ? [j] : []));
}
