import type { Panel } from '../panel/panel.ts';
import { density } from '../wood/density.ts';
import { membersOf } from './parts.ts';

/** Volume and mass of the pieces of one kind in one panel. */
export interface MemberMass {
  readonly name: string;
  readonly count: number;
  /** mm³, finished size. */
  readonly volume: number;
  /** Board feet of the finished size: 144 cubic inches each. */
  readonly boardFeet: number;
  /** kg, at the moisture of building. */
  readonly mass: number;
}

/** Cubic millimetres in one board foot: 12 × 12 × 1 in, exact. */
export const BOARD_FOOT: number = 144 * 25.4 ** 3;

/** Volume, board feet and mass of each kind of piece of one panel; density as `density` has it, at the built moisture. */
export function massOf(panel: Panel): {
  readonly members: readonly MemberMass[];
  readonly volume: number;
  readonly boardFeet: number;
  readonly mass: number;
} {
  const members = membersOf(panel).map(({ name, count, length, section, wood }): MemberMass => {
    const volume = count * length * section[0] * section[1];
    const kgPerCubicMetre = density({ specificGravity12: wood.wood.specificGravity12, moisture: panel.site.built });
    return { name, count, volume, boardFeet: volume / BOARD_FOOT, mass: (volume / 1e9) * kgPerCubicMetre };
  });
  const sum = (of: (member: MemberMass) => number) => members.reduce((total, member) => total + of(member), 0);
  return { members, volume: sum((m) => m.volume), boardFeet: sum((m) => m.boardFeet), mass: sum((m) => m.mass) };
}
