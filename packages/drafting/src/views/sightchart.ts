import { airShare, openworkOf, type Panel, type PanelOpenwork, seeThrough } from '@wattlewright/model';
import type { Drawing } from '../mark.ts';
import { plot } from './plot.ts';
import type { Series } from './plotdata.ts';

/** A look that means something to a reader: elevation in degrees, the words for it, and what it is called on the curve. */
interface Look {
  readonly elevation: number;
  readonly words: string;
  readonly away?: Readonly<Record<'mm' | 'in', string>>;
  readonly short: string;
}

const LEVEL: Look = { elevation: 0, words: 'level view', short: 'level view' };
// Eyes 4.2 m up (a floor of 2.7 m, standing), the panel's middle at 1.3 m, 5 m (16 ft) away: arctan(2.9 / 5) = 30.1°.
const WINDOW: Look = {
  elevation: 30,
  words: 'from a window one floor up',
  away: { mm: '5 m away', in: '16 ft away' },
  short: 'window one floor up',
};
/** For a guard, which no window need look down on. */
const ABOVE: Look = { elevation: 30, words: 'from above', short: 'from above' };
const SUN: Look = { elevation: 60, words: 'high summer sun', short: 'high summer sun' };

/** Directions in plan, degrees off square to the panel. */
const AZIMUTHS = [0, 45] as const;

/** Elevations that the curves run through, degrees: steeper looks meet the frame, not the weave. */
const STEP = 1.5;
const STEEPEST = 75;

/**
 * How much of the woven area can be seen through, or lets the sun in, from each elevation: looking square on and from 45°
 * to the side, with plain words for a level look, a window above and the high sun. From the panel's own bent slats.
 */
export function sightChart(panel: Panel, size: { readonly width?: number; readonly height?: number } = {}): Drawing {
  const openwork = openworkOf(panel);
  const curves = AZIMUTHS.map((azimuth) => ({ azimuth, shares: sharesFrom(openwork, azimuth) }));
  const percent = (share: number): number => share * 100;
  const most = Math.max(5, ...curves.flatMap(({ shares }) => shares.map(({ share }) => percent(share))));
  const series = curves.flatMap(({ azimuth, shares }, i): Series[] =>
    shares.length === 0
      ? []
      : [
          {
            label: azimuth === 0 ? 'square on' : `from ${azimuth}° aside`,
            named: azimuth === 0 ? 54 : 45,
            points: shares.map(({ elevation, share }) => [elevation, percent(share)] as const),
            main: i === 0,
          },
        ],
  );
  const above = panel.details.use === 'guard' ? ABOVE : WINDOW;
  const said = [LEVEL, above, SUN].map(
    (look) => `${lookText(look, panel)}: ${inWords(seeThrough({ ...openwork, elevation: look.elevation }))}`,
  );
  const fromAbove = percent(seeThrough({ ...openwork, elevation: above.elevation }));
  const note = `${said.join('; ')}. Free for air: ${Math.round(100 * airShare(openwork))} % of the woven area.`;
  return plot({
    name: 'sight-chart',
    title: `Sight and sun: ${panel.name}`,
    alt: `Share of the woven area of ${panel.name} that is open, against the elevation looked from. ${note}`,
    x: { label: 'elevation looked from, degrees over level', from: 0, to: STEEPEST, ticks: [0, 15, 30, 45, 60, 75] },
    y: { label: 'open share of the woven area, %', from: 0, to: Math.ceil(most * 1.1) },
    series,
    points: [{ x: above.elevation, y: fromAbove, label: `${above.short}: ${inWords(fromAbove / 100)}` }],
    note: note.charAt(0).toUpperCase() + note.slice(1),
    ...size,
  });
}

/** A look in words, with how far off it is taken in the job's unit and how steep it is. */
function lookText({ elevation, words, away }: Look, { display }: Panel): string {
  const far = away === undefined ? '' : `, ${away[display.unit]}`;
  return `${words}${far}${elevation > 0 ? ` (${elevation}°)` : ''}`;
}

/** Open shares from level to steep; none where a beam so far aside runs along the slope of a slat. */
function sharesFrom(
  openwork: PanelOpenwork,
  azimuth: number,
): { readonly elevation: number; readonly share: number }[] {
  try {
    return Array.from({ length: STEEPEST / STEP + 1 }, (_, i) => {
      const elevation = i * STEP;
      return { elevation, share: seeThrough({ ...openwork, elevation, azimuth }) };
    });
  } catch (error) {
    if (error instanceof RangeError) return [];
    throw error;
  }
}

function inWords(share: number): string {
  if (share < 5e-4) return 'closed';
  return share < 0.01 ? 'under 1 % open' : `${Math.round(share * 100)} % open`;
}
