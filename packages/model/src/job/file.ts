import type { PricePer } from '../cutting/stock.ts';
import type { Unit } from '../length.ts';
import type { Grade } from '../parts/part.ts';
import type { UncutPart, Use } from './job.ts';

/** The job as written, read and bounded, before defaults: lengths in mm, everything optional but the essentials. */
export interface JobFile {
  job: string;
  unit: Unit;
  mark?: number;
  shop?: string;
  client?: string;
  drawing?: string;
  date?: string;
  revision?: string;
  notes?: string[];
  currency?: string;
  every?: PanelFile;
  panels: (PanelFile & { name: string })[];
  runs?: { name: string; panels: string[]; post?: number; gap?: number }[];
  site?: {
    where?: 'indoors' | 'outdoors';
    place?: string;
    climate?: { temperature: number; humidity: { driest: number; wettest: number } };
    driest?: number;
    wettest?: number;
    built?: number;
    wind?: { speed: number; exposure?: 'B' | 'C' | 'D' };
    salt?: boolean;
  };
  woods?: WoodFile[];
  stock?: StockFile[];
  offcuts?: StockFile[];
  saw?: {
    kerf?: number;
    rip?: number;
    cross?: number;
    planing?: number;
    dressing?: number;
    shaving?: number;
    trim?: { head?: number; tail?: number };
    shortest?: number;
    narrowest?: number;
    deepest?: number;
    long?: number;
    keep?: number;
  };
  spare?: number;
  finish?: { kind?: 'penetrating' | 'film' | 'none'; coats?: number; name?: string };
  paper?: {
    sheets?: string;
    sticks?: string;
    margin?: number;
    printed?: { across?: number; along?: number };
  };
}

/** One panel as written. */
export interface PanelFile {
  name?: string;
  use?: Use;
  count?: number;
  size?: { width: number; height: number };
  opening?: {
    width: number;
    height: number;
    gap?: { sides?: number; left?: number; right?: number; top?: number; bottom?: number };
  };
  fit?: {
    vary: 'slats' | 'outside' | 'gaps';
    from?: number;
    to?: number;
    prefer?: number;
    step?: number;
    go?: 'up' | 'down' | 'nearest';
  };
  rail?: { height?: number; depth?: number };
  stile?: { width?: number; depth?: number };
  groove?: { depth?: number; clearance?: number };
  stave?: {
    width?: number;
    depth?: number;
    clearance?: number;
    count?: number;
    pitch?: { from?: number; to?: number; prefer?: number };
  };
  slat?: { thickness?: number; height?: number; stop?: number };
  top?: { allowance?: number; cover?: number };
  weave?: { pattern?: string; rows?: string[]; start?: 'front' | 'behind' };
  wood?: { all?: MemberFile; rail?: MemberFile; stile?: MemberFile; stave?: MemberFile; slat?: MemberFile };
  measured?: { stack: number; thickness?: number; broken?: number; uncut?: readonly UncutPart[] };
  screen?: {
    mounting?: 'stiles' | 'blocks' | 'posts';
    standoff?: number;
    glass?: number;
    bedroom?: boolean;
    above?: number;
    into?: 'wood' | 'masonry';
  };
  guard?: {
    floor?: number;
    drop?: number;
    cap?: { height: number; depth: number };
    top?: number;
    dwelling?: 'one or two family' | 'other';
  };
  divider?: {
    stand?: 'feet' | 'track';
    feet?: { length?: number; height?: number; width?: number };
    track?: { above?: number; below?: number };
  };
  gate?: {
    hinge?: 'left' | 'right';
    swing?: 'towards the front' | 'towards the back';
    clear?: { hinge?: number; latch?: number; ground?: number };
    brace?: { kind?: 'cable' | 'strut' | 'none'; from?: 'hinge top' | 'hinge bottom' };
    hinges?: { count?: number; inset?: number };
    latch?: number;
    load?: number;
    pool?: boolean;
  };
}

/** A member's wood as written: a name, with grade and ring angle where they differ from the default. */
interface MemberFile {
  wood?: string;
  grade?: Grade;
  rings?: number;
}

/** A wood of the job's own. Modulus and strength in MPa, shrinkage in percent green to ovendry. */
interface WoodFile {
  name: string;
  modulus: number;
  strength: number;
  gravity: number;
  shrinkage: { radial: number; tangential: number };
  saturation?: number;
  decay?: 'very resistant' | 'resistant' | 'moderately resistant' | 'slightly or nonresistant';
  source: string;
}

/** A board as written. */
export interface StockFile {
  name?: string;
  thickness: number;
  width: number;
  length: number;
  wood?: string;
  grade?: Grade;
  surface?: 'surfaced' | 'rough';
  price?: number;
  per?: PricePer;
  count?: number;
  trim?: number;
}
