/** Where a field stands in a job file: keys and indices from the top. */
export type FieldPath = readonly (string | number)[];

/** One thing that keeps a job file from being read or solved. */
export interface Problem {
  /** Line and column in the text, from 1; absent for problems that belong to no line. */
  readonly line?: number;
  readonly column?: number;
  /** Such as `panels[0].slat.thickness`; empty for the file as a whole. */
  readonly path: string;
  /** What was found, as written; empty when something is missing. */
  readonly found: string;
  /** What is wrong and what would do. */
  readonly message: string;
}

/** A job that cannot be read or solved, with every problem found. The message holds one line a problem. */
export class JobError extends Error {
  override readonly name = 'JobError';
  readonly problems: readonly Problem[];

  constructor(problems: readonly Problem[], file = '') {
    super(problems.map((problem) => problemText(problem, file)).join('\n'));
    this.problems = problems;
  }
}

/** One line for one problem: `file:line:column path: what is wrong, found ...`. */
export function problemText({ line, column, path, found, message }: Problem, file = ''): string {
  const place = [file, line, column].filter((part) => part !== undefined && part !== '').join(':');
  return [place, path ? `${path}:` : '', message, found ? `(found ${found})` : ''].filter(Boolean).join(' ');
}

/** `['panels', 0, 'slat']` as `panels[0].slat`. */
export function pathText(path: FieldPath): string {
  return path.map((step, i) => (typeof step === 'number' ? `[${step}]` : i === 0 ? step : `.${step}`)).join('');
}
