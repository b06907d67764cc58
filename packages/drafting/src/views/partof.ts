import type { Panel, Part, PartRole } from '@wattlewright/model';

/** Lengths closer than this, mm, are one length: parts of one finished size are pooled to a ten-thousandth. */
const SAME_LENGTH = 1e-3;

/**
 * The part that a piece of a panel is, so that every mark that depicts it can carry its letter: the first of the role
 * that goes into the panel. `length`, mm, tells pieces of one role apart, such as slats of several lengths; undefined
 * when the list has no such part.
 */
export function partOf(
  parts: readonly Part[],
  panel: Pick<Panel, 'name'>,
  role: PartRole,
  length?: number,
): Part | undefined {
  return parts.find(
    (part) =>
      part.role === role &&
      part.where.some((place) => place.panel === panel.name) &&
      (length === undefined || Math.abs(part.length - length) < SAME_LENGTH),
  );
}
