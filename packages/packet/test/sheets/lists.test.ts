import { readFileSync } from 'node:fs';
import type { Layout } from '@wattlewright/drafting';
import { partsOf } from '@wattlewright/model';
import { describe, expect, test } from 'vitest';
import { coverSheet } from '../../src/sheets/cover.ts';
import { listSheets } from '../../src/sheets/lists.ts';
import { pageFor } from '../../src/sheets/page.ts';
import { closingSheets } from '../../src/sheets/words.ts';
import { settledOf } from './settled.ts';

const tern = settledOf(readFileSync(new URL('../../../../examples/tern-hollow-window.yaml', import.meta.url), 'utf8'));

describe('listSheets', () => {
  const panel = { name: 'Small', size: { width: 500, height: 400 } };
  test('lists that lie the same way share a sheet where it holds them, and its title block names them all', () => {
    const settled = settledOf({ job: 'Small', unit: 'mm', panels: [panel], paper: { sheets: 'A3' } });
    const sheets = listSheets(settled, pageFor(settled.job));
    const shared = sheets.filter(({ subject }) => subject?.includes('; '));
    expect(shared.length).toBeGreaterThan(0);
    const drawings = sheets.flatMap((sheet) => sheet.drawings);
    expect(sheets.length).toBeLessThan(drawings.length);
    const names = drawings.map(({ name }) => name);
    expect(names.indexOf('screws')).toBeGreaterThan(names.indexOf('parts-list'));
  });
});

describe('listSheets, as measured', () => {
  test('with everything in hand there is no sheet for the saw', () => {
    const panel = { name: 'Small', size: { width: 1000, height: 1200 }, measured: { stack: 1109 } };
    const settled = settledOf({ job: 'Small', unit: 'mm', panels: [panel] });
    const parts = partsOf(settled.panels, settled.job);
    const subjects = listSheets({ ...settled, parts }, pageFor(settled.job)).map(({ subject = '' }) => subject);
    expect(subjects.join()).toMatch(/Parts list/);
    expect(subjects.join()).not.toMatch(/saw|Yield|Cut sheets/);
  });
});

describe('coverSheet', () => {
  test('the cover makes its picture smaller rather than go on over a second sheet', () => {
    const lines = Array.from({ length: 7 }, (_, i) => `Chapter ${i}: sheets ${i} to ${i + 1}, and some words more`);
    expect(coverSheet(tern, pageFor(tern.job), () => ({ lines, findings: 9 }))).toHaveLength(1);
  });
  test('notes past the third stand after the findings, and the cover says so', () => {
    const notes = ['one', 'two', 'three', 'four', 'five'].map((word) => `note ${word}`);
    const panel = { name: 'Small', size: { width: 500, height: 400 } };
    const settled = settledOf({ job: 'Small', unit: 'mm', panels: [panel], notes });
    const words = (layouts: readonly Layout[]) =>
      layouts
        .flatMap(({ drawings }) => drawings.flatMap(({ marks }) => marks))
        .flatMap((mark) => (mark.kind === 'text' ? [mark.text.replaceAll('\u00a0', ' ')] : []))
        .join(' ');
    const cover = words(coverSheet(settled, pageFor(settled.job), () => ({ lines: [], findings: 9 })));
    for (const note of notes.slice(0, 3)) expect(cover).toContain(note);
    expect(cover).toMatch(/2 more notes: after the findings, sheet 9 on/);
    const closing = words(closingSheets(settled, pageFor(settled.job)));
    for (const note of notes.slice(3)) expect(closing).toContain(note);
    expect(closing).not.toContain('note one');
  });
});
