import type { Saw, Stock } from '../cutting/stock.ts';
import type { Marks } from '../length.ts';
import type { Grade } from '../parts/part.ts';
import type { NamedWeave } from '../weave/pattern.ts';
import type { Wood } from '../wood/wood.ts';

/** What a panel is for. Each use has its own geometry, parts and checks. */
export type Use = 'screen' | 'guard' | 'divider' | 'gate';

/** A value the reader was not given and the program chose, with the reason, printed in the packet as "assumed". */
export interface Assumed {
  /** Where it would stand in the job file, such as `panels[0].slat.thickness`. */
  readonly path: string;
  /** The value as it would be written. */
  readonly value: string;
  readonly reason: string;
}

/** How the height closes on whole courses. */
export type Fit =
  /** The slat height is chosen between `from` and `to`, near `prefer`, in whole steps of `step`. */
  | {
      readonly vary: 'slats';
      readonly from: number;
      readonly to: number;
      readonly prefer: number;
      readonly step: number;
    }
  /** The outside height moves to a whole course. */
  | { readonly vary: 'outside'; readonly go: 'up' | 'down' | 'nearest' }
  /** Equal open gaps between the courses, each between `from` and `to`. */
  | { readonly vary: 'gaps'; readonly from: number; readonly to: number };

/** Gaps between the opening and the panel's outside, mm. */
export interface OpeningGaps {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** The wood of one kind of member. */
export interface MemberWood {
  readonly wood: Wood;
  readonly grade: Grade;
  /** Angle of the growth rings to the wide face, degrees: 0 flat sawn, 90 quarter sawn. */
  readonly rings: number;
}

/** Mounting of a screen. */
export interface ScreenUse {
  readonly use: 'screen';
  /** `stiles`: screwed through the stiles; `blocks`: on stand-off blocks; `posts`: between posts. */
  readonly mounting: 'stiles' | 'blocks' | 'posts';
  /** Depth of a stand-off block, mm; 0 unless `mounting` is `blocks`. */
  readonly standoff: number;
  /** Distance from the back of the frame to the glass, mm; absent where there is no window behind. */
  readonly glass?: number;
  /** Set when the window behind belongs to a room that people sleep in. */
  readonly bedroom: boolean;
  /** Height of the bottom of the panel above the ground, mm. */
  readonly above: number;
  /** What the fixings go into. */
  readonly into: 'wood' | 'masonry';
}

/** Infill under a handrail. */
export interface GuardUse {
  readonly use: 'guard';
  /** Clear height between floor and bottom rail, mm. */
  readonly floorGap: number;
  /** How far one could fall, mm. */
  readonly drop: number;
  /** Section of the cap rail over the panel, height by depth, mm; absent where the handrail is there already. */
  readonly cap?: { readonly height: number; readonly depth: number };
  /** Height of the top edge of rail, cap or handrail above the floor, mm; absent: as the panel and its cap make it. */
  readonly top?: number;
  readonly dwelling: 'one or two family' | 'other';
}

/** A room divider. */
export interface DividerUse {
  readonly use: 'divider';
  readonly stand: 'feet' | 'track';
  /** Feet: length across the panel, height, width along it, mm. */
  readonly feet?: { readonly length: number; readonly height: number; readonly width: number };
  /** Clearance under a ceiling track and over the floor, mm. */
  readonly track?: { readonly above: number; readonly below: number };
}

/** A gate leaf. */
export interface GateUse {
  readonly use: 'gate';
  readonly hinge: 'left' | 'right';
  readonly swing: 'towards the front' | 'towards the back';
  /** Clearances of the leaf, mm. */
  readonly clear: { readonly hinge: number; readonly latch: number; readonly ground: number };
  readonly brace: { readonly kind: 'cable' | 'strut' | 'none'; readonly from: 'hinge top' | 'hinge bottom' };
  /** Distance of each hinge's centre from the end of the hinge stile, mm. */
  readonly hingeInset: number;
  readonly hinges: number;
  /** Height of the latch above the ground, mm. */
  readonly latch: number;
  /** Vertical load to reckon at the latch, N. */
  readonly load: number;
  readonly pool: boolean;
}

/** What a panel's use asks for, told apart by `use`. */
export type UseDetails = ScreenUse | GuardUse | DividerUse | GateUse;

/** Parts that a job file may say are not cut yet though the slats are. */
export const UNCUT = [
  'rail',
  'stile',
  'stave',
  'cover strip',
  'stop strip',
  'cap rail',
  'stand-off block',
  'foot',
  'strut',
] as const;

/** A part that is not cut yet. */
export type UncutPart = (typeof UNCUT)[number];

/** What was measured once the slats were cut, mm. */
export interface Measured {
  /** Height of all slats of one panel laid edge to edge. */
  readonly stack: number;
  /** True thickness of the slats. */
  readonly thickness: number;
  /** Slats broken or spoilt so far. */
  readonly broken: number;
  /** Parts not cut yet; all others were cut with the slats. */
  readonly uncut: readonly UncutPart[];
}

/** One panel as asked for, complete with defaults; mm. */
export interface PanelSpec {
  readonly name: string;
  readonly count: number;
  readonly details: UseDetails;
  /** Outside size of the frame. With an opening, the opening less its gaps. */
  readonly size: { readonly width: number; readonly height: number };
  readonly opening?: { readonly width: number; readonly height: number; readonly gaps: OpeningGaps };
  readonly fit: Fit;
  /** Section of the rails: height as seen from the front, depth front to back. */
  readonly rail: { readonly height: number; readonly depth: number };
  readonly stile: { readonly width: number; readonly depth: number };
  /** `clearance` is added to the stave's depth to make the groove's width. */
  readonly groove: { readonly depth: number; readonly clearance: number };
  readonly stave: {
    readonly width: number;
    readonly depth: number;
    /** Taken from the stave's length so that it does not touch both groove bottoms. */
    readonly clearance: number;
    /** A count, or a range of pitches with a preferred one; a `soft` range was assumed and gives way to the width. */
    readonly spacing:
      | { readonly count: number }
      | { readonly from: number; readonly to: number; readonly prefer: number; readonly soft: boolean };
  };
  /** `height` is where the fit starts from. */
  readonly slat: { readonly thickness: number; readonly height: number };
  /** Room left over the stack for swelling; absent: figured from the site's moisture. */
  readonly allowance?: number;
  /** Height of the strips under the top rail that hide the allowance; `auto`: as much as the dry season opens. */
  readonly cover: number | 'auto';
  /** Stops at the stiles that hold each slat end within this distance of mid-depth; absent: ends are free. */
  readonly endStop?: number;
  readonly weave: { readonly pattern: NamedWeave | readonly string[]; readonly start: 'front' | 'behind' };
  readonly wood: {
    readonly rail: MemberWood;
    readonly stile: MemberWood;
    readonly stave: MemberWood;
    readonly slat: MemberWood;
  };
  readonly measured?: Measured;
}

/** Where the panels stand and what that does to wood. Moisture in percent. */
export interface Site {
  readonly where: 'indoors' | 'outdoors';
  /** How `driest` and `wettest` were come by, for the reader. */
  readonly from: string;
  readonly driest: number;
  readonly wettest: number;
  /** Moisture of the wood when the panel is built. */
  readonly built: number;
  /** Design wind for panels that the wind can reach, absent: not reckoned. Speed in m/s (3 s gust). */
  readonly wind?: { readonly speed: number; readonly exposure: 'B' | 'C' | 'D' };
  /** Salt air, or posts of treated wood: both eat common stainless and galvanized steel. */
  readonly salt: boolean;
}

/** Panels that stand in one line, left to right, between posts. mm. */
export interface Run {
  readonly name: string;
  readonly panels: readonly string[];
  /** Width of each post as seen from the front; 0: the panels stand side by side. */
  readonly post: number;
  /** Gap from panel to post or from panel to panel. */
  readonly gap: number;
}

/** Paper for the packet and the full-size sheets. */
export interface Paper {
  readonly sheets: string;
  readonly sticks: string;
  /** Unprintable margin of the printer on each side, mm. */
  readonly margin: number;
  /** What the printed check bar measured over what it should, percent, across and along the page. */
  readonly printed: { readonly across: number; readonly along: number };
}

/** A whole job, complete: every default is filled in and listed in `assumed`. */
export interface Job {
  readonly name: string;
  readonly display: Marks;
  readonly shop?: string;
  readonly client?: string;
  readonly drawing: string;
  readonly date?: string;
  readonly revision: string;
  readonly notes: readonly string[];
  readonly currency: string;
  readonly panels: readonly PanelSpec[];
  readonly runs: readonly Run[];
  readonly site: Site;
  readonly stock: readonly Stock[];
  readonly offcuts: readonly Stock[];
  readonly saw: Saw;
  /** How much longer than finished stiles and staves are first cut where no stack has been measured yet, mm. */
  readonly long: number;
  /** Spare slats, percent of the slats wanted; never fewer than two pieces. */
  readonly spare: number;
  /** Coats of finish and its kind, for the area and the making order. */
  readonly finish: { readonly kind: 'penetrating' | 'film' | 'none'; readonly coats: number; readonly name: string };
  readonly paper: Paper;
  readonly assumed: readonly Assumed[];
}
