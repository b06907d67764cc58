import { fineMarks, formatLength, type Panel, roundToMark } from '@wattlewright/model';
import type { Rows } from '../layout/remark.ts';
import type { Size } from '../layout/rows.ts';
import { dimensionSide, type RunningValue } from '../layout/running.ts';
import type { Box } from '../mark.ts';
import type { View } from '../view.ts';
import { markUnder } from './cutsize.ts';
import { fittings, grounds } from './fittings.ts';

/** A length as it is printed, and what it then says in mm. */
export function printed(
  { display }: Pick<Panel, 'display'>,
  length: number,
): { readonly text: string; readonly value: number } {
  return { text: formatLength(length, display, { fractions: 'stacked' }), value: roundToMark(length, display.mark) };
}

/** What the rows of sizes round an elevation need. */
export interface ElevationSizes {
  readonly panel: Panel;
  readonly at: View;
  readonly outline: Box;
  readonly detail: 'shop' | 'client';
}

/** Where every stave and every course can be read. */
const STAVES = 'rest: stave stick';
const COURSES = 'rest: course stick';

/** Under the panel: left faces of staves, stiles and clear width, outside width. `start` is room already used, mm. */
export function widthRows({ panel, at, outline, detail }: ElevationSizes, start = 0): Rows {
  const { outside, clear } = panel;
  const u = (x: number): number => at(x, 0)[0];
  const values = panel.staves.lefts.map((x): RunningValue => ({ at: u(x), text: printed(panel, x).text }));
  return dimensionSide({
    side: 'below',
    outline,
    start,
    sizes: chain(panel, [0, clear.left, clear.left + clear.width, outside.width], u, detail === 'shop'),
    ...(detail === 'shop' && {
      running: {
        origin: u(0),
        values,
        what: 'Left edges of staves',
        from: 'the panel’s edge',
        rest: STAVES,
        aside: true,
      },
    }),
  });
}

/** Beside the panel: lower edges of the courses from the bottom rail, which is the foot of the stiles, rails and clear height, and the heights over all. */
export function heightRows({ panel, at, outline, detail }: ElevationSizes): Rows {
  const { outside, clear, courses } = panel;
  const v = (y: number): number => at(0, y)[1];
  const top = clear.bottom + courses.stack;
  const values = [...courses.bottoms, top].map(
    (y): RunningValue => ({ at: v(y), text: y === top ? stackText(panel) : printed(panel, y - clear.bottom).text }),
  );
  const frame = [0, clear.bottom, clear.bottom + clear.height, outside.height];
  const [low, high] = heightsOver(panel);
  return dimensionSide({
    side: 'left',
    outline,
    sizes: [
      ...chain(panel, frame, v, detail === 'shop'),
      ...(low < -1e-6 ? [size(panel, low, 0, v)] : []),
      ...(high > outside.height + 1e-6 ? [size(panel, outside.height, high, v)] : []),
      ...(high - low > outside.height + 1e-6 ? [{ ...size(panel, low, high, v), total: true }] : []),
    ],
    ...(detail === 'shop' && {
      running: {
        origin: v(clear.bottom),
        values,
        what: 'Courses',
        from: 'stile foot',
        last: 'top',
        rest: COURSES,
        aside: true,
      },
    }),
  });
}

/** The height of the stack as the stick and the making order have it: finer than a tape reads. */
function stackText({ courses, display }: Panel): string {
  return formatLength(courses.stack, fineMarks(display), { fractions: 'stacked' });
}

/** The lowest and the highest of what belongs to the panel's height: the floor under it, a cap rail over it. */
export function heightsOver(panel: Panel): readonly [low: number, high: number] {
  const seen = fittings(panel).flatMap(({ role, from, to }) => (role === undefined ? [] : [from.y, to.y]));
  const levels = [0, panel.outside.height, ...seen, ...grounds(panel).map(({ y }) => y)];
  return [Math.min(...levels), Math.max(...levels)];
}

/** Neighbouring sizes through some positions, where wanted, and their total. */
function chain(panel: Panel, positions: readonly number[], map: (p: number) => number, links: boolean): Size[] {
  const [first, last] = [positions[0] as number, positions.at(-1) as number];
  const total = { ...size(panel, first, last, map), total: true };
  if (!links) return [total];
  return [...positions.slice(1).map((to, i) => size(panel, positions[i] as number, to, map)), total];
}

/** Sections of the frame are printed at the mark that they lie on, as in the parts list; the rest at the job's. */
function size(panel: Panel, from: number, to: number, map: (p: number) => number): Size {
  const length = to - from;
  const isSection = [panel.rail.height, panel.stile.width].some((one) => Math.abs(one - length) < 1e-6);
  const mark = (isSection ? markUnder(length, panel.display) : undefined) ?? panel.display.mark;
  return { from: map(from), to: map(to), ...printed({ display: { ...panel.display, mark } }, length) };
}
