import { LEAST_CLEARANCE, wetClearance } from '../../../src/findings/gate.ts';
import type { Subject } from '../../../src/findings/rule.ts';
import { WORKING_SHARE } from '../../../src/findings/strength.ts';
import { dividerDetails, type GateUse, gateDetails, guardDetails, partsOf, solve } from '../../../src/index.ts';
import { jobOf } from '../../support.ts';
import { change, first, lastHolding, type RuleCase, subjectOf } from './case.ts';

const screen = subjectOf();

const guard = (own: object = {}, panel: object = {}) =>
  subjectOf({ use: 'guard', size: { width: 48, height: 30 }, guard: own, ...panel });
const stout = guard(
  {},
  { stave: { width: 2, depth: 1.5, count: 4 }, rail: { height: 3, depth: 2.5 }, slat: { thickness: '1/8' } },
);
const atWorkingShare = change(stout, (panel) => {
  const stress = guardDetails(panel).bending.find(({ of }) => of === 'stave')?.stress ?? 0;
  const { stave } = panel.spec.wood;
  const wood = { ...stave.wood, strength: (stress / WORKING_SHARE) * (1 + 1e-12) };
  return { ...panel, spec: { ...panel.spec, wood: { ...panel.spec.wood, stave: { ...stave, wood } } } };
});

export const guardCases: readonly RuleCase[] = [
  { code: 'not-a-tested-guard', trips: guard(), passes: screen, limit: guard({ drop: 0 }), atLimit: true },
  { code: 'guard-top-load', trips: guard({ top: 40 }), passes: screen, limit: guard({ drop: 0 }), atLimit: true },
  { code: 'guard-sphere', trips: guard({ floor: 5 }), passes: guard(), limit: guard({ floor: 4 }), atLimit: true },
  { code: 'guard-height', trips: guard(), passes: guard({ top: 40 }), limit: guard({ top: 36 }), atLimit: false },
  {
    code: 'guard-load',
    trips: guard({}, { stave: { depth: '3/8' } }),
    passes: stout,
    limit: atWorkingShare,
    atLimit: false,
  },
  { code: 'guard-ladder', trips: guard(), passes: screen, limit: guard({ drop: 0 }), atLimit: true },
];

const gate = (own: object = {}, panel: object = {}) =>
  subjectOf({ use: 'gate', size: { width: 34, height: 60 }, gate: own, ...panel });
const withGate = (subject: Subject, by: (use: GateUse, height: number) => GateUse) =>
  change(subject, (panel) =>
    panel.details.use === 'gate' ? { ...panel, details: by(panel.details, panel.outside.height) } : panel,
  );
const loaded = (load: number) => withGate(gate(), (use) => ({ ...use, load }));
const bears = (load: number) => {
  const { brace } = gateDetails(first(loaded(load)));
  return Math.abs(brace?.forceLoaded ?? 0) <= (brace?.most ?? 0);
};
const latchClear = (latch: number) => withGate(gate(), (use) => ({ ...use, clear: { ...use.clear, hinge: 0, latch } }));
const tight = latchClear(lastHolding(30, 0, (latch) => wetClearance(first(latchClear(latch))) >= LEAST_CLEARANCE));

export const gateCases: readonly RuleCase[] = [
  {
    code: 'brace-wrong-way',
    trips: gate({ brace: { kind: 'strut', from: 'hinge top' } }),
    passes: gate(),
    limit: gate({ brace: { kind: 'none', from: 'hinge bottom' } }),
    atLimit: false,
  },
  {
    code: 'no-brace',
    trips: gate({ brace: { kind: 'none' } }),
    passes: gate(),
    limit: gate({ brace: { kind: 'strut' } }),
    atLimit: false,
  },
  {
    code: 'brace-force',
    trips: loaded(4000),
    passes: gate(),
    limit: loaded(lastHolding(0, 4000, bears)),
    atLimit: false,
  },
  {
    code: 'gate-size',
    trips: gate({}, { size: { width: 49, height: 60 } }),
    passes: gate(),
    limit: gate({}, { size: { width: 48, height: 60 } }),
    atLimit: false,
  },
  {
    code: 'hinges-apart',
    trips: gate({ hinges: { inset: 18 } }),
    passes: gate(),
    limit: withGate(gate(), (use, height) => ({ ...use, hingeInset: height / 4 })),
    atLimit: false,
  },
  {
    code: 'latch-height',
    trips: gate({ latch: 90 }),
    passes: gate(),
    limit: withGate(gate(), (use, height) => ({ ...use, latch: use.clear.ground + height })),
    atLimit: true,
  },
  {
    code: 'gate-clearance',
    trips: gate({ clear: { hinge: '1/16', latch: '1/16' } }),
    passes: gate(),
    limit: tight,
    atLimit: false,
  },
  {
    code: 'pool-barrier',
    trips: gate({ pool: true }),
    passes: gate(),
    limit: gate({ pool: true, latch: 56, clear: { ground: 1 } }),
    atLimit: true,
  },
];

