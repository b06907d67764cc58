import { sideAt } from '@wattlewright/model';
import { expect, test } from 'vitest';
import { cutPlanes } from '../../src/views/detailkey.ts';
import { panelNotes } from '../../src/views/panelnotes.ts';
import { plain, wordsOf } from './read.ts';

const guarded = (width: number, count: number) =>
  plain({ size: { width, height: 600 }, stave: { count }, weave: 'plain' }).panel;

test('panelNotes of a panel drawn with another say where its slats pass the stave on the other side', () => {
  const four = guarded(700, 4);
  const five = guarded(900, 5);
  const odd = guarded(1300, 7);
  const passes = (panel: typeof four) => sideAt(panel, 0, cutPlanes(panel).across.stave);
  // Upright sections through stave 2 of four, 3 of five and 4 of seven; the last staves of five and seven are alike.
  expect(passes(four)).not.toBe(passes(five));
  expect(passes(four)).toBe(passes(odd));
  expect(wordsOf(panelNotes(four, { like: five }))).toContain('pass the stave of U–U, V, W and Z on the other side');
  expect(wordsOf(panelNotes(odd, { like: five }))).toContain('pass the stave of U–U, V and W on the other side');
  expect(wordsOf(panelNotes(five, { like: five }))).not.toContain('on the other side');
  expect(wordsOf(panelNotes(five, { like: five, ownPlan: true }))).toContain(`U to Z: as those of ${five.name}.`);
});
