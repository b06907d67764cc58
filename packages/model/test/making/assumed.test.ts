import { describe, expect, test } from 'vitest';
import { assumedLines, solve } from '../../src/index.ts';
import { jobOf } from '../support.ts';

const size = { width: 40, height: 50 };

describe('assumedLines', () => {
  const job = jobOf(
    { size },
    {
      unit: 'mm',
      panels: [
        { name: 'A', size: { width: 1000, height: 1200 } },
        { name: 'B', size: { width: 1000, height: 1200 }, slat: { thickness: 4 } },
      ],
    },
  );
  const lines = assumedLines(job);
  const of = (what: string) => lines.filter((line) => line.what === what);

  test('what is alike of all panels is said once, without their names', () => {
    expect(of('Grooves')).toEqual([
      {
        what: 'Grooves',
        taken: 'depth 12 mm, play of the staves 1 mm',
        why: 'a third of the rail; staves slide in by hand',
        panels: [],
      },
    ]);
  });

  test('what is of some panels only names them', () => {
    expect(of('Slats').map(({ panels, taken }) => [panels, taken])).toEqual([[['A'], 'thickness 5.5 mm']]);
  });

  test.each([
    ['screen', {}],
    ['guard', {}],
    ['divider', {}],
    ['divider', { divider: { stand: 'track' } }],
    ['gate', {}],
  ])('a %s with %j is told in words, without paths and without inches in millimetres', (use, more) => {
    for (const { what, taken, why } of assumedLines(
      jobOf({ use, size: { width: 900, height: 1200 }, ...more }, { unit: 'mm' }),
    )) {
      expect(what).toMatch(/^[A-Z]/);
      expect(`${what} ${taken} ${why}`).not.toMatch(/\[\d|[a-z]\.[a-z]|\d in\b/);
    }
  });

  test('no trim is said in words', () => {
    expect(of('Trimmed off a board')[0]?.taken).toMatch(/at one end .*, no trim at the other end$/);
  });

  test('paper and sheet numbers are the office’s own', () => {
    expect(lines.map(({ what }) => what).join()).not.toMatch(/paper|drawing/i);
  });

  test('cover strips are told of the panels that get them, and of no other', () => {
    const own = (weave: string) => ({ size: { width: 1800, height: 900 }, stave: { count: 12 }, weave });
    const two = jobOf(
      { size },
      {
        unit: 'mm',
        panels: [
          { name: 'A', ...own('plain') },
          { name: 'B', ...own('two-over-two basket') },
        ],
      },
    );
    const panels = solve(two);
    expect(panels.map(({ cover }) => cover.height > 0)).toEqual([true, false]);
    const told = assumedLines(two, panels).filter(({ what }) => what === 'Cover strips');
    expect(told.map((line) => line.panels)).toEqual([['A']]);
    const without = panels.map((panel) => ({ ...panel, cover: { ...panel.cover, height: 0 } }));
    expect(JSON.stringify(assumedLines(two, without))).not.toContain('strip');
  });
});
