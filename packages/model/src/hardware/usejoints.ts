import type { DividerUse, GateUse, GuardUse } from '../job/job.ts';
import { INCH } from '../length.ts';
import type { Panel } from '../panel/panel.ts';
import { type BraceLine, braceLine, strutThickness } from '../uses/brace.ts';
import { sideFixings } from '../uses/fixings.ts';
import { gateDetails } from '../uses/gate.ts';
import { spread } from '../uses/place.ts';
import { chooseScrew } from './choose.ts';
import { cornerPlaces, cornerScrew } from './corner.ts';
import { HINGE_SCREWS, type JointToScrew } from './row.ts';
import { heightsText, lengthsText } from './where.ts';

/** Step of cap screws, wood kept under a foot's screw, thickness of a hinge or brace plate, mm; common practice. */
const CAP_STEP = 16 * INCH;
const FOOT_KEEP = INCH;
const PLATE = 2.5;

/** Joints that a panel's use adds. */
export function useJoints(panel: Panel): JointToScrew[] {
  switch (panel.details.use) {
    case 'screen':
      return [mounting(panel)];
    case 'guard':
      return [mounting(panel), ...cap(panel, panel.details)];
    case 'divider':
      return feet(panel, panel.details);
    case 'gate':
      return [...hinges(panel, panel.details), ...brace(panel, panel.details)];
  }
}

function mounting(panel: Panel): JointToScrew {
  const fixings = sideFixings(panel);
  const first = fixings.places[0]?.y ?? 0;
  const bracket = fixings.kind === 'bracket';
  return {
    joint: 'mounting',
    screw: fixings.screw,
    places: fixings.places,
    count: fixings.places.length * fixings.screwsEach,
    along: 'z',
    ...(bracket && { into: panel.spec.wood.stile.wood }),
    edge: panel.stile.width / 2,
    end: first - panel.rail.height,
    where: `up each stile, ${bracket ? 'at the back' : 'in the middle of its front face'}; ${heightsText(
      fixings.places.map(({ y }) => y),
      panel.display,
    )}`,
    remark: bracket ? 'angle brackets: two screws in the stile, two in the post' : 'clearance hole in the stile',
  };
}

function cap(panel: Panel, { cap: rail }: GuardUse): JointToScrew[] {
  if (!rail) return [];
  const { outside, spec, display } = panel;
  const xs = spread(2 * INCH, outside.width - 2 * INCH, CAP_STEP);
  return [
    {
      joint: 'cap rail to top rail',
      screw: chooseScrew({ gauges: [8, 6], through: rail.height, room: panel.rail.height - 3, unit: display.unit }),
      places: xs.map((x) => ({ x, y: outside.height + rail.height, z: 0 })),
      along: 'y',
      into: spec.wood.rail.wood,
      edge: panel.rail.depth / 2,
      end: 2 * INCH,
      where: `along the middle of the cap, from its left end: ${lengthsText(xs, display)}`,
      remark: 'plug or fill the heads: water stands on a cap',
    },
  ];
}

/** Two screws up through each foot, on the two places that the corner's own screws leave free. */
function feet(panel: Panel, { feet: foot }: DividerUse): JointToScrew[] {
  if (!foot) return [];
  const { outside, rail, spec, display } = panel;
  const corner = cornerPlaces(panel, cornerScrew(panel).diameter);
  const { off } = corner;
  // A foot narrower than the stile keeps its screws within itself.
  const [outer, inner] = [Math.min(corner.outer, foot.width / 2), Math.min(corner.inner, foot.width * 0.75)];
  const y = -foot.height;
  return [
    {
      joint: 'foot to bottom rail',
      screw: chooseScrew({
        gauges: [8, 6],
        through: foot.height,
        keep: FOOT_KEEP,
        room: rail.height - 3,
        unit: display.unit,
      }),
      places: [
        { x: inner, y, z: off },
        { x: outer, y, z: -off },
        { x: outside.width - inner, y, z: -off },
        { x: outside.width - outer, y, z: off },
      ],
      along: 'y',
      into: spec.wood.rail.wood,
      edge: Math.min(rail.depth / 2 - off, foot.width - inner, outer),
      end: outer,
      where: `up through each foot, from the end of the rail: ${lengthsText([outer, inner], display)}; one in front of its middle and one behind, ${lengthsText([off], display)} off`,
    },
  ];
}

function hinges(panel: Panel, gate: GateUse): JointToScrew[] {
  const { stile, spec, display } = panel;
  const middles = gateDetails(panel).hinges;
  const places = middles.flatMap(({ x, y }) =>
    [-1, 0, 1].map((i) => ({ x, y: y + i * HINGE_SCREWS, z: ((i === 0 ? 1 : -1) * stile.depth) / 6 })),
  );
  const shared = {
    screw: chooseScrew({ gauges: [10, 8], through: PLATE, room: stile.width - 6, unit: display.unit }),
    along: 'x',
    edge: stile.depth / 3,
    end: Math.max(0, gate.hingeInset - HINGE_SCREWS - panel.rail.height),
  } as const;
  const heights = lengthsText(
    middles.map(({ y }) => y),
    display,
  );
  const remark = 'drill where the hinge plate has its holes';
  return [
    {
      joint: 'hinge to stile',
      ...shared,
      places,
      into: spec.wood.stile.wood,
      where: `three in each hinge plate; middles of the hinges from the foot of the leaf: ${heights}`,
      remark,
    },
    {
      joint: 'hinge to post',
      ...shared,
      places: [],
      count: places.length,
      where: 'level with those in the leaf',
      remark: `${remark}; longer screws if the post is thick`,
    },
  ];
}

function brace(panel: Panel, gate: GateUse): JointToScrew[] {
  const line = braceLine(panel, gate);
  if (!line) return [];
  const { stile, rail, spec, display } = panel;
  const strut = line.kind === 'strut';
  const through = strut ? strutThickness(panel) : PLATE;
  const z = -stile.depth / 2 - through;
  const off = Math.min(stile.width, rail.height) / 6;
  return [
    {
      joint: strut ? 'strut to frame' : 'brace plate to frame',
      screw: chooseScrew({ gauges: [10, 8], through, room: stile.depth - 3, unit: display.unit }),
      places: [line.hinge, line.latch].flatMap(({ x, y }) => {
        // Along the diagonal from the leaf's corner inwards, which keeps them clear of the corner's inner screw.
        const [dx, dy] = [x < panel.outside.width / 2 ? off : -off, y < panel.outside.height / 2 ? off : -off];
        return [
          { x: x - dx, y: y - dy, z },
          { x: x + dx, y: y + dy, z },
        ];
      }),
      along: 'z',
      into: spec.wood.stile.wood,
      edge: Math.min(stile.width, rail.height) / 2 - off,
      end: rail.height / 2 - off,
      where: `two in each ${strut ? 'end' : 'plate'}, at the back; ${braceEndsText(panel, line)}`,
    },
  ];
}

/** Where the two ends of a brace are, each as in from its own side of the leaf and up from the foot, in words. */
function braceEndsText({ outside, display }: Pick<Panel, 'outside' | 'display'>, { hinge, latch }: BraceLine): string {
  const end = (of: string, { x, y }: BraceLine['hinge']) =>
    `${of} ${lengthsText([Math.min(x, outside.width - x)], display)} from the edge and ${lengthsText([y], display)} up from the foot`;
  return `middles: ${end('hinge side', hinge)}; ${end('latch side', latch)}`;
}
