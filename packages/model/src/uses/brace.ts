import type { GateUse } from '../job/job.ts';
import { INCH } from '../length.ts';
import type { BraceEnds } from '../loads/gate.ts';
import type { Panel } from '../panel/panel.ts';
import type { Place } from './place.ts';

/** A gate's brace in its place. */
export interface BraceLine {
  readonly kind: 'cable' | 'strut';
  /** Ends in the panel frame, in mid-stile where stile and rail meet, at the back of the frame. */
  readonly hinge: Place;
  readonly latch: Place;
  /** Whether it runs the way that lets it work: a cable down from the hinge side's top, a strut up from its bottom. */
  readonly right: boolean;
}

/** Where a gate's brace runs; absent for a gate without one. */
export function braceLine(panel: Panel, gate: GateUse): BraceLine | undefined {
  const { outside, stile, rail } = panel;
  const { kind, from } = gate.brace;
  if (kind === 'none') return undefined;
  const [low, high] = [rail.height, outside.height - rail.height];
  const [near, far] = [stile.width / 2, outside.width - stile.width / 2];
  const z = -stile.depth / 2;
  const [hingeX, latchX] = gate.hinge === 'left' ? [near, far] : [far, near];
  const top = from === 'hinge top';
  return {
    kind,
    hinge: { x: hingeX, y: top ? high : low, z },
    latch: { x: latchX, y: top ? low : high, z },
    right: (kind === 'cable') === top,
  };
}

/** The same with x from the hinge side's edge, as the statics take it. */
export function braceEnds({ hinge, latch }: BraceLine, width: number, side: GateUse['hinge']): BraceEnds {
  const from = (x: number) => (side === 'left' ? x : width - x);
  return { hinge: { x: from(hinge.x), y: hinge.y }, latch: { x: from(latch.x), y: latch.y } };
}

/** Thickness of a hinge or brace plate, mm; common practice, no source. */
export const PLATE = 2.5;

/** Thickness of a strut on the back of the leaf, mm: dressed one-inch stock, or the stile where that is thinner. */
export function strutThickness({ stile }: Panel): number {
  return Math.min(stile.depth, 0.75 * INCH);
}
