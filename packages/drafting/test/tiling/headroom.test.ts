import { readFileSync } from 'node:fs';
import { type Panel, readJob, solve } from '@wattlewright/model';
import { describe, expect, test } from 'vitest';
import { boxOf, pointsOf } from '../../src/ink.ts';
import type { Drawing } from '../../src/mark.ts';
import { proof } from '../../src/proofing/proof.ts';
import { withHeadroom } from '../../src/tiling/headroom.ts';
import { tile } from '../../src/tiling/tile.ts';
import { cornerTemplate } from '../../src/views/templatecorner.ts';
import { railEndTemplate } from '../../src/views/templaterail.ts';

const box = { u0: 0, v0: 0, u1: 100, v1: 200 };

describe('withHeadroom', () => {
  test.each([
    ['joints one way', { u: 150, v: 190 }, 11, 11],
    ['hardly too high', { u: 150, v: 201.9 }, 11, 11],
    ['just one page', { u: 150, v: 202 }, 11, 1],
    ['one page with some room', { u: 110, v: 214 }, 5, 7],
    ['one page with plenty', { u: 150, v: 300 }, 11, 11],
    ['along a roll', { u: 104, v: Number.POSITIVE_INFINITY }, 2, 11],
  ])('withHeadroom, %s: window %o leaves %f across and %f along', (_, window, u, v) => {
    expect(withHeadroom(box, window)).toEqual({
      u: [-u, 100 + u].map((at) => expect.closeTo(at, 9)),
      v: [-v, 200 + v].map((at) => expect.closeTo(at, 9)),
    });
  });
});

describe('tile puts on one page what one page can hold', () => {
  const gate = solve(
    readJob(readFileSync(new URL('../../../../examples/wash-house-gate.yaml', import.meta.url), 'utf8')),
  )[0] as Panel;
  // A printer that leaves 1/2 in, as the job assumes.
  const margin = 12.7;

  test.each([
    ['rail end', railEndTemplate(gate)],
    ['corner', cornerTemplate(gate)],
  ])('the %s template of the gate is one Letter page, full size and inside the margin', (_, drawing: Drawing) => {
    const sheets = tile(drawing, { paper: 'Letter', margin });
    expect(sheets).toHaveLength(1);
    expect(proof(sheets)).toEqual([]);
    const [page] = sheets;
    const ink = page?.figures.flatMap(({ marks }) => marks) ?? [];
    expect(ink).toHaveLength(drawing.marks.length);
    const size = (marks: Drawing['marks']): number[] => {
      const { u0, v0, u1, v1 } = boxOf(marks.flatMap((mark) => (mark.kind === 'path' ? pointsOf(mark.path) : [])));
      return [u1 - u0, v1 - v0];
    };
    expect(size(ink)).toEqual(size(drawing.marks).map((side) => expect.closeTo(side, 9)));
    expect(ink.some(({ role }) => role === 'register' || role === 'trim')).toBe(false);
  });
});
