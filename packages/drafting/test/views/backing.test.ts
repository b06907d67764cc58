import { type Panel, type Part, type ScreenUse, screwSchedule } from '@wattlewright/model';
import { expect, test } from 'vitest';
import { standardScale } from '../../src/scale.ts';
import { backingOf } from '../../src/views/backing.ts';
import { detail } from '../../src/views/detail.ts';
import { cutPlanes } from '../../src/views/detailkey.ts';
import { verticalSection } from '../../src/views/verticalsection.ts';
import { weaveSection } from '../../src/views/weavesection.ts';
import { example, inkOf, measured, onPath, plain, wordsOf } from './read.ts';

const blockOf = (parts: readonly Part[]): string => parts.find(({ role }) => role === 'stand-off block')?.letter ?? '';

test('backingOf the window screen: a frame as far behind the stiles as the blocks are deep, three blocks up each', () => {
  const { panel } = example('tern-hollow-window');
  const backing = backingOf(panel);
  expect(backing?.face).toBeCloseTo(-panel.stile.depth / 2 - (panel.details as ScreenUse).standoff, 9);
  expect(backing?.name).toBe('Window frame');
  expect(backing?.blocks.filter(({ right }) => right).length).toBe(3);
  expect(backingOf(example('studio-divider').panel)).toBeUndefined();
});

test('weaveSection cuts the block that its plane passes, and sees one that lies under it', () => {
  const { panel, parts } = example('tern-hollow-window');
  const { y } = cutPlanes(panel).down;
  const { blocks, half } = backingOf(panel) as NonNullable<ReturnType<typeof backingOf>>;
  const passes = blocks.some((block) => Math.abs(block.y - y) < half);
  const drawing = weaveSection(panel, { scale: standardScale(0.25, 'in'), parts });
  const of = blockOf(parts);
  expect(inkOf(drawing, of, 'edge', 'edge-light').length).toBe(2);
  expect(inkOf(drawing, of, 'hatch').length).toBe(passes ? 2 : 0);
  expect(wordsOf(drawing)).toContain(passes ? 'Stand-off block, cut' : 'Stand-off block, below');
  expect(wordsOf(drawing)).toContain('Window frame');
});

test('verticalSection shows the blocks of the left stile at their heights behind the frame', () => {
  const { panel, parts } = example('tern-hollow-window');
  const scale = standardScale(0.25, 'in');
  const drawing = verticalSection(panel, { scale, parts });
  const boxes = inkOf(drawing, blockOf(parts), 'edge-light').map((mark) =>
    onPath(mark).map(([, v]) => -v / scale.ratio),
  );
  const middles = boxes.map((vs) => (Math.min(...vs) + Math.max(...vs)) / 2);
  const blocks = backingOf(panel)?.blocks.filter(({ right }) => !right) ?? [];
  expect(middles.length).toBe(blocks.length);
  for (const [i, { y }] of blocks.entries()) expect(middles[i]).toBeCloseTo(y, 6);
});

test('detail of the window’s fixing: thread in the frame and tip to glass make the room before the glass', () => {
  const { panel, parts } = example('tern-hollow-window');
  const drawing = detail(panel, 'fixing', { scale: standardScale(1, 'in'), parts });
  const inches = measured(drawing, 'in').map(({ says }) => says / 25.4);
  // Block, thread and room to spare make the distance from the frame to the glass.
  const { details, stile } = panel;
  const { standoff, glass = 0 } = details as ScreenUse;
  const length = screwSchedule(panel).find(({ joint }) => joint === 'mounting')?.fastener.length ?? 0;
  const thread = length - stile.depth - standoff;
  expect(thread).toBeGreaterThan(0);
  for (const size of [standoff, thread, glass - standoff - thread, glass])
    expect(inches.some((one) => Math.abs(one - size / 25.4) < 1e-6)).toBe(true);
});

test('detail of a fixing on a wall tells slats that would run into it, and draws a gap to a post of unknown place', () => {
  const wall = plain({
    size: { width: 900, height: 900 },
    stave: { depth: 30 },
    rail: { depth: 38 },
    stile: { depth: 38 },
    slat: { thickness: 6 },
    weave: 'two-over-two basket',
    screen: { mounting: 'stiles' },
  });
  const scale = standardScale(1, 'mm');
  const words = (panel: Panel, parts: readonly Part[]): string => wordsOf(detail(panel, 'fixing', { scale, parts }));
  expect(words(wall.panel, wall.parts)).toContain('Clash: slats reach');
  const post = plain({ use: 'guard', size: { width: 900, height: 900 } });
  expect(words(post.panel, post.parts)).toContain('the job gives no opening');
});
