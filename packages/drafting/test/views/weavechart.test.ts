import { type Panel, partsOf, readJob, sideAt, solve } from '@wattlewright/model';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arbitraryJob } from '../../../../test/support/jobs.ts';
import { boxOf, pointsOf } from '../../src/ink.ts';
import type { Box, Drawing } from '../../src/mark.ts';
import { weaveChart } from '../../src/views/weavechart.ts';
import { faultsOf } from '../layout/faults.ts';

const panelsOf = (text: string): Panel[] => solve(readJob(text));

function onePanel(panel: object): Panel {
  return panelsOf(JSON.stringify({ job: 'Chart', unit: 'mm', panels: [{ name: 'Panel', ...panel }] }))[0] as Panel;
}

/** The black bars of a chart, each closed ring its own. */
function bars({ marks }: Drawing): Box[] {
  return marks.flatMap((mark) => {
    if (mark.kind !== 'path' || mark.role !== 'wood-deep') return [];
    const rings: (typeof mark.path)[number][][] = [];
    for (const step of mark.path) step[0] === 'M' ? rings.push([step]) : rings.at(-1)?.push(step);
    return rings.map((ring) => boxOf(pointsOf(ring)));
  });
}

/** Where a number is printed: courses by their heights, staves by their places along. */
function placesOf({ marks }: Drawing): { courses: Map<number, number>; staves: Map<number, number> } {
  const courses = new Map<number, number>();
  const staves = new Map<number, number>();
  for (const mark of marks) {
    if (mark.kind !== 'text' || !/^\d+$/.test(mark.text)) continue;
    if (mark.anchor === 'middle') staves.set(Number(mark.text), mark.at[0]);
    else courses.set(Number(mark.text), mark.at[1] - mark.height / 2);
  }
  return { courses, staves };
}

/** The chart read as a person does: at each numbered course and stave, is there a black bar? */
function readChart(drawing: Drawing): Map<string, boolean> {
  const { courses, staves } = placesOf(drawing);
  const black = bars(drawing);
  const cells = new Map<string, boolean>();
  for (const [course, v] of courses)
    for (const [stave, u] of staves)
      cells.set(
        `${course} ${stave}`,
        black.some((box) => box.u0 < u && u < box.u1 && box.v0 < v && v < box.v1),
      );
  return cells;
}

