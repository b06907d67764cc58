import type { GuardUse } from '../job/job.ts';
import { ceilToMark, INCH, roundToMark } from '../length.ts';
import type { Panel } from '../panel/panel.ts';
import { spread } from '../uses/place.ts';
import { type ChosenScrew, PENETRATION } from './choose.ts';
import { screwDiameter, screwLengths } from './gauge.ts';
import { isClear, jointStretches, stretchesAt } from './meet.ts';
import type { JointToScrew } from './row.ts';
import { lengthsText } from './where.ts';

/**
 * Step of cap screws, the least that their heads are sunk under plugs, wood kept under the heads and over the groove, and
 * between a screw and a stave beside it, mm; common practice, no source.
 */
const STEP = 16 * INCH;
const CAP = { sunk: INCH / 4, keep: INCH / 2, groove: INCH / 8, stave: INCH / 4 } as const;

/** Screws down through a guard's cap into its top rail, sunk and plugged, between the staves; none where none fits. */
export function capScrews(panel: Panel, { cap }: GuardUse, corner: JointToScrew): JointToScrew[] {
  if (!cap) return [];
  const { outside, spec, rail, display } = panel;
  const screw = capScrew(panel, cap.height);
  if (!screw) return [];
  const y = outside.height + cap.height;
  const xs = placesOf(panel, { screw, y, corner });
  if (xs.length === 0) return [];
  return [
    {
      joint: 'cap rail to top rail',
      screw,
      places: xs.map((x) => ({ x, y, z: 0 })),
      along: 'y',
      into: spec.wood.rail.wood,
      edge: rail.depth / 2,
      end: Math.min(...xs),
      where: `along the middle of the cap, between the staves; from its left end: ${lengthsText(xs, display)}`,
      remark: 'no longer than told: the groove lies under them; plug the heads, since water stands on a cap',
    },
  ];
}

/**
 * Screw for a cap: through it and into the solid wood over the groove, sunk by as little as lets a length that is sold
 * reach six diameters there and end short of the groove. Absent where none does.
 */
export function capScrew({ rail, groove, display }: Panel, height: number): ChosenScrew | undefined {
  const room = rail.height - groove.depth - CAP.groove;
  for (const gauge of [8, 6] as const) {
    const diameter = screwDiameter(gauge);
    const tries = screwLengths(gauge, display.unit).flatMap((length): ChosenScrew[] => {
      const reach = height + PENETRATION.least * diameter - length;
      const counterbore = ceilToMark(Math.max(reach, CAP.sunk), display.mark);
      const penetration = length - height + counterbore;
      if (counterbore > height - CAP.keep + 1e-6 || penetration > room + 1e-6) return [];
      return [{ gauge, diameter, length, through: height - counterbore, penetration, counterbore }];
    });
    const least = Math.min(...tries.map(({ counterbore }) => counterbore));
    const good = tries.findLast(({ counterbore }) => counterbore <= least + 1e-6);
    if (good) return good;
  }
  return undefined;
}

/** Places at about the usual step, each moved to the nearest one that is clear of staves and of the corner's screws. */
function placesOf(
  panel: Panel,
  { screw, y, corner }: { readonly screw: ChosenScrew; readonly y: number; readonly corner: JointToScrew },
): number[] {
  const { outside, staves, display } = panel;
  const taken = jointStretches(corner, panel);
  const apart = CAP.stave + screw.diameter / 2;
  const free = (x: number) =>
    staves.lefts.every((left) => x <= left - apart || x >= left + staves.width + apart) &&
    isClear(stretchesAt({ fastener: screw, along: 'y' }, { x, y, z: 0 }, panel), taken);
  const mark = display.unit === 'in' ? INCH / 8 : 1;
  const half = outside.width / 2;
  // From the middle outwards, so that both ends are alike.
  const found = spread(2 * INCH, outside.width - 2 * INCH, STEP).flatMap((wanted) => {
    const near = wanted > half + 1e-6 ? outside.width - wanted : wanted;
    for (let by = 0; by <= STEP / 2; by += mark)
      for (const x of [near + by, near - by].map((one) => roundToMark(one, mark)))
        if (x > INCH && x < outside.width - INCH && free(x)) return [wanted > half + 1e-6 ? outside.width - x : x];
    return [];
  });
  return [...new Set(found)].sort((a, b) => a - b).filter((x, i, all) => i === 0 || x - (all[i - 1] as number) > INCH);
}
