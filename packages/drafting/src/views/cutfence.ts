import { THIN_RIP } from '@wattlewright/model';
import type { Rip } from './cutstages.ts';

/**
 * Distance from fence to blade for a rip that leaves `at` mm when its sawn face is planed. The sawn face of what remains
 * is planed before it goes to the fence again, so that the fence always meets a finished face.
 */
export function fenceAt(at: number, { planing }: { readonly planing: number }): number {
  return at + planing;
}

/** What is set to the size that comes off: the fence, or for a thin strip a stop on the free side of the blade. */
export function setBy({ at }: { readonly at: number }): 'fence' | 'stop' {
  return at < THIN_RIP - SAME ? 'stop' : 'fence';
}

/** Fence or thin-rip stop. */
export function setWord(rip: { readonly at: number }): string {
  return setBy(rip) === 'stop' ? 'thin-rip stop' : 'fence';
}

/** The piece's size across the cut, from fence to free side, mm. */
export function cutWidth({ axis, piece }: Rip): number {
  return axis === 'width' ? piece.width : piece.height;
}

/** The piece's size through the blade, mm. */
export function cutHeight({ axis, piece }: Rip): number {
  return axis === 'width' ? piece.height : piece.width;
}

/** Sizes closer than this, mm, are one. */
export const SAME = 1e-6;

/** A setting's number as a row names it, each row its own; one that comes again after planing says so. */
export function settingText(number: number, afterPlaning: boolean): string {
  return afterPlaning ? `${number}\u00a0again,\nafter\u00a0planing` : `${number}`;
}
