/**
 * How a board is cut up, cut by cut. A `cross` cut leaves `a`, of length `at`, on the head side; a `rip` leaves `a`, of
 * size `at` along the board's `width` or `thickness`, between fence and blade. What the cut loses (one kerf; with a rip
 * also one planed face on either side of it) comes next, and `b` is all that then remains; where the remains are no
 * more than what the cut loses, `b` is `null`. Sizes in mm.
 */
export type CutTree =
  | { readonly cut: 'cross'; readonly at: number; readonly a: CutTree; readonly b: CutTree }
  | {
      readonly cut: 'rip';
      readonly axis: 'width' | 'thickness';
      readonly at: number;
      readonly a: CutTree;
      readonly b: CutTree;
      /** Thickness of the loose sliver that the rip leaves beyond the blade, mm. */
      readonly sliver?: number;
    }
  /**
   * A finished piece of the part with this letter. `unstopped` where no crosscut at a stop gave it its length: it is the
   * last of its strip, and as long as the strip and the kerfs before it are true. It is to be checked against the stop.
   */
  | { readonly part: string; readonly unstopped?: true }
  /** A leftover that is kept, and its length; its section is that of the piece it is left of. */
  | { readonly left: number }
  /** Waste. */
  | null;

/** Boards of one kind that are all cut up the same way. */
export interface PlannedBoard {
  readonly from: 'stock' | 'offcuts';
  /** Index in that list. */
  readonly stock: number;
  readonly name: string;
  readonly count: number;
  /** Sizes before the first cut, mm; of rough stock, after its outer faces are planed. */
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  readonly tree: CutTree;
}

/** One fence setting in the order of work. */
export interface FenceSetting {
  /** Distance from fence to blade, mm. */
  readonly at: number;
  /** Rips made at it before the fence moves on. */
  readonly rips: number;
  /** Indices among the plan's boards that have a rip at it. */
  readonly boards: readonly number[];
}

/** One line of the shopping list. */
export interface ShoppingLine {
  readonly stock: number;
  readonly name: string;
  readonly length: number;
  readonly count: number;
  /** Price of one board and of all; `undefined` where the stock has no price. */
  readonly each: number | undefined;
  readonly total: number | undefined;
}

/** Leftovers of one size to put on the rack, mm; `name` is that of the board. */
export interface Leftover {
  readonly name: string;
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  readonly count: number;
}

/** The wood of all boards opened, in shares that make 1. */
export interface Shares {
  readonly parts: number;
  /** What blades and plane turn to dust and shavings. */
  readonly dust: number;
  readonly kept: number;
  readonly waste: number;
}

/** Why a job cannot be cut; tests are made in this order. */
export type RefusalReason = 'input' | 'size' | 'species' | 'grade' | 'section' | 'length' | 'minRip' | 'supply';

/** Why there is no plan. */
export interface Refusal {
  readonly reason: RefusalReason;
  /** Letter of the part it is about; absent where it is about the stock, the saw or all parts together. */
  readonly part?: string;
  /** One sentence with the figures. */
  readonly text: string;
  /** With `supply`: pieces that the plan which makes the most leaves uncut. */
  readonly short?: readonly { readonly part: string; readonly count: number }[];
  /** Where a plan leaves parts out that no board gives: each with what is in the way and what to buy. */
  readonly each?: readonly LeftOut[];
  /** False where the search ended without a plan and without a proof that there is none. */
  readonly proven: boolean;
}

/** A part that no board gives. */
export interface LeftOut {
  /** Its letter. */
  readonly part: string;
  /** What is in the way, with the figures; no full stop. */
  readonly why: string;
  /** What would do, such as `buy a longer board`. */
  readonly buy: string;
}

/**
 * What the bound rests on: `linear`, board patterns mixed in fractions; `complete`, a search of every plan of crosscut,
 * rip, crosscut; `material`, the volume of the parts alone.
 */
export type BoundKind = 'linear' | 'complete' | 'material';

/** What to buy and how to cut it. */
export interface CutPlan {
  /** `optimal`: no plan costs less; `within`: cost is at most `gap` over the bound; `impossible`: see `refusal`. */
  readonly status: 'optimal' | 'within' | 'impossible';
  readonly refusal?: Refusal;
  readonly boards: readonly PlannedBoard[];
  /** Cost of the boards bought: money, or mm3 of wood where some stock has no price. */
  readonly cost: number;
  readonly costIs: 'price' | 'wood';
  /** The least any plan could cost. */
  readonly bound: number;
  readonly boundKind: BoundKind;
  /** Cost over bound less 1; 0 where the plan is optimal. */
  readonly gap: number;
  readonly shares: Shares;
  /** Fence settings in the order of work. */
  readonly fences: readonly FenceSetting[];
  readonly rips: number;
  readonly crosscuts: number;
  readonly shopping: readonly ShoppingLine[];
  readonly leftovers: readonly Leftover[];
}
