import { type GuardUse, INCH, type Panel, type Part } from '@wattlewright/model';
import type { NoteTarget } from '../layout/notes.ts';
import type { Mark } from '../mark.ts';
import { stroke } from '../mark.ts';
import { circle, line, rectangle } from '../path.ts';
import { type View, viewBox } from '../view.ts';
import { grounds } from './fittings.ts';
import { cutFace, seenFace } from './grain.ts';
import { partOf } from './partof.ts';

/** The sphere that the openings of a guard must not pass: 4 in (International Residential Code 2018, R312.1.3). */
const GUARD_SPHERE: number = 4 * INCH;

/** How far the lines of floor, ground and opening run past the frame, paper mm. */
const LINE_PAST = 8;

/** Distances between the panel and what lies over and under it, mm; absent where nothing is known. */
export interface Clearances {
  readonly under?: number;
  readonly over?: number;
  readonly cap?: GuardUse['cap'];
  /** Name of what lies under the panel. */
  readonly ground: string;
  /** Name of what lies over it. */
  readonly overhead: string;
}

/** What the panel's use and opening say of the room over and under it. */
export function clearances(panel: Panel): Clearances {
  const { details, opening, outside } = panel;
  const lines = grounds(panel);
  const low = lines.find(({ y }) => y <= 0);
  const high = lines.find(({ y }) => y > 0);
  const cap = details.use === 'guard' ? details.cap : undefined;
  const under = low ? -low.y : opening?.gaps.bottom;
  // A cap rail lies on the panel, in the room that the opening leaves over it.
  const over = high ? high.y - outside.height : cap ? undefined : opening?.gaps.top;
  return {
    ...(under === undefined ? {} : { under }),
    ...(over === undefined ? {} : { over }),
    ...(cap ? { cap } : {}),
    ground: low?.name ?? 'opening',
    overhead: high?.name ?? 'opening',
  };
}

/** What the panel stands in, cut as far as a section through its middle shows it, and notes on it. */
export interface SiteInk {
  readonly marks: readonly Mark[];
  readonly notes: readonly NoteTarget[];
}

/** What `siteInk` needs to know. */
export interface SitePlace {
  readonly panel: Panel;
  readonly parts: readonly Part[];
  readonly scale: number;
  /** Maps z and y to paper at the foot and at the head of the view. */
  readonly foot: View;
  readonly head: View;
}

/**
 * Floor, ground or opening as neighbours' lines; the cap rail of a guard in section, with the sphere that must not pass
 * under its bottom rail; the foot of a divider, which stands beyond the plane.
 */
export function siteInk(place: SitePlace): SiteInk {
  const { panel, parts, foot, head, scale } = place;
  const { details, outside } = panel;
  const { under, over, cap, ground, overhead } = clearances(panel);
  const feet = details.use === 'divider' ? details.feet : undefined;
  const reach = Math.max(outside.depth, feet?.length ?? 0) / 2 + LINE_PAST / scale;
  const across = (at: View, y: number): Mark => stroke('neighbour', line(at(-reach, y), at(reach, y)));
  const marks: Mark[] = [];
  const notes: NoteTarget[] = [];
  if (under !== undefined && under > 0) {
    marks.push(across(foot, -under));
    notes.push({ at: foot(-reach + 2 / scale, -under), text: titleCase(ground), end: 'arrow' });
  }
  if (over !== undefined && over > 0) {
    marks.push(across(head, outside.height + over));
    if (overhead !== ground)
      notes.push({ at: head(-reach + 2 / scale, outside.height + over), text: titleCase(overhead), end: 'arrow' });
  }
  if (feet) {
    const of = partOf(parts, panel, 'foot')?.letter;
    const box = viewBox(foot, [-feet.length / 2, -feet.height], [feet.length / 2, 0]);
    marks.push(...seenFace(rectangle(box), of));
  }
  if (cap) {
    const of = partOf(parts, panel, 'cap rail')?.letter;
    const box = viewBox(head, [-cap.depth / 2, outside.height], [cap.depth / 2, outside.height + cap.height]);
    marks.push(...cutFace(rectangle(box), { grain: 'end', angle: -45, ...(of === undefined ? {} : { of }) }));
  }
  if (details.use === 'guard' && under !== undefined) {
    const { z, y } = sphereAt(under, panel.rail.depth / 2);
    const radius = GUARD_SPHERE / 2;
    // At the back, where the notes are: it rests there as it does in front.
    marks.push(stroke('neighbour', circle(foot(-z, y), radius * scale)));
    const text =
      under < GUARD_SPHERE
        ? 'A 4\u00a0in sphere does not pass under the rail'
        : 'A 4\u00a0in sphere passes under the rail';
    notes.push({ at: foot(-z, y), text });
  }
  return { marks, notes };
}

const titleCase = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/**
 * Where the middle of the guard's sphere comes to rest on the floor: against the front arris of the bottom rail, or under
 * the rail where it passes. A sphere of radius r with its middle h from the rail's height lies √(r² − h²) before the arris.
 */
export function sphereAt(floorGap: number, half: number): { readonly z: number; readonly y: number } {
  const radius = GUARD_SPHERE / 2;
  const y = radius - floorGap;
  if (floorGap >= GUARD_SPHERE) return { z: 0, y };
  // With its middle over the arris the sphere meets the rail's face instead.
  return { z: half + (y >= 0 ? radius : Math.sqrt(radius ** 2 - y ** 2)), y };
}
