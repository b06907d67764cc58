/** One axis: what it counts, from where to where, and how a tick reads. */
export interface Axis {
  readonly label: string;
  readonly from: number;
  readonly to: number;
  /** Where ticks stand; nice round values unless given. */
  readonly ticks?: readonly number[];
  /** A number of the axis as text; as it is if absent. */
  readonly show?: (value: number) => string;
}

/** A curve of a plot. */
export interface Series {
  readonly label: string;
  /** Where along `x` its name points at it; absent: the name stands at the curve's end, beside the plot. */
  readonly named?: number;
  readonly points: readonly (readonly [x: number, y: number])[];
  /** The one to look at first. */
  readonly main?: boolean;
}

/** A level to judge by, drawn across the plot and named on it. */
export interface Level {
  readonly y: number;
  readonly label: string;
}

/** A point to look at, such as this panel's own. */
export interface PlotPoint {
  readonly x: number;
  readonly y: number;
  readonly label: string;
}

/** What `plot` needs to know. */
export interface PlotOptions {
  readonly name: string;
  readonly title: string;
  readonly alt: string;
  readonly x: Axis;
  readonly y: Axis;
  readonly series: readonly Series[];
  readonly levels?: readonly Level[];
  readonly points?: readonly PlotPoint[];
  /** Words under the plot. */
  readonly note?: string;
  /** Size of the plot's own rectangle, paper mm; 110 × 65 unless given. */
  readonly width?: number;
  readonly height?: number;
}
