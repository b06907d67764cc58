import type { Panel } from '../panel/panel.ts';
import { gateDetails } from '../uses/gate.ts';
import { panelRule, type Rule } from './rule.ts';

/** What pulls at the corners of a panel that does more than stand in its place; undefined where nothing does. */
function pulledBy({ details }: Panel): string | undefined {
  if (details.use === 'guard') return 'who falls against a guard pulls its frame apart at the corners';
  if (details.use === 'gate') return 'a gate hangs by its corners and is leaned on at the latch';
  if (details.use === 'divider' && details.stand === 'track')
    return 'the whole leaf hangs by its top rail, which only the corners hold to the stiles';
  return undefined;
}

/** The rule on the joints of the frame's corners. */
export const cornerRules: readonly Rule[] = [
  panelRule({
    code: 'corner-joints',
    reason: 'a screw in end grain may not be counted on where it is pulled: the wood lets go of the thread',
    source: 'NDS 2018, 12.2.2: no withdrawal from end grain',
    judge: (panel) => {
      const pulled = pulledBy(panel);
      if (!pulled) return undefined;
      const braced = panel.details.use === 'gate' && gateDetails(panel).brace;
      return {
        level: 'caution',
        text: 'The corners are butt joints, screwed into the end grain of the stiles.',
        figure: 'screws in end grain',
        limit: 'a joint that holds without them',
        judged: () =>
          `Glue, the end staves${braced ? ', the brace' : ''} and the screws across their length hold them square, but ${pulled}`,
        mend: 'these sheets plan nothing more at the corners. Where more is wanted, a half lap, dowels or mortise and tenon: that changes lengths and holes, so settle it, and have the sheets made again, before you buy',
      };
    },
  }),
];
