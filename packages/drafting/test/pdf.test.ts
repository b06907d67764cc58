import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, test } from 'vitest';
import { toPdf } from '../src/pdf.ts';
import { layers } from '../src/pen.ts';
import { readByPdfjs } from './support/readers.ts';
import { sampleSheet } from './support/samples.ts';

const sheets = [
  sampleSheet(),
  sampleSheet({ label: 'B-2', title: 'Σταθερό φύλλο', width: 210, height: 297, fullSize: true }),
];
const meta = { title: 'Tern Hollow & Θύρα', language: 'en-GB', date: '2026-11-24' };

async function open(pdf: Uint8Array): ReturnType<typeof getDocument>['promise'] {
  return await getDocument({ data: pdf.slice(), verbosity: 0 }).promise;
}

describe('toPdf writes a document that pdf.js reads back', async () => {
  const pdf = await toPdf(sheets, meta);
  const document = await open(pdf);
  test('a page a sheet, each as large as its sheet', async () => {
    expect(document.numPages).toBe(2);
    const { view } = await document.getPage(2);
    // 1 pt is 1/72 in (ISO 32000-1): 210 mm = 595.2756 pt, 297 mm = 841.8898 pt.
    expect(view[2]).toBeCloseTo(595.2756, 4);
    expect(view[3]).toBeCloseTo(841.8898, 4);
  });
  test('title, language, dates', async () => {
    const { info } = await document.getMetadata();
    expect(info).toMatchObject({ Title: meta.title, Language: 'en-GB', CreationDate: 'D:20261124000000Z' });
  });
  test('page labels', async () => expect(await document.getPageLabels()).toEqual(['1', 'B-2']));
  test('bookmarks', async () => {
    expect((await document.getOutline()).map(({ title }) => title)).toEqual(['1  Sample sheet', 'B-2  Σταθερό φύλλο']);
  });
  test('a full-size sheet asks not to be scaled; others do not', async () => {
    expect(await document.getViewerPreferences()).toMatchObject({ PrintScaling: 'None', Duplex: 'Simplex' });
    const plain = await open(await toPdf([sampleSheet()], meta));
    expect((await plain.getViewerPreferences()) ?? {}).not.toHaveProperty('PrintScaling');
  });
  test('layers, all on', async () => {
    const config = await document.getOptionalContentConfig();
    const groups = [...config] as [string, { name: string; visible: boolean }][];
    expect(groups.map(([, { name }]) => name)).toEqual([...layers]);
    expect(groups.every(([, { visible }]) => visible)).toBe(true);
  });
  test('tagged figures with alternative text, words of the title block as a paragraph', async () => {
    expect(await document.getMarkInfo()).toMatchObject({ Marked: true });
    const tree = JSON.stringify(await (await document.getPage(1)).getStructTree());
    expect(tree).toContain('"role":"Figure"');
    expect(tree).toContain('"alt":"One of each kind of ink."');
    expect(tree).toContain('"role":"P"');
  });
  test('text can be taken out as it was written, fractions, Greek and Cyrillic too', async () => {
    const words = (await readByPdfjs(pdf)).texts.map(({ text }) => text).join('|');
    for (const text of ['44 13⁄16', 'Θύρα', 'щит', 'AV Staves', '</text><script>', 'Sheet 1 of 1']) {
      expect(words).toContain(text);
    }
  });
});

describe('toPdf repeats', () => {
  test('the same sheets give the same bytes, dated or not', async () => {
    expect(await toPdf(sheets, meta)).toEqual(await toPdf(sheets, meta));
    expect(await toPdf(sheets, { title: 'No date' })).toEqual(await toPdf(sheets, { title: 'No date' }));
  });
  test('line widths, dashes and greys are those of the pens, in points', async () => {
    const text = new TextDecoder('latin1').decode(await toPdf([sampleSheet()], { ...meta, compress: false }));
    // 0.5 mm = 1.417323 pt, 0.25 mm = 0.708661 pt; dash of 12 widths = 3 mm = 8.503937 pt.
    for (const operator of ['1.417323 w', '0.708661 w', '[8.503937 2.125984] 0 d']) expect(text).toContain(operator);
  });
});

describe('toPdf refuses', () => {
  test('no sheets', async () => await expect(toPdf([], meta)).rejects.toThrow('invalid sheets: none'));
  test('a date that is none', async () => {
    await expect(toPdf(sheets, { ...meta, date: '24/11/2026' })).rejects.toThrow('invalid date: 24/11/2026');
  });
});
