import { STOP_WIDTH, stopThickness } from '../panel/cover.ts';
import type { Panel } from '../panel/panel.ts';
import { useMembers } from '../uses/members.ts';
import { isInHand, slatsInHand, TRIMMED } from './inhand.ts';
import { partLetter } from './letter.ts';
import type { Member } from './member.ts';
import type { Part } from './part.ts';

/**
 * Every piece of one panel or of several, with letter, count, finished size, wood and grade. Identical pieces of several
 * panels are one row that says where each goes. Slats get a spare share, rounded up, at least two.
 * Of measured panels it says how many are cut already.
 * @param options `spare`: spare slats in percent of the slats wanted; `long`: mm by which stiles, staves and stops of panels
 *   whose stack is not measured yet are first cut longer. A job holds both.
 */
export function partsOf(
  panels: Panel | readonly Panel[],
  { spare = 10, long = 0 }: { readonly spare?: number; readonly long?: number } = {},
): Part[] {
  const pooled = new Map<string, Pooled>();
  for (const panel of Array.isArray(panels) ? (panels as readonly Panel[]) : [panels as Panel]) {
    const planned = panel.asBuilt ? membersOf(panel.asBuilt.planned) : [];
    const slats: Pooled[] = [];
    for (const member of membersOf(panel)) {
      const over = panel.asBuilt === undefined && TRIMMED.includes(member.role) ? long : 0;
      const isSlat = member.role === 'slat';
      // Slats that are cut have spares of their own.
      const key = `${memberKey(member)}|${over}|${isSlat && panel.asBuilt !== undefined}`;
      const entry = pooled.get(key) ?? {
        member,
        over,
        isCut: isSlat && panel.asBuilt !== undefined,
        broken: 0,
        where: [],
      };
      const count = member.count * panel.count;
      const there = entry.isCut || isInHand(panel, member, planned, { long });
      entry.where.push({ panel: panel.name, count, ...(there && { inHand: count }) });
      pooled.set(key, entry);
      if (isSlat) slats.push(entry);
    }
    let broken = panel.asBuilt?.broken ?? 0;
    // The longest stand for the broken ones: what is cut anew can be cut down to any other.
    for (const [i, entry] of slats.sort((a, b) => b.member.length - a.member.length).entries()) {
      const some = i + 1 < slats.length ? Math.min(broken, entry.member.count * panel.count) : broken;
      entry.broken += some;
      broken -= some;
    }
  }
  return [...pooled.values()].map((entry, i) => {
    const { member, over, where } = entry;
    const [thickness, width] = [...member.section].sort((a, b) => a - b) as [number, number];
    return {
      letter: partLetter(i),
      name: member.name,
      role: member.role,
      ...countsOf(entry, spare),
      length: member.length,
      over,
      width,
      thickness,
      wood: member.wood.wood.name,
      grade: member.wood.grade,
      grain: 'length',
      where,
      made: member.made,
    };
  });
}

/** Pieces alike of all panels, before they have a letter. */
interface Pooled {
  readonly member: Member;
  readonly over: number;
  /** Slats that are cut already. */
  readonly isCut: boolean;
  broken: number;
  readonly where: { panel: string; count: number; inHand?: number }[];
}

function countsOf({ member, isCut, broken, where }: Pooled, spare: number): Pick<Part, 'count' | 'spare' | 'inHand'> {
  const count = where.reduce((sum, place) => sum + place.count, 0);
  const spares = member.role === 'slat' ? spareSlats(count, spare) : 0;
  if (isCut) return { count, ...slatsInHand(count, spares, broken) };
  const inHand = where.reduce((sum, place) => sum + (place.inHand ?? 0), 0);
  return { count, spare: spares, ...(inHand > 0 && { inHand }) };
}

/** Whole numbers only: 100 + 10 % is 110, not 111. */
function spareSlats(count: number, percent: number): number {
  return Math.max(2, Math.ceil((count * Math.round(percent * 100)) / 10000));
}

function memberKey({ name, role, length, section, wood }: Member): string {
  const sizes = [length, ...[...section].sort((a, b) => a - b)].map((size) => Math.round(size * 1e4) / 1e4);
  return [role, name, ...sizes, wood.wood.name, wood.grade].join('|');
}

/** The pieces of one panel, frame first. */
export function membersOf(panel: Panel): Member[] {
  const { rail, stile, staves, courses, cover, clear, spec } = panel;
  const { wood } = spec;
  const slats = slatGroups(panel);
  return [
    {
      name: 'rail',
      role: 'rail',
      count: 2,
      length: rail.length,
      section: [rail.height, rail.depth],
      wood: wood.rail,
      made: 'outside width',
    },
    {
      name: 'stile',
      role: 'stile',
      count: 2,
      length: stile.length,
      section: [stile.width, stile.depth],
      wood: wood.stile,
      made: 'outside height less both rails',
    },
    {
      name: 'stave',
      role: 'stave',
      count: staves.count,
      length: staves.length,
      section: [staves.width, staves.depth],
      wood: wood.stave,
      made: 'clear height plus both grooves less the end clearance',
    },
    ...slats.map(
      ({ length, count }): Member => ({
        name: slats.length > 1 ? `slat, ${rowsOfLength(panel, length)}` : 'slat',
        role: 'slat',
        count,
        length,
        section: [courses.height, courses.thickness],
        wood: wood.slat,
        made: 'clear width plus the bend, less clearance at both ends, rounded down to the mark',
      }),
    ),
    ...(cover.height > 0
      ? [
          {
            name: 'cover strip',
            role: 'cover strip' as const,
            count: 2,
            length: cover.length,
            section: [cover.height, cover.thickness] as const,
            wood: wood.slat,
            made:
              cover.length < clear.width
                ? 'between the stop strips; hides the room over the stack'
                : 'clear width; hides the room over the stack',
          },
        ]
      : []),
    ...endStops(panel),
    ...useMembers(panel),
  ];
}

function slatGroups(panel: Panel): { readonly length: number; readonly count: number }[] {
  const byLength = new Map<number, number>();
  for (const { cutLength, courses } of panel.rows) byLength.set(cutLength, (byLength.get(cutLength) ?? 0) + courses);
  return [...byLength].map(([length, count]) => ({ length, count }));
}

function rowsOfLength(panel: Panel, length: number): string {
  const rows = panel.rows.flatMap((row, i) => (row.cutLength === length ? [i + 1] : []));
  return `row ${rows.join(' and ')} of the weave`;
}

/** Strips on the stiles, front and back, that hold the slats' ends within the stop distance of mid-depth. */
function endStops(panel: Panel): Member[] {
  const { spec, clear } = panel;
  const thickness = stopThickness(panel);
  if (thickness <= 0) return [];
  return [
    {
      name: 'stop strip',
      role: 'stop',
      count: 4,
      length: clear.height,
      section: [thickness, STOP_WIDTH],
      wood: spec.wood.slat,
      made: 'clear height; holds the slats’ ends',
    },
  ];
}
