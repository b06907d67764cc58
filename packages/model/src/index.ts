// Reading a job
export { formatLength, INCH, LengthError, type Marks, parseLength, roundToMark, type Unit } from './length.ts';
export type {
  Assumed,
  DividerUse,
  Fit,
  GateUse,
  GuardUse,
  Job,
  Measured,
  MemberWood,
  OpeningGaps,
  PanelSpec,
  Paper,
  Run,
  ScreenUse,
  Site,
  Use,
  UseDetails,
} from './job/job.ts';
export { JobError, type Problem, problemText } from './job/problem.ts';
export { locateProblems, readJob } from './job/read.ts';
export { jobSchema } from './job/schema.ts';

// Solving
export {
  type Change,
  type Courses,
  type Movement,
  type Panel,
  type RowBehaviour,
  type Staves,
  sideAt,
  weaveDepth,
} from './panel/panel.ts';
export { type SlatHeights, solve } from './panel/solve.ts';

// Parts
export type { Grade, Part, PartRole } from './parts/part.ts';
export { partsOf } from './parts/parts.ts';
export { massOf, type MemberMass } from './parts/mass.ts';
export type { PricePer, Saw, Stock } from './cutting/stock.ts';

// Findings
export type { Finding, FindingLevel } from './finding.ts';

// Wood: the table, moisture, movement, weight

// Weave: sides, bending, holding together, light and air
export { largestBall } from './weave/ball.ts';
export { bendSlat, type SlatBend, type SlatToBend, sampleSlat } from './weave/bend.ts';
export { type SlatPath, stavePitch } from './weave/contact.ts';
export { type Hanging, hangsTogether, type Layer } from './weave/hang.ts';
export { insertionFactor } from './weave/insertion.ts';
export { airShare, type Direction, seeThrough } from './weave/light.ts';
export type { Openwork, PanelOpenwork, PlainOpenwork } from './weave/openwork.ts';
export {
  changesOfSide,
  mirrorRow,
  type NamedWeave,
  type Side,
  swapRow,
  type Weave,
  weaveNames,
  weaveSides,
} from './weave/pattern.ts';
export { type PlainSizes, type PlainWeave, plainWeave, smallestPitch } from './weave/plain.ts';
export type { Curve, Knot, Sample } from './weave/spline.ts';

// Loads: gate, wind, mass
export {
  type BraceEnds,
  braceSag,
  braceTakeUp,
  type GateBrace,
  type GateLoad,
  gateBrace,
  gateHinges,
  type HingeForces,
  strutBuckling,
} from './loads/gate.ts';
export { centreOfMass, type MassCentre, type Solid } from './loads/mass.ts';
export { type Exposure, type WindLoad, type WindOnPanel, windLoad, windOnSlat } from './loads/wind.ts';
export { density } from './wood/density.ts';
export { type BuiltMoisture, builtMoisture, moistureContent, type Setting } from './wood/moisture.ts';
export {
  coefficientFromShrinkage,
  type MoistureChange,
  ringCoefficient,
  shrinkageChange,
  sizeChange,
  woodChange,
} from './wood/movement.ts';
export { type Place, places, type SiteMoisture, siteMoisture } from './wood/places.ts';
export { woodNamed, woodNames, woods } from './wood/species.ts';
export type { Confidence, Decay, DecayGroup, RingPair, Species, Wood } from './wood/wood.ts';
