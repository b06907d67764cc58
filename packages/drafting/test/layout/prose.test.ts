import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contains, grown } from '../../src/layout/clearance.ts';
import { type Block, prosePages } from '../../src/layout/prose.ts';
import { textBox } from '../../src/lettering.ts';
import { faultsOf, textsOf } from './faults.ts';

const base = { name: 'making', title: 'Making', alt: 'How to make it.' };
const step = (text: string): Block => ({ kind: 'step', text });

describe('prosePages', () => {
  it('numbers steps in order through headings and pages', () => {
    const blocks: Block[] = [
      step('Plane.'),
      { kind: 'heading', text: 'Weave' },
      ...Array.from({ length: 8 }, () => step('Press down.')),
    ];
    const pages = prosePages({ ...base, blocks, width: 80, height: 25 });
    const numbers = pages.flatMap(({ marks }) =>
      textsOf(marks).flatMap(({ text }) => (/^\d+\.$/.test(text) ? [text] : [])),
    );
    expect(numbers).toEqual(['1.', '2.', '3.', '4.', '5.', '6.', '7.', '8.', '9.']);
    expect(pages.length).toBeGreaterThan(1);
    expect(pages[1]).toMatchObject({ name: 'making-2', title: `Making (2 of ${pages.length})` });
  });

  it('text without a title has none on any page', () => {
    const blocks = Array.from({ length: 9 }, () => step('Press down.'));
    const pages = prosePages({ ...base, title: '', blocks, width: 80, height: 25 });
    expect(pages.length).toBeGreaterThan(1);
    for (const { title } of pages) expect(title).toBe('');
  });

  it('columns left empty are free for what comes next', () => {
    const blocks = [step('One.'), step('Two.')];
    const [page] = prosePages({ ...base, blocks, width: 188, height: 100, columns: 2 });
    expect(page?.bounds.u1).toBeCloseTo(90, 9);
    const [full] = prosePages({ ...base, blocks, width: 188, height: 8, columns: 2 });
    expect(full?.bounds.u1).toBeCloseTo(188, 9);
  });

  it('a heading stays with what follows', () => {
    const blocks: Block[] = [step('One.'), step('Two.'), { kind: 'heading', text: 'Weave' }, step('Three.')];
    // Two steps take 2 · 4.75 + 1.5 = 11 mm and the heading 5 + 6.65 = 11.65; a page of 24 holds them but not the step.
    const [first, second] = prosePages({ ...base, blocks, width: 80, height: 24 });
    expect(textsOf(first?.marks ?? []).map(({ text }) => text)).not.toContain('Weave');
    expect(textsOf(second?.marks ?? [])[0]?.text).toBe('Weave');
  });

  it('a caution carries its name and a bar, and headings are larger', () => {
    const [page] = prosePages({
      ...base,
      blocks: [
        { kind: 'heading', text: 'Ripping' },
        { kind: 'caution', text: 'Use a push stick.' },
      ],
      width: 80,
      height: 100,
    });
    expect(page?.marks.filter(({ role }) => role === 'accent')).toHaveLength(1);
    expect(textsOf(page?.marks ?? []).map(({ height }) => height)).toEqual([3.5, 2.5, 2.5]);
    expect(textsOf(page?.marks ?? []).map(({ text }) => text)).toEqual(['Ripping', 'CAUTION', 'Use a push stick.']);
  });

  it('figures stand in two columns, a name without a value heavier over those that are its own', () => {
    const rows = [
      ['stile', '875 mm'],
      ['Bay 1', ''],
      ['staves', '5'],
    ] as const;
    const [page] = prosePages({ ...base, blocks: [{ kind: 'figures', text: '', rows }], width: 80, height: 100 });
    const texts = textsOf(page?.marks ?? []);
    const of = (words: string) => texts.find(({ text }) => text === words);
    expect(of('Bay 1')?.role).toBe('title');
    expect(of('stile')?.at[0]).toBe(of('staves')?.at[0]);
    expect(of('875\u00a0mm')?.at[0]).toBe(of('5')?.at[0]);
    expect(of('875\u00a0mm')?.at[1]).toBe(of('stile')?.at[1]);
    expect(of('5')?.at[0]).toBeGreaterThan((of('staves')?.at[0] ?? 0) + 20);
  });

  it('together: a step with its caution, text and figures moves on whole where a column holds it', () => {
    const blocks: Block[] = [
      step('Plane'),
      ...Array.from({ length: 12 }, (): Block => ({ kind: 'bullet', text: 'All faces.' })),
      step('Groove'),
      { kind: 'caution', text: 'Hands off.' },
      { kind: 'bullet', text: 'Both rails.' },
      { kind: 'figures', text: '', rows: [['depth', '12 mm']] },
    ];
    const all = prosePages({ ...base, blocks, width: 80, height: 1000 })[0]?.bounds.v1 ?? 0;
    const on = { ...base, blocks, width: 80, height: all - 2 };
    const firstOf = (together: boolean) =>
      textsOf(prosePages({ ...on, together })[0]?.marks ?? []).map(({ text }) => text);
    expect(firstOf(false)).toContain('Groove');
    expect(firstOf(true)).not.toContain('Groove');
    const second = textsOf(prosePages({ ...on, together: true })[1]?.marks ?? []).map(({ text }) => text);
    expect(second).toEqual(expect.arrayContaining(['Groove', 'Hands off.', 'Both rails.', '12\u00a0mm']));
  });

  it('together: a long step goes on in the next column where moving it would cost a page', () => {
    const bullets = (text: string, count: number): Block[] =>
      Array.from({ length: count }, (): Block => ({ kind: 'bullet', text }));
    const blocks: Block[] = [
      step('Plane'),
      ...bullets('All faces.', 4),
      step('Groove'),
      ...bullets('Both rails.', 7),
      step('Set'),
      ...bullets('All staves.', 5),
    ];
    const all = prosePages({ ...base, blocks, width: 80, height: 1000 })[0]?.bounds.v1 ?? 0;
    const on = { ...base, blocks, width: 80, height: all / 2 + 4 };
    expect(prosePages(on)).toHaveLength(2);
    const pages = prosePages({ ...on, together: true });
    expect(pages).toHaveLength(2);
    expect(textsOf(pages[0]?.marks ?? []).map(({ text }) => text)).toContain('Groove');
  });

  it('a step that is a title is heavier than one that is a sentence, and stays with what follows', () => {
    const blocks: Block[] = [step('Plane.'), step('Groove the rails'), { kind: 'bullet', text: 'Both of them.' }];
    const [whole] = prosePages({ ...base, blocks, width: 80, height: 100 });
    const roleOf = (words: string): string | undefined =>
      textsOf(whole?.marks ?? []).find(({ text }) => text === words)?.role;
    expect([roleOf('Plane.'), roleOf('Groove the rails')]).toEqual(['note', 'title']);
    // Lines of 4.75: the first step, 3 and the title make 12.5; the bullet would end at 18.75.
    const [first] = prosePages({ ...base, blocks, width: 80, height: 15 });
    expect(textsOf(first?.marks ?? []).map(({ text }) => text)).toEqual(['1.', 'Plane.']);
  });

  it('what is said further of a caution stands under its words and does not leave it', () => {
    const blocks: Block[] = [
      step('One.'),
      { kind: 'caution', text: 'CAUTION, Gate: No brace.' },
      { kind: 'more', text: 'It has none.' },
    ];
    const [whole] = prosePages({ ...base, blocks, width: 80, height: 100 });
    const at = (words: RegExp) => textsOf(whole?.marks ?? []).find(({ text }) => words.test(text))?.at[0];
    expect(at(/^It has/)).toBe(at(/^CAUTION/));
    // A step of 4.75, then 1.5 and 4.75 of the caution fit 12 mm; its 5.05 more do not, so both go on.
    const [first, second] = prosePages({ ...base, blocks, width: 80, height: 12 });
    expect(textsOf(first?.marks ?? []).map(({ text }) => text)).toEqual(['1.', 'One.']);
    expect(textsOf(second?.marks ?? []).at(-1)?.text).toBe('It has none.');
  });

  it('what goes on in another column has its title said again over it; the first column says it once', () => {
    const bullets = Array.from({ length: 8 }, (_, i): Block => ({ kind: 'bullet', text: `Stave ${i}.` }));
    const [first, second] = prosePages({
      ...base,
      blocks: [step('Set the staves'), ...bullets],
      width: 80,
      height: 30,
    });
    const texts = (page: typeof first) => textsOf(page?.marks ?? []).map(({ text }) => text);
    expect(texts(first).slice(0, 2)).toEqual(['1.', 'Set the staves']);
    expect(texts(second).slice(0, 4)).toEqual(['1.', 'Set the staves, continued', '•', 'Stave 4.']);
  });

  it('a short table stands with the text before it; of a long one no row stands alone', () => {
    const rows = (count: number) => Array.from({ length: count }, (_, i) => [`stave ${i}`, `${i}`] as const);
    const pagesOf = (count: number, height: number) =>
      prosePages({
        ...base,
        blocks: [
          step('Plane'),
          { kind: 'bullet', text: 'All.' },
          step('Mark'),
          { kind: 'bullet', text: 'Both rails.' },
          { kind: 'figures', text: '', rows: rows(count) },
        ],
        width: 80,
        height,
      }).map(({ marks }) => textsOf(marks).map(({ text }) => text));
    // Down to the last bullet the text takes some 26 mm, and a row 5.35.
    const [first, second] = pagesOf(3, 40);
    expect(first).not.toContain('Mark');
    expect(second).toEqual(expect.arrayContaining(['Mark', 'Both rails.', 'stave 0', 'stave 2']));
    for (let height = 40; height < 90; height += 1)
      for (const page of pagesOf(9, height)) {
        const own = page.filter((text) => /^stave/.test(text));
        expect(own.length).not.toBe(1);
      }
  });

  it('a caution is not broken', () => {
    const caution: Block = { kind: 'caution', text: 'Hands off the blade. '.repeat(12).trim() };
    const [whole] = prosePages({ ...base, blocks: [caution], width: 80, height: 100 });
    const count = textsOf(whole?.marks ?? []).length;
    const pages = prosePages({ ...base, blocks: [step('One.'), caution], width: 80, height: 38 });
    expect(pages.map(({ marks }) => textsOf(marks).length)).toEqual([2, count]);
  });

  it('a stop is framed all round, and its frame is not broken', () => {
    const text = `STOP, Gate: ${'the latch is in the air '.repeat(6).trim()}.`;
    const [page] = prosePages({ ...base, blocks: [{ kind: 'stop', text }], width: 80, height: 100 });
    const lines = textsOf(page?.marks ?? []).filter(({ text }) => text !== 'STOP').length;
    // Two sides to a line, one edge over and one under it all.
    expect(page?.marks.filter(({ role }) => role === 'accent')).toHaveLength(2 * lines + 2);
    const after = prosePages({ ...base, blocks: [step('One.'), { kind: 'stop', text }], width: 80, height: 22 });
    expect(after.map(({ marks }) => marks.some(({ role }) => role === 'accent'))).toEqual([false, true]);
  });

  it('columns of the last page are about equally long when balanced', () => {
    const blocks = Array.from({ length: 10 }, (_, i) => step(`Press ${i}.`));
    const heightOf = (balanced: boolean) =>
      prosePages({ ...base, blocks, width: 180, height: 100, columns: 2, balanced })[0]?.bounds.v1 as number;
    // Five of ten steps: 5 · 4.75 + 4 · 3 = 35.75 mm.
    expect(heightOf(true)).toBeCloseTo(35.75, 2);
    expect(heightOf(false)).toBeGreaterThan(70);
  });

  it('blocks that are to be kept together move on together', () => {
    const blocks: Block[] = [
      step('One.'),
      { kind: 'bullet', text: 'Two.', keep: true },
      { kind: 'bullet', text: 'Three.' },
    ];
    const [first] = prosePages({ ...base, blocks, width: 80, height: 13 });
    expect(textsOf(first?.marks ?? []).map(({ text }) => text)).toEqual(['1.', 'One.']);
  });

  it('no words are one empty page', () => {
    expect(prosePages({ ...base, blocks: [], width: 80, height: 100 }).map(({ marks }) => marks)).toEqual([[]]);
  });

  it('every word is printed once, in order, inside its page, and nothing overlaps', () => {
    const kind = fc.constantFrom<Block['kind']>('heading', 'paragraph', 'step', 'bullet', 'caution');
    const words = fc.array(fc.constantFrom('slat', 'stave', 'groove', 'check', 'against', 'course'), {
      minLength: 1,
      maxLength: 40,
    });
    const block = fc.record({ kind, text: words.map((some) => some.join(' ')) });
    // A title that is said again begins as the title does, with its number.
    const again = / ?t\d+(?: (?!t\d)[a-z]+)*, continued/g;
    fc.assert(
      fc.property(fc.array(block, { maxLength: 12 }), fc.integer({ min: 1, max: 3 }), (some, columns) => {
        const blocks = some.map(({ kind: of, text }, i): Block => ({ kind: of, text: `t${i} ${text}` }));
        const pages = prosePages({ ...base, blocks, width: 180, height: 60, columns });
        const printed = pages.flatMap(({ marks }) => textsOf(marks).map(({ text }) => text));
        const said = printed.filter((text) => !/^(\d+\.|•|CAUTION)$/.test(text)).join(' ');
        expect(said.replaceAll(again, '').trim()).toBe(blocks.map(({ text }) => text).join(' '));
        for (const { marks, bounds } of pages) {
          expect(bounds.v1).toBeLessThanOrEqual(60 + 1e-9);
          expect(faultsOf(marks)).toEqual([]);
          for (const text of textsOf(marks)) expect(contains(grown(bounds, 0.5), textBox(text))).toBe(true);
        }
      }),
      { seed: 20261124, numRuns: 80 },
    );
  });
});
