import { INCH } from '../length.ts';
import type { Panel } from '../panel/panel.ts';
import { POOL_CODE } from '../uses/codes.ts';
import { type GateDetails, gateDetails } from '../uses/gate.ts';
import { woodChange } from '../wood/movement.ts';
import { panelRule, type Rule } from './rule.ts';
import { codeText, lengthText, unlikeForces, unlikeLengths } from './words.ts';

/** Largest leaf that this construction is advised for, mm; common practice, no source. */
const GATE_SIZE = { width: 48 * INCH, height: 78 * INCH };

function gateOf(panel: Panel): GateDetails | undefined {
  return panel.details.use === 'gate' ? gateDetails(panel) : undefined;
}

/** What is left of the clearances at hinge and latch when both stiles have swollen to the wettest season, mm. */
export function wetClearance({ details, spec, stile, site }: Panel): number {
  if (details.use !== 'gate') throw new RangeError(`invalid use: ${details.use} (expected gate)`);
  const { wood, rings } = spec.wood.stile;
  const swell = woodChange(wood, { size: 2 * stile.width, from: site.built, to: site.wettest, ringAngle: rings });
  return details.clear.hinge + details.clear.latch - Math.max(0, swell);
}

/** Least of both clearances together in the wet, mm: 1/4 in, common practice, no source. */
export const LEAST_CLEARANCE: number = INCH / 4;

