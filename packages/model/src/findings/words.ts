import type { Finding } from '../finding.ts';
import { fineMarks, formatLength, type Marks } from '../length.ts';
import { pound, poundForce } from '../wood/inchpound.ts';

/** A length with its unit, to 1/64 in or 0.1 mm, so that small figures and limits differ in print. */
export function lengthText(length: number, display: Marks): string {
  return formatLength(length, fineMarks(display), { named: true });
}

/** A figure of a code, written in inches there: in millimetre work rounded to the millimetre, with the code's inches. */
export function codeText(length: number, display: Marks): string {
  if (display.unit === 'in') return lengthText(length, display);
  return `${Math.round(length)} mm (${formatLength(length, { unit: 'in', mark: 25.4 / 64 }, { named: true })})`;
}

/** A force: newtons, or pounds in inch work. */
export function forceText(force: number, { unit }: Marks, more = 0): string {
  const size = unit === 'in' ? force / poundForce : force;
  return `${size.toFixed((size < 100 ? 1 : 0) + more)} ${unit === 'in' ? 'lb' : 'N'}`;
}

/** A mass: kilograms, or pounds in inch work. */
export function massText(mass: number, { unit }: Marks, more = 0): string {
  return unit === 'in' ? `${(mass / pound).toFixed(1 + more)} lb` : `${mass.toFixed(1 + more)} kg`;
}

/** A share as percent, such as `66 %`. */
export function percentText(share: number, digits = 0): string {
  return `${(100 * share).toFixed(digits).replace(/\.0+$/, '')} %`;
}

/** Figures beyond the usual that two texts get, at most, to differ. */
const MORE = 4;

/** A figure and its limit as texts, with as many more digits as it takes for two that differ not to print alike. */
export function unlike(
  figure: number,
  limit: number,
  show: (value: number, more: number) => string,
): [figure: string, limit: string] {
  let texts: [string, string] = [show(figure, 0), show(limit, 0)];
  for (let more = 1; more <= MORE && texts[0] === texts[1] && figure !== limit; more++)
    texts = [show(figure, more), show(limit, more)];
  return texts;
}

/** Two shares as percent that differ in print where they differ. */
export function unlikePercents(figure: number, limit: number): [figure: string, limit: string] {
  return unlike(figure, limit, percentText);
}

/** Two lengths that differ in print where they differ, each with its unit. */
export function unlikeLengths(figure: number, limit: number, display: Marks): [figure: string, limit: string] {
  const { unit, mark } = fineMarks(display);
  const finer = unit === 'mm' ? 10 : 2;
  return unlike(figure, limit, (length, more) =>
    formatLength(length, { unit, mark: mark / finer ** more }, { named: true }),
  );
}

/** Two forces that differ in print where they differ. */
export function unlikeForces(figure: number, limit: number, display: Marks): [figure: string, limit: string] {
  return unlike(figure, limit, (force, more) => forceText(force, display, more));
}

/** A text as a sentence: a capital first, a full stop last. */
export function sentence(text: string): string {
  const first = `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
  return /[.!?]$/.test(first) ? first : `${first}.`;
}

/**
 * What a finding says beyond its text, in plain sentences: the figure and its limit, why it is one, what to do, where that
 * is from.
 * @example findingSentences(finding)
 * // → ['They are 3/16 in thick; take care under 3/8 in.', 'A thin strip binds.', 'Rip it with a stop.',
 * //    'Common practice, no source.']
 */
export function findingSentences({
  figure,
  limit,
  judged,
  reason,
  mend,
  source,
}: Pick<Finding, 'figure' | 'limit' | 'judged' | 'reason' | 'mend' | 'source'>): string[] {
  const from = source.replaceAll('(from memory)', '(not checked against the printed page)');
  return [
    sentence(judged ?? `found ${figure}, wanted ${limit}`),
    sentence(reason),
    sentence(mend),
    sentence(from.startsWith('common practice') ? from : `source: ${from}`),
  ];
}