describe('weaveChart', () => {
  test.each(['plain', 'two-over-two twill', 'two-over-two basket', 'two-over-one twill', 'paired courses'])(
    'weaveChart shows a bar exactly where %s passes in front',
    (weave) => {
      const panel = onePanel({
        size: { width: 1200, height: 900 },
        stave: { width: 12, depth: 10, count: 9 },
        slat: { thickness: 2 },
        weave,
      });
      const cells = new Map(weaveChart(panel).flatMap((page) => [...readChart(page)]));
      for (let course = 0; course < panel.courses.count; course++)
        for (let stave = 0; stave < 9; stave++)
          expect(cells.get(`${course + 1} ${stave + 1}`)).toBe(sideAt(panel, course, stave) > 0);
    },
  );

  test('weaveChart goes on over pages from the bottom up and splits a wide panel with one stave on both', () => {
    const panel = onePanel({
      size: { width: 4000, height: 2000 },
      stave: { width: 15, depth: 12, count: 40 },
      slat: { thickness: 2, height: 25 },
      fit: { vary: 'outside' },
      weave: 'two-over-one twill',
    });
    const pages = weaveChart(panel, { room: { width: 180, height: 230 } });
    const cells = new Map<string, boolean>();
    for (const page of pages) {
      expect(page.bounds.u1 - page.bounds.u0).toBeLessThanOrEqual(180 + 1e-9);
      expect(page.bounds.v1 - page.bounds.v0).toBeLessThanOrEqual(230 + 1e-9);
      for (const [cell, black] of readChart(page)) {
        if (cells.has(cell)) expect(cells.get(cell)).toBe(black);
        cells.set(cell, black);
      }
    }
    expect(cells.size).toBe(panel.courses.count * 40);
    const staves = pages.slice(0, 2).map((page) => [...placesOf(page).staves.keys()]);
    expect(staves[0]?.at(-1)).toBe(staves[1]?.[0]);
    expect(Math.min(...placesOf(pages[0] as Drawing).courses.keys())).toBe(1);
    expect(pages[0]?.title).toMatch(/courses 1 to \d+, staves 1 to \d+$/);
  });

  // Rooms for a titled chart on upright sheets: the frame's room above the title block, less 10 for the title.
  test.each([
    ['A4', { width: 172, height: 218 }],
    ['Letter', { width: 183.9, height: 204.4 }],
  ])('weaveChart of 35 courses is one drawing on %s, its rows 5 mm or more', (_, room) => {
    const panel = onePanel({
      size: { width: 1140, height: 1490 },
      stave: { width: 19, depth: 13, count: 5 },
      slat: { thickness: 4, height: 40 },
      fit: { vary: 'outside', go: 'nearest' },
    });
    expect(panel.courses.count).toBe(35);
    const pages = weaveChart(panel, { room });
    expect(pages).toHaveLength(1);
    const [page] = pages as [Drawing];
    expect(page.bounds.u1 - page.bounds.u0).toBeLessThanOrEqual(room.width);
    expect(page.bounds.v1 - page.bounds.v0).toBeLessThanOrEqual(room.height + 1e-9);
    const { courses } = placesOf(page);
    expect(((courses.get(1) as number) - (courses.get(35) as number)) / 34).toBeGreaterThanOrEqual(5);
    for (const mark of page.marks) if (mark.kind === 'text') expect(mark.height).toBeGreaterThanOrEqual(2.5);
    expect(faultsOf(page.marks)).toEqual([]);
  });

  test('weaveChart has a box to tick for each course, and course 1 lowest', () => {
    const panel = onePanel({ size: { width: 900, height: 600 } });
    const [page] = weaveChart(panel) as [Drawing];
    const boxes = page.marks.filter((m) => m.kind === 'path' && m.role === 'table' && boxOf(pointsOf(m.path)).u1 < 6);
    expect(boxes).toHaveLength(panel.courses.count);
    const { courses } = placesOf(page);
    expect(Math.max(...courses.values())).toBe(courses.get(1));
  });

  test('weaveChart breaks its pages between repeats, and says of a bracket only where it draws one', () => {
    const panel = onePanel({
      size: { width: 900, height: 2000 },
      slat: { thickness: 3, height: 30 },
      fit: { vary: 'outside', go: 'nearest' },
      weave: 'two-over-two twill',
    });
    const every = panel.weave.repeat.courses;
    expect(every).toBe(4);
    const pages = weaveChart(panel, { room: { width: 180, height: 205 } });
    expect(pages.length).toBeGreaterThan(1);
    for (const page of pages) {
      const first = Math.min(...placesOf(page).courses.keys());
      expect((first - 1) % every).toBe(0);
      const brackets = page.marks.filter((m) => m.kind === 'path' && m.role === 'table' && m.path.length === 4);
      const said = page.marks.some((m) => m.kind === 'text' && m.text.includes('bracketed'));
      expect(said).toBe(brackets.length === 1);
    }
  });

  test('weaveChart of several panels has a column of boxes and a name for each, and is called as they are', () => {
    const panels = panelsOf(
      JSON.stringify({
        job: 'Chart',
        unit: 'mm',
        panels: [
          { name: 'Bay 1', size: { width: 900, height: 600 }, count: 2 },
          { name: 'Bay 2', size: { width: 900, height: 600 } },
        ],
      }),
    );
    const [panel] = panels as [Panel];
    const [page] = weaveChart(panel, { serves: panels, named: 'Bay 1 and 2' }) as [Drawing];
    expect(page.title).toBe('Weave chart: Bay 1 and 2');
    const texts = page.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
    for (const name of ['Bay 1, no. 1', 'Bay 1, no. 2', 'Bay 2']) expect(texts).toContain(name);
    const boxes = page.marks.filter((m) => m.kind === 'path' && m.role === 'table' && boxOf(pointsOf(m.path)).u1 < 18);
    expect(boxes).toHaveLength(3 * panel.courses.count);
    expect(faultsOf(page.marks)).toEqual([]);
  });

  test('weaveChart of arbitrary jobs equals sideAt and carries no text on a text or a line', () => {
    fc.assert(
      fc.property(arbitraryJob({ panels: 1 }), (data) => {
        for (const panel of panelsOf(JSON.stringify(data))) {
          const pages = weaveChart(panel, { parts: partsOf([panel]) });
          for (const page of pages) expect(faultsOf(page.marks)).toEqual([]);
          const [first] = pages as [Drawing];
          for (const [cell, black] of readChart(first)) {
            const [course, stave] = cell.split(' ').map(Number) as [number, number];
            expect(black).toBe(sideAt(panel, course - 1, stave - 1) > 0);
          }
        }
      }),
      { seed: 20261124, numRuns: 25 },
    );
  });
});
