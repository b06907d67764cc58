import type { Run } from '../job/job.ts';
import type { WindLoad } from '../loads/wind.ts';
import type { Panel } from '../panel/panel.ts';
import { type CodeFigure, GUARD_CODE } from './codes.ts';
import { type Fixings, sideFixings } from './fixings.ts';
import { panelBall } from './openwork.ts';
import { GRAVITY, panelCentre } from './weight.ts';
import { panelWind } from './wind.ts';

/** An opening that a ball could go through, mm. */
export interface GuardOpening {
  readonly where: 'slat to slat' | 'panel to post' | 'panel to floor' | 'panel to handrail';
  /** Largest ball that passes. */
  readonly ball: number;
}

/** Bending of one member under a load of the code, as a share of the wood's average strength. */
export interface GuardBending {
  readonly of: 'slat' | 'stave' | 'rail' | 'cap rail';
  /** N on it. */
  readonly load: number;
  /** Between what holds it, mm. */
  readonly span: number;
  /** MPa; of a slat with the weave's own bending. */
  readonly stress: number;
  readonly share: number;
}

/** Infill under a handrail, mm, N, kg. */
export interface GuardDetails {
  readonly use: 'guard';
  /** Top edge of panel, cap or handrail above the floor. */
  readonly top: number;
  readonly wanted: CodeFigure;
  readonly drop: number;
  readonly openings: readonly GuardOpening[];
  /** The infill load on a slat and on a stave, the top load on what is at the top; none where a handrail is there. */
  readonly bending: readonly GuardBending[];
  readonly cap?: { readonly length: number; readonly height: number; readonly depth: number; readonly bottom: number };
  readonly fixings: Fixings;
  readonly mass: number;
  readonly shear: number;
  readonly wind?: WindLoad;
}

/**
 * Heights, openings and loads of a guard's infill. They warn and declare nothing: a woven infill is no tested guard.
 * @param run the run it stands in, for the gap to its posts where the panel has no opening of its own
 * @throws RangeError for a panel of another use
 */
export function guardDetails(panel: Panel, run?: Pick<Run, 'gap'>): GuardDetails {
  const { details, outside, opening } = panel;
  if (details.use !== 'guard') throw new RangeError(`invalid use: ${details.use} (expected guard)`);
  const { cap, floorGap } = details;
  const ownTop = floorGap + outside.height + (cap?.height ?? 0);
  const top = details.top ?? ownTop;
  const sides = opening ? Math.max(opening.gaps.left, opening.gaps.right) : (run?.gap ?? 0);
  const fixings = sideFixings(panel);
  const { mass } = panelCentre(panel);
  const wind = panelWind(panel);
  const openings: GuardOpening[] = [
    { where: 'slat to slat', ball: panelBall(panel) },
    { where: 'panel to post', ball: sides },
    { where: 'panel to floor', ball: floorGap },
  ];
  const handrail = Math.max(opening?.gaps.top ?? 0, cap || details.top === undefined ? 0 : top - ownTop);
  if (handrail > 0) openings.push({ where: 'panel to handrail', ball: handrail });
  return {
    use: 'guard',
    top,
    wanted: details.dwelling === 'other' ? GUARD_CODE.heightElsewhere : GUARD_CODE.height,
    drop: details.drop,
    openings,
    bending: bendingOf(panel, details.top === undefined || cap !== undefined),
    ...(cap && { cap: { length: outside.width, ...cap, bottom: outside.height } }),
    fixings,
    mass,
    shear: (mass * GRAVITY) / fixings.places.length,
    ...(wind && { wind }),
  };
}

/**
 * Each member as a beam resting on its ends, the load on one square foot (infill) or in the middle (top): safe of what
 * the weave shares out. Statics: P L/4 − P a/8 with the load over a length a.
 */
function bendingOf(panel: Panel, atTop: boolean): GuardBending[] {
  const { staves, courses, clear, outside, rail, spec, details, rows } = panel;
  const infill = GUARD_CODE.infillLoad.value;
  const side = GUARD_CODE.infillSide.value;
  const spread = (load: number, span: number, over: number) => load * (span / 4 - Math.min(span, over) / 8);
  const slatLoad = infill / Math.max(1, side / courses.pitch);
  const slats = spec.wood.slat.wood;
  const woven = Math.max(...rows.map(({ bend }) => bend.maxStress));
  const slatStress = woven + (6 * spread(slatLoad, staves.bay, side)) / (courses.height * courses.thickness ** 2);
  const staveWood = spec.wood.stave.wood;
  const staveStress = (6 * spread(infill, clear.height, side)) / (staves.width * staves.depth ** 2);
  const bending: GuardBending[] = [
    { of: 'slat', load: slatLoad, span: staves.bay, stress: slatStress, share: slatStress / slats.strength },
    { of: 'stave', load: infill, span: clear.height, stress: staveStress, share: staveStress / staveWood.strength },
  ];
  if (!atTop || details.use !== 'guard') return bending;
  const { height, depth } = details.cap ?? rail;
  const stress = (6 * spread(GUARD_CODE.topLoad.value, outside.width, 0)) / (height * depth ** 2);
  const of = details.cap ? 'cap rail' : 'rail';
  const share = stress / spec.wood.rail.wood.strength;
  return [...bending, { of, load: GUARD_CODE.topLoad.value, span: outside.width, stress, share }];
}
