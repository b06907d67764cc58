import { bracePlates, gateDetails, type Panel, sampleSlat, screenDetails, sideAt } from '@wattlewright/model';
import { describe, expect, test } from 'vitest';
import { boxOf, pointsOf } from '../../src/ink.ts';
import { standardScale } from '../../src/scale.ts';
import { backElevation, backMakers, hasBack } from '../../src/views/back.ts';
import { turned } from '../../src/views/backmirror.ts';
import { braceMakers } from '../../src/views/detailbrace.ts';
import { fittings } from '../../src/views/fittings.ts';
import { openingMakers } from '../../src/views/opening.ts';
import { faultsOf } from '../layout/faults.ts';
import { example, examples, isWithinBounds, measured, wordsOf } from './read.ts';

const small = (panel: Panel) => standardScale(panel.display.unit === 'mm' ? 0.1 : 0.0625, panel.display.unit);

describe('turned', () => {
  test.each(examples)(
    'turned(%s): what passed in front at the left passes behind at the right; twice is the panel',
    (name) => {
      const { panel } = example(name);
      const back = turned(panel);
      const last = panel.staves.count - 1;
      for (const course of panel.courses.bottoms.keys())
        for (const stave of panel.staves.lefts.keys())
          expect(sideAt(back, course, last - stave)).toBe(-sideAt(panel, course, stave));
      panel.rows.forEach(({ bend }, r) => {
        for (const share of [0, 0.21, 0.5, 0.83, 1]) {
          const x = panel.clear.width * share;
          const from = sampleSlat(back.rows[r]?.bend ?? bend, panel.clear.width - x);
          expect(from.z).toBeCloseTo(-sampleSlat(bend, x).z, 9);
          expect(from.slope).toBeCloseTo(sampleSlat(bend, x).slope, 9);
        }
      });
      expect(turned(back).weave).toEqual(panel.weave);
    },
  );
});

describe('backElevation', () => {
  test.each(examples)('backElevation(%s) stays in its bounds and carries no text on a text', (name) => {
    const { panel, parts } = example(name);
    const drawing = backElevation(panel, { scale: small(panel), parts });
    expect(isWithinBounds(drawing)).toBe(true);
    expect(faultsOf(drawing.marks)).toEqual([]);
  });
  test('backElevation(gate) tells the heights of hinges and brace ends, and how far in the plates sit', () => {
    const { panel, parts } = example('wash-house-gate');
    const drawing = backElevation(panel, { scale: small(panel), parts });
    const words = wordsOf(drawing);
    // Hinges 7 in from both ends of 60 5/8; brace on the corner joints, 2 1/2 in from foot and top, 1 1/4 from the edge.
    for (const text of ['7', '53 5⁄8', '1 1⁄4', '58 1⁄8', 'Turnbuckle']) expect(words).toContain(text);
    const { brace } = gateDetails(panel);
    const far = Math.min(brace?.latch.x ?? 0, panel.outside.width - (brace?.latch.x ?? 0));
    expect(measured(drawing, 'in').some(({ measures }) => Math.abs(measures - far) < 1e-6)).toBe(true);
  });
  test('braceMakers(gate) sizes each screw of the plate from the corner, and the plate takes them in', () => {
    const { panel, parts } = example('wash-house-gate');
    const [plate] = bracePlates(panel);
    const drawing = braceMakers(panel, parts)[0]?.make(standardScale(1, 'in'));
    if (!plate || !drawing) throw new Error('no plate');
    expect(plate.screws).toHaveLength(2);
    const sizes = measured(drawing, 'in').map(({ measures }) => measures);
    for (const { x, y } of plate.screws) {
      for (const far of [Math.min(x, panel.outside.width - x), panel.outside.height - y])
        expect(sizes.some((one) => Math.abs(one - far) < 1e-6)).toBe(true);
      expect(x > plate.from.x && x < plate.to.x && y > plate.from.y && y < plate.to.y).toBe(true);
    }
    expect(faultsOf(drawing.marks).filter((fault) => !fault.includes('No.'))).toEqual([]);
    expect(isWithinBounds(drawing)).toBe(true);
  });
  test('backElevation(guard with a cap) says that the cap is not shown', () => {
    const { panel, parts } = example('larch-deck-guard');
    expect(backElevation(panel, { scale: small(panel), parts }).title).toContain('cap rail not shown');
  });
  test('backElevation(window) tells the height of each stand-off block, and hasBack is false for a divider', () => {
    const { panel, parts } = example('tern-hollow-window');
    expect(wordsOf(backElevation(panel, { scale: small(panel), parts }))).toContain('Stand-off block');
    expect(screenDetails(panel).blocks?.places.length).toBeGreaterThan(0);
    expect(braceMakers(panel, parts)).toEqual([]);
    expect(hasBack(example('studio-divider').panel)).toBe(false);
    expect(backMakers(example('studio-divider').panel)).toEqual([]);
  });
});

describe('openingMakers', () => {
  test('openingMakers(gate) states 3/8 + 34 + 1/2 = 34 7/8, and 2 1/2 + 60 5/8 = 63 1/8', () => {
    const { panel, parts } = example('wash-house-gate');
    const [maker] = openingMakers(panel, parts);
    const drawing = maker?.make(small(panel));
    const inches = drawing ? measured(drawing, 'in').map(({ says }) => Math.round((says / 25.4) * 1e6) / 1e6) : [];
    for (const size of [0.375, 34, 0.5, 34.875, 2.5, 60.625, 63.125]) expect(inches).toContain(size);
    for (const chain of drawing?.chains ?? [])
      expect(chain.parts.reduce((sum, part) => sum + part, 0)).toBeCloseTo(chain.total, 6);
  });
  test('what stands round a window is called wall and sill, a guard stands between posts and over the floor', () => {
    const wordsRound = (name: 'tern-hollow-window' | 'larch-deck-guard'): string => {
      const { panel, parts } = example(name);
      const drawing = openingMakers(panel, parts)[0]?.make(small(panel));
      return drawing ? wordsOf(drawing) : '';
    };
    for (const word of ['wall', 'sill', 'gaps drawn wider']) expect(wordsRound('tern-hollow-window')).toContain(word);
    for (const word of ['post', 'floor']) expect(wordsRound('larch-deck-guard')).toContain(word);
    expect(wordsRound('tern-hollow-window')).not.toContain('opening');
  });
  test('posts beside a guard’s opening reach to the top of its cap, as in the key elevation', () => {
    const { panel, parts } = example('larch-deck-guard');
    const scale = small(panel);
    const drawing = openingMakers(panel, parts)[0]?.make(scale);
    const cap = Math.max(...fittings(panel).map(({ to }) => to.y));
    expect(cap).toBeGreaterThan(panel.outside.height + 1);
    const grey = (drawing?.marks ?? []).flatMap((mark) =>
      mark.kind === 'path' && mark.shade !== undefined && mark.role === 'paper' ? [boxOf(pointsOf(mark.path)).v0] : [],
    );
    expect(Math.min(...grey)).toBeCloseTo(-cap * scale.ratio, 6);
  });
  test('openingMakers of a divider is empty', () => {
    expect(openingMakers(example('studio-divider').panel)).toEqual([]);
  });
});
