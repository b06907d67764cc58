import type { Weight } from '../pen.ts';
import { face, shape } from './face.ts';
import { joined, long, readTables, search, tag, words, writeTables } from './table.ts';

/** Name of the lettering's family, as outputs call it. */
export const family = 'Wattlewright Lettering';

// What fontkit's published types say of this is not what it does.
interface Subset {
  /** Adds a glyph of the whole font and gives its number in the subset. */
  includeGlyph(id: number): number;
  encode(): Uint8Array;
}

/**
 * A TrueType file that sets exactly these printable texts: their glyphs, the kerning met between them, and true
 * fractions. Small enough to travel inside every drawing. Layout of the tables: OpenType specification.
 */
export function subsetFont(texts: Iterable<string>, weight: Weight): Uint8Array {
  const font = face(weight);
  const subset = font.createSubset() as unknown as Subset;
  const renumbered = new Map<number, number>();
  const glyph = (id: number): number => {
    const known = renumbered.get(id);
    if (known !== undefined) return known;
    const given = subset.includeGlyph(id);
    renumbered.set(id, given);
    return given;
  };
  const characters = new Map<number, number>();
  const kerns = new Map<number, number>();
  let fractions = false;
  for (const text of [...new Set(texts)].sort()) {
    for (const c of text) {
      const code = c.codePointAt(0) as number;
      characters.set(code, glyph(font.glyphForCodePoint(code).id));
    }
    fractions ||= text.includes('\u2044');
    const run = shape(text, weight);
    run.glyphs.forEach((one, i) => {
      const next = run.glyphs[i + 1];
      const kern = Math.round((run.positions[i]?.xAdvance ?? one.advanceWidth) - one.advanceWidth);
      const left = glyph(one.id);
      if (next && kern !== 0) kerns.set(left * 0x10000 + glyph(next.id), kern);
    });
  }
  const digits = fractions ? fractionDigits(weight, glyph) : [];
  for (const { code, plain } of digits) characters.set(code, plain);
  const tables = readTables(subset.encode());
  for (const [name, table] of tables) if (table.length === 0) tables.delete(name);
  tables.set('cmap', characterMap(characters));
  tables.set('name', names(weight));
  tables.set('post', words(3, 0, 0, 0, -75, 50, ...Array<number>(10).fill(0)));
  tables.set('OS/2', metrics(weight, [...characters.keys()]));
  if (digits.length > 0) tables.set('GSUB', fractionShaping(digits));
  if (kerns.size > 0) tables.set('kern', kerning(kerns));
  return writeTables(tables);
}

interface Digit {
  readonly code: number;
  readonly plain: number;
  readonly over: number;
  readonly under: number;
}

/** The ten digits as numbers of the subset: plain, over and under the bar of a fraction. */
function fractionDigits(weight: Weight, glyph: (id: number) => number): Digit[] {
  return Array.from({ length: 10 }, (_, digit) => {
    const [over, , under] = shape(`${digit}\u2044${digit}`, weight).glyphs;
    const code = 0x30 + digit;
    if (!over || !under) throw new Error(`missing fraction digit: ${digit}`);
    const plain = glyph(face(weight).glyphForCodePoint(code).id);
    return { code, plain, over: glyph(over.id), under: glyph(under.id) };
  });
}

/** Glyph substitution with the two features that shapers apply round U+2044: numerators and denominators. */
function fractionShaping(digits: readonly Digit[]): Uint8Array {
  const sorted = [...digits].sort((a, b) => a.plain - b.plain);
  const count = sorted.length;
  const lookup = (to: (digit: Digit) => number): Uint8Array =>
    words(1, 0, 1, 8, 2, 6 + 2 * count, count, ...sorted.map(to), 1, count, ...sorted.map((d) => d.plain));
  const under = lookup((d) => d.under);
  const over = lookup((d) => d.over);
  const scripts = words(1, ...tag('DFLT'), 8, 4, 0, 0, 0xffff, 2, 0, 1);
  const featureList = words(2, ...tag('dnom'), 14, ...tag('numr'), 20, 0, 1, 0, 0, 1, 1);
  const lookups = joined([words(2, 6, 6 + under.length), under, over]);
  const [s, f] = [10, 10 + scripts.length];
  return joined([words(1, 0, s, f, f + featureList.length), scripts, featureList, lookups]);
}

function kerning(kerns: ReadonlyMap<number, number>): Uint8Array {
  const pairs = [...kerns].sort(([a], [b]) => a - b).flatMap(([pair, value]) => [...long(pair), value]);
  const count = kerns.size;
  return words(0, 1, 0, 14 + 6 * count, 1, count, ...search(count, 6), ...pairs);
}

function characterMap(characters: ReadonlyMap<number, number>): Uint8Array {
  const sorted = [...characters].filter(([code]) => code < 0xffff).sort(([a], [b]) => a - b);
  const codes = [...sorted.map(([code]) => code), 0xffff];
  const count = codes.length;
  const deltas = [...sorted.map(([code, id]) => id - code), 1];
  return words(
    ...[0, 1, 3, 1, 0, 12],
    ...[4, 16 + 8 * count, 0, 2 * count, ...search(count, 2)],
    ...[...codes, 0, ...codes, ...deltas],
    ...Array<number>(count).fill(0),
  );
}

function names(weight: Weight): Uint8Array {
  const style = weight === 'regular' ? 'Regular' : 'SemiBold';
  const entries: [number, string][] = [
    [0, 'Made from Source Sans 3, © Adobe, SIL Open Font License 1.1'],
    [1, family],
    [2, style],
    [4, `${family} ${style}`],
    [6, `${family.replace(' ', '')}-${style}`],
  ];
  let at = 0;
  const records: number[] = [];
  const letters: number[] = [];
  for (const [id, text] of entries) {
    records.push(3, 1, 0x409, id, text.length * 2, at);
    letters.push(...Array.from({ length: text.length }, (_, i) => text.charCodeAt(i)));
    at += text.length * 2;
  }
  return words(0, entries.length, 6 + 12 * entries.length, ...records, ...letters);
}

function metrics(weight: Weight, codes: readonly number[]): Uint8Array {
  const font = face(weight);
  const bmp = codes.filter((code) => code < 0xffff);
  return words(
    ...[4, 500, weight === 'regular' ? 400 : 600, 5, 0],
    ...Array<number>(11).fill(0),
    ...Array<number>(5 + 8).fill(0),
    ...tag('NONE'),
    ...[0x40, Math.min(...bmp), Math.max(...bmp), font.ascent, font.descent, 0, font.ascent, -font.descent],
    ...[0, 0, 0, 0, font.xHeight, font.capHeight, 0, 32, 3],
  );
}
