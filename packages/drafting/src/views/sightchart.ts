import { airShare, openworkOf, type Panel, type PanelOpenwork, seeThrough } from '@wattlewright/model';
import type { Drawing } from '../mark.ts';
import { plot } from './plot.ts';
import type { Series } from './plotdata.ts';

/** Looks that mean something to a reader: elevation in degrees, and the words for it. */
const LOOKS = [
  { elevation: 0, words: 'level view', away: undefined },
  // Eyes 4.2 m up (a floor of 2.7 m, standing), the panel's middle at 1.3 m, 5 m (16 ft) away: arctan(2.9 / 5) = 30.1°.
  { elevation: 30, words: 'from a window one floor up', away: { mm: '5 m away', in: '16 ft away' } },
  { elevation: 60, words: 'high summer sun', away: undefined },
] as const;

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
  const said = LOOKS.map(
    (look) => `${lookText(look, panel)}: ${inWords(seeThrough({ ...openwork, elevation: look.elevation }))}`,
  );
  const window = LOOKS[1];
  const fromWindow = percent(seeThrough({ ...openwork, elevation: window.elevation }));
  const note = `${said.join('; ')}. Free for air: ${Math.round(100 * airShare(openwork))} % of the woven area.`;
  return plot({
    name: 'sight-chart',
    title: `Sight and sun: ${panel.name}`,
    alt: `Share of the woven area of ${panel.name} that is open, against the elevation looked from. ${note}`,
    x: { label: 'elevation looked from, degrees over level', from: 0, to: STEEPEST, ticks: [0, 15, 30, 45, 60, 75] },
    y: { label: 'open share of the woven area, %', from: 0, to: Math.ceil(most * 1.1) },
    series,
    points: [{ x: window.elevation, y: fromWindow, label: `window one floor up: ${inWords(fromWindow / 100)}` }],
    note: note.charAt(0).toUpperCase() + note.slice(1),
    ...size,
  });
}

/** A look in words, with how far off it is taken in the job's unit and how steep it is. */
function lookText({ elevation, words, away }: (typeof LOOKS)[number], { display }: Panel): string {
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
