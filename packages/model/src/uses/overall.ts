import type { Panel } from '../panel/panel.ts';
import { weaveReach } from '../panel/reach.ts';
import { strutThickness } from './brace.ts';

/** Size over everything that is made, mm; hardware such as hinges and brackets left out. */
export interface Overall {
  readonly width: number;
  readonly height: number;
  readonly depth: number;
  /** What makes it larger than the frame, in words. */
  readonly by: readonly string[];
}

/** The panel over all: frame with its cap rail, feet or strut, and slats that stand out of it. */
export function overallOf(panel: Panel): Overall {
  const { outside, details } = panel;
  const half = outside.depth / 2;
  const { front, back } = weaveReach(panel);
  const strut = details.use === 'gate' && details.brace.kind === 'strut' ? strutThickness(panel) : 0;
  const cap = details.use === 'guard' ? details.cap : undefined;
  const feet = details.use === 'divider' ? details.feet : undefined;
  const across = Math.max(cap?.depth ?? 0, feet?.length ?? 0) / 2;
  const proud = Math.max(front, back) > half + 0.05;
  return {
    width: outside.width,
    height: outside.height + (cap?.height ?? 0) + (feet?.height ?? 0),
    depth: Math.max(half, front, across) + Math.max(half + strut, back, across),
    by: [
      ...(cap ? ['the cap rail'] : []),
      ...(feet ? ['the feet'] : []),
      ...(strut > 0 ? ['the strut at the back'] : []),
      ...(proud ? ['slats that stand out of the frame'] : []),
    ],
  };
}
