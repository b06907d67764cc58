import { describe, expect, test } from 'vitest';
import { overlaps } from '../../src/layout/clearance.ts';
import { textBox } from '../../src/lettering.ts';
import type { Drawing, Mark, Sheet } from '../../src/mark.ts';
import { stroke, write } from '../../src/mark.ts';
import { rectangle } from '../../src/path.ts';
import { proof } from '../../src/proofing/proof.ts';
import { gather } from '../../src/tiling/gather.ts';
import { tile } from '../../src/tiling/tile.ts';

/** A thing of a size with its name in it. */
function thing(name: string, width: number, height: number): Drawing {
  const box = { u0: 0, v0: 0, u1: width, v1: height };
  return {
    name,
    title: `Template: ${name}`,
    scale: 1,
    scaleText: '1:1',
    marks: [stroke('edge', rectangle(box)), write('label', name, [5, 10], { height: 2.5 })],
    bounds: box,
    alt: `${name}.`,
  };
}

const namesOn = ({ marks }: Drawing): string[] => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
const levelBar = ({ furniture }: Sheet): Mark =>
  furniture.find((mark) => mark.kind === 'text' && mark.text === '100 mm') as Mark;

describe('gather', () => {
  test('gather puts small drawings on one page, clear of each other, each with its ink', () => {
    const pages = gather([thing('one', 100, 90), thing('two', 60, 90), thing('three', 120, 80)], { paper: 'A3' });
    expect(pages).toHaveLength(1);
    const [page] = pages as [Drawing];
    expect(namesOn(page)).toEqual(['one', 'two', 'three']);
    expect(page.title).toBe('Template: one; Template: two; Template: three');
    const sheets = tile(page, { paper: 'A3' });
    expect(sheets).toHaveLength(1);
    expect(proof(sheets)).toEqual([]);
  });

  test('gather leaves by itself what wants several pages', () => {
    const pages = gather([thing('long', 1000, 70), thing('one', 60, 60), thing('two', 60, 60)], { paper: 'A4' });
    expect(pages.map(namesOn)).toEqual([['long'], ['one', 'two']]);
    expect(pages[0]?.bounds).toEqual({ u0: 0, v0: 0, u1: 1000, v1: 70 });
  });

  test('gather lays sticks side by side on a roll, and templates where they leave room', () => {
    const things = [
      thing('lying', 2000, 100),
      thing('upright one', 120, 2200),
      thing('upright two', 120, 1800),
      thing('end', 150, 150),
      thing('corner', 150, 150),
    ];
    const pages = gather(things, { paper: 'roll 610' });
    expect(pages.map(namesOn)).toEqual([
      ['lying', 'end', 'corner'],
      ['upright one', 'upright two'],
    ]);
    const sheets = pages.flatMap((page) => tile(page, { paper: 'roll 610' }));
    expect(sheets).toHaveLength(2);
    expect(proof(sheets)).toEqual([]);
  });
});

describe('tile on a roll', () => {
  test('tile sets the bars within a hand of a single stick, upright and lying', () => {
    for (const stick of [thing('lying', 2000, 100), thing('upright', 120, 2200)]) {
      const [sheet] = tile(stick, { paper: 'roll 610' }) as [Sheet];
      const bars = sheet.furniture.filter((mark) => mark.kind === 'text' && mark.text === '4 in');
      expect(bars).toHaveLength(2);
      const stickEnd = { u: stick.bounds.u1 + 60, v: stick.bounds.v1 + 60 };
      const bar = levelBar(sheet);
      if (bar.kind === 'text') expect(textBox(bar).v1 - stickEnd.v).toBeLessThan(60);
      const upright = sheet.furniture.find((mark) => mark.kind === 'text' && mark.text === '4 in' && mark.angle === 90);
      if (upright?.kind === 'text') {
        const box = textBox(upright);
        const reach = { u0: 0, v0: 0, u1: stickEnd.u, v1: stickEnd.v + 130 };
        expect(overlaps(box, reach)).toBe(true);
      }
      expect(proof([sheet])).toEqual([]);
    }
  });
});
