import { describe, expect, test } from 'vitest';
import { listSheets } from '../../src/sheets/lists.ts';
import { pageFor } from '../../src/sheets/page.ts';
import { settledOf } from './settled.ts';

describe('weaveCharts', () => {
  const chartsOf = (panels: readonly object[]): { titles: string[]; sheets: number } => {
    const settled = settledOf({ job: 'Charts', unit: 'mm', panels, paper: { sheets: 'A3' } });
    const isChart = ({ name }: { readonly name: string }): boolean => name.startsWith('weave-chart');
    const sheets = listSheets(settled, pageFor(settled.job)).filter(({ drawings }) => drawings.some(isChart));
    const titles = sheets.flatMap(({ drawings }) => drawings.filter(isChart).map(({ title }) => title));
    return { titles, sheets: sheets.length };
  };
  const panel = (name: string, width: number, more: object = {}): object => ({
    name,
    size: { width, height: 700 },
    ...more,
  });

  test('panels woven alike share one chart, though one has fewer staves', () => {
    const [wide, narrow] = [
      panel('Wide', 1200, { stave: { count: 8 }, weave: 'plain' }),
      panel('Narrow', 700, { stave: { count: 5 }, weave: 'plain' }),
    ];
    expect(chartsOf([narrow, wide]).titles).toEqual(['Weave chart: Narrow and Wide']);
  });

  test('panels woven otherwise have their own charts, on one sheet where it holds them', () => {
    const charts = chartsOf([panel('One', 600), panel('Two', 600, { weave: { pattern: 'plain', start: 'behind' } })]);
    expect(charts.titles).toEqual(['Weave chart: One', 'Weave chart: Two']);
    expect(charts.sheets).toBe(1);
  });
});
