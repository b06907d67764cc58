import { readFileSync } from 'node:fs';
import { type Panel, type Part, parseLength, partsOf, readJob, solve, type Unit } from '@wattlewright/model';
import { pointsOf } from '../../src/ink.ts';
import type { Drawing, Mark, PathMark, Point, Role, TextMark } from '../../src/mark.ts';

/** A job's first panel with the parts of the whole job. */
export interface Solved {
  readonly panel: Panel;
  readonly parts: readonly Part[];
}

/** The first panel of a job as text or as data. */
function solved(job: string | object): Solved {
  const read = readJob(typeof job === 'string' ? job : JSON.stringify(job));
  const panels = solve(read);
  return { panel: panels[0] as Panel, parts: partsOf(panels, { spare: read.spare }) };
}

/** The names of the example jobs. */
export const examples = ['tern-hollow-window', 'larch-deck-guard', 'wash-house-gate', 'studio-divider'] as const;

/** The first panel of an example job. */
export function example(name: (typeof examples)[number]): Solved {
  return solved(readFileSync(new URL(`../../../../examples/${name}.yaml`, import.meta.url), 'utf8'));
}

/** The first panel of a job of one panel in millimetres. */
export function plain(panel: object): Solved {
  return solved({ job: 'Test', unit: 'mm', panels: [{ name: 'P', ...panel }] });
}

/** A printed size and what its dimension line measures on paper over the scale, mm. */
export interface Measured {
  readonly text: string;
  readonly says: number;
  readonly measures: number;
}

/**
 * Every dimension of a drawing, read from the ink: a label follows the two oblique strokes at the ends of its line, with
 * a leader between where it was pushed out. Those across a break, which measure less on paper, are left out.
 */
export function measured(drawing: Drawing, unit: Unit): Measured[] {
  const { marks, scale } = drawing;
  return marks.flatMap((mark, i): Measured[] => {
    if (mark.kind !== 'text' || mark.role !== 'label' || isBroken(marks, i)) return [];
    const before = marks.slice(Math.max(0, i - 3), i);
    const strokes = before.map(obliqueMiddle).filter((middle) => middle !== undefined);
    const [a, b] = strokes.slice(-2);
    if (!a || !b) return [];
    const measures = Math.hypot(a[0] - b[0], a[1] - b[1]) / scale;
    return [{ text: mark.text, says: parseLength(mark.text, unit), measures }];
  });
}

/** The sizes of a drawing that are stated across its break. */
export function brokenSizes({ marks }: Drawing, unit: Unit): number[] {
  return marks.flatMap((mark, i) =>
    mark.kind === 'text' && mark.role === 'label' && isBroken(marks, i) ? [parseLength(mark.text, unit)] : [],
  );
}

/** Whether the label at `i` stands on a dimension line with a zigzag. */
function isBroken(marks: readonly Mark[], i: number): boolean {
  if (i === 0) return false;
  const isOnLine = obliqueMiddle(marks[i - 1] as Mark) !== undefined;
  const line = marks[i - (isOnLine ? 3 : 4)];
  return line?.kind === 'path' && isZigzag(line);
}

const isZigzag = ({ role, path }: PathMark): boolean => role === 'dimension' && path.length === 6;

/** Middle of an oblique stroke, about 3 mm long at 45°; undefined for other ink. */
function obliqueMiddle(mark: Mark): Point | undefined {
  if (mark.kind !== 'path' || mark.role !== 'dimension' || mark.path.length !== 2) return undefined;
  const [[au, av], [bu, bv]] = pointsOf(mark.path) as [Point, Point];
  const isOblique = Math.abs(Math.abs(bu - au) - Math.abs(bv - av)) < 1e-9 && Math.abs(Math.abs(bu - au) - 2.12) < 0.01;
  return isOblique ? [(au + bu) / 2, (av + bv) / 2] : undefined;
}

/** Paths of a part in one of some roles. */
export function inkOf(drawing: Drawing, of: string | undefined, ...roles: Role[]): PathMark[] {
  return drawing.marks.filter(
    (mark): mark is PathMark => mark.kind === 'path' && mark.of === of && roles.includes(mark.role),
  );
}

/** Texts of a drawing. */
export function textsOf(drawing: Drawing): TextMark[] {
  return drawing.marks.filter((mark) => mark.kind === 'text');
}

/** All words of a drawing in one line, with plain spaces. */
export function wordsOf(drawing: Drawing): string {
  return textsOf(drawing)
    .map(({ text }) => text)
    .join(' ')
    .replaceAll('\u00a0', ' ');
}

/** Points that a path passes, control points left out. */
export function onPath(mark: PathMark): Point[] {
  return mark.path.flatMap((step): Point[] =>
    step[0] === 'Z' ? [] : [[step.at(-2) as number, step.at(-1) as number]],
  );
}

/** Whether every number of every mark is finite and inside the drawing's bounds, texts by their start. */
export function isWithinBounds({ marks, bounds }: Drawing): boolean {
  const inside = ([u, v]: Point): boolean =>
    u >= bounds.u0 - 1e-6 && u <= bounds.u1 + 1e-6 && v >= bounds.v0 - 1e-6 && v <= bounds.v1 + 1e-6;
  return marks.every((mark) => (mark.kind === 'text' ? [mark.at] : onPath(mark)).every(inside));
}
