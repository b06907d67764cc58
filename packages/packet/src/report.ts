import {
  type CutPlan,
  type Finding,
  findingSentences,
  formatLength,
  type HeightChoice,
  type Job,
  massText,
  planText,
  type WoodChoice,
} from '@wattlewright/model';

/** Findings as lines for a terminal: level, place and sentence; figure, limit and reason; what to do, and where in the job. */
export function findingLines(findings: readonly Finding[]): string[] {
  if (findings.length === 0) return ['nothing to say: no stop, no caution, no note'];
  return findings.flatMap((finding) => [
    `${finding.level.toUpperCase().padEnd(7)} ${finding.where}: ${finding.text} [${finding.code}]`,
    ...findingSentences(finding).map((sentence) => `        ${sentence}`),
    ...(finding.field ? [`        In the job file: ${finding.field}.`] : []),
  ]);
}

/** The cutting plan in words: what to buy, the cuts, how near the best; and what a chosen slat height bought. */
export function planLines(plan: CutPlan, { display, currency }: Job, choices: readonly HeightChoice[]): string[] {
  return [...planText(plan, { display, currency }), ...choices.map(({ text }) => text)];
}

/** Woods as a table of plain text, best first. */
export function woodLines(choices: readonly WoodChoice[], { display }: Job): string[] {
  const show = (length: number) => formatLength(length, display, { named: true });
  const rows = choices.map(({ wood, chosen, use, smallestPitch, movement, mass, decay, against }) => [
    `${chosen ? '* ' : '  '}${wood}`,
    `${Math.round(use * 100)} %`,
    show(smallestPitch),
    show(movement),
    massText(mass, display),
    decay,
    against.join('; '),
  ]);
  const head = ['wood', 'of strength', 'least pitch', 'moves', 'mass', 'decay of heartwood', 'against it'];
  const widths = head.map((title, i) => Math.max(title.length, ...rows.map((row) => (row[i] as string).length)));
  return [head, ...rows].map((row) =>
    row
      .map((cell, i) => cell.padEnd(widths[i] as number))
      .join('  ')
      .trimEnd(),
  );
}
