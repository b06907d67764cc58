import { fineMarks, formatLength, type Marks } from '../length.ts';
import type { Assumed } from './job.ts';
import type { FieldPath } from './problem.ts';
import { pathText } from './problem.ts';

/** Gathers what was not given and what was chosen for it. */
export interface Assumptions {
  readonly list: readonly Assumed[];
  /** The given length, or `value` (mm) noted as assumed. */
  length(path: FieldPath, given: number | undefined, value: number, reason: string): number;
  /** The given value of any other kind, or `value` noted as assumed. */
  value<T extends string | number | boolean>(path: FieldPath, given: T | undefined, value: T, reason: string): T;
  /** Notes something assumed that is no single value. */
  note(path: FieldPath, value: string, reason: string): void;
}

/** A fresh list of assumptions, shown in the job's unit and marks. */
export function assumptions(display: Marks): Assumptions {
  const list: Assumed[] = [];
  const note = (path: FieldPath, value: string, reason: string) => {
    list.push({ path: pathText(path), value, reason });
  };
  return {
    list,
    note,
    length(path, given, value, reason) {
      if (given === undefined) note(path, formatLength(value, fineMarks(display), { named: true }), reason);
      return given ?? value;
    },
    value(path, given, value, reason) {
      if (given === undefined) note(path, String(value), reason);
      return given ?? value;
    },
  };
}
