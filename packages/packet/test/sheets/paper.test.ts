import { readFileSync } from 'node:fs';
import type { Sheet } from '@wattlewright/drafting';
import { JobError } from '@wattlewright/model';
import { describe, expect, test } from 'vitest';
import { readmeText } from '../../src/readme.ts';
import { packetSheets } from '../../src/sheets/sheets.ts';
import { runOf, settledOf } from './settled.ts';

const words = ({ figures }: Sheet): string =>
  figures
    .flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])))
    .join(' ')
    .replaceAll('\u00a0', ' ');

describe('packetSheets on the paper of the job', () => {
  test('a run that does not fit A4 is by itself on the paper that holds it; cover and README.txt say which and why', () => {
    const settled = settledOf(runOf(12, 'A4'));
    const sheets = packetSheets(settled);
    const larger = sheets.filter(({ paper }) => paper === 'A2');
    expect(larger.map(({ title }) => title)).toEqual(['Long side: the whole run']);
    expect(sheets.filter(({ paper }) => paper === 'A4').length).toBeGreaterThan(sheets.length * 0.8);
    const number = larger[0]?.label;
    expect(sheets[Number(number) - 1]).toBe(larger[0]);
    const cover = sheets
      .filter(({ title }) => title.startsWith('Cover'))
      .map(words)
      .join(' ');
    expect(cover).toContain(`Sheet ${number} is on A2: A4 is too small for Long side, key elevation at 1:100`);
    const readme = readmeText(settled, { packet: sheets, sticks: [] });
    expect(readme).toMatch(new RegExp(`${sheets.length} sheets on A4 and .*A2`));
    expect(readme).toContain(`too large for A4, on A2: sheet ${number}`);
  });

  test.each(['A4', 'A3', 'Letter'])('a job that fits %s is on it, and no sheet speaks of other paper', (paper) => {
    const text = readFileSync(new URL('../../../../examples/studio-divider.yaml', import.meta.url), 'utf8');
    const settled = settledOf(text.replace('sheets: A3', `sheets: ${paper}`));
    const sheets = packetSheets(settled);
    expect(new Set(sheets.map((sheet) => sheet.paper))).toEqual(new Set([paper]));
    expect(sheets.map(words).join(' ')).not.toContain('too small for');
    expect(readmeText(settled, { packet: sheets, sticks: [] })).not.toContain('too large');
  });

  test.each([
    [13, 'A4', /Long side.* at 1:100 fits no paper up to A2 \(\d+ × \d+ mm, room for .*\): ARCH C would do/],
    [40, 'Tabloid', /fits no paper up to ARCH C .*: smaller panels, or fewer panels in a run would do/],
  ])('a run of %i bays of 4 m on %s is a problem of paper.sheets that says what would do', (bays, paper, says) => {
    let problems: JobError['problems'] = [];
    try {
      packetSheets(settledOf(runOf(bays, paper)));
    } catch (error) {
      if (!(error instanceof JobError)) throw error;
      problems = error.problems;
    }
    expect(problems).toEqual([{ path: 'paper.sheets', found: paper, message: expect.stringMatching(says) }]);
  });
});
