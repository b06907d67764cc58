import type { Run } from '../job/job.ts';
import type { Panel } from '../panel/panel.ts';
import { type DividerDetails, dividerDetails } from './divider.ts';
import { type GateDetails, gateDetails } from './gate.ts';
import { type GuardDetails, guardDetails } from './guard.ts';
import { type ScreenDetails, screenDetails } from './screen.ts';

/** What a panel's use makes of it: places, sizes and loads. */
export type UseResult = ScreenDetails | GuardDetails | DividerDetails | GateDetails;

/** The use of a panel worked out, whichever it is. */
export function useResult(panel: Panel, run?: Pick<Run, 'gap'>): UseResult {
  switch (panel.details.use) {
    case 'screen':
      return screenDetails(panel);
    case 'guard':
      return guardDetails(panel, run);
    case 'divider':
      return dividerDetails(panel);
    case 'gate':
      return gateDetails(panel);
  }
}
