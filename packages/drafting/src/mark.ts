/** A point on paper, mm: `u` to the right, `v` down. */
export type Point = readonly [u: number, v: number];

/** One step of a path, in absolute paper mm: move, line, cubic curve, close. Arcs become curves before they get here. */
export type Step =
  | readonly ['M', number, number]
  | readonly ['L', number, number]
  | readonly ['C', number, number, number, number, number, number]
  | readonly ['Z'];

/** A run of steps; starts with a move. */
export type Path = readonly Step[];

/** What a mark's ink means. `pen.ts` alone says how each role looks. */
export type Role =
  | 'edge' // visible edge of a part
  | 'edge-light' // visible edge seen behind another, or a fine edge inside a part
  | 'hidden' // edge behind the wood
  | 'centre' // centre or symmetry line
  | 'cutting-plane' // where a section is taken
  | 'neighbour' // adjacent thing that is not part of the panel: posts, wall, glass, floor
  | 'dimension' // dimension, extension and leader lines and their arrowheads
  | 'hatch' // section lining of end grain
  | 'hatch-long' // section lining of long grain
  | 'blade' // wood that the saw turns to dust
  | 'waste' // wood that is not used
  | 'keep' // leftover to keep
  | 'wood' // filled face of a part, light
  | 'wood-shade' // filled face of a part turned from the light, or lying behind
  | 'wood-deep' // filled face in shadow
  | 'paper' // filled with the colour of the paper, to hide what lies behind
  | 'grid' // thin ruling of tables and charts
  | 'table' // outer ruling of tables
  | 'frame' // border of the sheet
  | 'tick' // mark of a full-size stick or template
  | 'trim' // where a tiled page is cut
  | 'register' // crosses by which tiled pages are joined
  | 'plot' // curve of a chart
  | 'accent' // the one thing on a chart or sheet to look at first
  | 'note' // ordinary text
  | 'label' // text of dimensions and balloons
  | 'title' // headings
  | 'faint'; // text of least weight: small print, unused numbers

/** Ink along or inside a path. Which of the two, and how, follows from the role. */
export interface PathMark {
  readonly kind: 'path';
  readonly role: Role;
  readonly path: Path;
  /** Letter or name of the part that this depicts; absent for ink that depicts no part. */
  readonly of?: string;
  /** A shade from 0 (black) to 1 (paper) instead of the role's own, for faces shaded by their angle to the light. */
  readonly shade?: number;
}

/** Where a text's `at` point lies in it: on the baseline at its start, middle or end. */
export type Anchor = 'start' | 'middle' | 'end';

/** One line of text. */
export interface TextMark {
  readonly kind: 'text';
  readonly role: Role;
  readonly at: Point;
  readonly text: string;
  /** Nominal height of lettering, mm: the height of a capital letter, as drawing standards count it. */
  readonly height: number;
  /** Degrees, anticlockwise as seen on paper; 0 reads from the bottom, 90 from the right. */
  readonly angle: number;
  readonly anchor: Anchor;
  readonly of?: string;
}

/** One piece of ink. There is no third kind. */
export type Mark = PathMark | TextMark;

/** A box on paper, mm. */
export interface Box {
  readonly u0: number;
  readonly v0: number;
  readonly u1: number;
  readonly v1: number;
}

/** One printed chain of sizes and the total it must make, kept beside the ink so that `proof` can add it up. */
export interface Chain {
  /** What the chain measures, for the reader of a finding. */
  readonly what: string;
  /** The printed sizes read back as mm. */
  readonly parts: readonly number[];
  /** The printed total read back as mm. */
  readonly total: number;
  /** Set when the sheet says beside the chain that it does not add up because each size is rounded by itself. */
  readonly saidSo?: boolean;
}

/** A view: flat, ordered ink in paper mm, later marks over earlier ones. */
export interface Drawing {
  /** Short fixed name for files, such as `elevation`. */
  readonly name: string;
  /** Title for people, such as `Front elevation`. */
  readonly title: string;
  /** Paper length over real length: 1 is full size, 0.1 is 1:10. 0 for tables and charts, which have no scale. */
  readonly scale: number;
  /** The scale as written, such as `1:10`, `1 1/2 in = 1 ft`, or empty. */
  readonly scaleText: string;
  readonly marks: readonly Mark[];
  readonly bounds: Box;
  /** What the drawing shows, in a sentence, for readers who cannot see it. */
  readonly alt: string;
  readonly chains?: readonly Chain[];
}

/** A drawing placed on a sheet. */
export interface Figure {
  readonly name: string;
  readonly title: string;
  readonly alt: string;
  readonly marks: readonly Mark[];
}

/** One sheet of paper, ready for a backend. */
export interface Sheet {
  /** Paper size, mm, as it lies. */
  readonly width: number;
  readonly height: number;
  /** Name of the paper, such as `A4`. */
  readonly paper: string;
  readonly title: string;
  /** Label of the page, such as `3` or `A-2`. */
  readonly label: string;
  /** The drawings on it, already placed, each a figure with alternative text. */
  readonly figures: readonly Figure[];
  /** Border, title block and whatever else belongs to no figure. */
  readonly furniture: readonly Mark[];
  /** Ink must stay inside this. */
  readonly inside: Box;
  readonly chains: readonly Chain[];
  /** Full-size sheets ask the reader's viewer not to scale. */
  readonly fullSize: boolean;
}

/** Ink of a role along a path. */
export function stroke(role: Role, path: Path, of?: string): PathMark {
  return of === undefined ? { kind: 'path', role, path } : { kind: 'path', role, path, of };
}

/** A text of a role; `height` in mm. */
export function write(
  role: Role,
  text: string,
  at: Point,
  more: { height: number; angle?: number; anchor?: Anchor; of?: string },
): TextMark {
  const { height, angle = 0, anchor = 'start', of } = more;
  const mark = { kind: 'text' as const, role, at, text, height, angle, anchor };
  return of === undefined ? mark : { ...mark, of };
}
