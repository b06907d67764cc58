import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contains } from '../../src/layout/clearance.ts';
import { textBox } from '../../src/lettering.ts';
import { BLOCK_HEIGHT, BLOCK_WIDTH } from '../../src/sheet/frame.ts';
import { CHECK_FIRST, titleBlock } from '../../src/sheet/titleblock.ts';
import { faultsOf, textsOf } from '../layout/faults.ts';

const box = { u0: 20, v0: 200, u1: 20 + BLOCK_WIDTH, v1: 200 + BLOCK_HEIGHT };
const facts = { subject: 'Front elevation', scale: '1:10', sheet: 2, of: 5, paper: 'A3' };
const meta = { owner: 'Alder Lane Woodshop', title: 'Tern Hollow wash house', number: 'TH-014', unit: 'inches' };

describe('titleBlock', () => {
  it('carries the mandatory fields of ISO 7200, scale, unit, sheet n of m and the warning', () => {
    const texts = textsOf(
      titleBlock(box, { ...meta, revision: 'B', date: '2026-03-02', drawn: 'M. Quill' }, facts),
    ).map(({ text }) => text);
    for (const said of [
      meta.owner,
      meta.title,
      meta.number,
      '2026-03-02',
      '2 of 5',
      'B',
      'M. Quill',
      '1:10',
      'inches',
      'A3',
      CHECK_FIRST,
    ])
      expect(texts).toContain(said);
    for (const caption of [
      'Owner',
      'Title',
      'Drawing number',
      'Date',
      'Sheet',
      'Drawn',
      'Checked',
      'Approved',
      'Scale',
    ])
      expect(texts).toContain(caption);
  });

  it('whatever is written in, no text leaves the block, lies on another or on a line, or is under 2.5 mm', () => {
    const some = fc.string({ maxLength: 70 });
    fc.assert(
      fc.property(some, some, some, some, (a, b, c, d) => {
        const marks = titleBlock(
          box,
          { owner: a, title: b, number: c, unit: 'mm', drawn: d, checked: a, approved: b, date: c },
          { ...facts, subject: `${a} ${b}` },
        );
        expect(faultsOf(marks)).toEqual([]);
        for (const text of textsOf(marks)) {
          expect(contains(box, textBox(text))).toBe(true);
          expect(text.height).toBeGreaterThanOrEqual(2.5);
        }
      }),
      { seed: 20261124, numRuns: 200 },
    );
  });
});
