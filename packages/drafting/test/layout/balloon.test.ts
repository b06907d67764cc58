import { describe, expect, it } from 'vitest';
import { balloon, cuttingPlane, detailCircle } from '../../src/layout/balloon.ts';
import { overlaps } from '../../src/layout/clearance.ts';
import { textBox } from '../../src/lettering.ts';
import { faultsOf, textsOf } from './faults.ts';

describe('balloon', () => {
  it('holds up to three signs inside its circle', () => {
    for (const text of ['B', '12', 'WW', 'B12']) expect(faultsOf(balloon([0, 0], text))).toEqual([]);
  });
});

describe('detailCircle', () => {
  it.each([0, 45, 90, 135, 180, 270])('its letter stands clear of the circle at %d°', (towards) => {
    expect(faultsOf(detailCircle({ at: [0, 0], radius: 8, letter: 'M', towards }))).toEqual([]);
  });
});

describe('cuttingPlane', () => {
  it.each([
    ['down', [0, 0], [100, 0]],
    ['up', [0, 0], [100, 0]],
    ['left', [0, 0], [0, 80]],
    ['right', [0, 0], [0, 80]],
  ] as const)('looking %s carries its letter at both ends, clear of lines', (looking, from, to) => {
    const marks = cuttingPlane({ from, to, letter: 'A', looking });
    expect(textsOf(marks).map(({ text, height }) => [text, height])).toEqual([
      ['A', 5],
      ['A', 5],
    ]);
    expect(faultsOf(marks)).toEqual([]);
  });

  it('its arrows point the way one looks', () => {
    const heads = cuttingPlane({ from: [0, 0], to: [100, 0], letter: 'A', looking: 'down' }).filter(
      (mark) => mark.kind === 'path' && mark.shade === 0,
    );
    expect(heads.map((mark) => mark.kind === 'path' && mark.path[0])).toEqual([
      ['M', 0, 7],
      ['M', 100, 7],
    ]);
  });

  it('both letters stand apart even on a short line', () => {
    const [a, b] = textsOf(cuttingPlane({ from: [0, 0], to: [14, 0], letter: 'A', looking: 'up' })).map(textBox);
    expect(overlaps(a as never, b as never)).toBe(false);
  });
});
