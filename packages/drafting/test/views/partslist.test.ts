import { type Part, partsOf, readJob, solve } from '@wattlewright/model';
import { describe, expect, it } from 'vitest';
import { pointsOf } from '../../src/ink.ts';
import { partsTable } from '../../src/views/partslist.ts';
import { partPicture, pictureScale } from '../../src/views/partslistpicture.ts';
import { faultsOf, textsOf } from '../layout/faults.ts';

const job = readJob(
  JSON.stringify({
    job: 'Test',
    unit: 'in',
    panels: [
      { name: 'Left', count: 2, size: { width: '44 1/2', height: 52 } },
      { name: 'Right', size: { width: 30, height: 52 } },
    ],
  }),
);
const panels = solve(job);
const parts = partsOf(panels, { spare: job.spare });
const options = { display: job.display, panels, width: 183, height: 204 };
const all = (list: readonly Part[], more: object = {}): string[] =>
  partsTable(list, { ...options, ...more }).flatMap(({ marks }) =>
    textsOf(marks).map(({ text }) => text.replaceAll('\u00a0', ' ')),
  );

describe('partsTable', () => {
  it('names every part with its count, spares apart, and the sum of both at the foot', () => {
    const texts = all(parts);
    for (const { letter, count, spare } of parts) {
      expect(texts).toContain(letter);
      expect(texts).toContain(spare > 0 ? `${count} + ${spare}` : `${count}`);
    }
    const [pieces, spare] = [parts.reduce((n, p) => n + p.count, 0), parts.reduce((n, p) => n + p.spare, 0)];
    expect(texts).toContain(`${pieces} + ${spare}`);
  });

  it('gives the wood and mass of all pieces but the spares: 5 of 24 × 6 × 2 in are 10 board feet (144 cubic inches each)', () => {
    const [first] = parts as [Part];
    const plank = { ...first, count: 5, spare: 1, length: 24 * 25.4, width: 6 * 25.4, thickness: 2 * 25.4 };
    const texts = all([plank], { mass: 10 });
    expect(texts).toContain('10.0 board feet');
    expect(texts.join(' ')).toContain('22.0 lb, both without spares');
  });

  it('gives the mass when told: 10 kg are 22.0 lb', () => {
    expect(all(parts, { mass: 10 }).join(' ')).toContain('22.0 lb');
    expect(all(parts).join(' ')).not.toContain(' lb');
  });

  it('says of stiles and staves that they are cut long at first', () => {
    const long = partsOf(panels, { long: 25.4 });
    expect(
      all(long)
        .join(' ')
        .match(/leave 1 in over:/g),
    ).toHaveLength(long.filter(({ over }) => over > 0).length);
    expect(all(parts).join(' ')).not.toContain('over:');
  });

  it('says of measured slats what is in hand, to be cut now and left as spare; stiles and staves in hand are trimmed', () => {
    const measured = { stack: 48.5, broken: 5, uncut: ['stave'] };
    const now = readJob(
      JSON.stringify({ job: 'T', unit: 'in', panels: [{ name: 'A', size: { width: 44, height: 52 }, measured }] }),
    );
    const texts = all(partsOf(solve(now), now), { width: 386 });
    for (const title of ['In hand', 'To cut now', 'Spare left']) expect(texts).toContain(title);
    const from = texts.indexOf('slat') + 1;
    // 32 wanted and 4 spare, 5 broken: 31 in hand, one and the whole spare share are cut.
    expect(texts.slice(from, from + 4)).toEqual(['32', '31', '5', '4']);
    expect(texts.filter((text) => text === 'trim those in hand')).toHaveLength(1);
  });

  it('gives a ripped side at the mark it lies on: 1 33/64 in, not 1 1/2', () => {
    const [first] = parts as [Part];
    expect(all([{ ...first, width: (1 + 33 / 64) * 25.4 }])).toContain('1 33\u204464');
  });

  it.each([
    [183, 204],
    [246, 138],
    [386, 218],
  ])('fits a page of %d × %d mm, no text on a text or on a line', (width, height) => {
    for (const { marks, bounds } of partsTable(parts, { ...options, width, height })) {
      expect(bounds.u1).toBeLessThanOrEqual(width + 1e-6);
      expect(bounds.v1).toBeLessThanOrEqual(height + 1e-6);
      expect(faultsOf(marks.filter(({ role }) => role !== 'dimension'))).toEqual([]);
    }
  });
});

describe('partPicture', () => {
  it('shows a rail with its groove to scale, and other parts whole', () => {
    const [panel] = panels;
    const rail = parts.find(({ role }) => role === 'rail') as Part;
    const [fill] = partPicture(rail, 0.5, panels).marks;
    const points = fill?.kind === 'path' ? pointsOf(fill.path) : [];
    expect(points).toHaveLength(8);
    const depth = (points[3]?.[1] ?? 0) - (points[4]?.[1] ?? 0);
    expect(depth).toBeCloseTo((panel?.groove.depth ?? 0) / 2, 9);
    const stave = parts.find(({ role }) => role === 'stave') as Part;
    const [face] = partPicture(stave, 1, panels).marks;
    expect(face?.kind === 'path' ? pointsOf(face.path) : []).toHaveLength(4);
  });

  it.each([
    [30, 1],
    [60, 1 / 2],
    [120, 1 / 5],
    [300, 1 / 10],
  ])('pictureScale of a widest part of %d mm: %d', (width, ratio) => {
    expect(pictureScale([{ ...(parts[0] as Part), width, thickness: 20 }]).ratio).toBe(ratio);
  });
});
