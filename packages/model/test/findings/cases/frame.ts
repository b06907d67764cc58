import { type Panel, panelCentre } from '../../../src/index.ts';
import { change, first, lastHolding, type RuleCase, subjectOf } from './case.ts';

const base = subjectOf();
const opened = subjectOf({ size: undefined, opening: { width: 45, height: 53 } });
const inOpening = (gap: (panel: Panel) => number) =>
  change(opened, (panel) => ({
    ...panel,
    ...(panel.opening && {
      opening: { ...panel.opening, gaps: { ...panel.opening.gaps, left: gap(panel), right: gap(panel) } },
    }),
  }));
const heavy = (specificGravity12: number) =>
  change(base, (panel) => {
    const of = <T extends { readonly wood: object }>(member: T): T => ({
      ...member,
      wood: { ...member.wood, specificGravity12 },
    });
    const { rail, stile, stave, slat } = panel.spec.wood;
    return {
      ...panel,
      spec: { ...panel.spec, wood: { rail: of(rail), stile: of(stile), stave: of(stave), slat: of(slat) } },
    };
  });
const large = (gravity: number) =>
  change(heavy(gravity), (panel) => ({ ...panel, rail: { ...panel.rail, depth: panel.rail.depth * 4 } }));

export const frameCases: readonly RuleCase[] = [
  {
    code: 'groove-depth',
    trips: subjectOf({ groove: { depth: '1/8' } }),
    passes: base,
    limit: subjectOf({ groove: { depth: '1/4' } }),
    atLimit: false,
  },
  {
    code: 'groove-wide',
    trips: subjectOf({ groove: { clearance: '1/8' } }),
    passes: base,
    limit: subjectOf({ groove: { clearance: '1/16' } }),
    atLimit: false,
  },
  {
    code: 'groove-walls',
    trips: subjectOf({ rail: { depth: 1 } }),
    passes: base,
    limit: change(base, (panel) => ({ ...panel, rail: { ...panel.rail, depth: panel.groove.width + 12.7 } })),
    atLimit: false,
  },
  {
    code: 'stave-wide',
    trips: subjectOf({ stave: { width: 2, count: 8 } }),
    passes: base,
    limit: change(base, (panel) => ({ ...panel, staves: { ...panel.staves, width: 0.3 * panel.staves.pitch } })),
    atLimit: false,
  },
  {
    code: 'frame-size',
    trips: subjectOf({ size: { width: 97, height: 52 } }),
    passes: base,
    limit: subjectOf({ size: { width: 96, height: 52 } }),
    atLimit: false,
  },
  {
    code: 'frame-weight',
    trips: large(1.4),
    passes: base,
    limit: large(lastHolding(0.1, 1.4, (gravity) => panelCentre(first(large(gravity))).mass <= 25)),
    atLimit: false,
  },
  {
    code: 'diagonals',
    trips: inOpening(() => 0.5),
    passes: opened,
    // 2 W g / D = 1/8 in, so g = 3.175 D / (2 W).
    limit: inOpening(({ outside, diagonal }) => (3.175 * diagonal) / (2 * outside.width)),
    atLimit: false,
  },
];

export const fitCases: readonly RuleCase[] = [
  {
    code: 'slat-step',
    trips: subjectOf({ fit: { vary: 'slats', step: '1/128' } }),
    passes: base,
    limit: subjectOf({ fit: { vary: 'slats', step: '1/64' } }),
    atLimit: false,
  },
  {
    code: 'measured-height',
    trips: subjectOf({ measured: { stack: 47 } }),
    passes: base,
    limit: change(base, (panel) => ({
      ...panel,
      asBuilt: {
        changes: [{ what: 'outside height', planned: 0, now: panel.display.mark }],
        broken: 0,
        uncut: [],
        planned: panel,
        heightOff: panel.display.mark,
      },
    })),
    atLimit: true,
  },
];
