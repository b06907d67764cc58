import { INCH } from '../length.ts';
import type { Panel } from '../panel/panel.ts';
import { SLAT_USE } from '../weave/limits.ts';
import { plainWeave } from '../weave/plain.ts';
import { mostUse } from './strength.ts';

/** Share of the strength over the pitch for slats of one thickness, mm. */
export interface SpacingLine {
  readonly thickness: number;
  readonly points: readonly { readonly pitch: number; readonly use: number }[];
}

/** What a plot of share of strength by pitch and thickness is drawn from. */
export interface UseBySpacing {
  readonly wood: string;
  readonly lines: readonly SpacingLine[];
  /** This panel. */
  readonly point: { readonly pitch: number; readonly thickness: number; readonly use: number };
  readonly limits: { readonly kept: number; readonly breaks: number };
  /** This panel's share over that of a plain weave of many staves; lines are scaled by it, so they pass the point. */
  readonly factor: number;
}

/** Thicknesses that are usual, and how many points a line has. */
const USUAL = { in: [1 / 8, 3 / 16, 1 / 4, 5 / 16].map((size) => size * INCH), mm: [3, 4, 5, 6, 8] } as const;
const POINTS = 41;

/**
 * Share of the strength by pitch for usual slat thicknesses and this panel's own, in its wood, with its staves and its
 * count of them: the closed form of plain weave, scaled to this panel's own bending. Pitches from half to twice its own.
 */
export function useBySpacing(panel: Panel): UseBySpacing {
  const { staves, courses, spec, display } = panel;
  const { name, modulus, strength } = spec.wood.slat.wood;
  const use = mostUse(panel);
  const plain = (pitch: number, slatThickness: number) =>
    plainWeave({ pitch, slatThickness, staveWidth: staves.width, staveDepth: staves.depth, modulus, strength }).use;
  const factor = use > 0 ? use / plain(staves.pitch, courses.thickness) : 1;
  const from = Math.max(staves.pitch / 2, staves.width * 1.5);
  const to = Math.max(2 * staves.pitch, 2 * from);
  const thicknesses = [
    ...USUAL[display.unit].filter((size) => Math.abs(size - courses.thickness) > 0.05),
    courses.thickness,
  ];
  return {
    wood: name,
    lines: thicknesses
      .sort((a, b) => a - b)
      .map((thickness) => ({
        thickness,
        points: Array.from({ length: POINTS }, (_, i) => {
          const pitch = from + ((to - from) * i) / (POINTS - 1);
          return { pitch, use: factor * plain(pitch, thickness) };
        }),
      })),
    point: { pitch: staves.pitch, thickness: courses.thickness, use },
    limits: { kept: SLAT_USE.kept, breaks: SLAT_USE.breaks },
    factor,
  };
}
