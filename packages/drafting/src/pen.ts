import type { PathMark, Role } from './mark.ts';

/** Layers of a drawing that a reader can switch off: optional content in a PDF, groups in an SVG. */
export type Layer =
  | 'faces'
  | 'outlines'
  | 'hatches'
  | 'dimensions'
  | 'notes'
  | 'tables'
  | 'full-size marks'
  | 'joining marks'
  | 'sheet';

/** How the ink of one role looks. Greys run from 0, black, to 1, the colour of the paper. */
export interface Pen {
  /** Width of a stroked path, mm; 0 leaves the path unstroked. */
  readonly width: number;
  /** Lengths of dashes and gaps in turn, mm; empty for a continuous line. */
  readonly dash: readonly number[];
  /** Grey of the stroke, and of text. */
  readonly stroke: number;
  /** Grey of the inside of a closed path; absent when the path isn't filled. */
  readonly fill?: number;
  /** Weight of lettering in this role. */
  readonly weight: Weight;
  /** The layer that its ink lies on. */
  readonly layer: Layer;
}

/** The two weights of lettering that the drawings carry. */
export type Weight = 'regular' | 'semibold';

/**
 * The two line widths of a drawing, mm: narrow to wide is 1:2.
 * Source: ISO 128-2:2020, widths 0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1.0, 1.4, 2.0 mm; wide to narrow 2:1.
 */
export const thin = 0.25;
/** The wide line, mm; twice `thin` (ISO 128-2:2020). */
export const thick = 0.5;
/** Ruling that must stand back from all else, mm: the step below `thin` in ISO 128-2:2020. */
const hair = 0.18;

// ISO 128-2:2020 gives the parts of a line in line widths d: dash 12 d, long dash 24 d, gap 3 d, dot under 0.5 d.
// A dot is drawn as one width long, so that it shows on every printer.
const dashed = [12 * thin, 3 * thin];
const dashDot = [24 * thin, 3 * thin, thin, 3 * thin];
const dashTwoDots = [24 * thin, 3 * thin, thin, 3 * thin, thin, 3 * thin];

const line = (width: number, layer: Layer, dash: readonly number[] = [], stroke = 0): Pen => ({
  width,
  dash,
  stroke,
  weight: 'regular',
  layer,
});
const face = (fill: number, layer: Layer = 'faces'): Pen => ({
  width: 0,
  dash: [],
  stroke: 0,
  fill,
  weight: 'regular',
  layer,
});
const letters = (layer: Layer, weight: Weight = 'regular', stroke = 0): Pen => ({
  width: thin,
  dash: [],
  stroke,
  weight,
  layer,
});

const pens: Readonly<Record<Role, Pen>> = {
  edge: line(thick, 'outlines'),
  'edge-light': line(thin, 'outlines'),
  hidden: line(thin, 'outlines', dashed),
  centre: line(thin, 'dimensions', dashDot),
  'cutting-plane': line(thick, 'dimensions', dashDot),
  neighbour: line(thin, 'outlines', dashTwoDots),
  dimension: line(thin, 'dimensions'),
  hatch: line(hair, 'hatches'),
  'hatch-long': line(hair, 'hatches', [], 0.35),
  blade: face(0),
  waste: { ...line(hair, 'faces', [], 0.4), fill: 0.88 },
  keep: { ...line(thin, 'faces', dashed), fill: 1 },
  wood: face(0.96),
  'wood-shade': face(0.84),
  'wood-deep': face(0.68),
  paper: face(1),
  grid: line(hair, 'tables', [], 0.5),
  table: line(thin, 'tables'),
  frame: line(thick, 'sheet'),
  tick: line(thin, 'full-size marks'),
  trim: line(thin, 'joining marks', [2, 1]),
  register: line(thin, 'joining marks'),
  plot: line(0.35, 'outlines'),
  accent: { ...line(0.7, 'outlines'), weight: 'semibold' },
  note: letters('notes'),
  label: letters('dimensions'),
  title: letters('notes', 'semibold'),
  faint: letters('notes', 'regular', 0.4),
};

/** How ink of the role looks: width, dashes, greys, weight of lettering and layer. The same on every sheet. */
export function pen(role: Role): Pen {
  return pens[role];
}

/**
 * The grey inside a path, or `undefined` when only its line shows: the mark's own `shade` before the role's fill. So a
 * closed arrowhead is a `dimension` path with `shade: 0`.
 */
export function fillOf(mark: PathMark): number | undefined {
  return mark.shade ?? pens[mark.role].fill;
}

/** The layers in the order a reader sees them listed. */
export const layers: readonly Layer[] = [
  'faces',
  'outlines',
  'hatches',
  'dimensions',
  'notes',
  'tables',
  'full-size marks',
  'joining marks',
  'sheet',
];

/** All roles that have a pen, in the order of the table. */
export const roles: readonly Role[] = Object.keys(pens) as Role[];
