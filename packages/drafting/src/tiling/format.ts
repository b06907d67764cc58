import { boxOf, pointsOf } from '../ink.ts';
import { grown, overlaps } from '../layout/clearance.ts';
import { textBox } from '../lettering.ts';
import type { Box, Drawing, Role } from '../mark.ts';
import type { TilePaper } from '../paper.ts';
import { FOOTER, SIDE } from './footer.ts';
import { withHeadroom } from './headroom.ts';
import { evenJoints, pagesBetween, type Span } from './joint.ts';

/** A page layout: the sheet as it lies, where ink may go, and how much of the drawing fits. */
export interface Format {
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

/** What a layout takes: pages, then paper. */
export function cost({ rows, columns, width, height }: Format): number {
  return rows.length * columns.length * 1e9 + width * height;
}

/** What a layout is made for: paper, margin, overlap and printer's error, and whether the paper lies on its side. */
export interface Ask {
  readonly paper: TilePaper;
  readonly lying: boolean;
  readonly margin: number;
  readonly overlap: number;
  readonly printed: { readonly across: number; readonly along: number };
}

/** How much of a drawing one page shows each way, mm; infinite along a roll. */
export function windowOf({ paper: { short, long = Infinity }, lying, margin, printed }: Omit<Ask, 'overlap'>): Window {
  const factor = factorOf({ lying, printed });
  return {
    u: ((lying ? long : short) - 2 * margin - SIDE) / factor.u,
    v: ((lying ? short : long) - 2 * margin - FOOTER) / factor.v,
  };
}

interface Window {
  readonly u: number;
  readonly v: number;
}

/** Paper mm for a millimetre of the drawing, each way: the printer's error taken out. */
function factorOf({ lying, printed }: Pick<Ask, 'lying' | 'printed'>): Window {
  const [across, along] = [100 / printed.across, 100 / printed.along];
  return lying ? { u: along, v: across } : { u: across, v: along };
}

/** The drawing laid out on the paper upright or lying on its side; nothing where a roll is too narrow. */
export function format(drawing: Drawing, ask: Ask): Format | undefined {
  const { paper, lying, margin, overlap } = ask;
  const factor = factorOf(ask);
  const room = { u: 2 * margin + SIDE, v: 2 * margin + FOOTER };
  const window = windowOf(ask);
  const whole = withHeadroom(drawing.bounds, window);
  const free = { u: (whole.u[1] - whole.u[0]) * factor.u + room.u, v: (whole.v[1] - whole.v[0]) * factor.v + room.v };
  const longest = Math.max(lying ? free.u : free.v, leastLength);
  const [width, height] = lying ? [paper.long ?? longest, paper.short] : [paper.short, paper.long ?? longest];
  if (paper.long === undefined && (free.u > width + 1e-9 || free.v > height + 1e-9)) return undefined;
  const boxes = drawing.marks.flatMap((mark) => (mark.kind === 'text' ? [textBox(mark)] : []));
  const marked = drawing.marks.flatMap((mark) =>
    mark.kind === 'path' && MARKS.includes(mark.role) ? [boxOf(pointsOf(mark.path))] : [],
  );
  const joints = (along: 'u' | 'v') => {
    const span = (box: (typeof boxes)[number]): Span => [box[`${along}0`], box[`${along}1`]];
    const [texts, marks] = [boxes.map(span), marked.map(span).filter(isShort)];
    return evenJoints({ whole: whole[along], window: window[along], overlap, texts, marks });
  };
  const cuts = { u: joints('u'), v: joints('v') };
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
const MARKS: readonly Role[] = ['tick', 'centre', 'wood-shade', 'dimension'];
const SHORT = 40;

/** Whether some place of a drawing has a mark that it is printed for, or a text. */
export function hasMarks({ marks }: Drawing, place: Box): boolean {
  return marks.some((mark) => {
    if (mark.kind === 'text') return overlaps(place, textBox(mark));
    const { u0, v0, u1, v1 } = boxOf(pointsOf(mark.path));
    const isOne = MARKS.includes(mark.role) && isShort([u0, u1]) && isShort([v0, v1]);
    return isOne && overlaps(place, grown({ u0, v0, u1, v1 }, 0.01));
  });
}

const isShort = ([from, to]: Span): boolean => to - from <= SHORT;

/** Shortest piece of a roll that holds the upright check bar, mm. */
const leastLength = 190;
