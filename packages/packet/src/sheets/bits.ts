import {
  type Drill,
  drillText,
  fineMarks,
  formatLength,
  INCH,
  type Panel,
  pilotDepth,
  type ScrewRow,
  sideFixings,
} from '@wattlewright/model';

/**
 * How deep the flutes of a common twist bit reach by its diameter, both mm; common practice, no source. Of a diameter in
 * between that of the next thinner.
 */
const REACH: readonly (readonly [diameter: number, depth: number])[] = [
  [0.7, 9],
  [1, 12],
  [1.5, 18],
  [1.9, 24],
  [2.5, 30],
  [3, 33],
  [3.5, 39],
  [4, 43],
  [5, 52],
];

/** Joints whose heads lie in a plate or a bracket that is countersunk already. */
const IN_METAL: readonly ScrewRow['joint'][] = ['hinge to stile', 'hinge to post', 'brace plate to frame'];

/**
 * The bits of one joint: the counterbore first, since nothing can be bored centred after the others; with the depth where
 * a bit of common length does not reach it, and the countersink of heads that lie in wood.
 */
export function bitsText(row: ScrewRow, panel: Panel): string {
  const { joint, holes, plug } = row;
  const { display } = panel;
  const bit = (drill: Drill): string => drillText(drill, display.unit);
  const fine = (size: number): string => formatLength(size, fineMarks(display));
  const depth = pilotDepth(row);
  const long = depth > reachOf(holes.pilot) + 1e-9 ? ` (${fine(depth)} deep: long bit)` : '';
  const inMetal = IN_METAL.includes(joint) || (joint === 'mounting' && sideFixings(panel).kind === 'bracket');
  const sunk = plug
    ? `first ${bit(plug.drill)}, ${formatLength(plug.depth, display)} deep, ${plug.open ? 'left open' : 'plugged after'}; `
    : '';
  const cone = holes.countersink && !plug && !inMetal ? `, countersink ${fine(holes.countersink)}` : '';
  return `${sunk}pilot ${bit(holes.pilot)}${long}${holes.clearance ? `, clearance ${bit(holes.clearance)}` : ''}${cone}`;
}

function reachOf({ inch, metric }: Drill): number {
  const [over, under = '1'] = inch.split('/');
  // The thinner of the two, so that one table serves both.
  const diameter = Math.min(metric, (Number(over) / Number(under)) * INCH);
  return REACH.filter(([d]) => d <= diameter + 1e-9).at(-1)?.[1] ?? 0;
}
