import { type RuleCase, subjectOf } from './case.ts';

const gate = (own: object = {}, panel: object = {}) =>
  subjectOf({ use: 'gate', size: { width: 34, height: 60 }, gate: own, ...panel });
const guard = (own: object = {}, panel: object = {}) =>
  subjectOf({
    use: 'guard',
    size: { width: 48, height: 30 },
    guard: { cap: { height: 1, depth: 4 }, ...own },
    ...panel,
  });
const base = subjectOf();

export const screwCases: readonly RuleCase[] = [
  {
    code: 'screws-meet',
    trips: gate({ hinges: { inset: 3 } }),
    passes: gate(),
    // Corner screws end 3 1/2 in up. The smallest hinge's lowest screw, 9/16 in under its middle and 1.6 mm off in depth,
    // wants half of 0.19 and of 0.164 in and 3 mm, 7.50 mm: 7.33 in height, 4.352 in in all.
    limit: gate({ hinges: { inset: 4.36 } }),
    atLimit: false,
  },
  {
    code: 'strip-glued',
    trips: subjectOf({ top: { cover: 2.5 } }),
    passes: base,
    // The longest pin is 2 1/2 in and wants 5/8 in beyond the strip: 1 7/8 in.
    limit: subjectOf({ top: { cover: 1.875 } }),
    atLimit: false,
  },
  {
    code: 'cap-screws',
    trips: guard({ cap: { height: 0.5, depth: 4 } }),
    passes: guard(),
    // A groove 1/2 in deep, 1/8 in over it and six diameters of No. 6, 0.828 in or 7/8 in by sixteenths: 1 1/2 in.
    limit: guard({}, { rail: { height: 1.5 } }),
    atLimit: false,
  },
  { code: 'strut-screws', trips: gate({ brace: { kind: 'strut' } }), passes: gate(), limit: base, atLimit: false },
  {
    code: 'screw-past-glass',
    trips: subjectOf({ screen: { mounting: 'blocks', standoff: 1.5, glass: 3 } }),
    passes: base,
    // A 3 1/2 in screw through a 1 1/2 in stile ends 2 in behind the frame, 1 in before glass at 3 in.
    limit: subjectOf({ screen: { glass: 3 } }),
    atLimit: false,
  },
];
