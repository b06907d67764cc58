import type { PanelSpec } from '../job/job.ts';
import { countFor } from '../job/slatdefaults.ts';
import { formatLength, type Marks } from '../length.ts';
import type { Staves } from './panel.ts';

/** A reason why staves cannot be laid out, in words for the maker. */
export interface NoRoom {
  readonly field: string;
  readonly message: string;
}

/**
 * Staves at equal pitch between end staves that touch the stiles: pitch = (clear width − stave width) / (count − 1).
 * Of a range of pitches the count nearest the preferred pitch is taken.
 */
export function layStaves(
  spec: PanelSpec,
  clear: { readonly width: number; readonly height: number; readonly left: number; readonly bottom: number },
  display: Marks,
): Staves | NoRoom {
  const { width, depth, clearance, spacing } = spec.stave;
  const run = clear.width - width;
  const count = 'count' in spacing ? spacing.count : countFor(run, spacing);
  const pitch = run / (count - 1);
  const show = (length: number) => formatLength(length, display, { named: true });
  if (!('count' in spacing) && !spacing.soft && (pitch < spacing.from - 1e-9 || pitch > spacing.to + 1e-9)) {
    const near = [count - 1, count, count + 1].filter((n) => n >= 2);
    const works = near.map((n) => `${n} staves at ${show(run / (n - 1))}`).join(', ');
    return {
      field: 'stave.pitch',
      message: `no count of staves has a pitch from ${show(spacing.from)} to ${show(spacing.to)}; nearest: ${works}`,
    };
  }
  if (pitch <= width) {
    const most = Math.max(2, Math.floor(run / (width * 1.5)) + 1);
    return {
      field: 'stave.count',
      message: `${count} staves leave no bay in ${show(clear.width)}; at most ${most} would`,
    };
  }
  const lefts = Array.from({ length: count }, (_, j) => clear.left + j * pitch);
  return {
    count,
    width,
    depth,
    length: clear.height + 2 * spec.groove.depth - clearance,
    pitch,
    bay: pitch - width,
    lefts,
    centres: lefts.map((left) => left + width / 2),
    bottom: clear.bottom - spec.groove.depth,
  };
}
