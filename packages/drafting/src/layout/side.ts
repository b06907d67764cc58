import type { Box, Point } from '../mark.ts';

/** The side of an outline on which sizes stand. */
export type Side = 'above' | 'below' | 'left' | 'right';

/**
 * The frame in which rows are laid out whatever their side, mm: `s` runs along the side in paper coordinates (`u` above
 * and below, `v` left and right), `d` is the distance outward from the outline.
 */
export interface SideFrame {
  readonly at: (s: number, d: number) => Point;
  readonly box: (s0: number, s1: number, d0: number, d1: number) => Box;
  /** Angle of text along the rows: sizes read from the bottom or from the right of the sheet (ISO 129-1). */
  readonly angle: 0 | 90;
  /** 1 where "above the line" means outward, -1 where it means inward. */
  readonly up: 1 | -1;
  /** The outline's own ends along the side. */
  readonly ends: readonly [number, number];
}

/** The frame of a side of an outline. */
export function sideFrame(side: Side, outline: Box): SideFrame {
  const at = {
    above: (s: number, d: number): Point => [s, outline.v0 - d],
    below: (s: number, d: number): Point => [s, outline.v1 + d],
    left: (s: number, d: number): Point => [outline.u0 - d, s],
    right: (s: number, d: number): Point => [outline.u1 + d, s],
  }[side];
  const level = side === 'above' || side === 'below';
  return {
    at,
    box: (s0, s1, d0, d1) => {
      const [au, av] = at(s0, d0);
      const [bu, bv] = at(s1, d1);
      return { u0: Math.min(au, bu), v0: Math.min(av, bv), u1: Math.max(au, bu), v1: Math.max(av, bv) };
    },
    angle: level ? 0 : 90,
    up: side === 'above' || side === 'left' ? 1 : -1,
    ends: level ? [outline.u0, outline.u1] : [outline.v0, outline.v1],
  };
}
