import type { Panel } from '@wattlewright/model';
import type { Size } from '../layout/rows.ts';
import type { View } from '../view.ts';
import { type StatedOptions, stated } from './detaildrawing.ts';
import { clearances } from './verticalsectionsite.ts';

/** A part of the upright section between break lines, and how it is mapped to paper. */
export interface Piece {
  readonly span: readonly [from: number, to: number];
  readonly at: View;
}

/** The depth of the rail, and how far the blocks hold it off. */
export function depths({ rail, display, stile }: Panel, scale: number, face?: number): Size[] {
  const through: StatedOptions = { display, along: (z) => -z * scale };
  return [
    ...stated(-rail.depth / 2, rail.depth / 2, { ...through, total: true }),
    ...(face === undefined ? [] : stated(face, -stile.depth / 2, through)),
  ];
}

/** A cap's depth, and how far it stands out in front and at the back. */
export function capDepths(panel: Panel, scale: number): Size[] {
  const { cap } = clearances(panel);
  if (!cap) return [];
  const through: StatedOptions = { display: panel.display, along: (z) => -z * scale };
  const [edge, half] = [cap.depth / 2, panel.rail.depth / 2];
  return [
    ...(edge > half ? [...stated(half, edge, through), ...stated(-half, -edge, through)] : []),
    ...stated(-edge, edge, { ...through, level: 1 }),
  ];
}

/** Shorter sizes of the foot, mm on paper, are left to its detail. */
const SIZED_FROM = 6;

/** Sizes that lie wholly within one piece of the view. */
export function heights(panel: Panel, { span, at }: Piece, scale: number): Size[] {
  const { display, courses, rail, groove, clear, outside } = panel;
  const top = clear.bottom + clear.height;
  const stack = clear.bottom + courses.stack;
  const { under = 0, over = 0, cap } = clearances(panel);
  const mine = { display, along: (y: number) => at(0, y)[1] };
  const one = (from: number, to: number, more: Partial<StatedOptions> = {}): Size[] =>
    from >= span[0] - Math.max(under, 2) && to <= span[1] + Math.max(over, cap?.height ?? 0, 2)
      ? stated(from, to, { ...mine, ...more })
      : [];
  const isHead = span[1] > outside.height;
  // As fine as the slats are set, so that stack and allowance make the clear height.
  const fine = Math.min(courses.step, display.mark);
  const first = courses.bottoms[0] as number;
  // What is too small here for its figure stands on the detail of the foot.
  const roomy = (from: number, to: number, more?: Partial<StatedOptions>): Size[] =>
    (to - from) * scale >= SIZED_FROM ? one(from, to, more) : [];
  return [
    ...(span[0] < 0
      ? [
          ...roomy(rail.height - groove.depth, rail.height),
          ...roomy(first, first + courses.height, { mark: courses.step }),
          ...(courses.gap > 0 && courses.count > 1 ? roomy(first + courses.height, first + courses.pitch) : []),
          ...one(0, rail.height, { level: 1 }),
          ...(under > 0 ? one(-under, 0, { level: 1 }) : []),
        ]
      : []),
    ...(isHead
      ? [
          // Groove, cover strips and their pins stand on the detail of the head, where there is room for their sizes.
          ...(courses.allowance > 0 ? one(stack, top, { mark: fine }) : []),
          ...one(top, outside.height),
          ...(cap ? one(outside.height, outside.height + cap.height) : []),
          ...(over > 0 ? one(outside.height, outside.height + over) : []),
        ]
      : []),
  ];
}

/** Sizes from the foot to the head of the view, across its break where it has one. */
export function totals(
  { display, clear, courses, outside }: Panel,
  { foot, head, broken }: { readonly foot: View; readonly head: View; readonly broken?: number },
): Size[] {
  const half = outside.height / 2;
  const along = (y: number): number => (y < half ? foot : head)(0, y)[1];
  const mine: StatedOptions = { display, along, ...(broken !== undefined && { broken }) };
  const bottom = clear.bottom;
  return [
    ...stated(bottom, bottom + courses.stack, { ...mine, level: 1, mark: Math.min(courses.step, display.mark) }),
    ...(courses.allowance > display.mark / 2 ? stated(bottom, bottom + clear.height, { ...mine, level: 2 }) : []),
    ...stated(0, outside.height, { ...mine, level: 3, total: true }),
  ];
}
