import { z } from 'zod';
import { INCH, LengthError, parseLength, type Unit } from '../length.ts';

/** Least and most of a number, and why. */
export type Bounds = { readonly from: number; readonly to: number; readonly why: string };

/** The bounds of every kind of size in a job, mm, each with its reason; common practice, no source, unless said. */
const SIZES: Readonly<Record<SizeKind, Bounds>> = {
  outside: { from: 150, to: 6000, why: 'smaller cannot be woven by hand, larger does not keep its shape as one panel' },
  opening: { from: 150, to: 7000, why: 'an opening holds one panel of 150 mm to 6 m and its gaps' },
  gap: { from: 0, to: 500, why: 'a wider gap wants a panel of its own' },
  section: { from: 5, to: 300, why: 'sawn timber for frames runs from 5 to 300 mm' },
  grooveDepth: { from: 1, to: 100, why: 'a shallower groove holds nothing, a deeper one leaves no rail' },
  clearance: { from: 0, to: 25, why: 'more play than 25 mm is not a fit' },
  staveSide: { from: 3, to: 100, why: 'staves are laths or small battens' },
  pitch: { from: 10, to: 2000, why: 'closer staves leave no bay, wider ones no weave' },
  slatThickness: { from: 0.5, to: 20, why: 'under 0.5 mm is veneer, over 20 mm does not bend round a stave' },
  slatHeight: { from: 5, to: 300, why: 'slats are ripped from boards of ordinary width' },
  step: { from: 0.05, to: 25.4, why: 'a saw fence is not set finer than 0.05 mm' },
  allowance: { from: 0, to: 300, why: 'a stack of one panel does not swell by more' },
  kerf: { from: 0, to: 12, why: 'blades are up to 12 mm thick, and no blade has a kerf under nothing' },
  planing: { from: 0, to: 10, why: 'more than 10 mm off a face is another cut' },
  trim: { from: 0, to: 600, why: 'more than 600 mm off an end is an offcut' },
  rule: { from: 0, to: 3000, why: 'a rule of the shop beyond 3 m would forbid every cut' },
  deepest: { from: 10, to: 600, why: 'a table saw rips up to 150 mm deep, a bandsaw up to 600' },
  long: { from: 0, to: 100, why: 'more than 100 mm off every stile and stave is wood thrown away' },
  boardSide: { from: 3, to: 600, why: 'sawn boards run from 3 to 600 mm in section' },
  boardLength: { from: 50, to: 15000, why: 'boards are sold up to 15 m long' },
  height: { from: 0, to: 100000, why: 'heights above ground are reckoned to 100 m' },
  margin: { from: 0, to: 50, why: 'more than 50 mm of margin leaves no page' },
};

/** The kinds of size that a job holds. */
export type SizeKind =
  | 'outside'
  | 'opening'
  | 'gap'
  | 'section'
  | 'grooveDepth'
  | 'clearance'
  | 'staveSide'
  | 'pitch'
  | 'slatThickness'
  | 'slatHeight'
  | 'step'
  | 'allowance'
  | 'kerf'
  | 'planing'
  | 'trim'
  | 'rule'
  | 'deepest'
  | 'long'
  | 'boardSide'
  | 'boardLength'
  | 'height'
  | 'margin';

const NOT_A_NUMBER = 'not a number';

/** A length within the bounds of its kind; becomes mm. */
export function length(unit: Unit, kind: SizeKind): z.ZodType<number, number | string> {
  const { from, to, why } = SIZES[kind];
  const show = (mm: number) => (unit === 'in' ? `${Number((mm / INCH).toFixed(3))} in` : `${mm} mm`);
  return z
    .union([z.number(), z.string()])
    .describe(
      `length: a number in the job's unit, or text such as 44 1/2, 5' 2", 1584 mm; ${show(from)} to ${show(to)}: ${why}`,
    )
    .transform((written, context) => {
      try {
        const mm = parseLength(written, unit);
        if (mm >= from - 1e-9 && mm <= to + 1e-9) return mm;
        context.addIssue({
          code: 'custom',
          message: `expected ${show(from)} to ${show(to)}: ${why}`,
          params: { bound: true },
        });
      } catch (error) {
        if (!(error instanceof LengthError)) throw error;
        context.addIssue({ code: 'custom', message: `expected a length such as 62 3/8", 5' 2", 1584 mm or 1.584 m` });
      }
      return z.NEVER;
    });
}

/** A number within bounds. */
export function amount(bounds: Bounds): z.ZodNumber {
  return bounded(bounds).describe(boundsText(bounds));
}

/** A whole number within bounds. */
export function whole(bounds: Bounds): z.ZodNumber {
  return bounded(bounds)
    .int('expected a whole number')
    .describe(`whole number; ${boundsText(bounds)}`);
}

function bounded({ from, to, why }: Bounds): z.ZodNumber {
  const message = `expected ${from} to ${to}: ${why}`;
  return z.number(NOT_A_NUMBER).min(from, message).max(to, message);
}

function boundsText({ from, to, why }: Bounds): string {
  return `${from} to ${to}: ${why}`;
}

/** Some text, at most so long. */
export const text = (most = 200): z.ZodString =>
  z.string().min(1, 'expected some text').max(most, `expected at most ${most} characters`);
/** A share in percent, from 0. */
export const percent = (to: number, why: string): z.ZodNumber => amount({ from: 0, to, why });
/** Grades of wood that a plan tells apart. */
export const grade: z.ZodEnum<{ clear: 'clear'; knotty: 'knotty' }> = z.enum(['clear', 'knotty']);

/** An object, or a text that stands for it: `wood: larch` for `wood: { all: { wood: larch } }`. */
export function shorthand(word: z.ZodType<string>, meant: (written: string) => object, whole: z.ZodObject): z.ZodType {
  return z.union([word.transform(meant), whole]);
}
