import { fineMarks, formatLength, type Panel, smallestPitch, useBySpacing } from '@wattlewright/model';
import type { Drawing } from '../mark.ts';
import { niceTicks, plot } from './plot.ts';

/** Thicknesses nearer than this share to the panel's own would lie on its curve. Common practice, no source. */
const UNLIKE = 0.2;

/** Least and most of the strength that the axis reaches to, percent. */
const TOP = { least: 120, most: 300 } as const;

/**
 * How hard the bend works the slats against the pitch of the staves, for this panel's thickness and usual others, from the
 * model's own lines; this panel's pitch and worst slat are marked, with the share that a slat keeps for good and the one
 * at which it breaks.
 */
export function spacingChart(panel: Panel, size: { readonly width?: number; readonly height?: number } = {}): Drawing {
  const { staves, display, spec } = panel;
  const { wood, lines, point, limits, factor } = useBySpacing(panel);
  const show = (length: number): string => formatLength(length, display, { fractions: 'stacked' });
  const named = (length: number): string => formatLength(length, display, { fractions: 'stacked', named: true });
  const thick = (length: number): string =>
    formatLength(length, fineMarks(display), { fractions: 'stacked', named: true });
  const percent = (use: number): number => 100 * use;
  const used = Math.round(percent(point.use));
  const kept = Math.round(percent(limits.kept));
  const pitches = lines[0]?.points.map(({ pitch }) => pitch) ?? [];
  const top = Math.max(TOP.least, Math.min(percent(point.use) * 1.1, TOP.most));
  const { modulus, strength } = spec.wood.slat.wood;
  const least = smallestPitch({
    use: limits.kept / factor,
    staveWidth: staves.width,
    staveDepth: staves.depth,
    slatThickness: point.thickness,
    modulus,
    strength,
  });
  const note = `${panel.name}: ${wood}, slats ${thick(point.thickness)} thick, staves ${named(point.pitch)} apart; the hardest bent slat uses ${used} % of its strength. At this thickness ${kept} % is reached at a pitch of ${named(least)}. The curves are for this weave and this number of staves.`;
  const isOwn = (thickness: number): boolean => Math.abs(thickness - point.thickness) < 1e-9;
  const told = lines.filter(({ thickness }) => isOwn(thickness) || Math.abs(thickness / point.thickness - 1) > UNLIKE);
  const unit = display.unit === 'in' ? 25.4 : 1;
  const [from, to] = [Math.min(...pitches), Math.max(...pitches)];
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
    series: told.map(({ thickness, points }) => {
      const main = isOwn(thickness);
      return {
        label: thick(thickness),
        points: points.map(({ pitch, use }) => [pitch, percent(use)] as const),
        main,
      };
    }),
    levels: [
      { y: percent(limits.breaks), label: 'breaks' },
      { y: kept, label: `usual limit, ${kept} %` },
    ],
    points: [{ x: point.pitch, y: Math.min(percent(point.use), top), label: `this panel: ${used} %` }],
    note,
    ...size,
  });
}
