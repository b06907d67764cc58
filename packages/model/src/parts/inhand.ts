import type { UncutPart } from '../job/job.ts';
import type { Panel } from '../panel/panel.ts';
import type { Member } from './member.ts';
import type { Part, PartRole } from './part.ts';

/** Members that are first cut long, to be trimmed to the measured stack. */
export const TRIMMED: readonly PartRole[] = ['stile', 'stave', 'stop'];

/** Sizes that differ by less are one to a saw, mm. */
const SAME = 0.05;

/**
 * Whether a member of a measured panel, slats apart, is cut already and large enough: all was cut with the slats, stiles,
 * staves and stop strips `long` over, and what has come out larger since than it was cut is not there.
 */
export function isInHand(
  { asBuilt }: Panel,
  member: Member,
  planned: readonly Member[],
  { long }: { readonly long: number },
): boolean {
  if (!asBuilt || asBuilt.uncut.some((word) => roleOf(word) === member.role)) return false;
  const before = planned.find(({ role, name }) => role === member.role && name === member.name);
  if (!before) return false;
  const over = TRIMMED.includes(member.role) ? long : 0;
  const sides = (of: Member) => [...of.section].sort((a, b) => a - b) as [number, number];
  const [thin, wide] = sides(member);
  const [wasThin, wasWide] = sides(before);
  return member.length <= before.length + over + SAME && thin <= wasThin + SAME && wide <= wasWide + SAME;
}

function roleOf(word: UncutPart): PartRole {
  return word === 'stop strip' ? 'stop' : word;
}

/**
 * Good slats and spares of measured panels. Where the spares cover the broken ones none is cut anew and what is left of
 * them stays; where they do not, the missing are cut and the whole spare share with them, since a board is wanted anyway.
 * @param broken broken pieces of this part
 */
export function slatsInHand(count: number, spares: number, broken: number): { spare: number; inHand: number } {
  const inHand = Math.max(0, count + spares - broken);
  return { inHand, spare: inHand >= count ? inHand - count : spares };
}

/**
 * What is still to be cut: the parts less the pieces in hand, which are those of measured panels. The very parts while
 * nothing is in hand; parts of which all is there are not among them.
 */
export function partsToCut(parts: readonly Part[]): readonly Part[] {
  if (parts.every(({ inHand }) => inHand === undefined)) return parts;
  return parts.flatMap(({ inHand = 0, ...part }): Part[] => {
    const pieces = part.count + part.spare - inHand;
    if (pieces <= 0) return [];
    const count = Math.max(0, part.count - inHand);
    let left = inHand;
    const where = part.where.flatMap(({ panel, count: wanted, inHand: there = 0 }) => {
      const taken = Math.min(left, there);
      left -= taken;
      return wanted > taken ? [{ panel, count: wanted - taken }] : [];
    });
    return [{ ...part, count, spare: pieces - count, where }];
  });
}
