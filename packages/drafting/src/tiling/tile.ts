import { mapPath } from '../ink.ts';
import { textBox } from '../lettering.ts';
import { type Box, type Drawing, type Mark, type Point, type Sheet, stroke } from '../mark.ts';
import { SAFE_MARGIN, TILE_PAPERS, type TilePaperName } from '../paper.ts';
import { line } from '../path.ts';
import { clipMark } from './clip.ts';
import { footer, footerPlace } from './footer.ts';
import { cost, type Format, format, hasMarks } from './format.ts';
import { neighbourArrow, type Place, pageLabel, registerCross } from './join.ts';
import type { Span } from './joint.ts';

/** What a printed check bar measured over what it should, percent. */
export interface Printed {
  /** Along the paper's shorter side, or across the roll. */
  readonly across: number;
  /** Along the paper's longer side, or along the roll. */
  readonly along: number;
}

/** How a drawing is laid over pages. */
export interface TileOptions {
  /** The paper, lying whichever way takes fewer pages. */
  readonly paper: TilePaperName;
  /** What the printer leaves unprinted on each side, mm; 1/4 in unless given. */
  readonly margin?: number;
  /** What neighbouring pages show of the same, mm; 16 unless given. */
  readonly overlap?: number;
  /** The printer's error, which is taken out of every position; 100 percent both ways unless given. */
  readonly printed?: Printed;
  /** Number of the drawing among those of one file, from 1: begins the names of its pages, so that each has its own. */
  readonly series?: number;
}

/** From the edge of what a page shows to the middle of a register cross, mm. */
const crossIn = 5.5;

/**
 * A drawing at its own size over as many pages as it needs, row by row, to be joined by register crosses. Every page
 * carries check bars both ways, its name, how to print and how to join. Lines and curves are cut exactly at the edges; a
 * text is whole, and stands on one page unless a joint had to run through it. The printer's error is taken out of all positions,
 * each way by itself; lettering keeps its size.
 *
 * @throws {RangeError} when the margin, overlap or correction leave no room, or the drawing is wider than the roll.
 */
export function tile(drawing: Drawing, options: TileOptions): Sheet[] {
  const { margin = SAFE_MARGIN, overlap = 16, printed = { across: 100, along: 100 }, series } = options;
  if (!(margin >= 0 && margin <= 50)) throw new RangeError(`invalid margin: ${margin} (expected 0 to 50, mm)`);
  for (const percent of [printed.across, printed.along]) {
    if (!(percent >= 90 && percent <= 110)) {
      throw new RangeError(`invalid printed size: ${percent} (expected 90 to 110, percent)`);
    }
  }
  const paper = TILE_PAPERS[options.paper];
  const tried = [false, true].map((lying) => format(drawing, { paper, lying, margin, overlap, printed }));
  const formats = tried.filter((one) => one !== undefined);
  const [best] = formats.sort((a, b) => cost(a) - cost(b));
  if (!best) throw new RangeError(`invalid paper: ${paper.name} has no room for ${drawing.name} in one width`);
  return best.rows.flatMap((_, row) =>
    best.columns.map((_, column) => page(drawing, best, { row, column, series, printed })),
  );
}

function page(
  drawing: Drawing,
  format: Format,
  { row, column, series, printed }: Place & { readonly printed: Printed },
): Sheet {
  const { paper, width, height, inside, factor, columns, rows } = format;
  const [cu, cv] = [columns[column] as Span, rows[row] as Span];
  const shown: Box = { u0: cu[0], v0: cv[0], u1: cu[1], v1: cv[1] };
  const onPaper = ([u, v]: Point): Point => [
    inside.u0 + (u - shown.u0) * factor.u,
    inside.v0 + (v - shown.v0) * factor.v,
  ];
  const label = pageLabel({ row, column, series });
  const inked = inkOf(format, { row, column, shown });
  const marks = drawing.marks.flatMap((mark): Mark[] => {
    if (mark.kind === 'path') {
      return clipMark(mark, inked).map((cut) => ({ ...cut, path: mapPath(cut.path, onPaper) }));
    }
    return standsOn(format, { row, column, shown }, textBox(mark)) ? [{ ...mark, at: onPaper(mark.at) }] : [];
  });
  const corrected =
    printed.across === 100 && printed.along === 100
      ? {}
      : { corrected: `Corrected for a printer of ${printed.across} % across, ${printed.along} % along.` };
  return {
    width,
    height,
    paper: paper.name,
    title: drawing.title,
    label,
    figures: [{ name: `${drawing.name}-${label}`, title: `${drawing.title}, ${label}`, alt: drawing.alt, marks }],
    furniture: [
      ...joining(format, { row, column, series, shown, onPaper }),
      ...footer({
        drawing,
        here: { row, column, series },
        rows: rows.length,
        columns: columns.length,
        inside,
        factor,
        at: footerPlace(inside, {
          drawn: { width: (shown.u1 - shown.u0) * factor.u, height: (shown.v1 - shown.v0) * factor.v },
          alone: rows.length * columns.length === 1,
          factor,
        }),
        ...corrected,
        bare: !hasMarks(drawing, inked),
      }),
    ],
    inside,
    chains: row === 0 && column === 0 ? (drawing.chains ?? []) : [],
    fullSize: true,
  };
}

