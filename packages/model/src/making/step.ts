import type { CutPlan } from '../cutting/plan.ts';
import { lengthText } from '../findings/words.ts';
import type { Job } from '../job/job.ts';
import { formatLength } from '../length.ts';
import type { Panel } from '../panel/panel.ts';
import type { Part, PartRole } from '../parts/part.ts';

/** A size or count that a step needs, ready to read. */
export interface StepFigure {
  readonly what: string;
  readonly value: string;
  /** Panels it holds for; empty where it holds for all. */
  readonly where: string;
}

/** One step of making, with this job's own numbers. Cautions are read before its text. */
export interface Step {
  readonly n: number;
  readonly title: string;
  readonly cautions: readonly string[];
  readonly text: readonly string[];
  readonly figures: readonly StepFigure[];
}

/** A step before it has its number. */
export type StepText = Omit<Step, 'n'>;

/** What steps are written from. */
export interface Making {
  readonly job: Job;
  readonly panels: readonly Panel[];
  readonly parts: readonly Part[];
  readonly plan?: CutPlan;
}

/** The size of a part or the place of a mark, to the job's mark: what a tape reads. */
export function lengthIn({ job }: Pick<Making, 'job'>): (length: number) => string {
  return (length) => formatLength(length, job.display, { named: true });
}

/** Several places to the job's mark, the unit once: `38, 282, 525 mm`. */
export function placesIn({ job }: Pick<Making, 'job'>): (places: readonly number[]) => string {
  return (places) => `${places.map((place) => formatLength(place, job.display)).join(', ')} ${job.display.unit}`;
}

/**
 * What is derived or small, such as sections, offsets, gaps, rooms and the stack: to 1/64 in or 0.1 mm, so that sums of
 * them close as printed.
 */
export function fineIn({ job }: Pick<Making, 'job'>): (length: number) => string {
  return (length) => lengthText(length, job.display);
}

/** A round size of the shop in the job's unit: 6 mm are 1/4 in to a carpenter. */
export function roundIn({ job }: Pick<Making, 'job'>, mm: number, inches: string): string {
  return job.display.unit === 'in' ? `${inches} in` : `${mm} mm`;
}

/** Whether the job makes more than one frame, so that figures have to say whether they are for one or for all. */
export function isMany({ panels }: Pick<Making, 'panels'>): boolean {
  return panels.reduce((sum, { count }) => sum + count, 0) > 1;
}

/** `a`, `a and b`, `a, b and c`. */
export function listed(items: readonly string[]): string {
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}

/** Names of some of the panels before what is said of them, `Side, Door: `; nothing where it is said of all. */
export function namedOf(some: readonly Panel[], all: readonly Panel[]): string {
  return some.length === all.length ? '' : `${some.map(({ name }) => name).join(', ')}: `;
}

/** A figure for every panel; panels with the same value share a line, and one line for all says no names. */
export function eachPanel(
  panels: readonly Panel[],
  what: string,
  value: (panel: Panel) => string | undefined,
): StepFigure[] {
  const groups = new Map<string, string[]>();
  for (const panel of panels) {
    const shown = value(panel);
    if (shown !== undefined) groups.set(shown, [...(groups.get(shown) ?? []), panel.name]);
  }
  return [...groups].map(([shown, names]) => ({
    what,
    value: shown,
    where: names.length === panels.length ? '' : names.join(', '),
  }));
}

/**
 * Both diagonals of every frame: alike, whatever they measure; as a size too, which holds for a frame built as planned
 * where its height still follows the slats.
 */
export function diagonalFigures(making: Making): StepFigure[] {
  const show = lengthIn(making);
  return eachPanel(making.panels, 'diagonals', ({ diagonal, asBuilt, courses }) =>
    asBuilt || courses.gap > 0 ? `both ${show(diagonal)}` : `alike, ${show(diagonal)} if built as planned`,
  );
}

/** Parts of some roles, each as a figure: letter and name, pieces and spares, size. */
export function partFigures(making: Making, roles: readonly PartRole[], size: (part: Part) => string): StepFigure[] {
  return making.parts
    .filter(({ role }) => roles.includes(role))
    .map((part) => ({
      what: `${part.letter}, ${part.name}`,
      value: `${part.count}${part.spare > 0 ? ` and ${part.spare} spare` : ''}, ${size(part)}`,
      where: part.where.length === making.panels.length ? '' : part.where.map(({ panel }) => panel).join(', '),
    }));
}
