import { formatLength, INCH, type Marks } from '../length.ts';
import type { Panel } from '../panel/panel.ts';
import { WALL_GRAVITY } from '../uses/fixings.ts';
import { corners } from './corner.ts';
import { endStaves } from './endstave.ts';
import { coverStrips, stopStrips } from './framejoints.ts';
import { metalOf } from './metal.ts';
import { pinHoles, screwGravity, screwHoles } from './pilot.ts';
import { plugFor } from './plug.ts';
import { DISTANCES, type JointToScrew, type ScrewRow } from './row.ts';
import { useJoints } from './usejoints.ts';

/**
 * Every screw and pin of one panel, joint by joint, with its holes, places and edge distances. Lengths are chosen from
 * the pieces they join: ten diameters of thread, or what the piece lets in (NDS 12.1.5.6, from memory).
 */
export function screwSchedule(panel: Panel): ScrewRow[] {
  const corner = corners(panel);
  const use = useJoints(panel, corner);
  const staves = endStaves(panel, [corner, ...use]);
  const strips = [...coverStrips(panel), ...stopStrips(panel, [corner, ...use, staves])];
  return [corner, staves, ...strips, ...use].flatMap((joint) => rowOf(joint, panel) ?? []);
}

/** The joint whose sunk heads stay open: nobody sees them under a foot, and it has to come off again. */
const OPEN: JointToScrew['joint'] = 'foot to bottom rail';

function rowOf(joint: JointToScrew, panel: Panel): ScrewRow | undefined {
  const { screw, pin, places, along, grain = 'side', into, edge, end, where, remark } = joint;
  const fastener = screw
    ? ({ kind: 'screw', ...screw } as const)
    : pin
      ? ({ kind: 'pin', ...pin } as const)
      : undefined;
  const count = joint.count ?? places.length;
  if (!fastener || count === 0) return undefined;
  const { diameter } = fastener;
  // As its name gives it, so that a reader's sum comes out.
  const shown = panel.display.unit === 'mm' ? Math.round(10 * diameter) / 10 : diameter;
  return {
    joint: joint.joint,
    fastener,
    name: fastenerName(fastener, panel.display),
    count,
    places,
    driven: joint.driven ?? places,
    along,
    outward: joint.outward ?? false,
    grain,
    holes:
      fastener.kind === 'screw'
        ? screwHoles(fastener.gauge, { specificGravity: into ? screwGravity(into) : WALL_GRAVITY })
        : pinHoles(diameter),
    ...(fastener.kind === 'screw' &&
      fastener.counterbore > 0 && {
        plug: { ...plugFor(fastener, panel.display), ...(joint.joint === OPEN && { open: true }) },
      }),
    material: metalOf(fastener, panel),
    edge: { found: edge, wanted: DISTANCES.edge * shown },
    end: { found: end, wanted: DISTANCES.end * shown },
    where,
    ...(remark !== undefined && { remark }),
    source: 'spacing NDS C12.1.5.7 (from memory), guidance: the rule is that the wood must not split',
  };
}

/** A screw or pin by its size, in the job's unit; gauges keep their number, with the diameter where millimetres are used. */
function fastenerName(fastener: ScrewRow['fastener'], { unit }: Marks): string {
  const length = formatLength(fastener.length, { unit, mark: unit === 'in' ? INCH / 16 : 1 });
  const across = `${fastener.diameter.toFixed(1)} mm`;
  if (fastener.kind === 'pin')
    return unit === 'in' ? `${fastener.wire} gauge pin x ${length} in` : `pin ${across} x ${length} mm`;
  return unit === 'in' ? `No. ${fastener.gauge} x ${length} in` : `No. ${fastener.gauge} (${across}) x ${length} mm`;
}
