import { boxOf, mapPath, pointsOf } from '../ink.ts';
import { textBox } from '../lettering.ts';
import { type Box, type Drawing, type Mark, type Point, type Role, type Sheet, stroke } from '../mark.ts';
import { SAFE_MARGIN, TILE_PAPERS, type TilePaper, type TilePaperName } from '../paper.ts';
import { line } from '../path.ts';
import { clipMark } from './clip.ts';
import { FOOTER, footer, SIDE } from './footer.ts';
import { withHeadroom } from './headroom.ts';
import { neighbourArrow, type Place, pageLabel, registerCross } from './join.ts';
import { joints, pagesBetween, type Span } from './joint.ts';

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

/** A page layout: the sheet as it lies, where ink may go, and how much of the drawing fits. */
interface Format {
  readonly paper: TilePaper;
  readonly width: number;
  readonly height: number;
  readonly inside: Box;
  /** Paper mm for a millimetre of the drawing, each way. */
  readonly factor: { readonly u: number; readonly v: number };
  readonly columns: readonly Span[];
  readonly rows: readonly Span[];
  readonly cuts: { readonly u: readonly number[]; readonly v: readonly number[] };
}

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

/** Pages, then paper. */
function cost({ rows, columns, width, height }: Format): number {
  return rows.length * columns.length * 1e9 + width * height;
}

type Ask = Required<Omit<TileOptions, 'paper' | 'series'>> & { readonly paper: TilePaper; readonly lying: boolean };

/** The drawing laid out on the paper upright or lying on its side; nothing where a roll is too narrow. */
function format(drawing: Drawing, { paper, lying, margin, overlap, printed }: Ask): Format | undefined {
  const [across, along] = [100 / printed.across, 100 / printed.along];
  const factor = lying ? { u: along, v: across } : { u: across, v: along };
  const room = { u: 2 * margin + SIDE, v: 2 * margin + FOOTER };
  const { short, long = Infinity } = paper;
  const window = {
    u: ((lying ? long : short) - room.u) / factor.u,
    v: ((lying ? short : long) - room.v) / factor.v,
  };
  const whole = withHeadroom(drawing.bounds, window);
  const free = { u: (whole.u[1] - whole.u[0]) * factor.u + room.u, v: (whole.v[1] - whole.v[0]) * factor.v + room.v };
  const longest = Math.max(lying ? free.u : free.v, leastLength);
  const [width, height] = lying ? [paper.long ?? longest, paper.short] : [paper.short, paper.long ?? longest];
  if (paper.long === undefined && (free.u > width + 1e-9 || free.v > height + 1e-9)) return undefined;
  const boxes = drawing.marks.flatMap((mark) => (mark.kind === 'text' ? [textBox(mark)] : []));
  const marked = drawing.marks.flatMap((mark) =>
    mark.kind === 'path' && MARKS.includes(mark.role) ? [boxOf(pointsOf(mark.path))] : [],
  );
  const cuts = {
    u: joints({
      whole: whole.u,
      window: window.u,
      overlap,
      texts: boxes.map((box): Span => [box.u0, box.u1]),
      marks: marked.map((box): Span => [box.u0, box.u1]).filter(isShort),
    }),
    v: joints({
      whole: whole.v,
      window: window.v,
      overlap,
      texts: boxes.map((box): Span => [box.v0, box.v1]),
      marks: marked.map((box): Span => [box.v0, box.v1]).filter(isShort),
    }),
  };
  return {
    paper,
    width,
    height,
    inside: { u0: margin, v0: margin, u1: width - margin, v1: height - margin },
    factor,
    columns: pagesBetween(whole.u, cuts.u, overlap),
    rows: pagesBetween(whole.v, cuts.v, overlap),
    cuts,
  };
}

/** Roles of what a full-size drawing is printed for, and how long such a mark may be along a direction to be kept clear of, mm. */
const MARKS: readonly Role[] = ['tick', 'centre', 'wood-shade'];
const SHORT = 40;

const isShort = ([from, to]: Span): boolean => to - from <= SHORT;

/** Shortest piece of a roll that holds the upright check bar, mm. */
const leastLength = 190;

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
  const marks = drawing.marks.flatMap((mark): Mark[] => {
    if (mark.kind === 'path') {
      return clipMark(mark, shown).map((cut) => ({ ...cut, path: mapPath(cut.path, onPaper) }));
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
        ...corrected,
      }),
    ],
    inside,
    chains: row === 0 && column === 0 ? (drawing.chains ?? []) : [],
    fullSize: true,
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
