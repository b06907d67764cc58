import { cornerRules } from './corner.ts';
import { cuttingRules } from './cutting.ts';
import { endRules } from './ends.ts';
import { fasteningRules } from './fastening.ts';
import { fitRules } from './fit.ts';
import { frameRules } from './frame.ts';
import { gateRules } from './gate.ts';
import { guardRules } from './guard.ts';
import { placeRules } from './place.ts';
import type { Rule } from './rule.ts';
import { screwRules } from './screws.ts';
import { weaveRules } from './weave.ts';
import { woodRules } from './wood.ts';

/** Every rule, in the order in which findings of one level are told. */
export const rules: readonly Rule[] = [
  ...weaveRules,
  ...endRules,
  ...woodRules,
  ...frameRules,
  ...fitRules,
  ...guardRules,
  ...gateRules,
  ...placeRules,
  ...cornerRules,
  ...fasteningRules,
  ...screwRules,
  ...cuttingRules,
];
