import { type Panel, type Part, sideAt } from '@wattlewright/model';
import { TEXT, TEXT_LARGE } from '../layout/style.ts';
import { textWidth } from '../lettering.ts';
import type { Drawing, Mark, Path } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { line, polyline, rectangle } from '../path.ts';
import type { Extent } from '../scale.ts';
import { partOf } from './partof.ts';
import { legendHeight, legendLines, legendMarks } from './weavelegend.ts';
import { runsOf, spread } from './weaveruns.ts';
import { type Ticks, tickBoxes, tickHeads, ticksOf } from './weaveticks.ts';

/** Tallest and lowest row of a course, mm: apart enough not to be lost by a finger. Common practice, no source. */
const TALL = { usual: 6, poster: 11 } as const;
const LOW = 5;

/** Narrowest and widest column of a stave, mm. */
const NARROW = 6.5;
const WIDE = { usual: 12, poster: 26 } as const;

/** Narrowest legend, mm: a narrow chart then leaves room for another beside it. */
const LEGEND = 90;

/** Columns beside the weave, mm: number at the left, number and repeat at the right. */
const NUMBER = 11;
const RIGHT = 16;

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
  /** Room over the weave and left of it. */
  readonly over: number;
  readonly left: number;
  readonly ticks: Ticks;
  /** Lines of the legend. */
  readonly legend: readonly string[];
}

/** What a chart is made with. */
export interface WeaveChartOptions {
  readonly parts?: readonly Part[];
  /** What one drawing may take, paper mm; 180 × 230 unless given. */
  readonly room?: Extent;
  /** All panels woven by this chart, itself among them: a column of boxes to tick for each; itself alone unless given. */
  readonly serves?: readonly Panel[];
  /** How they are called together; the panel's name unless given. */
  readonly named?: string;
  /** Whether it fills its room as far as it can be read well from the bench, for a sheet that it has for itself. */
  readonly poster?: boolean;
}

/**
 * The weave chart: courses by staves as seen from the front, the bottom course at the bottom. A filled bar over a stave is
 * a pass in front; where the stave runs on through the row the slat passes behind. Course numbers stand on both sides,
 * every fifth stands out, a box for each panel is ticked when the course is in, and a repeat of the weave is bracketed. Tall
 * panels go on over pages from the bottom up, between two repeats where a page holds one; wide ones are split with one
 * stave on both pages.
 */
export function weaveChart(panel: Panel, options: WeaveChartOptions = {}): Drawing[] {
  const { parts = [], room = { width: 180, height: 230 }, serves = [panel], named = panel.name } = options;
  const size = options.poster ? 'poster' : 'usual';
  const { count: staves } = panel.staves;
  const ticks = ticksOf(serves);
  const left = ticks.width + NUMBER;
  const most = Math.max(2, Math.floor((room.width - left - RIGHT) / NARROW));
  const across = spread(staves, most, 1);
  const shown = Math.max(...across.map(([from, to]) => to - from));
  const column = Math.min(WIDE[size], (room.width - left - RIGHT) / shown);
  const legendOf = (width: number, bracketed: boolean) =>
    legendLines(panel, {
      width,
      split: across.length > 1,
      bracketed,
      narrower: serves.filter((other) => other.staves.count < staves),
      ticks,
    });
  const highOver = (width: number): number => room.height - ticks.over - legendHeight(legendOf(width, true));
  const narrow = Math.min(room.width, Math.max(LEGEND, left + shown * column + RIGHT));
  // No wider than the weave, unless that costs a page.
  const width = highOver(narrow) >= panel.courses.count * LOW ? narrow : room.width;
  const high = highOver(width);
  const up = runsOf(panel, Math.max(1, Math.floor(high / LOW)));
  const tallest = Math.max(...up.map(([from, to]) => to - from));
  const row = Math.min(TALL[size], Math.max(LOW, high / tallest));
  const pages = up.flatMap((courses) => across.map((some): Page => ({ courses, staves: some })));
  return pages.map((page, i) => {
    const legend = legendOf(width, firstRepeat(panel, page) !== undefined);
    const drawing = chartPage(panel, page, { parts, column, row, left, over: ticks.over, ticks, legend, named });
    const { courses: c, staves: s } = page;
    const which = [
      up.length > 1 ? `courses ${c[0] + 1} to ${c[1]}` : '',
      across.length > 1 ? `staves ${s[0] + 1} to ${s[1]}` : '',
    ].filter(Boolean);
    const title = [`Weave chart: ${named}`, ...which].join(', ');
    return pages.length === 1 ? { ...drawing, title } : { ...drawing, name: `weave-chart-${i + 1}`, title };
  });
}

