import type { Panel } from '../panel/panel.ts';
import { density } from '../wood/density.ts';
import type { Member } from './member.ts';
import { membersOf } from './parts.ts';

/** Volume and mass of the pieces of one kind in one panel. */
export interface MemberMass {
  readonly name: string;
  readonly count: number;
  /** mm³, finished size, before grooves. */
  readonly volume: number;
  /** Board feet of the finished size: 144 cubic inches each. */
  readonly boardFeet: number;
  /** kg, at the moisture of building, less the wood of the grooves. */
  readonly mass: number;
}

/** Cubic millimetres in one board foot: 12 × 12 × 1 in, exact. */
export const BOARD_FOOT: number = 144 * 25.4 ** 3;

/** Wood of all pieces of one kind as they stand in the panel, mm³: the rails less their grooves from stile to stile. */
export function woodVolume({ count, length, section, role }: Member, { groove, clear }: Panel): number {
  return count * (length * section[0] * section[1] - (role === 'rail' ? groove.width * groove.depth * clear.width : 0));
}

/** Volume, board feet and mass of each kind of piece of one panel; density as `density` has it, at the built moisture. */
export function massOf(panel: Panel): {
  readonly members: readonly MemberMass[];
  readonly volume: number;
  readonly boardFeet: number;
  readonly mass: number;
} {
  const members = membersOf(panel).map((member): MemberMass => {
    const { name, count, length, section, wood } = member;
    const volume = count * length * section[0] * section[1];
    const kgPerCubicMetre = density({ specificGravity12: wood.wood.specificGravity12, moisture: panel.site.built });
    return {
      name,
      count,
      volume,
      boardFeet: volume / BOARD_FOOT,
      mass: (woodVolume(member, panel) / 1e9) * kgPerCubicMetre,
    };
  });
  const sum = (of: (member: MemberMass) => number) => members.reduce((total, member) => total + of(member), 0);
  return { members, volume: sum((m) => m.volume), boardFeet: sum((m) => m.boardFeet), mass: sum((m) => m.mass) };
}
