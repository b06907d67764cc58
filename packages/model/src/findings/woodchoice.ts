import type { Job } from '../job/job.ts';
import type { Panel } from '../panel/panel.ts';
import { massOf } from '../parts/mass.ts';
import { SLAT_USE } from '../weave/limits.ts';
import { woodChange } from '../wood/movement.ts';
import { woods } from '../wood/species.ts';
import type { DecayGroup, Species } from '../wood/wood.ts';
import { gentler, mostUse } from './strength.ts';

/** The same panel in another wood. */
export interface WoodChoice {
  readonly wood: string;
  /** Whether the panel is of this wood now (its slats). */
  readonly chosen: boolean;
  /** Share of the strength that bending the slats takes. */
  readonly use: number;
  /** Pitch at which that share would be 0.55, mm. */
  readonly smallestPitch: number;
  /** How much the stack moves from the driest to the wettest season, mm. */
  readonly movement: number;
  /** Whole panel, kg. */
  readonly mass: number;
  readonly decay: DecayGroup;
  /** What speaks against it, in words; empty: nothing. */
  readonly against: readonly string[];
}

/**
 * The same panel in every wood of the table: those with nothing against them first, then by share of the strength. The
 * curve of a slat does not depend on the wood, so its stress goes as the modulus. Averages of clear wood.
 */
export function woodChoices(job: Job, panel: Panel): WoodChoice[] {
  return woods
    .map((wood) => choice(job, panel, wood))
    .sort((a, b) => a.against.length - b.against.length || a.use - b.use);
}

function choice({ site }: Job, panel: Panel, wood: Species): WoodChoice {
  const { rings } = panel.spec.wood.slat;
  const inWood = panelIn(panel, wood);
  const use = mostUse(inWood);
  const solid = panel.courses.count * panel.courses.height;
  const movement = woodChange(wood, { size: solid, from: site.driest, to: site.wettest, ringAngle: rings });
  const rots = site.where === 'outdoors' && wood.decay.group !== 'resistant' && wood.decay.group !== 'very resistant';
  return {
    wood: wood.name,
    chosen: wood.name === panel.spec.wood.slat.wood.name,
    use,
    smallestPitch: gentler(inWood).pitch,
    movement,
    mass: massOf(inWood).mass,
    decay: wood.decay.group,
    against: [
      ...(use >= SLAT_USE.stop ? ['breaks'] : use > SLAT_USE.kept ? ['near its strength'] : []),
      ...(rots ? [`${wood.decay.group} to decay`] : []),
    ],
  };
}

/** The panel with every member of that wood, bent anew. */
export function panelIn(panel: Panel, wood: Species): Panel {
  const { rail, stile, stave, slat } = panel.spec.wood;
  const old = slat.wood;
  const rows = panel.rows.map((row) => {
    const maxStress = (row.bend.maxStress * wood.modulus) / old.modulus;
    const staveForces = row.bend.staveForces.map((force) => (force * wood.modulus) / old.modulus);
    return { ...row, bend: { ...row.bend, maxStress, staveForces, use: maxStress / wood.strength } };
  });
  const of = { rail: { ...rail, wood }, stile: { ...stile, wood }, stave: { ...stave, wood }, slat: { ...slat, wood } };
  return { ...panel, rows, spec: { ...panel.spec, wood: of } };
}