function chartPage(
  panel: Panel,
  page: Page,
  {
    parts,
    named,
    row: tall,
    ...laid
  }: Omit<Grid, 'page' | 'u' | 'v'> & { readonly parts: readonly Part[]; readonly named: string },
): Drawing {
  const { courses, staves } = page;
  const { over, left, column, legend } = laid;
  const grid: Grid = {
    ...laid,
    page,
    row: tall,
    u: (stave) => left + (stave - staves[0]) * column,
    v: (course) => over + (courses[1] - course) * tall,
  };
  const stave = partOf(parts, panel, 'stave')?.letter;
  const [u1, v1] = [grid.u(staves[1]), grid.v(courses[0])];
  const across = staves[1] - staves[0] < panel.staves.count ? `, staves ${staves[0] + 1} to ${staves[1]}` : '';
  return {
    name: 'weave-chart',
    title: `Weave chart: ${named}`,
    scale: 0,
    scaleText: '',
    marks: [
      ...staveBands(panel, grid, stave),
      ...Array.from({ length: courses[1] - courses[0] }, (_, i) => row(panel, parts, grid, courses[0] + i)).flat(),
      stroke('table', rectangle({ u0: left, v0: over, u1, v1 })),
      ...tickHeads(grid.ticks, over),
      ...head(panel, grid),
      ...repeats(panel, grid),
      ...legendMarks(legend, v1),
    ],
    bounds: {
      u0: 0,
      v0: 0,
      u1: Math.max(u1 + RIGHT, ...legend.map((words) => textWidth(words, TEXT))),
      v1: v1 + legendHeight(legend),
    },
    alt: `Weave of ${named}, ${panel.weave.name}: courses ${courses[0] + 1} to ${courses[1]}${across}, in front or behind at each stave.`,
  };
}

/** Half of a stave's width on the chart, mm. */
const half = (column: number): number => Math.min(3, column * 0.24);

/** The staves as upright bands through all rows; the rows then lie over them or leave them. */
function staveBands(_: Panel, { page, column, u, v, over }: Grid, of: string | undefined): Mark[] {
  const [from, to] = page.staves;
  return Array.from({ length: to - from }, (_, i) => {
    const middle = u(from + i) + column / 2;
    const box = { u0: middle - half(column), v0: over, u1: middle + half(column), v1: v(page.courses[0]) };
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
  const [boxTop, boxFoot] = [v(course + 1) + 1.2, v(course) - 1.2];
  return [
    stroke('wood-shade', between.flat(), slat),
    ...(front.length > 0 ? [{ ...stroke('wood-deep', front.flat(), slat), shade: 0 }] : []),
    ...(fifth ? [stroke('table', line([0, v(course + 1)], [u(to) + RIGHT - 8, v(course + 1)]))] : []),
    ...tickBoxes(grid.ticks, boxTop, boxFoot),
    write(role, `${course + 1}`, [grid.left - 2, base], { height: TEXT_LARGE, anchor: 'end' }),
    write(role, `${course + 1}`, [u(to) + 2, base], { height: TEXT_LARGE }),
  ];
}

/** Stave numbers, and which end is which. */
function head({ staves }: Panel, { page, column, u, over }: Grid): Mark[] {
  const [from, to] = page.staves;
  const at = (stave: number): number => u(stave) + column / 2;
  const numbers = Array.from({ length: to - from }, (_, i) =>
    write('label', `${from + i + 1}`, [at(from + i), over - 1.6], { height: TEXT, anchor: 'middle' }),
  );
  // An end of the panel, not a panel of that name; the short words where the staves are few and narrow.
  const [left, right] = ['left end', 'right end'] as const;
  const isWide = u(to) - u(from) > textWidth(left, TEXT) + textWidth(right, TEXT) + 3;
  const end = (words: string, place: number, anchor: 'start' | 'end'): Mark =>
    isWide
      ? write('note', words, [anchor === 'start' ? u(from) : u(to), over - 7.5], { height: TEXT, anchor })
      : write('note', words.split(' ')[0] as string, [place, over - 7.5], { height: TEXT, anchor: 'middle' });
  const ends = [
    from === 0 ? end(left, at(0), 'start') : undefined,
    to === staves.count ? end(right, at(to - 1), 'end') : undefined,
  ];
  return [...numbers, ...ends.filter((mark) => mark !== undefined)];
}

/** Where the first whole repeat on a page begins; undefined where it holds none. */
function firstRepeat({ weave }: Panel, { courses: [from, to] }: Page): number | undefined {
  const every = weave.repeat.courses;
  const start = Math.ceil(from / every) * every;
  return start + every > to ? undefined : start;
}

/** A bracket at the right round the first whole repeat that lies on the page. */
function repeats(panel: Panel, { page, u, v }: Grid): Mark[] {
  const every = panel.weave.repeat.courses;
  const start = firstRepeat(panel, page);
  if (start === undefined) return [];
  const edge = u(page.staves[1]) + RIGHT - 6;
  const [low, high] = [v(start) - 0.8, v(start + every) + 0.8];
  const path = polyline([
    [edge, low],
    [edge + 2, low],
    [edge + 2, high],
    [edge, high],
  ]);
  return [stroke('table', path)];
}
