import type { DividerUse } from '../job/job.ts';
import { ceilToMark, floorToMark, INCH } from '../length.ts';
import type { Panel } from '../panel/panel.ts';
import { chooseScrew } from './choose.ts';
import { isClear, jointStretches, stretchesAt } from './meet.ts';
import { DISTANCES, type JointToScrew } from './row.ts';
import { lengthsText } from './where.ts';

/** Wood kept under the head of a foot's screw, mm: 1 in, common practice, no source. */
const KEEP = INCH;

/** One of the two screws of the left foot: from the rail's end, and off mid-depth to the front, mm. */
interface Spot {
  readonly x: number;
  readonly z: number;
}

/** Two screws up through each foot into the bottom rail, clear of the corner's own screws, as far apart as they may be. */
export function footScrews(panel: Panel, { feet: foot }: DividerUse, corner: JointToScrew): JointToScrew[] {
  if (!foot) return [];
  const { outside, rail, spec, display } = panel;
  const screw = chooseScrew({
    gauges: [8, 6],
    through: foot.height,
    keep: KEEP,
    room: rail.height - 3,
    unit: display.unit,
  });
  const y = -foot.height;
  const spots = spotsOf(panel, { foot, corner, fastener: screw, y });
  const [front, back] = spots;
  const at = ({ x, z }: Spot) => `${lengthsText([x], display)} from the end of the rail and ${offText(z, display)}`;
  return [
    {
      joint: 'foot to bottom rail',
      screw,
      places: [
        ...spots.map(({ x, z }) => ({ x, y, z })),
        ...spots.map(({ x, z }) => ({ x: outside.width - x, y, z: -z })),
      ],
      along: 'y',
      into: spec.wood.rail.wood,
      edge: Math.min(...spots.flatMap(({ x, z }) => [rail.depth / 2 - Math.abs(z), foot.width - x, x])),
      end: Math.min(front.x, back.x),
      where: `up through each foot; left foot: ${at(front)}, ${at(back)}; right foot: the same from its end${front.z === 0 && back.z === 0 ? '' : ', front and back changed over'}`,
      remark: 'clear of the corner’s screws: mark them before drilling',
    },
  ];
}

function offText(z: number, display: Panel['display']): string {
  if (z === 0) return 'in mid-depth';
  return `${lengthsText([Math.abs(z)], display)} ${z > 0 ? 'in front of' : 'behind'} mid-depth`;
}

/**
 * The two spots: clear of the corner's screws, five diameters from the rail's end where they can be, then as far to the
 * front and back as they can, since a rocking foot pulls on that lever. Where nothing is clear, on the diagonal that the
 * corner leaves free.
 */
function spotsOf(
  panel: Panel,
  {
    foot,
    corner,
    fastener,
    y,
  }: {
    readonly foot: NonNullable<DividerUse['feet']>;
    readonly corner: JointToScrew;
    readonly fastener: ReturnType<typeof chooseScrew>;
    readonly y: number;
  },
): readonly [Spot, Spot] {
  const { rail, display } = panel;
  const { diameter } = fastener;
  const mark = Math.max(display.mark, display.unit === 'in' ? INCH / 16 : 1);
  const edge = ceilToMark(DISTANCES.edge * diameter, mark);
  // Of the corner's screws the two of this corner; the right foot is the left one turned round.
  const taken = jointStretches(corner, panel).filter((stretches) =>
    stretches.every(({ from }) => from.x < panel.outside.width / 2 && from.y < panel.outside.height / 2),
  );
  const lie = ({ x, z }: Spot) => stretchesAt({ fastener, along: 'y' }, { x, y, z }, panel);
  const count = (from: number, to: number) => Math.max(0, Math.floor((to - from) / mark + 1e-9) + 1);
  const xs = Array.from({ length: count(edge, foot.width - edge) }, (_, i) => edge + i * mark);
  const most = Math.max(0, rail.depth / 2 - edge);
  const offs = [1, 0.75, 0.5, 0.25, 0].map((share) => floorToMark(share * most, mark));
  const near = (z: number) => xs.filter((x) => isClear(lie({ x, z }), taken));
  const short = (x: number) => Math.max(0, DISTANCES.end - x / diameter);
  let best: { readonly spots: readonly [Spot, Spot]; readonly cost: number } | undefined;
  for (const z of offs) {
    const [fronts, backs] = [near(z), near(-z)];
    for (const x of fronts)
      for (const other of backs) {
        const cost = short(Math.min(x, other)) - (2 * z) / diameter - Math.abs(other - x) / (4 * diameter);
        if (best && cost >= best.cost - 1e-9) continue;
        const spots = [
          { x, z },
          { x: other, z: -z },
        ] as const;
        if (isClear(lie(spots[0]), [lie(spots[1])])) best = { spots, cost };
      }
  }
  if (best) return best.spots;
  const [outer, inner] = [foot.width / 2, foot.width * 0.75];
  return [
    { x: inner, z: 0 },
    { x: outer, z: 0 },
  ];
}
