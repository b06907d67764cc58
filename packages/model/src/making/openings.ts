import { LEAST_CLEARANCE, wetClearance } from '../findings/gate.ts';
import type { Panel } from '../panel/panel.ts';
import { gateDetails } from '../uses/gate.ts';
import { LEFT } from './room.ts';
import { eachPanel, fineIn, lengthIn, type Making, type StepFigure } from './step.ts';

/** How wide the openings are planned, and by how much one may differ before sizes change. */
export function openingFigures(making: Making): StepFigure[] {
  const show = lengthIn(making);
  const fine = fineIn(making);
  const { panels } = making;
  return [
    ...eachPanel(panels, 'opening planned, its width', (panel) => {
      const width = panel.details.use === 'gate' ? gateDetails(panel).opening.width : panel.opening?.width;
      return width === undefined ? undefined : show(width);
    }),
    ...eachPanel(panels, 'posts apart, at least', (panel) =>
      isLoose(panel) ? show(panel.outside.width + 2 * LEFT[panel.display.unit]) : undefined,
    ),
    ...eachPanel(panels, 'narrower or wider it may be by', (panel) => {
      const spare = openingSpare(panel);
      return spare === undefined ? undefined : fine(spare);
    }),
  ];
}

/** Whether a panel goes between posts of which the job says nothing. */
function isLoose({ opening, details }: Panel): boolean {
  const posts = details.use === 'guard' || (details.use === 'screen' && details.mounting === 'posts');
  return opening === undefined && posts;
}

/**
 * What the gaps at both sides can give, mm: of a gate until too little is left in the wet, of others until a panel no longer
 * goes in; undefined where the job says nothing of the opening.
 */
export function openingSpare(panel: Panel): number | undefined {
  const { opening, details, display } = panel;
  if (details.use === 'gate') return Math.max(0, wetClearance(panel) - LEAST_CLEARANCE);
  return opening && Math.max(0, opening.gaps.left + opening.gaps.right - 2 * LEFT[display.unit]);
}