/** Rules on gates. */
export const gateRules: readonly Rule[] = [
  panelRule({
    code: 'brace-wrong-way',
    reason:
      'as a leaf sags, the diagonal from the top of the hinge side gets longer, so a cable there pulls; the one from its bottom gets shorter, so a strut there pushes',
    source: 'statics',
    judge: (panel) => {
      const brace = gateOf(panel)?.brace;
      if (!brace || brace.right) return undefined;
      return {
        level: 'stop',
        text: `The ${brace.kind} runs the wrong way: it goes slack and the gate sags.`,
        figure: `the ${brace.kind === 'cable' ? 'bottom' : 'top'} of the hinge side`,
        limit: `the ${brace.kind === 'cable' ? 'top' : 'bottom'} of the hinge side`,
        judged: (from, right) => `The ${brace.kind} starts at ${from}; it must start at ${right}`,
        mend: `put the ${brace.kind} on the other diagonal`,
        field: 'gate.brace.from',
      };
    },
  }),
  panelRule({
    code: 'no-brace',
    reason: 'a woven panel is not stiff enough to hold a leaf square by its corner joints',
    source: 'common practice, no source',
    judge: (panel) => {
      const gate = gateOf(panel);
      if (!gate || gate.brace) return undefined;
      return {
        level: 'caution',
        text: 'The gate has no brace.',
        figure: 'no brace',
        limit: 'a cable or a strut',
        judged: (found, wanted) => `It has ${found}; ${wanted} is wanted`,
        field: 'gate.brace',
        mend: 'a cable with a turnbuckle from the top of the hinge side to the bottom of the latch side',
      };
    },
  }),
  panelRule({
    code: 'brace-force',
    reason: 'a cable keeps five times its load before it breaks, a strut three times before it buckles',
    source: 'statics, Euler; cable from catalogues (from memory)',
    judge: (panel) => {
      const brace = gateOf(panel)?.brace;
      if (!brace || Math.abs(brace.forceLoaded) <= brace.most) return undefined;
      const [figure, limit] = unlikeForces(Math.abs(brace.forceLoaded), brace.most, panel.display);
      return {
        level: 'caution',
        text: `The ${brace.kind} bears more than it should with the load at the latch.`,
        figure,
        limit,
        judged: (found, most) => `It bears ${found}; keep to ${most}`,
        field: 'gate.brace',
        mend: brace.kind === 'cable' ? 'a thicker wire, or a steel rod' : 'a thicker strut',
      };
    },
  }),
  panelRule({
    code: 'gate-size',
    reason: 'beyond this a woven leaf racks, sags and pulls its post over, whatever the brace',
    source: 'common practice, no source',
    judge: ({ details, outside, display }) => {
      if (details.use !== 'gate') return undefined;
      const wide = outside.width > GATE_SIZE.width + 1e-9;
      if (!wide && outside.height <= GATE_SIZE.height + 1e-9) return undefined;
      const [figure, limit] = wide
        ? unlikeLengths(outside.width, GATE_SIZE.width, display)
        : unlikeLengths(outside.height, GATE_SIZE.height, display);
      return {
        level: 'caution',
        text: `This construction is not advised for a leaf this ${wide ? 'wide' : 'high'}.`,
        figure,
        limit,
        judged: (found, most) => `The leaf is ${found} ${wide ? 'wide' : 'high'}; keep to ${most}`,
        mend: wide ? 'two leaves' : 'a lower leaf, or a welded frame round the weave',
      };
    },
  }),
  panelRule({
    code: 'hinges-apart',
    reason: 'the nearer the hinges stand together, the harder the leaf pulls at them: close together they tear out',
    source: 'statics; half the height is common practice, no source',
    judge: (panel) => {
      const gate = gateOf(panel);
      if (!gate) return undefined;
      const [top = 0, bottom = 0] = [gate.hinges[0]?.y, gate.hinges.at(-1)?.y];
      const apart = top - bottom;
      const least = panel.outside.height / 2;
      if (apart >= least - 1e-9) return undefined;
      const [figure, limit] = unlikeLengths(Math.abs(apart), least, panel.display);
      const crossed = apart <= 0;
      return {
        level: crossed ? 'stop' : 'caution',
        text: crossed
          ? 'The hinges change places: each stands past the middle of the leaf.'
          : 'The hinges are close together.',
        figure,
        limit,
        judged: (found, wanted) =>
          crossed
            ? `The top hinge comes ${lengthText(top, panel.display)} above the foot of the leaf and the bottom one ${lengthText(bottom, panel.display)}; the top one must be ${wanted} or more above the bottom one`
            : `They are ${found} apart; ${wanted} or more is wanted`,
        mend: `hinges nearer the ends of the stile: their middles ${lengthText(panel.outside.height / 4, panel.display)} or less from its ends`,
        field: 'gate.hinges.inset',
      };
    },
  }),
  panelRule({
    code: 'latch-height',
    reason: 'a latch needs a stile behind it',
    source: 'geometry',
    judge: (panel) => {
      const gate = gateOf(panel);
      if (!gate || gate.latch.inside) return undefined;
      const { ground } = gate.clear;
      return {
        level: 'stop',
        text: 'The latch is not on the leaf.',
        figure: lengthText(gate.latch.y + ground, panel.display),
        limit: `${lengthText(ground, panel.display)} to ${lengthText(ground + panel.outside.height, panel.display)}`,
        judged: (found, leaf) => `It would be ${found} above the ground, and the leaf goes from ${leaf}`,
        mend:
          gate.latch.y > 0
            ? `the latch lower: ${lengthText(ground + panel.outside.height / 2, panel.display)} above the ground is the middle of the leaf`
            : `the latch higher: ${lengthText(ground + panel.outside.height / 2, panel.display)} above the ground is the middle of the leaf`,
        field: 'gate.latch',
      };
    },
  }),
  panelRule({
    code: 'gate-clearance',
    reason: 'stiles swell in the wet and a leaf settles: one that fits tight in summer jams in winter',
    source: 'Wood Handbook FPL-GTR-190, ch. 13; 1/4 in is common practice, no source',
    judge: (panel) => {
      if (panel.details.use !== 'gate') return undefined;
      const left = wetClearance(panel);
      if (left >= LEAST_CLEARANCE - 1e-9) return undefined;
      const [figure, limit] = unlikeLengths(Math.max(0, left), LEAST_CLEARANCE, panel.display);
      return {
        level: 'caution',
        text: 'The leaf has little room at hinge and latch in the wet season.',
        figure,
        limit,
        judged: (found, least) => `${found} is left of both gaps together; ${least} or more is wanted`,
        mend: `a gap at the latch ${lengthText(LEAST_CLEARANCE - left, panel.display)} wider`,
        field: 'gate.clear.latch',
      };
    },
  }),
  panelRule({
    code: 'pool-barrier',
    reason: 'level members closer than 45 in can be climbed; woven slats are far closer on both faces',
    source: `${POOL_CODE.horizontals.source}; height ${POOL_CODE.height.source}; latch ${POOL_CODE.latch.source}`,
    judge: ({ details, courses, outside, display }) => {
      if (details.use !== 'gate' || !details.pool) return undefined;
      const top = details.clear.ground + outside.height;
      const faults = [
        ...(top < POOL_CODE.height.value ? [`its top is ${lengthText(top, display)} up`] : []),
        ...(details.clear.ground > POOL_CODE.bottomGap.value
          ? [`${lengthText(details.clear.ground, display)} under it`]
          : []),
        ...(details.latch < POOL_CODE.latch.value ? [`latch at ${lengthText(details.latch, display)}`] : []),
      ];
      const { height, bottomGap, horizontals, latch } = POOL_CODE;
      return {
        level: faults.length > 0 ? 'stop' : 'caution',
        text:
          faults.length > 0
            ? 'The job says that this gate closes off a pool, and it misses what pool rules ask for.'
            : 'The job says that this gate closes off a pool, and woven slats can be climbed: the authority must accept it.',
        figure: [`slats ${lengthText(courses.pitch, display)} apart`, ...faults].join('; '),
        limit: `${codeText(horizontals.value, display)} between level members; ${codeText(height.value, display)} high; at most ${codeText(bottomGap.value, display)} under it; latch ${codeText(latch.value, display)} up`,
        judged: (found, wanted) => `Here: ${found}. Pool rules ask for: ${wanted}`,
        mend:
          'upright boards on the outer side; self-closing hinges, a self-latching latch, opening away from the pool; ask the authority. First settle with the client whether there is a pool and which side of the gate it is on: the leaf is drawn to open ' +
          (details.swing === 'towards the back'
            ? 'to the back, so the pool must be in front'
            : 'to the front, so the pool must be at the back') +
          '. Without a pool, have that taken out of the job',
        field: 'gate.pool',
      };
    },
  }),
];
