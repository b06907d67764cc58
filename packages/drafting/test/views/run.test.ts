import { layRuns, type Panel, type RunLayout, readJob, solve } from '@wattlewright/model';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arbitraryJob } from '../../../../test/support/jobs.ts';
import { boxOf, pointsOf } from '../../src/ink.ts';
import { overlaps } from '../../src/layout/clearance.ts';
import { addsUp } from '../../src/layout/rows.ts';
import { textBox } from '../../src/lettering.ts';
import type { Box, Drawing } from '../../src/mark.ts';
import { SHEET_PAPERS } from '../../src/sheet/arrange.ts';
import { fit } from '../../src/sheet/fit.ts';
import { frame } from '../../src/sheet/frame.ts';
import { runElevation, runExtent, runMaker } from '../../src/views/run.ts';

const scale = { ratio: 0.05, text: '1:20' };

/** Two guards of different widths between three posts. */
function twoBays(post = 90): { run: RunLayout; panels: Panel[] } {
  const guard = { use: 'guard', wood: 'western larch', guard: { drop: 900, dwelling: 'other', floor: 80 } };
  const job = readJob(
    JSON.stringify({
      job: 'Two bays',
      unit: 'mm',
      panels: [
        { ...guard, name: 'Left', size: { width: 1400, height: 900 } },
        { ...guard, name: 'Right', size: { width: 1000, height: 900 } },
      ],
      runs: [{ name: 'Edge', panels: ['Left', 'Right'], ...(post !== 0 && { post }), gap: 6 }],
    }),
  );
  const panels = solve(job);
  return { run: layRuns(job, panels)[0] as RunLayout, panels };
}

/** Boxes of paths of one role. */
function boxes({ marks }: Drawing, role: string): Box[] {
  return marks.flatMap((mark) => (mark.kind === 'path' && mark.role === role ? [boxOf(pointsOf(mark.path))] : []));
}

function words({ marks }: Drawing): string[] {
  return marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
}

describe('runElevation(run)', () => {
  test('sets each panel between its posts, a gap off on both sides: 90 + 6 + 1400 + 6 + 90 + 6 + 1000 + 6 + 90', () => {
    const { run, panels } = twoBays();
    const drawing = runElevation(run, { scale, panels });
    const rails = boxes(drawing, 'wood').filter(({ u0, u1 }) => [70, 50].some((w) => Math.abs(u1 - u0 - w) < 1e-6));
    expect(new Set(rails.map(({ u0 }) => Number((u0 / 0.05).toFixed(6))))).toEqual(new Set([96, 1598]));
    const posts = boxes(drawing, 'paper');
    expect(posts.map(({ u0, u1 }) => [u0 / 0.05, u1 / 0.05].map(Math.round))).toEqual([
      [0, 90],
      [1502, 1592],
      [2604, 2694],
    ]);
    expect(drawing.marks.filter((mark) => mark.kind === 'text' && mark.text === 'post')).toHaveLength(3);
  });

  test('prints posts, clear widths between them and the whole, which add up', () => {
    const { run, panels } = twoBays();
    const drawing = runElevation(run, { scale, panels });
    expect(words(drawing)).toEqual(expect.arrayContaining(['90', '1412', '1012', '2694']));
    expect(drawing.chains?.map(({ parts, total }) => ({ parts, total }))).toContainEqual({
      parts: [90, 1412, 90, 1012, 90],
      total: 2694,
    });
  });

  test('prints panels and gaps where there are no posts', () => {
    const { run, panels } = twoBays(0);
    const drawing = runElevation(run, { scale, panels });
    expect(drawing.chains?.map(({ parts, total }) => ({ parts, total }))).toContainEqual({
      parts: [1400, 6, 1000],
      total: 2406,
    });
  });

  test('names every panel with its outside size', () => {
    const { run, panels } = twoBays();
    const named = words(runElevation(run, { scale, panels }));
    expect(named).toEqual(expect.arrayContaining(['Left, 1400 × 900', 'Right, 1000 × 900']));
  });

  test('refuses a run none of whose panels is given', () => {
    const { run } = twoBays();
    expect(() => runElevation(run, { scale, panels: [], parts: [] })).toThrow('invalid run: no panels');
  });

  test('lays no text on another and prints no false chain: any job with a run', () => {
    fc.assert(
      fc.property(arbitraryJob(), (data) => {
        const job = readJob(JSON.stringify(data));
        const panels = solve(job);
        const paper = job.display.unit === 'mm' ? SHEET_PAPERS.A3 : SHEET_PAPERS.Tabloid;
        for (const run of layRuns(job, panels)) {
          const drawing = fit(runMaker(run, { panels }), frame(paper, 'landscape').rooms, job.display.unit);
          if (!drawing) continue;
          expect(drawing.chains?.filter((chain) => !addsUp(chain) && !chain.saidSo)).toEqual([]);
          const placed = drawing.marks.flatMap((mark) => (mark.kind === 'text' ? [{ mark, box: textBox(mark) }] : []));
          const upon = placed.flatMap((a, i) => placed.slice(i + 1).filter((b) => overlaps(a.box, b.box)));
          expect(upon.map(({ mark }) => mark.text)).toEqual([]);
        }
      }),
      { seed: 20261124, numRuns: 40 },
    );
  });
});

describe('runExtent(run)', () => {
  test('is the run from post to post, and from the floor to the highest edge', () => {
    const { run } = twoBays();
    expect(runExtent(run)).toEqual({ width: 2694, height: run.top });
  });
});
