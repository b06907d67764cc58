import type { OpeningGaps, PanelSpec, Site, UncutPart, UseDetails } from '../job/job.ts';
import type { Marks } from '../length.ts';
import type { SlatBend } from '../weave/bend.ts';
import type { Side, Weave } from '../weave/pattern.ts';

/** The staves of a panel. Positions in the panel frame, mm. */
export interface Staves {
  readonly count: number;
  /** Along the panel. */
  readonly width: number;
  /** Through the panel. */
  readonly depth: number;
  readonly length: number;
  /** Centre to centre, the same for every pair of neighbours. */
  readonly pitch: number;
  /** Clear room between neighbours. */
  readonly bay: number;
  /** x of each left face; the first touches the left stile, the last stave's right face the right stile. */
  readonly lefts: readonly number[];
  readonly centres: readonly number[];
  /** y of the lower ends: the bed of the bottom groove, on which loose staves stand. */
  readonly bottom: number;
}

/** The courses of a panel, mm. */
export interface Courses {
  readonly count: number;
  /** Height of one slat. */
  readonly height: number;
  readonly thickness: number;
  /** Open gap between neighbours. */
  readonly gap: number;
  /** From one course to the next: height and gap. */
  readonly pitch: number;
  /** All slats laid edge to edge, gaps among them. */
  readonly stack: number;
  /** Room over the top course. */
  readonly allowance: number;
  /** y of each course's lower edge, from the bottom. */
  readonly bottoms: readonly number[];
  /** How finely the slat height is set at the saw: heights are printed to this mark, mm. */
  readonly step: number;
}

/** What bending does to one row of the weave and to the courses that are like it. */
export interface RowBehaviour {
  readonly sides: readonly Side[];
  readonly bend: SlatBend;
  /** Courses that have this row. */
  readonly courses: number;
  /** By how much a slat cut to the clear width would end up short, mm. */
  readonly short: number;
  /**
   * Length to cut, square ends, mm: rounded down to the finest mark with clearance at both ends, so that no slat is
   * squeezed; rows that differ by less than can be told apart are cut alike, to the shortest.
   */
  readonly cutLength: number;
}

/** What the seasons do, mm. Swelling and growing positive. */
export interface Movement {
  /** Moisture in percent that the panel was figured for. */
  readonly built: number;
  readonly driest: number;
  readonly wettest: number;
  /** Change of the stack's wood from built to wettest and from built to driest (negative). */
  readonly swell: number;
  readonly shrink: number;
  /** Room the stack needs over it, margin counted in. */
  readonly needed: number;
  /** What stands open over the stack (or in the gaps) in the driest season. */
  readonly dryOpening: number;
  /** Play of a stave in its groove, through the panel: built, wettest, driest. */
  readonly grooveClearance: { readonly built: number; readonly wettest: number; readonly driest: number };
}

/** Strips under the top rail, front and back alike, that hide the allowance, flush with its faces or behind; height 0: none. mm. */
export interface CoverStrips {
  readonly height: number;
  readonly thickness: number;
  /** From mid-depth to the inner face; the weave passes inside it with play. */
  readonly face: number;
  readonly length: number;
  /** How far from mid-depth the courses under them reach; 0 where no strips are wanted. */
  readonly reach: number;
}

/** One size that the measured slats changed. */
export interface Change {
  readonly what: string;
  readonly planned: number;
  readonly now: number;
}

/** A panel solved: every size and place, mm, panel frame (x right, y up, z to the viewer of the front). */
export interface Panel {
  readonly name: string;
  readonly count: number;
  readonly details: UseDetails;
  readonly spec: PanelSpec;
  readonly display: Marks;
  readonly site: Site;
  readonly outside: { readonly width: number; readonly height: number; readonly depth: number };
  readonly opening?: { readonly width: number; readonly height: number; readonly gaps: OpeningGaps };
  /** The opening inside the frame; `left` and `bottom` are its lower left corner. */
  readonly clear: { readonly width: number; readonly height: number; readonly left: number; readonly bottom: number };
  readonly rail: { readonly height: number; readonly depth: number; readonly length: number };
  readonly stile: { readonly width: number; readonly depth: number; readonly length: number };
  readonly groove: { readonly depth: number; readonly width: number; readonly clearance: number };
  readonly staves: Staves;
  readonly courses: Courses;
  readonly cover: CoverStrips;
  readonly weave: Weave & { readonly name: string; readonly start: 'front' | 'behind' };
  /** What bending does to each of `weave.rows`, in their order. */
  readonly rows: readonly RowBehaviour[];
  /** Corner to corner, both alike when the frame is square. */
  readonly diagonal: number;
  readonly movement: Movement;
  /** Set when the sizes come from measured slats. */
  readonly asBuilt?: {
    readonly changes: readonly Change[];
    readonly broken: number;
    /** Parts not cut yet when the slats were measured. */
    readonly uncut: readonly UncutPart[];
    /** The panel as planned, before its slats were measured. */
    readonly planned: Panel;
    /** Outside height now less the height asked for. */
    readonly heightOff: number;
  };
}

/** The panel's whole thickness where slats cross in front and behind: stave and two slats, mm. */
export function weaveDepth(panel: Pick<Panel, 'staves' | 'courses'>): number {
  return panel.staves.depth + 2 * panel.courses.thickness;
}

/** Side of course `course` (from 0 at the bottom) at stave `stave` (from 0 at the left). */
export function sideAt(panel: Pick<Panel, 'weave'>, course: number, stave: number): Side {
  return panel.weave.rows[panel.weave.rowOfCourse[course] ?? 0]?.[stave] ?? 1;
}
