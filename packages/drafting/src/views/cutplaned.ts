import type { Marks } from '@wattlewright/model';
import { SAME } from './cutfence.ts';
import { lettersText } from './cutgives.ts';
import { sectionText } from './cutsize.ts';
import type { Planed, RippedLength, SectionBox, Stage } from './cutstages.ts';

/** A piece that the plane brings to size. */
export interface PlanedPiece {
  /** What it is called: a part's letter, `blank`, or `the length` for a length before its first rip. */
  readonly name: string;
  readonly from: SectionBox;
  readonly planed: readonly Planed[];
}

/** Strips of a length that the plane brings to size at last. */
export function planedStrips({ stages }: Pick<RippedLength, 'stages'>): PlanedPiece[] {
  return stages.flatMap(({ regions }) =>
    regions
      .filter(({ planed }) => planed.length > 0)
      .map(({ names, box, planed }) => ({ name: lettersText(names), from: box, planed })),
  );
}

/** A stage's piece as it comes to the plane. */
export function blankOf(stage: Stage, { stages }: Pick<RippedLength, 'stages'>): PlanedPiece {
  return { name: stage === stages[0] ? 'the length,' : 'blank', from: stage.from, planed: stage.planed };
}

/** Sides of a planed piece, mm, and which of them the plane takes off: its faces, its edges, or both. */
interface PlanedSides {
  readonly thin: number;
  readonly face: boolean;
  readonly edge: boolean;
}

function sidesOf({
  from,
  planed,
}: Pick<PlanedPiece, 'from' | 'planed'>): { readonly width: number; readonly height: number } & PlanedSides {
  const after = { width: from.width, height: from.height };
  for (const { axis, at } of planed) after[axis === 'width' ? 'width' : 'height'] = at;
  const { width, height } = after;
  // What is planed along the smaller side is a face.
  const isFace = ({ axis }: Planed): boolean => (axis === 'width' ? width <= height + SAME : height <= width + SAME);
  return {
    ...after,
    thin: Math.min(width, height),
    face: planed.some(isFace),
    edge: planed.some((one) => !isFace(one)),
  };
}

/** A piece thinner than this, mm, is chewed up by a planing machine without a board under it; common practice, no source. */
export const THIN_PLANED = 8;

/** Whether a piece is planed thin. */
export function thinPlaned(piece: Pick<PlanedPiece, 'from' | 'planed'>): boolean {
  return piece.planed.length > 0 && sidesOf(piece).thin < THIN_PLANED - SAME;
}

/** What to mind when a piece is planed, in a few words; empty where it is thick enough to feed by itself. */
function planedNote({ thin, face, edge }: PlanedSides): string {
  if (thin >= THIN_PLANED - SAME) return '';
  return [
    ...(face ? ['thin: on a carrier board, or by hand plane or sander'] : []),
    ...(edge ? ['thin: on edge in a bundle, never one alone'] : []),
  ].join('; ');
}

/** Pieces that are planed alike. */
export interface PlanedRow<P> {
  /** The piece before the plane and the side that is planed, such as `D 5 × 56, its face`. */
  readonly what: string;
  /** Its size after. */
  readonly to: string;
  /** What it is then: `D 4 × 56`. */
  readonly gives: string;
  readonly note: string;
  readonly count: number;
  readonly of: readonly P[];
}

/** What pieces are before the plane and after it, in words, alike ones together with how many. */
export function planedTogether<P extends PlanedPiece & { readonly times: number }>(
  pieces: readonly P[],
  display: Marks,
): PlanedRow<P>[] {
  const found = new Map<string, PlanedRow<P> & { count: number; of: P[] }>();
  for (const piece of pieces) {
    const { name, from, times } = piece;
    const sides = sidesOf(piece);
    const side = sides.face && sides.edge ? 'face and edge' : sides.face ? 'face' : 'edge';
    const what = `${name} ${sectionText(from.width, from.height, display)}: ${side}`;
    const to = sectionText(sides.width, sides.height, display);
    const entry = found.get(`${what}|${to}`) ?? {
      what,
      to,
      gives: `${name} ${to}`,
      note: planedNote(sides),
      count: 0,
      of: [],
    };
    entry.count += times;
    entry.of.push(piece);
    found.set(`${what}|${to}`, entry);
  }
  return [...found.values()];
}
