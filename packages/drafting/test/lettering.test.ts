import { describe, expect, test } from 'vitest';
import { shape } from '../src/font/face.ts';
import { fitText, fractions, printable, textBox, textStart, textWidth, wrapText } from '../src/lettering.ts';
import { type TextMark, write } from '../src/mark.ts';

describe('textWidth is the width of the embedded font', () => {
  // Advances read by fontTools from the original Source Sans 3 Regular: digits 497, space 200, A 543, V 515;
  // numerators and denominators 367, enlarged to 444, fraction bar 86, widened to 126; the H is 656 of 1000 high. At 6.56 mm the font size is 10 mm.
  const rows: [string, number][] = [
    ['44', 9.94],
    ['44 44', 21.88],
    ['44 1⁄2', 22.08],
    ['44 13⁄16', 30.96],
    ['', 0],
  ];
  test.each(rows)('textWidth(%j, 6.56) is %f', (text, width) => {
    expect(textWidth(text, 6.56)).toBeCloseTo(width, 9);
  });
  test('textWidth("AV") is narrower than its letters apart: kerning counts', () => {
    expect(textWidth('AV', 3.5)).toBeLessThan(textWidth('A', 3.5) + textWidth('V', 3.5));
  });
  test('textWidth in semibold is wider', () => {
    expect(textWidth('Stave stick', 3.5, 'semibold')).toBeGreaterThan(textWidth('Stave stick', 3.5));
  });
  test('textWidth grows with the height and nothing else', () => {
    expect(textWidth('Rail 1⁄2', 7)).toBeCloseTo(2 * textWidth('Rail 1⁄2', 3.5), 12);
  });
});

describe('the digits of a fraction', () => {
  test.each(['regular', 'semibold'] as const)(
    'stand at least 0.7 of the height of others, within its line, in %s',
    (weight) => {
      const { height } = glyphBox('1', weight)[0] as Glyph;
      const [over, bar, under] = glyphBox('1⁄1', weight) as [Glyph, Glyph, Glyph];
      for (const one of [over, under]) expect(one.height / height).toBeGreaterThan(0.7);
      expect(under.low).toBeGreaterThanOrEqual(-0.05 * height);
      expect(over.low + over.height).toBeLessThan(1.15 * height);
      expect(bar.height).toBeGreaterThan(height);
    },
  );
});

interface Glyph {
  readonly low: number;
  readonly height: number;
}

function glyphBox(text: string, weight: 'regular' | 'semibold'): Glyph[] {
  return shape(text, weight).glyphs.map(({ bbox }) => ({ low: bbox.minY, height: bbox.maxY - bbox.minY }));
}

describe('printable leaves nothing blank', () => {
  const rows: [string, string, string[]][] = [
    ['Front elevation', 'Front elevation', []],
    ['Θύρα, Ωμέγα', 'Θύρα, Ωμέγα', []],
    ['Ёлка і щит', 'Ёлка і щит', []],
    ['5′ 2 3⁄8″ × 20° ± ½ Ø √ ← → ↑ ↓ ≤ ≥', '5′ 2 3⁄8″ × 20° ± ½ Ø √ ← → ↑ ↓ ≤ ≥', []],
    ['⌀ 6', 'Ø 6', []],
    ['Ａ１㎜', 'A1mm', []],
    ['é as e and accent: e\u0301', 'é as e and accent: é', []],
    ['Fir 🌲 gate', 'Fir [U+1F332] gate', ['🌲']],
    ['👩‍🔧', '[U+1F469]', ['👩‍🔧']],
    ['木格子', '□□□', ['木', '格', '子']],
    ['two\r\nlines\tand', 'two lines and', []],
    ['bell\u0007', 'bell□', ['\u0007']],
    ['half \ud83c pair', 'half □ pair', ['\ud83c']],
    ['zero\u200bwidth', 'zerowidth', []],
    ['</text><script>', '</text><script>', []],
  ];
  test.each(rows)('printable(%j)', (text, print, replaced) => {
    expect(printable(text)).toEqual({ text: print, replaced });
  });
});

describe('fractions', () => {
  const rows: [string, string][] = [
    ['44 1/2', '44 1⁄2'],
    ['5′ 2 13/16″', '5′ 2 13⁄16″'],
    ['1/2 x 3/4', '1⁄2 x 3⁄4'],
    ['24/11/2026', '24/11/2026'],
    ['2026/11', '2026/11'],
    ['0.1/2', '0.1/2'],
  ];
  test.each(rows)('fractions(%j) is %j', (text, out) => expect(fractions(text)).toBe(out));
});

describe('textBox', () => {
  const mark = (more: Partial<TextMark>): TextMark => ({
    ...write('note', 'HHH', [100, 50], { height: 3.3 }),
    ...more,
  });
  const width = textWidth('HHH', 3.3);
  const rows: [string, Partial<TextMark>, [number, number, number, number]][] = [
    ['at the start', {}, [100, 46.7, 100 + width, 50]],
    ['at the middle', { anchor: 'middle' }, [100 - width / 2, 46.7, 100 + width / 2, 50]],
    ['at the end', { anchor: 'end' }, [100 - width, 46.7, 100, 50]],
    ['turned a quarter reads upwards', { angle: 90 }, [96.7, 50 - width, 100, 50]],
    ['turned upside down', { angle: 180 }, [100 - width, 50, 100, 53.3]],
  ];
  test.each(rows)('textBox anchored %s', (_, more, [u0, v0, u1, v1]) => {
    const box = textBox(mark(more));
    expect(box.u0).toBeCloseTo(u0, 9);
    expect(box.v0).toBeCloseTo(v0, 9);
    expect(box.u1).toBeCloseTo(u1, 9);
    expect(box.v1).toBeCloseTo(v1, 9);
  });
  test('textStart of a text anchored at its end lies its width before', () => {
    expect(textStart(mark({ anchor: 'end' }))[0]).toBeCloseTo(100 - width, 9);
  });
});

describe('fitText and wrapText', () => {
  const text = 'Check against the wood before cutting';
  test('fitText leaves what fits', () => expect(fitText(text, 500, 3.5)).toBe(text));
  test.each([6, 10, 20, 40])('fitText to %f mm fits and ends with …', (width) => {
    const cut = fitText(text, width, 3.5);
    expect(cut.endsWith('…')).toBe(true);
    expect(textWidth(cut, 3.5)).toBeLessThanOrEqual(width);
  });
  test.each([15, 25, 60])('wrapText to %f mm keeps every word and fits each line', (width) => {
    const lines = wrapText(text, width, 2.5);
    expect(lines.join(' ')).toBe(text);
    for (const line of lines) expect(textWidth(line, 2.5)).toBeLessThanOrEqual(width);
  });
  test('wrapText breaks a word wider than the line', () => {
    expect(wrapText('WWWWWWWWWW', 10, 3.5).length).toBeGreaterThan(1);
    expect(wrapText('WWWWWWWWWW', 10, 3.5).join('')).toBe('WWWWWWWWWW');
  });
});
