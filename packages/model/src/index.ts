// Wood: the table, moisture, movement, weight

// Weave: sides, bending
export { bendSlat, type SlatBend, type SlatToBend, sampleSlat } from './weave/bend.ts';
export { type SlatPath, stavePitch } from './weave/contact.ts';
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
