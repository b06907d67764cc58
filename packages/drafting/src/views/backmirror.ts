import type { Panel, RowBehaviour, Side } from '@wattlewright/model';

/**
 * The weave and frame of a panel as they are from behind: turned round an upright axis, so that what was the right end is
 * the left and what passed in front passes behind. What hangs on the panel, its `details`, stays as it was.
 */
export function turned(panel: Panel): Panel {
  const { clear, weave, rows } = panel;
  const sidesOf = (sides: readonly Side[]): Side[] => sides.map((side): Side => (side === 1 ? -1 : 1)).toReversed();
  const ends = ([left, right]: readonly [number, number], way: 1 | -1): readonly [number, number] => [
    way * right,
    way * left,
  ];
  const rowOf = (row: RowBehaviour): RowBehaviour => ({
    ...row,
    sides: sidesOf(row.sides),
    bend: {
      ...row.bend,
      knots: row.bend.knots
        .map(({ x, z, curvature }) => ({ x: clear.width - x, z: -z, curvature: -curvature }))
        .toReversed(),
      staveForces: row.bend.staveForces.toReversed(),
      stopForces: ends(row.bend.stopForces, 1),
      touched: row.bend.touched.map((stave) => panel.staves.count + 1 - stave).toReversed(),
      endSlopes: ends(row.bend.endSlopes, 1),
      endOffsets: ends(row.bend.endOffsets, -1),
    },
  });
  return {
    ...panel,
    weave: { ...weave, rows: weave.rows.map(sidesOf) },
    rows: rows.map(rowOf),
  };
}
