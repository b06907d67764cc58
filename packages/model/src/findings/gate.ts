import { INCH } from '../length.ts';
import type { Panel } from '../panel/panel.ts';
import { POOL_CODE } from '../uses/codes.ts';
import { type GateDetails, gateDetails } from '../uses/gate.ts';
import { woodChange } from '../wood/movement.ts';
import { panelRule, type Rule } from './rule.ts';
import { forceText, lengthText } from './words.ts';

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
      'a leaf sags into a rhomb: only the diagonal from the hinge side’s top gets longer (a cable pulls), only the one from its bottom gets shorter (a strut pushes)',
    source: 'statics',
    judge: (panel) => {
      const brace = gateOf(panel)?.brace;
      if (!brace || brace.right) return undefined;
      return {
        level: 'stop',
        text: `The ${brace.kind} runs the wrong way: it goes slack and the gate sags.`,
        figure: `${brace.kind} from the ${brace.kind === 'cable' ? 'hinge bottom' : 'hinge top'}`,
        limit: `${brace.kind} from the ${brace.kind === 'cable' ? 'hinge top' : 'hinge bottom'}`,
        mend: 'turn it round, or leave gate.brace.from out',
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
      return {
        level: 'caution',
        text: `The ${brace.kind} bears more than it should with the load at the latch.`,
        figure: forceText(Math.abs(brace.forceLoaded), panel.display),
        limit: forceText(brace.most, panel.display),
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
      return {
        level: 'caution',
        text: `This construction is not advised for a leaf this ${wide ? 'wide' : 'high'}.`,
        figure: lengthText(wide ? outside.width : outside.height, display),
        limit: lengthText(wide ? GATE_SIZE.width : GATE_SIZE.height, display),
        mend: wide ? 'two leaves' : 'a lower leaf, or a welded frame round the weave',
      };
    },
  }),
  panelRule({
    code: 'hinges-apart',
    reason: 'the pull on the hinges is the leaf’s moment over their distance; close together they tear out',
    source: 'statics; half the height is common practice, no source',
    judge: (panel) => {
      const gate = gateOf(panel);
      if (!gate) return undefined;
      const apart = (gate.hinges[0]?.y ?? 0) - (gate.hinges.at(-1)?.y ?? 0);
      const least = panel.outside.height / 2;
      if (apart >= least - 1e-9) return undefined;
      return {
        level: apart <= 0 ? 'stop' : 'caution',
        text: apart <= 0 ? 'The hinges come out on top of one another.' : 'The hinges are close together.',
        figure: lengthText(Math.max(0, apart), panel.display),
        limit: lengthText(least, panel.display),
        mend: 'a smaller gate.hinges.inset',
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
        limit: `${lengthText(ground, panel.display)} to ${lengthText(ground + panel.outside.height, panel.display)} above the ground`,
        mend: 'another gate.latch',
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
      return {
        level: 'caution',
        text: 'The leaf has little room at hinge and latch in the wet season.',
        figure: `${lengthText(Math.max(0, left), panel.display)} in all`,
        limit: lengthText(LEAST_CLEARANCE, panel.display),
        mend: 'more clearance at the latch',
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
      return {
        level: 'caution',
        text: 'Treat this gate as unsuitable for a pool barrier unless the authority accepts it.',
        figure: [`slats ${lengthText(courses.pitch, display)} apart`, ...faults].join('; '),
        limit: `${lengthText(POOL_CODE.horizontals.value, display)} between level members; ${lengthText(POOL_CODE.height.value, display)} high; at most ${lengthText(POOL_CODE.bottomGap.value, display)} under it; latch ${lengthText(POOL_CODE.latch.value, display)} up`,
        mend: 'upright boards on the outer side; self-closing hinges, a self-latching latch, opening away from the pool; ask the authority',
      };
    },
  }),
];
