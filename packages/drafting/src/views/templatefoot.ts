import { formatLength, type Panel, screwSchedule } from '@wattlewright/model';
import { union } from '../ink.ts';
import { dimensionSide } from '../layout/running.ts';
import { TEXT } from '../layout/style.ts';
import type { Box, Chain, Drawing, Mark } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { circle, line } from '../path.ts';
import { standardScale } from '../scale.ts';
import { partOf } from './partof.ts';
import type { StickOptions } from './stick.ts';
import {
  breakLine,
  centreCross,
  cornerScrews,
  fullSizes,
  gaugedSizes,
  nameIn,
  plugRadius,
  unitName,
} from './template.ts';
import { templateWords } from './templatewords.ts';

/** Length of the flap that folds up on the rail's front face, mm. */
const FLAP = 20;

/** Rail shown past the foot and past its screws, mm; and room between the two ends on paper. */
const PAST = 12;
const APART = 34;

/** A screw as it stands in an end: from the rail's end, and off mid-depth to the front, mm. */
interface Spot {
  readonly along: number;
  readonly z: number;
}

/**
 * Full-size template of the bottom rail's underside at both ends of a divider on feet, seen from below: the screws of the
 * feet, and the corners' own between which they go up. Undefined for a panel without feet.
 */
export function footTemplate(panel: Panel, { parts = [], named = panel.name }: StickOptions = {}): Drawing | undefined {
  const { details, rail, display } = panel;
  const screws = screwSchedule(panel).find(({ joint }) => joint === 'foot to bottom rail');
  if (details.use !== 'divider' || !details.feet || !screws) return undefined;
  const of = partOf(parts, panel, 'rail')?.letter;
  const { width } = details.feet;
  const left = screws.places.filter(({ x }) => x < panel.outside.width / 2).map(({ x, z }) => ({ along: x, z }));
  const corner = cornerScrews(panel);
  const long = Math.max(width, ...[...left, ...corner].map(({ along }) => along)) + PAST;
  // From below with the front at the lower edge, the rail's right end is at the left.
  const ends = [
    { end: 0, way: 1, turn: -1, name: 'right end, from below' },
    { end: 2 * long + APART, way: -1, turn: 1, name: 'left end, from below' },
  ] as const;
  const drawn = ends.map(({ end, way, turn, name }) => {
    const at = ({ along, z }: Spot): readonly [number, number] => [end + way * along, rail.depth / 2 + turn * z];
    return endOf(panel, {
      end,
      way,
      name,
      long,
      of,
      feet: left.map(at),
      corner: corner.map(at),
      inner: end + way * width,
    });
  });
  const words = templateWords(union(drawn.map(({ bounds }) => bounds)), {
    heading: `${named}: foot template`,
    text: [
      `Underside of the bottom rail. Cut out, fold the flap up on the front face, the end of the paper flush with the end of the rail, and prick the crosses through: screws of the foot.`,
      `Dashed rings: ${plugRadius(panel) === undefined ? 'heads of the corner’s own screws' : 'plugs over the corner’s own screws'}; the foot’s screws go up between them.`,
      `On the foot’s underside it serves too: its end flush with the foot’s outer face, its two long edges equally far from the foot’s ends.`,
      `Foot ${formatLength(width, display, { named: true, fractions: 'stacked' })} wide along the rail. Sizes in ${unitName(panel)}.`,
    ].join(' '),
  });
  return {
    name: 'foot-template',
    title: `Foot template: ${named}`,
    scale: 1,
    scaleText: standardScale(1, display.unit).text,
    marks: [...drawn.flatMap(({ marks }) => marks), ...words.marks],
    bounds: words.bounds,
    alt: `Full-size template of the underside of the bottom rail's ends for ${named}: the screws of the feet and the corners' screws.`,
    chains: drawn.flatMap(({ chains }) => chains),
  };
}

/** One end as it lies on paper. */
interface End {
  readonly end: number;
  readonly way: 1 | -1;
  readonly name: string;
  readonly long: number;
  readonly of: string | undefined;
  readonly feet: readonly (readonly [number, number])[];
  readonly corner: readonly (readonly [number, number])[];
  /** The foot's inner face. */
  readonly inner: number;
}

function endOf(
  panel: Panel,
  { end, way, name, long, of, feet, corner, inner }: End,
): { readonly marks: Mark[]; readonly bounds: Box; readonly chains: readonly Chain[] } {
  const { depth } = panel.rail;
  const far = end + way * long;
  const [u0, u1] = [Math.min(end, far), Math.max(end, far)];
  const outline: Box = { u0, v0: 0, u1, v1: depth + FLAP };
  const above = dimensionSide({
    side: 'above',
    outline,
    sizes: fullSizes(panel, end, [...feet.map(([u]) => u), inner]),
  });
  const side = dimensionSide({
    side: way > 0 ? 'left' : 'right',
    outline,
    sizes: gaugedSizes(
      panel,
      [0, depth],
      feet.map(([, v]) => v),
    ),
  });
  const ring = plugRadius(panel) ?? HEAD;
  return {
    marks: [
      ...[0, depth].map((v) => stroke('edge', line([u0, v], [u1, v]), of)),
      stroke('edge', line([end, 0], [end, depth]), of),
      stroke('edge-light', line([end, depth], [end, outline.v1]), of),
      stroke('edge-light', line([u0, outline.v1], [u1, outline.v1]), of),
      breakLine([far, 0], outline.v1),
      stroke('edge-light', line([inner, 0], [inner, depth])),
      ...corner.map((at) => stroke('hidden', circle([...at], ring), of)),
      ...feet.flatMap((at) => centreCross([...at], of)),
      ...nameIn('front face', [u0, u1], depth + 9),
      write('note', name, [(u0 + u1) / 2, outline.v1 + 1.5 + TEXT], { height: TEXT, anchor: 'middle' }),
      ...above.marks,
      ...side.marks,
    ],
    bounds: union([{ ...outline, u0: u0 - 3, u1: u1 + 3, v1: outline.v1 + 2.5 + TEXT }, above.bounds, side.bounds]),
    chains: [...above.chains, ...side.chains],
  };
}

/** Radius of the ring round a screw's head that is not plugged over, mm. */
const HEAD = 4;
