import { partsOf } from '@wattlewright/model';
import { describe, expect, test } from 'vitest';
import { changeSheets } from '../../src/sheets/changes.ts';
import { pageFor } from '../../src/sheets/page.ts';
import { settledOf } from './settled.ts';

/** All words of the sheets that say what changed. */
function changed(measured: object, panel: object = {}): string {
  const settled = settledOf({
    job: 'Kiosk',
    unit: 'mm',
    panels: [{ name: 'Screen', size: { width: 1000, height: 1200 }, ...panel, measured }],
  });
  const parts = partsOf(settled.panels, settled.job);
  return changeSheets({ ...settled, parts }, pageFor(settled.job))
    .flatMap(({ drawings }) => drawings.flatMap(({ marks }) => marks))
    .flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
    .join(' ');
}

describe('changeSheets', () => {
  test('what is in hand, what is still to be cut, and what the stack has outgrown', () => {
    const some = changed({ stack: 1109, broken: 5, uncut: ['stave'] });
    expect(some).toMatch(/in hand, cut with the slats: A \(rail\), B \(stile\), D \(slat\)/);
    expect(some).toMatch(/C \(stave\) \d+, D \(slat\) \d+ and \d+ spare/);
    expect(some).not.toMatch(/cut anew:/);
    expect(changed({ stack: 1109 })).toMatch(/Nothing is left to be cut/);
    expect(changed({ stack: 1200 })).toMatch(
      /Larger now than they were cut, and so cut anew: B \(stile\), C \(stave\)/,
    );
  });

  test('old and new of screws and bending, not only of sizes', () => {
    const grown = changed({ stack: 1140, thickness: 5.5 });
    expect(grown).toMatch(/Screws that stand elsewhere now.*: .*end stave to stile/);
    expect(grown).toMatch(/Bending takes (\d+)\s% of the slats’ strength; planned (?!\1\s)\d+\s%/);
    for (const size of ['stile length', 'stave length', 'outside height', 'lower edge of the top course'])
      expect(grown).toContain(size);
    expect(changed({ stack: 1109, thickness: 5 })).not.toMatch(/Bending takes/);
  });

  test('stop strips follow the stack and the slats’ thickness', () => {
    const stopped = changed({ stack: 1140, thickness: 6 }, { slat: { stop: 12 } });
    expect(stopped).toMatch(/stop strip length/);
    expect(stopped).toMatch(/stop strip thickness/);
  });
});
