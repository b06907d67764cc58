import { pointsOf } from '../../src/ink.ts';
import type { Mark, PathMark, Sheet } from '../../src/mark.ts';
import { fillOf, pen } from '../../src/pen.ts';

/** The ink of a sheet in the order in which the PDF draws it. */
export function inkOf({ figures, furniture }: Sheet): Mark[] {
  const lines = furniture.filter(({ kind }) => kind === 'path');
  return [...figures.flatMap(({ marks }) => marks), ...lines, ...furniture.filter(({ kind }) => kind === 'text')];
}

/** The paths of a sheet as a reader should see them; `twice` where it sees filling and stroking as two paths. */
export function pathsOf(sheet: Sheet, { twice = false } = {}): { mark: PathMark; points: number[] }[] {
  return inkOf(sheet).flatMap((mark) => {
    if (mark.kind !== 'path') return [];
    const seen = { mark, points: pointsOf(mark.path).flat() };
    return twice && fillOf(mark) !== undefined && pen(mark.role).width > 0 ? [seen, seen] : [seen];
  });
}
