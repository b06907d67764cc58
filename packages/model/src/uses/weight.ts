import { centreOfMass, type MassCentre, type Solid } from '../loads/mass.ts';
import type { Panel } from '../panel/panel.ts';
import { woodVolume } from '../parts/mass.ts';
import type { Member } from '../parts/member.ts';
import { membersOf } from '../parts/parts.ts';
import { density } from '../wood/density.ts';
import { braceLine, strutThickness } from './brace.ts';

/** Standard gravity, m/s²: exact by definition (3rd CGPM, 1901). */
export const GRAVITY = 9.80665;

/**
 * Mass of one panel with the pieces that its use adds, and where its centre is, panel frame. Hardware and finish are
 * not weighed, grooves are taken off. At the moisture of building.
 */
export function panelCentre(panel: Panel): MassCentre {
  const solids = membersOf(panel).map((member): Solid => {
    return {
      volume: woodVolume(member, panel),
      density: density({ specificGravity12: member.wood.wood.specificGravity12, moisture: panel.site.built }),
      ...middle(panel, member),
    };
  });
  return centreOfMass(solids);
}

/** Weight of one panel, N. */
export function panelWeight(panel: Panel): number {
  return panelCentre(panel).mass * GRAVITY;
}

/** Middle of all pieces of one kind. */
function middle(panel: Panel, member: Member): { x: number; y: number; z?: number } {
  const { outside, rail, cover, courses, rows, weave, details } = panel;
  const centre = { x: outside.width / 2, y: outside.height / 2 };
  switch (member.role) {
    case 'slat': {
      const own = courses.bottoms.filter((_, i) => rows[weave.rowOfCourse[i] ?? 0]?.cutLength === member.length);
      const mean = own.reduce((sum, bottom) => sum + bottom, 0) / Math.max(1, own.length);
      return { ...centre, y: mean + courses.height / 2 };
    }
    case 'cover strip':
      return { ...centre, y: outside.height - rail.height - cover.height / 2 };
    case 'cap rail':
      return { ...centre, y: outside.height + member.section[0] / 2 };
    case 'foot':
      return { ...centre, y: -member.section[0] / 2 };
    case 'stand-off block':
      return { ...centre, z: -(outside.depth + member.section[1]) / 2 };
    case 'strut': {
      const line = details.use === 'gate' ? braceLine(panel, details) : undefined;
      const y = line ? (line.hinge.y + line.latch.y) / 2 : centre.y;
      return { ...centre, y, z: -(outside.depth + strutThickness(panel)) / 2 };
    }
    default:
      return centre;
  }
}
