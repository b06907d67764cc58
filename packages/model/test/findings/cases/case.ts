import type { Subject } from '../../../src/findings/rule.ts';
import { type Panel, partsOf, solve } from '../../../src/index.ts';
import { jobOf } from '../../support.ts';

/** Three subjects for one rule: one that trips it, one that does not, one at its limit. */
export interface RuleCase {
  readonly code: string;
  readonly trips: Subject;
  readonly passes: Subject;
  readonly limit: Subject;
  /** Whether the rule speaks at its limit. */
  readonly atLimit: boolean;
}

/** A plain screen that few rules have anything to say about. */
const BASE = { size: { width: '44 1/2', height: 52 } } as const;

/** A job of one panel from the fields that matter, laid over the base. */
export function subjectOf(panel: object = {}, rest: object = {}): Subject {
  const job = jobOf({ ...BASE, ...panel }, rest);
  const panels = solve(job);
  return { job, panels, parts: partsOf(panels, { spare: job.spare }) };
}

/** The same with its solved panels changed. */
export function change(subject: Subject, by: (panel: Panel) => Panel): Subject {
  return { ...subject, panels: subject.panels.map(by) };
}

/** The same with every row's bend changed. */
export function changeBend(subject: Subject, by: (bend: Panel['rows'][number]['bend']) => object): Subject {
  return change(subject, (panel) => ({
    ...panel,
    rows: panel.rows.map((row) => ({ ...row, bend: { ...row.bend, ...by(row.bend) } })),
  }));
}

/** The last value from `low` (where `holds`) towards `high` (where not) for which it holds, to a billionth of the way. */
export function lastHolding(low: number, high: number, holds: (value: number) => boolean): number {
  let [from, to] = [low, high];
  for (let turn = 0; turn < 40; turn++) {
    const middle = (from + to) / 2;
    if (holds(middle)) from = middle;
    else to = middle;
  }
  return from;
}

/** The first panel of a subject. */
export function first({ panels }: Subject): Panel {
  return panels[0] as Panel;
}
