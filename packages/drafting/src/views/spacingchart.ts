import { formatLength, type Panel, plainWeave, smallestPitch } from '@wattlewright/model';
import type { Drawing } from '../mark.ts';
import { niceTicks, plot, type Series } from './plot.ts';

/** Slat thicknesses that shops rip to, mm: sixteenths, and whole millimetres. Common practice, no source. */
const THICKNESSES = {
  in: [1, 1.5, 2, 2.5, 3, 3.5, 4, 5, 6, 8].map((sixteenths) => (sixteenths * 25.4) / 16),
  mm: [1.5, 2, 3, 4, 5, 6, 8, 10, 12],
} as const;

/**
 * Share of the strength that a slat keeps for good, at most. Wood under lasting stress holds a little over half of its
 * short-term strength, and one slat in some hundreds is weaker: 0.55, derived from duration and scatter (from memory).
 */
const USUAL_LIMIT = 0.55;

/** Points of each curve. */
const POINTS = 80;

/**
 * How hard the bend works the slats, against the pitch of the staves, for this panel's thickness and the shop's next ones:
 * the closed form of a plain weave without ends. The panel's own worst slat is marked; with few staves, or a weave that
 * floats over several, it lies under its curve.
 */
export function spacingChart(panel: Panel, size: { readonly width?: number; readonly height?: number } = {}): Drawing {
  const { staves, courses, display, spec } = panel;
  const { modulus, strength } = spec.wood.slat.wood;
  const sizes = { staveWidth: staves.width, staveDepth: staves.depth, modulus, strength };
  const worst = Math.max(...panel.rows.map(({ bend }) => bend.use));
  const show = (length: number): string => formatLength(length, display, { fractions: 'stacked' });
  const named = (length: number): string => formatLength(length, display, { fractions: 'stacked', named: true });
  // Thicknesses are finer than a tape's marks.
  const fine = { unit: display.unit, mark: display.unit === 'in' ? 25.4 / 64 : 0.1 };
  const thick = (length: number): string => formatLength(length, fine, { fractions: 'stacked', named: true });
  const breaks = smallestPitch({ ...sizes, use: 1.2, slatThickness: courses.thickness });
  const from = Math.max(1.05 * staves.width, Math.min(staves.width + 0.35 * staves.bay, breaks));
  const to = staves.pitch + 0.6 * staves.bay;
  const top = Math.max(1.2, Math.min(worst * 1.1, 3)) * 100;
  const series = nearThicknesses(courses.thickness, display.unit).map((thickness): Series => {
    const main = thickness === courses.thickness;
    const points = Array.from({ length: POINTS + 1 }, (_, i) => {
      const pitch = from + ((to - from) * i) / POINTS;
      return [pitch, 100 * plainWeave({ ...sizes, pitch, slatThickness: thickness }).use] as const;
    });
    return { label: `${thick(thickness)}${main ? ', this panel' : ''}`, points, main };
  });
  const least = smallestPitch({ ...sizes, use: USUAL_LIMIT, slatThickness: courses.thickness });
  const used = Math.round(worst * 100);
  const note = `${panel.name}: slats ${thick(courses.thickness)} thick, staves ${named(staves.pitch)} apart; the hardest bent slat uses ${used} % of its strength. At this thickness the closest pitch within the usual limit is ${named(least)}. The curves are for many staves; few staves and floats bend less.`;
  const unit = display.unit === 'in' ? 25.4 : 1;
  return plot({
    name: 'spacing-chart',
    title: `Stave spacing and slat thickness: ${panel.name}`,
    alt: `Share of a slat's strength used against the pitch of the staves, for several thicknesses. ${note}`,
    x: {
      label: `pitch of the staves, ${display.unit}`,
      from,
      to,
      ticks: niceTicks(from / unit, to / unit, 6).map((value) => value * unit),
      show,
    },
    y: { label: 'share of the strength used, %', from: 0, to: top },
    series,
    levels: [
      { y: 100, label: 'breaks' },
      { y: 100 * USUAL_LIMIT, label: `usual limit, ${Math.round(100 * USUAL_LIMIT)} %` },
    ],
    points: [{ x: staves.pitch, y: Math.min(100 * worst, top), label: `this panel: ${used} %` }],
    note,
    ...size,
  });
}

/** This thickness among the shop's two next thinner and two next thicker ones. */
function nearThicknesses(own: number, unit: 'in' | 'mm'): number[] {
  const others = THICKNESSES[unit].filter((thickness) => Math.abs(thickness / own - 1) > 0.1);
  const thinner = others.filter((thickness) => thickness < own).slice(-2);
  const thicker = others.filter((thickness) => thickness > own).slice(0, 2);
  return [...thinner, own, ...thicker];
}