/** How far a page's ink goes on past a joint, mm: enough for a cut beside the line; more would be a sliver of the next page. */
const PAST = 1;

/** Where paths are drawn on a page: all that it shows, but hardly past a joint. */
function inkOf({ cuts }: Format, { row, column, shown }: Place & { readonly shown: Box }): Box {
  const [left, right, up, down] = [cuts.u[column - 1], cuts.u[column], cuts.v[row - 1], cuts.v[row]];
  return {
    u0: left === undefined ? shown.u0 : left - PAST,
    u1: right === undefined ? shown.u1 : right + PAST,
    v0: up === undefined ? shown.v0 : up - PAST,
    v1: down === undefined ? shown.v1 : down + PAST,
  };
}

/**
 * Whether a text is printed on a page: where it is whole and not altogether beyond a joint, where the next page has it; or,
 * when no page is large enough, where it starts.
 */
function standsOn(
  { rows, columns, cuts }: Format,
  { row, column, shown }: Place & { readonly shown: Box },
  box: Box,
): boolean {
  const beyond = (cut: readonly number[], i: number, [from, to]: Span): boolean =>
    from >= (cut[i] ?? Infinity) - 1e-9 || to <= (cut[i - 1] ?? -Infinity) + 1e-9;
  if (shows(shown, box)) return !beyond(cuts.u, column, [box.u0, box.u1]) && !beyond(cuts.v, row, [box.v0, box.v1]);
  const starts = box.u0 >= shown.u0 && box.u0 < shown.u1 && box.v0 >= shown.v0 && box.v0 < shown.v1;
  if (!starts) return false;
  return !rows.some(([v0, v1]) => columns.some(([u0, u1]) => shows({ u0, v0, u1, v1 }, box)));
}

function shows(shown: Box, box: Box): boolean {
  return box.u0 >= shown.u0 && box.u1 <= shown.u1 && box.v0 >= shown.v0 && box.v1 <= shown.v1;
}

interface Here extends Place {
  readonly shown: Box;
  readonly onPaper: (p: Point) => Point;
}

/** Register crosses on every joint of a page, arrows to its neighbours, and the dashed line where it is cut. */
function joining({ cuts }: Format, { row, column, series, shown, onPaper }: Here): Mark[] {
  const marks: Mark[] = [];
  const crosses = (points: readonly Point[]): void => {
    for (const p of points) marks.push(...registerCross(onPaper(p)));
  };
  const [left, right] = [cuts.u[column - 1], cuts.u[column]];
  const [up, down] = [cuts.v[row - 1], cuts.v[row]];
  const ends = (axis: 'u' | 'v'): readonly [number, number] =>
    axis === 'u' ? [shown.u0 + crossIn, shown.u1 - crossIn] : [shown.v0 + crossIn, shown.v1 - crossIn];
  const [u0, u1] = ends('u');
  const [v0, v1] = ends('v');
  for (const at of [left, right])
    if (at !== undefined)
      crosses([
        [at, v0],
        [at, v1],
      ]);
  for (const at of [up, down])
    if (at !== undefined)
      crosses([
        [u0, at],
        [u1, at],
      ]);
  const arrow = (side: 'left' | 'right' | 'up' | 'down', p: Point, next: { row: number; column: number }): void => {
    marks.push(...neighbourArrow({ side, cross: onPaper(p), label: pageLabel({ ...next, series }) }));
  };
  if (left !== undefined) arrow('left', [left, v0], { row, column: column - 1 });
  if (right !== undefined) arrow('right', [right, v0], { row, column: column + 1 });
  if (up !== undefined) arrow('up', [u0, up], { row: row - 1, column });
  if (down !== undefined) arrow('down', [u0, down], { row: row + 1, column });
  if (left !== undefined) marks.push(stroke('trim', line(onPaper([left, shown.v0]), onPaper([left, shown.v1]))));
  if (up !== undefined) marks.push(stroke('trim', line(onPaper([shown.u0, up]), onPaper([shown.u1, up]))));
  return marks;
}
