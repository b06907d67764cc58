import { type Panel, type Part, weaveReach } from '@wattlewright/model';
import type { Size } from '../layout/rows.ts';
import type { View } from '../view.ts';
import { finestMark } from './cutsize.ts';
import { stated } from './detaildrawing.ts';
import { heightsOver, printed } from './elevationsizes.ts';
import { fittings } from './fittings.ts';

/** What the sizes of an end view are taken from. */
export interface SideScene {
  readonly panel: Panel;
  /** Maps distance behind mid-depth, and height, to paper. */
  readonly at: View;
  readonly strut: Part | undefined;
}

/** Slats that stand out no more than this, mm, lie within the frame, however fine the job's marks. */
const HARDLY = 0.05;

/**
 * How far the weave reaches to the front and to the back of mid-depth where it stands out of the frame by as much as can be
 * printed, else the frame, mm.
 */
export function proudReach(panel: Panel): { readonly front: number; readonly back: number } {
  const half = panel.outside.depth / 2;
  const { front, back } = weaveReach(panel);
  const least = half + Math.max(finestMark(panel.display) / 2, HARDLY);
  return { front: front > least ? front : half, back: back > least ? back : half };
}

/** The depth of the frame, with a strut behind it; those of a cap, a foot or a block outside it, a cap's overhang in front and behind. */
export function depthSizes({ panel, at, strut }: SideScene): Size[] {
  const size = (from: number, to: number): Size[] =>
    stated(from, to, { display: panel.display, along: (x) => at(x, 0)[0] });
  const half = panel.outside.depth / 2;
  const seen = new Map<string, Size[]>();
  for (const { what, role, from, to } of fittings(panel)) {
    if (!role) continue;
    seen.set(what, size(-to.z, -from.z));
    if (what !== 'cap rail') continue;
    if (to.z > half) seen.set('front', size(-to.z, -half));
    if (from.z < -half) seen.set('back', size(half, -from.z));
  }
  const reach = proudReach(panel);
  const isProud = reach.front + reach.back > 2 * half;
  const proud = isProud
    ? [
        ...(reach.front > half ? size(-reach.front, -half) : []),
        ...(reach.back > half ? size(half, reach.back) : []),
        ...size(-reach.front, reach.back).map((whole) => ({ ...whole, total: true })),
      ]
    : [];
  const behind = strut ? size(half, half + strut.thickness) : [];
  return [...size(-half, half), ...behind, ...[...seen.values()].flat(), ...proud];
}

/** The height of the frame, what stands under or over it, and the whole. */
export function heightSizes({ panel, at }: SideScene): Size[] {
  const [low, high] = heightsOver(panel);
  const { height } = panel.outside;
  const size = (from: number, to: number): Size => ({
    from: at(0, from)[1],
    to: at(0, to)[1],
    ...printed(panel, to - from),
  });
  const more = low < -1e-6 || high > height + 1e-6;
  return [
    ...(low < -1e-6 ? [size(low, 0)] : []),
    { ...size(0, height), ...(more ? {} : { total: true }) },
    ...(high > height + 1e-6 ? [size(height, high)] : []),
    ...(more ? [{ ...size(low, high), total: true }] : []),
  ];
}
