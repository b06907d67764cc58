import type { Panel } from '@wattlewright/model';
import { expect, test } from 'vitest';
import { standardScale } from '../../src/scale.ts';
import { detail } from '../../src/views/detail.ts';
import { example, inkOf, measured, plain, wordsOf } from './read.ts';

const whole = standardScale(1, 'mm');

test('detail of the divider’s corner: the front strip over slats and stave, and both strips cut beside the stave', () => {
  const { panel, parts } = example('studio-divider');
  const of = parts.find(({ role }) => role === 'stop')?.letter;
  const drawing = detail(panel, 'corner', { scale: whole, parts });
  expect(inkOf(drawing, of, 'wood').length).toBe(1);
  expect(inkOf(drawing, of, 'hatch').length).toBe(2);
});

test('detail of a corner says which of its two screws is nearer the front', () => {
  const { panel, parts } = example('studio-divider');
  const drawing = detail(panel, 'corner', { scale: whole, parts });
  expect(wordsOf(drawing)).toContain('Screw nearer the back: its centre line only; dashed, the one nearer the front');
  // Where screws are too thin for their shape, by sides.
  const small = detail(panel, 'corner', { scale: standardScale(0.1, 'mm'), parts });
  expect(wordsOf(small)).toContain('Of the two screws this one, at the right, is nearer the back');
});

test('detail of the divider’s foot: counterbore and the screws’ distances from the faces of the rail are sized', () => {
  const { panel, parts } = example('studio-divider');
  const drawing = detail(panel, 'fixing', { scale: whole, parts });
  const says = measured(drawing, 'mm').map((size) => size.says);
  for (const size of [35, 11.5, 60, 45, 34, 21]) expect(says).toContain(size);
  expect(wordsOf(drawing)).toContain('dashed, right: nearer the front; centre line: nearer the back');
});

test('detail of a slat’s end sizes the stop strip and says how far the end is from the stile', () => {
  const { panel, parts } = example('studio-divider');
  const drawing = detail(panel, 'slat end', { scale: whole, parts });
  expect(measured(drawing, 'mm').map((size) => size.says)).toContain(12.7);
  expect(wordsOf(drawing)).toMatch(/0\.7 mm short of the stile/);
});

test('detail of a slat’s end tells what differs in panels that it stands for', () => {
  const { panel, parts } = example('larch-deck-guard');
  const narrow = plain({ size: { width: 500, height: 600 } }).panel;
  const words = (alike: readonly Panel[]): string => wordsOf(detail(panel, 'slat end', { scale: whole, parts, alike }));
  expect(words([narrow])).toMatch(/P: [\d.]+ mm, [\d.]+°/);
  expect(words([panel])).not.toContain(`${panel.name}:`);
});

test('detail of a groove: its cheek, and the drain hole of a panel that stands outdoors', () => {
  const { panel, parts } = example('larch-deck-guard');
  const drawing = detail(panel, 'stave foot', { scale: whole, parts });
  expect(measured(drawing, 'mm').map((size) => size.says)).toContain(12.8);
  expect(wordsOf(drawing)).toContain('Drain hole 6 mm');
  const inside = example('studio-divider');
  expect(wordsOf(detail(inside.panel, 'stave foot', { scale: whole, parts: inside.parts }))).not.toContain('Drain');
});
