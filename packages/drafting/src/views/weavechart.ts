import { type Panel, type Part, sideAt } from '@wattlewright/model';
import { TEXT, TEXT_LARGE } from '../layout/style.ts';
import { textWidth, wrapText } from '../lettering.ts';
import type { Drawing, Mark, Path } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { line, polyline, rectangle } from '../path.ts';
import type { Extent } from '../scale.ts';
import { partOf } from './partof.ts';

/** Tallest and lowest row of a course, mm: apart enough not to be lost by a finger. Common practice, no source. */
const TALL = 6;
const LOW = 5;

/** Narrowest and widest column of a stave, mm. */
const NARROW = 6.5;
const WIDE = 16;

/** Columns beside the weave, mm: tick box and number at the left, number and repeat at the right. */
const LEFT = 17;
const RIGHT = 16;

/** Lines over the weave, mm: stave numbers, left and right. */
const OVER = 11;

/** Widest legend, mm: longer lines are hard to follow. Common practice, no source. */
const LEGEND = 185;

/** From the weave to the legend, from line to line of it, and under it, mm. */
const GAP = 3;
const STEP = 4.4;
const REST = 1.5;

/** Every fifth course stands out. */
const FIFTH = 5;

/** The part of a chart that is one drawing: courses and staves from and to, counted from 0, ends left out. */
interface Page {
  readonly courses: readonly [from: number, to: number];
  readonly staves: readonly [from: number, to: number];
}

/** A page laid out: width of a column, and where things lie on it, paper mm. */
interface Grid {
  readonly page: Page;
  readonly column: number;
  readonly row: number;
  readonly u: (stave: number) => number;
  readonly v: (course: number) => number;
  /** Lines of the legend. */
  readonly legend: readonly string[];
}

/**
 * The weave chart: courses by staves as seen from the front, the bottom course at the bottom. A filled bar over a stave is
 * a pass in front; where the stave runs on through the row the slat passes behind. Course numbers stand on both sides,
 * every fifth stands out, a box is ticked when the course is in, and the repeat of the weave is bracketed. Tall panels go
 * on over pages from the bottom up, wide ones are split with one stave on both pages.
 *
 * @param options `room`: what one drawing may take, paper mm; 180 × 230 unless given.
 */
export function weaveChart(
  panel: Panel,
  { parts = [], room = { width: 180, height: 230 } }: { readonly parts?: readonly Part[]; readonly room?: Extent } = {},
): Drawing[] {
  const { count: staves } = panel.staves;
  const most = Math.max(2, Math.floor((room.width - LEFT - RIGHT) / NARROW));
  const across = spread(staves, most, 1);
  const legend = legendLines(panel, { width: Math.min(room.width, LEGEND), split: across.length > 1 });
  const high = room.height - OVER - legendHeight(legend);
  const up = spread(panel.courses.count, Math.max(1, Math.floor(high / LOW)), 0);
  const tallest = Math.max(...up.map(([from, to]) => to - from));
  const row = Math.min(TALL, Math.max(LOW, high / tallest));
  const shown = Math.max(...across.map(([from, to]) => to - from));
  const column = Math.min(WIDE, (room.width - LEFT - RIGHT) / shown);
  const pages = up.flatMap((courses) => across.map((some): Page => ({ courses, staves: some })));
  return pages.map((page, i) => {
    const drawing = chartPage(panel, page, { parts, column, row, legend });
    const { courses: c, staves: s } = page;
    const which = [
      up.length > 1 ? `courses ${c[0] + 1} to ${c[1]}` : '',
      across.length > 1 ? `staves ${s[0] + 1} to ${s[1]}` : '',
    ].filter(Boolean);
    const title = [`Weave chart: ${panel.name}`, ...which].join(', ');
    return pages.length === 1 ? { ...drawing, title } : { ...drawing, name: `weave-chart-${i + 1}`, title };
  });
}

/** `count` things in runs of at most `most`, as even as can be, neighbours sharing `overlap`. */
function spread(count: number, most: number, overlap: number): (readonly [from: number, to: number])[] {
  const runs = Math.max(1, Math.ceil((count - overlap) / (most - overlap)));
  const step = (count - overlap) / runs;
  return Array.from({ length: runs }, (_, i) => [Math.round(i * step), Math.round((i + 1) * step) + overlap] as const);
}

function chartPage(
  panel: Panel,
  page: Page,
  { parts, column, row: tall, legend }: Pick<Grid, 'column' | 'row' | 'legend'> & { readonly parts: readonly Part[] },
): Drawing {
  const { courses, staves } = page;
  const grid: Grid = {
    page,
    column,
    row: tall,
    u: (stave) => LEFT + (stave - staves[0]) * column,
    v: (course) => OVER + (courses[1] - course) * tall,
    legend,
  };
  const stave = partOf(parts, panel, 'stave')?.letter;
  const [u1, v1] = [grid.u(staves[1]), grid.v(courses[0])];
  const across = staves[1] - staves[0] < panel.staves.count ? `, staves ${staves[0] + 1} to ${staves[1]}` : '';
  return {
    name: 'weave-chart',
    title: `Weave chart: ${panel.name}`,
    scale: 0,
    scaleText: '',
    marks: [
      ...staveBands(panel, grid, stave),
      ...Array.from({ length: courses[1] - courses[0] }, (_, i) => row(panel, parts, grid, courses[0] + i)).flat(),
      stroke('table', rectangle({ u0: LEFT, v0: OVER, u1, v1 })),
      ...head(panel, grid),
      ...repeats(panel, grid),
      ...legendMarks(grid),
    ],
    bounds: {
      u0: 0,
      v0: 0,
      u1: Math.max(u1 + RIGHT, ...legend.map((words) => textWidth(words, TEXT))),
      v1: v1 + legendHeight(legend),
    },
    alt: `Weave of ${panel.name}, ${panel.weave.name}: courses ${courses[0] + 1} to ${courses[1]}${across}, in front or behind at each stave.`,
  };
}

