import type { Finding } from '../finding.ts';
import { fineMarks, formatLength, type Marks } from '../length.ts';
import { pound, poundForce } from '../wood/inchpound.ts';

/** A length with its unit, to 1/64 in or 0.1 mm, so that small figures and limits differ in print. */
export function lengthText(length: number, display: Marks): string {
  return formatLength(length, fineMarks(display), { named: true });
}

/** A force: newtons, or pounds in inch work. */
export function forceText(force: number, { unit }: Marks): string {
  const size = unit === 'in' ? force / poundForce : force;
  return `${size.toFixed(size < 100 ? 1 : 0)} ${unit === 'in' ? 'lb' : 'N'}`;
}

/** A mass: kilograms, or pounds in inch work. */
export function massText(mass: number, { unit }: Marks): string {
  return unit === 'in' ? `${(mass / pound).toFixed(1)} lb` : `${mass.toFixed(1)} kg`;
}

/** A text as a sentence: a capital first, a full stop last. */
function sentence(text: string): string {
  const first = `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
  return /[.!?]$/.test(first) ? first : `${first}.`;
}

/**
 * What a finding says beyond its text, in plain sentences: the figure, the limit and why it is one, what to do, where
 * that is from.
 * @example findingSentences(finding)
 * // → ['Yours 3/16 in. Limit 1/4 in: a thin strip binds.', 'Rip it with a stop.', 'Common practice, no source.']
 */
export function findingSentences({
  figure,
  limit,
  reason,
  mend,
  source,
}: Pick<Finding, 'figure' | 'limit' | 'reason' | 'mend' | 'source'>): [judged: string, mend: string, source: string] {
  return [
    `${sentence(`yours ${figure}`)} ${sentence(`limit ${limit}: ${reason}`)}`,
    sentence(mend),
    sentence(source.startsWith('common practice') ? source : `source: ${source}`),
  ];
}

/** A share of strength, such as `0.61 of the strength`. */
export function shareText(share: number): string {
  return `${share.toFixed(2)} of the strength`;
}
