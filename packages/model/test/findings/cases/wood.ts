import { change, type RuleCase, subjectOf } from './case.ts';

const base = subjectOf();
const own = (name: string) => ({
  woods: [
    {
      name,
      modulus: 8000,
      strength: 55,
      gravity: 0.35,
      shrinkage: { radial: 2.4, tangential: 5 },
      decay: 'resistant',
      source: 'the mill',
    },
  ],
});

export const woodCases: readonly RuleCase[] = [
  {
    code: 'no-room-to-swell',
    trips: subjectOf({ top: { allowance: 0 } }),
    passes: base,
    limit: change(base, (panel) => ({
      ...panel,
      courses: { ...panel.courses, allowance: panel.movement.needed },
    })),
    atLimit: false,
  },
  {
    code: 'dry-opening',
    trips: subjectOf({ top: { cover: 0 } }),
    passes: base,
    limit: change(base, (panel) => ({
      ...panel,
      cover: { ...panel.cover, height: panel.movement.dryOpening },
    })),
    atLimit: false,
  },
  {
    code: 'groove-play',
    trips: subjectOf({ groove: { clearance: 0 } }),
    passes: base,
    limit: change(base, (panel) => ({
      ...panel,
      movement: { ...panel.movement, grooveClearance: { built: 0.2, wettest: 0.2, driest: 0.2 } },
    })),
    atLimit: false,
  },
  {
    code: 'knots-in-slats',
    trips: subjectOf({ wood: { slat: { grade: 'knotty' } } }),
    passes: base,
    limit: subjectOf({ wood: { stave: { grade: 'knotty' } } }),
    atLimit: true,
  },
  {
    code: 'wood-rots',
    trips: subjectOf({ wood: 'ponderosa pine' }),
    passes: base,
    limit: subjectOf({ wood: 'western larch' }),
    atLimit: true,
  },
  {
    code: 'wood-not-in-table',
    trips: subjectOf({ wood: 'yard fir' }, own('yard fir')),
    passes: base,
    limit: subjectOf({ wood: 'western redcedar' }, own('western redcedar')),
    atLimit: false,
  },
  {
    code: 'moisture-when-built',
    trips: subjectOf({}, { site: { driest: 9, wettest: 14, built: 8 } }),
    passes: subjectOf({}, { site: { driest: 9, wettest: 14, built: 12 } }),
    limit: subjectOf({}, { site: { driest: 9, wettest: 14, built: 14 } }),
    atLimit: false,
  },
  {
    code: 'tannin',
    trips: base,
    passes: subjectOf({ wood: 'ponderosa pine' }),
    limit: subjectOf({}, { site: { where: 'indoors' } }),
    atLimit: false,
  },
  {
    code: 'wood-dust',
    trips: base,
    passes: subjectOf({ wood: 'ponderosa pine' }),
    limit: subjectOf({ wood: { all: 'ponderosa pine', stave: 'white oak' } }),
    atLimit: true,
  },
];