/** Half of a stave's width on the chart, mm. */
const half = (column: number): number => Math.min(3, column * 0.24);

/** The staves as upright bands through all rows; the rows then lie over them or leave them. */
function staveBands(_: Panel, { page, column, u, v }: Grid, of: string | undefined): Mark[] {
  const [from, to] = page.staves;
  return Array.from({ length: to - from }, (_, i) => {
    const middle = u(from + i) + column / 2;
    const box = { u0: middle - half(column), v0: OVER, u1: middle + half(column), v1: v(page.courses[0]) };
    return { ...stroke('edge-light', rectangle(box), of), shade: 1 };
  });
}

/** One course: its bar, broken where a stave runs on before it, its number on both sides and the box to tick. */
function row(panel: Panel, parts: readonly Part[], grid: Grid, course: number): Mark[] {
  const { page, column, u, v } = grid;
  const [from, to] = page.staves;
  const slat = partOf(parts, panel, 'slat', panel.rows[panel.weave.rowOfCourse[course] ?? 0]?.cutLength)?.letter;
  const [top, bottom] = [v(course + 1) + 1.3, v(course) - 1.3];
  const front: Path[] = [];
  const between: Path[] = [];
  for (let stave = from; stave < to; stave++) {
    const middle = u(stave) + column / 2;
    const [left, right] = [middle - half(column), middle + half(column)];
    between.push(rectangle({ u0: u(stave), v0: top, u1: left, v1: bottom }));
    between.push(rectangle({ u0: right, v0: top, u1: u(stave + 1), v1: bottom }));
    if (sideAt(panel, course, stave) > 0)
      front.push(rectangle({ u0: left - 0.6, v0: top, u1: right + 0.6, v1: bottom }));
  }
  const fifth = (course + 1) % FIFTH === 0;
  const role = fifth ? 'title' : 'label';
  const base = (v(course) + v(course + 1)) / 2 + TEXT_LARGE / 2;
  const box = { u0: 1, v0: v(course + 1) + 1.2, u1: 1 + grid.row - 2.4, v1: v(course) - 1.2 };
  return [
    stroke('wood-shade', between.flat(), slat),
    ...(front.length > 0 ? [{ ...stroke('wood-deep', front.flat(), slat), shade: 0 }] : []),
    ...(fifth ? [stroke('table', line([0, v(course + 1)], [u(to) + RIGHT - 8, v(course + 1)]))] : []),
    stroke('table', rectangle(box)),
    write(role, `${course + 1}`, [LEFT - 2, base], { height: TEXT_LARGE, anchor: 'end' }),
    write(role, `${course + 1}`, [u(to) + 2, base], { height: TEXT_LARGE }),
  ];
}

/** Stave numbers, and which end is which. */
function head({ staves }: Panel, { page, column, u }: Grid): Mark[] {
  const [from, to] = page.staves;
  const at = (stave: number): number => u(stave) + column / 2;
  const numbers = Array.from({ length: to - from }, (_, i) =>
    write('label', `${from + i + 1}`, [at(from + i), OVER - 1.6], { height: TEXT, anchor: 'middle' }),
  );
  const ends = [
    from === 0 ? write('note', 'Left', [at(0), TEXT + 1], { height: TEXT, anchor: 'middle' }) : undefined,
    to === staves.count
      ? write('note', 'Right', [at(to - 1), TEXT + 1], { height: TEXT, anchor: 'middle' })
      : undefined,
  ];
  return [...numbers, ...ends.filter((mark) => mark !== undefined)];
}

/** A bracket at the right round the first whole repeat that lies on the page. */
function repeats({ weave }: Panel, { page, u, v }: Grid): Mark[] {
  const every = weave.repeat.courses;
  const [from, to] = page.courses;
  const edge = u(page.staves[1]) + RIGHT - 6;
  const start = Math.ceil(from / every) * every;
  if (start + every > to) return [];
  const [low, high] = [v(start) - 0.8, v(start + every) + 0.8];
  const path = polyline([
    [edge, low],
    [edge + 2, low],
    [edge + 2, high],
    [edge, high],
  ]);
  return [stroke('table', path)];
}

/** How to read the chart, in lines no wider than `width`; `split` where its staves go on over pages. */
function legendLines(
  panel: Panel,
  { width, split }: { readonly width: number; readonly split: boolean },
): readonly string[] {
  const { weave } = panel;
  const every = weave.repeat.courses;
  const repeat =
    every >= panel.courses.count
      ? 'The weave does not repeat within the panel.'
      : `The weave repeats every ${every} course${every === 1 ? '' : 's'} (first one bracketed).`;
  const text = [
    `Seen from the front, bottom course first. Black: the slat passes in front of the stave; the stave runs on, light: behind it.`,
    `${capital(weave.name)}; course 1 starts ${sideAt(panel, 0, 0) > 0 ? 'in front of' : 'behind'} the left stave.`,
    repeat,
    `Tick each course when it is in.`,
    split ? 'One stave stands on both neighbouring pages.' : '',
  ]
    .filter(Boolean)
    .join(' ');
  return wrapText(text, width, TEXT);
}

/** From the weave to the end of the legend under it, mm. */
function legendHeight(lines: readonly string[]): number {
  return GAP + TEXT + (lines.length - 1) * STEP + REST;
}

function legendMarks({ page, v, legend }: Grid): Mark[] {
  const top = v(page.courses[0]) + GAP;
  return legend.map((words, i) => write('note', words, [0, top + TEXT + i * STEP], { height: TEXT }));
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
