import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { toSvg } from '../src/svg.ts';
import { lacking } from './support/outside.ts';
import { apart, pictureOfPdf, pictureOfSvg } from './support/pictures.ts';
import { sampleSheet } from './support/samples.ts';

const missing = lacking('pdftoppm');
/** A sheet of whole pixels, so that neither renderer shifts its picture by part of one. */
const inches = { width: 6 * 25.4, height: 4 * 25.4 };

describe.skipIf(missing)(`pictures of both outputs${missing ? ` (${missing})` : ''}`, () => {
  const folder = mkdtempSync(join(tmpdir(), 'pictures-'));
  afterAll(() => rmSync(folder, { recursive: true }));

  test.each(['font', 'outlines'] as const)('toSvg with %s looks like toPdf', async (text) => {
    const sheet = sampleSheet(inches);
    const pdf = await pictureOfPdf(sheet, folder);
    const svg = pictureOfSvg(toSvg(sheet, { text }), sheet, folder);
    expect(Math.abs(svg.height - pdf.height)).toBeLessThanOrEqual(1);
    expect(apart(pdf, svg)).toBe(0);
  });

  test('the comparison sees one numeral changed', async () => {
    const sheet = sampleSheet(inches);
    const furniture = sheet.furniture.map((mark) => (mark.kind === 'text' ? { ...mark, text: 'Sheet 7 of 1' } : mark));
    const pdf = await pictureOfPdf(sheet, folder);
    expect(
      apart(pdf, pictureOfSvg(toSvg({ ...sheet, furniture }, { text: 'outlines' }), sheet, folder)),
    ).toBeGreaterThan(3);
  });

  test('the comparison sees one line moved by 0.4 mm', async () => {
    const sheet = sampleSheet(inches);
    const furniture = sheet.furniture.map((mark) =>
      mark.kind === 'path'
        ? { ...mark, path: mark.path.map((s) => (s[0] === 'L' ? (['L', s[1] - 0.4, s[2]] as const) : s)) }
        : mark,
    );
    const pdf = await pictureOfPdf(sheet, folder);
    const svg = pictureOfSvg(toSvg({ ...sheet, furniture }, { text: 'outlines' }), sheet, folder);
    expect(apart(pdf, svg)).toBeGreaterThan(100);
  });
});
