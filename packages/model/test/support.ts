import { type Job, type Panel, readJob, solve } from '../src/index.ts';

/** A job of one panel from the fields of that panel, as YAML-able data; JSON is YAML. */
export function jobOf(panel: object, rest: object = {}): Job {
  return readJob(JSON.stringify({ job: 'Test', unit: 'in', panels: [{ name: 'P', ...panel }], ...rest }));
}

/** The one panel of such a job, solved. */
export function panelOf(panel: object, rest: object = {}): Panel {
  return solve(jobOf(panel, rest))[0] as Panel;
}

/** Inches to mm. */
export const inches = (size: number): number => size * 25.4;