const divider = (own: object = {}, panel: object = {}) =>
  subjectOf({ use: 'divider', size: { width: 48, height: 60 }, divider: own, ...panel });
const onFeet = (length: number) =>
  change(divider(), (panel) =>
    panel.details.use === 'divider' && panel.details.feet
      ? { ...panel, details: { ...panel.details, feet: { ...panel.details.feet, length } } }
      : panel,
  );
const stands = (length: number) => (dividerDetails(first(onFeet(length))).tipping?.push ?? 0) >= 45;

/** Two guards in a run, the second with other fields. */
function run(second: object, gap: number): Subject {
  const panel = { use: 'guard', opening: { width: 1000, height: 1000, gap: { sides: 6, top: 0, bottom: 80 } } };
  const job = jobOf(panel, {
    unit: 'mm',
    panels: [
      { name: 'A', ...panel },
      { name: 'B', ...panel, ...second },
    ],
    runs: [{ name: 'Edge', panels: ['A', 'B'], post: 90, gap }],
  });
  const panels = solve(job);
  return { job, panels, parts: partsOf(panels) };
}

export const placeCases: readonly RuleCase[] = [
  {
    code: 'escape-window',
    trips: subjectOf({ screen: { bedroom: true } }),
    passes: screen,
    // A window behind is enough: the rule cannot know who sleeps there.
    limit: subjectOf({ screen: { glass: 3 } }),
    atLimit: true,
  },
  {
    code: 'glass-distance',
    trips: subjectOf({ screen: { glass: '1/2' } }),
    passes: subjectOf({ screen: { glass: 3 } }),
    limit: subjectOf({ screen: { glass: 1 } }),
    atLimit: false,
  },
  {
    code: 'divider-tips',
    trips: divider({ feet: { length: 10 } }),
    passes: divider({ stand: 'track' }),
    // It stands: the verdict is told all the same.
    limit: onFeet(lastHolding(4000, 100, stands)),
    atLimit: true,
  },
  {
    code: 'divider-in-wind',
    trips: subjectOf({ use: 'divider' }, { site: { where: 'outdoors', wind: { speed: 30 } } }),
    passes: subjectOf({ use: 'divider' }, { site: { where: 'indoors', wind: { speed: 30 } } }),
    limit: subjectOf({ use: 'divider' }, { site: { where: 'outdoors' } }),
    atLimit: false,
  },
  {
    code: 'divider-faces',
    trips: divider({}, { weave: 'two-over-two twill', stave: { count: 8 } }),
    passes: divider({}, { stave: { count: 6 } }),
    limit: divider({}, { stave: { count: 5 } }),
    atLimit: false,
  },
  {
    code: 'run-level',
    trips: run({ guard: { floor: 90 } }, 6),
    passes: run({}, 6),
    limit: run({ guard: { floor: 80.5 } }, 6),
    atLimit: false,
  },
  { code: 'run-gap', trips: run({}, 10), passes: run({}, 6), limit: run({}, 6.5), atLimit: true },
];

export const cornerCases: readonly RuleCase[] = [
  {
    code: 'corner-joints',
    trips: gate(),
    passes: screen,
    // On feet the rails lie on the feet; on a track the leaf hangs by its top rail.
    limit: divider({ stand: 'track' }),
    atLimit: true,
  },
];
