// Reading a job
export {
  fineMarks,
  sizeMarks,
  formatLength,
  INCH,
  LengthError,
  type Marks,
  parseLength,
  ceilToMark,
  roundToMark,
  type Unit,
} from './length.ts';
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
  UncutPart,
  Use,
  UseDetails,
} from './job/job.ts';
export { JobError, type Problem, problemText } from './job/problem.ts';
export { locateProblems, readJob } from './job/read.ts';
export { UNCUT } from './job/job.ts';
export { jobSchema } from './job/schema.ts';

// Solving
export { stopThickness } from './panel/cover.ts';
export { type DrainHoles, drainHoles } from './panel/drains.ts';
export {
  type Change,
  type Courses,
  type CoverStrips,
  type Movement,
  type Panel,
  type RowBehaviour,
  type Staves,
  sideAt,
  weaveDepth,
} from './panel/panel.ts';
export { weaveReach } from './panel/reach.ts';
export { type SlatHeights, solve } from './panel/solve.ts';

// Parts
export type { Grade, Part, PartRole } from './parts/part.ts';
export { VIEW_LETTERS } from './parts/letter.ts';
export type { Member } from './parts/member.ts';
export { partsToCut } from './parts/inhand.ts';
export { membersOf, partsOf } from './parts/parts.ts';
export { BOARD_FOOT, massOf, type MemberMass } from './parts/mass.ts';
export type { PricePer, Saw, Stock } from './cutting/stock.ts';

// Uses: places, sizes and loads
export type { BraceLine } from './uses/brace.ts';
export { type CodeFigure, ESCAPE_CODE, GUARD_CODE, POOL_CODE } from './uses/codes.ts';
export { type DividerDetails, dividerDetails, type Faces, facesOf } from './uses/divider.ts';
export { BRACKET, type Fixings, sideFixings } from './uses/fixings.ts';
export { type BraceDetails, type GateDetails, gateDetails } from './uses/gate.ts';
export { type GuardBending, type GuardDetails, type GuardOpening, guardDetails } from './uses/guard.ts';
export { openworkOf, panelBall } from './uses/openwork.ts';
export { type Overall, overallOf } from './uses/overall.ts';
export type { Place as PanelPlace } from './uses/place.ts';
export { layRun, layRuns, type RunLayout, type RunPanel, type RunPost } from './uses/run.ts';
export { type ScreenDetails, screenDetails } from './uses/screen.ts';
export { type UseResult, useResult } from './uses/use.ts';
export { panelCentre, panelWeight } from './uses/weight.ts';
export { bottomAbove, panelWind } from './uses/wind.ts';

// Hardware and finish
export type { ChosenScrew } from './hardware/choose.ts';
export { type FinishAmount, finishArea, finishFor } from './hardware/finish.ts';
export { type Fitting, fittingsOf } from './hardware/fittings.ts';
export { gluedStrips } from './hardware/framejoints.ts';
export { type Gauge, headDiameter, screwDiameter } from './hardware/gauge.ts';
export { amountText, type HardwareLine, hardwareList, shareText } from './hardware/list.ts';
export { type Metal, metalFor } from './hardware/metal.ts';
export { type Drill, drillText, type Holes, type ScrewHoles, screwHoles } from './hardware/pilot.ts';
export { type BracePlate, bracePlates } from './hardware/braceplate.ts';
export type { Distance, GluedJoint, JointName, Pin, ScrewRow } from './hardware/row.ts';
export { pilotDepth } from './hardware/row.ts';
export type { Plug } from './hardware/plug.ts';
export { screwSchedule } from './hardware/schedule.ts';
export { type PulledScrew, screwWithdrawal } from './hardware/withdrawal.ts';

// All of it in one call
export { type HeightChoice, type Settled, type SettleOptions, settle } from './settle.ts';

// Findings
export type { Finding, FindingLevel } from './finding.ts';
export { check } from './findings/check.ts';
export { THIN_RIP, woodInName } from './findings/cutting.ts';
export { type MeasuredAdvice, measuredAdvice } from './findings/fit.ts';
export type { Judgement, Rule, Subject } from './findings/rule.ts';
export { rules } from './findings/rules.ts';
export { type UseBySpacing, type SpacingLine, useBySpacing } from './findings/spacing.ts';
export { findingSentences, massText } from './findings/words.ts';
export { type WoodChoice, woodChoices } from './findings/woodchoice.ts';

// Making
export { type AssumedLine, assumedLines } from './making/assumed.ts';
export { type CautionGroup, cautions } from './making/cautions.ts';
export { makingOrder } from './making/order.ts';
export type { Step, StepFigure } from './making/step.ts';

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
export { pound } from './wood/inchpound.ts';
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

// Cutting plan
export { checkPlan } from './cutting/check.ts';
export {
  type ChooseHeightOptions,
  chooseSlatHeight,
  type FreeHeightOptions,
  type FreeHeightPlan,
  type HeightCandidate,
  type HeightResult,
  planWithFreeHeight,
  type SlatHeight,
  type SlatHeightRange,
  slatHeights,
  withKerf,
} from './cutting/heights.ts';
export type {
  BoundKind,
  CutPlan,
  CutTree,
  FenceSetting,
  Leftover,
  PlannedBoard,
  LeftOut,
  Refusal,
  RefusalReason,
  Shares,
  ShoppingLine,
} from './cutting/plan.ts';
export { isPlaned, type Planing } from './cutting/plane.ts';
export { planCuts, type SearchOptions } from './cutting/engine.ts';
export { lettersCut, planWhatCanBeCut } from './cutting/partial.ts';
export {
  boundText,
  gapPercent,
  moneyText,
  PLANS_JUDGED,
  type PlanTextOptions,
  planText,
  sharePercents,
  sharesText,
  volumeText,
} from './cutting/plantext.ts';
export type { CuttingInput } from './cutting/problem.ts';
export { type PlanLimits, type PlanOptions, type PlanProgress, planCutsQuick } from './cutting/quick.ts';
export { slatReach } from './weave/reach.ts';
