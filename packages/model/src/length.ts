/** The unit a job is written and shown in. */
export type Unit = 'in' | 'mm';

/** One inch in millimetres, exact by definition (international yard and pound agreement, 1959). */
export const INCH = 25.4;

/** How lengths are shown: the unit, and the finest mark in mm (1/16 in is 1.5875). */
export interface Marks {
  readonly unit: Unit;
  readonly mark: number;
}

/** Marks for what is finer than a tape, such as sections and fence distances: 1/64 in or 0.1 mm, or the job's if finer. */
export function fineMarks({ unit, mark }: Marks): Marks {
  return { unit, mark: Math.min(mark, unit === 'in' ? INCH / 64 : 0.1) };
}

/** Under this a size is small: a rule shows more of it than a tape, 2 in; mm. */
const SMALL = 2 * INCH;

/**
 * Marks that a size is shown to, the same on every sheet: places of marks and lengths of parts to the job's own mark; what
 * is small or derived, under 2 in, to `fineMarks`, so that an offset, a gap or a room prints as it is.
 */
export function sizeMarks(length: number, display: Marks): Marks {
  return Math.abs(length) < SMALL ? fineMarks(display) : display;
}

/** A text that is not a length. `message` quotes it. */
export class LengthError extends Error {
  override readonly name = 'LengthError';
}

const FRACTION_SIGNS: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅒': '1/10',
};

const AMOUNT = String.raw`(?:\d+(?:\.\d+)?|\.\d+)`;
const MIXED = String.raw`(?:\d+[\s-]+\d+\/\d+|\d+\/\d+|${AMOUNT})`;
const METRIC = new RegExp(String.raw`^(${AMOUNT})\s*(mm|cm|m)$`);
const FEET = new RegExp(
  String.raw`^(${MIXED})\s*(?:'|ft\.?|feet|foot)\s*-?\s*(?:(${MIXED})\s*(?:"|in\.?|inch|inches)?)?$`,
);
const INCHES = new RegExp(String.raw`^(${MIXED})\s*(?:"|in\.?|inch|inches)$`);
const BARE = new RegExp(`^${MIXED}$`);
const PER_METRIC: Readonly<Record<string, number>> = { mm: 1, cm: 10, m: 1000 };

/**
 * Millimetres from a length as people write it: `5' 2 3/8"`, `62-3/8 in`, `62.375"`, `1584 mm`, `158.4cm`, `1.584 m`,
 * Unicode fractions and primes, or a bare number, which is taken in `unit`. A leading minus is read, so that the caller
 * can refuse it with a reason.
 * @throws {LengthError} for anything else, with the text that failed
 * @example parseLength('62 3/8"', 'mm') // → 1584.325
 */
export function parseLength(text: string | number, unit: Unit): number {
  const written = String(text);
  const plain = plainText(written);
  const sign = plain.startsWith('-') ? -1 : 1;
  const size = sign < 0 ? plain.slice(1).trim() : plain;
  const value = readSize(size, unit);
  if (value === undefined || !Number.isFinite(value)) {
    throw new LengthError(
      `invalid length: ${JSON.stringify(written)} (expected such as 62 3/8", 5' 2", 1584 mm or 1.584 m)`,
    );
  }
  return sign * value;
}

function plainText(written: string): string {
  return written
    .replace(/[½¼¾⅛⅜⅝⅞⅓⅔⅕⅖⅗⅘⅙⅚⅒]/g, (sign) => ` ${FRACTION_SIGNS[sign]}`)
    .replace(/⁄/g, '/')
    .replace(/[″”“]|''/g, '"')
    .replace(/[′’‘]/g, "'")
    .replace(/[−–]/g, '-')
    .replace(/[\u00a0\u2009\u202f]/g, ' ')
    .trim();
}

function readSize(size: string, unit: Unit): number | undefined {
  const metric = METRIC.exec(size);
  if (metric) return Number(metric[1]) * (PER_METRIC[metric[2] as string] as number);
  const feet = FEET.exec(size);
  if (feet) return (amount(feet[1] as string) * 12 + (feet[2] ? amount(feet[2]) : 0)) * INCH;
  const inches = INCHES.exec(size);
  if (inches) return amount(inches[1] as string) * INCH;
  if (BARE.test(size)) return amount(size) * (unit === 'in' ? INCH : 1);
  return undefined;
}

function amount(text: string): number {
  const [whole, numerator, denominator] = /\//.test(text)
    ? ((/^(?:(\d+)[\s-]+)?(\d+)\/(\d+)$/.exec(text) ?? []).slice(1) as string[])
    : [text, '0', '1'];
  // A zero denominator gives Infinity or NaN, which parseLength refuses.
  return Number(whole ?? 0) + Number(numerator) / Number(denominator);
}

/** The multiple of `mark` nearest to `length`; halves go up. A 1e-9 share of a mark is forgiven to binary rounding. */
export function roundToMark(length: number, mark: number): number {
  return Math.floor(length / mark + 0.5 + 1e-9) * mark + 0;
}

/** The greatest multiple of `mark` not above `length`. */
export function floorToMark(length: number, mark: number): number {
  return Math.floor(length / mark + 1e-9) * mark + 0;
}

/** The least multiple of `mark` not below `length`. */
export function ceilToMark(length: number, mark: number): number {
  return Math.ceil(length / mark - 1e-9) * mark + 0;
}

/** A length split for showing: `minus` whole and numerator over denominator, in lowest terms, inches. */
interface InchFraction {
  readonly minus: boolean;
  readonly whole: number;
  readonly numerator: number;
  readonly denominator: number;
}

/** The nearest inch fraction of a length, rounded once to `mark` (mm). */
function inchFraction(length: number, mark: number): InchFraction {
  const perInch = Math.round(INCH / mark);
  const steps = Math.floor(Math.abs(length / mark) + 0.5 + 1e-9);
  let numerator = steps % perInch;
  let denominator = perInch;
  while (numerator > 0 && numerator % 2 === 0) {
    numerator /= 2;
    denominator /= 2;
  }
  if (numerator === 0) denominator = 1;
  return { minus: length < 0 && steps > 0, whole: Math.floor(steps / perInch), numerator, denominator };
}

/**
 * A length as text, rounded once to the job's finest mark: `62 3/8` or `1584.5`. With `named`, the unit follows.
 * `fractions: 'stacked'` writes U+2044 between numerator and denominator, which the drawing fonts set as a true fraction.
 * @example formatLength(1584.325, { unit: 'in', mark: 25.4 / 16 }, { named: true }) // → '62 3/8 in'
 */
export function formatLength(
  length: number,
  { unit, mark }: Marks,
  { named = false, fractions = 'plain' }: { readonly named?: boolean; readonly fractions?: 'plain' | 'stacked' } = {},
): string {
  const name = named ? ` ${unit}` : '';
  if (unit === 'mm') {
    const digits = mark >= 1 ? 0 : Math.ceil(-Math.log10(mark) - 1e-9);
    const rounded = Math.sign(length) * roundToMark(Math.abs(length), mark) + 0;
    return `${rounded.toFixed(digits).replace(/\.0+$/, '')}${name}`;
  }
  const { minus, whole, numerator, denominator } = inchFraction(length, mark);
  const slash = fractions === 'stacked' ? '\u2044' : '/';
  const part = numerator > 0 ? `${numerator}${slash}${denominator}` : '';
  const size = whole > 0 || part === '' ? `${whole}${part ? ` ${part}` : ''}` : part;
  return `${minus ? '-' : ''}${size}${name}`;
}
