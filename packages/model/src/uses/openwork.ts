import type { Panel } from '../panel/panel.ts';
import { largestBall } from '../weave/ball.ts';
import { seeThrough } from '../weave/light.ts';
import type { PanelOpenwork } from '../weave/openwork.ts';

/** The panel's weave as `seeThrough`, `airShare` and `largestBall` take it, with the bends already worked out. */
export function openworkOf(panel: Panel): PanelOpenwork {
  const { clear, staves, courses, weave, rows, spec } = panel;
  return {
    clearWidth: clear.width,
    staves: { count: staves.count, width: staves.width, depth: staves.depth },
    slat: { thickness: courses.thickness, height: courses.height },
    gap: courses.gap,
    rows: weave.rows,
    rowOfCourse: weave.rowOfCourse,
    bends: rows.map(({ bend }) => bend),
    ...(spec.endStop !== undefined && { endStop: spec.endStop }),
  };
}

/** Height of the stack that loose courses can be lifted by in the driest season, beyond the gaps, mm. */
function stackSlack({ courses, movement }: Panel): number {
  return Math.max(0, courses.allowance - movement.shrink);
}

/** Diameter of the largest rigid ball that can pass between slats and staves in the driest season, mm. */
export function panelBall(panel: Panel): number {
  return largestBall({ ...openworkOf(panel), slack: stackSlack(panel) });
}

/** Share of the whole panel that is solid seen level and square: the frame, and the weave less what it lets through. */
export function solidity(panel: Panel): number {
  if (panel.courses.gap === 0) return 1;
  const woven = (panel.clear.width * panel.clear.height) / (panel.outside.width * panel.outside.height);
  return 1 - woven * seeThrough({ ...openworkOf(panel), elevation: 0 });
}
