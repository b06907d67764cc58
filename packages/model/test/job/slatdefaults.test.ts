import { describe, expect, test } from 'vitest';
import { check } from '../../src/index.ts';
import { jobOf, panelOf } from '../support.ts';

const grips = (panel: object, unit: string) =>
  check(jobOf(panel, { unit })).every(({ code }) => code !== 'little-grip' && code !== 'slat-strength');

describe('slats and staves that the job leaves open', () => {
  test.each([
    ['in', { size: { width: 24, height: 30 } }],
    ['in', { size: { width: 44, height: 52 } }],
    ['mm', { size: { width: 750, height: 900 } }],
    ['mm', { size: { width: 1800, height: 900 }, slat: { thickness: 4, height: 40 } }],
    ['mm', { use: 'gate', size: { width: 750, height: 900 }, slat: { thickness: 4, height: 40 } }],
    ['mm', { size: { width: 900, height: 900 }, stave: { count: 4 } }],
    ['mm', { size: { width: 900, height: 900 }, weave: 'two-over-two twill' }],
  ])('in %s of %j are taken so that the staves grip the slats and do not break them', (unit, panel) => {
    expect(grips(panel, unit)).toBe(true);
  });

  test('are the usual ones where those do', () => {
    const { staves, courses } = panelOf({ size: { width: 48, height: 52 } });
    expect(courses.thickness).toBeCloseTo((3 / 16) * 25.4, 9);
    expect(staves.count).toBe(5);
  });

  test('are told with why they are not the usual ones', () => {
    const { assumed } = jobOf({ size: { width: 24, height: 30 } });
    expect(assumed.find(({ path }) => path.endsWith('slat.thickness'))).toMatchObject({
      value: '1/4 in',
      reason: 'the nearest to the usual one with which the staves grip the slats',
    });
    const door = jobOf({ size: { width: 750, height: 900 }, slat: { thickness: 4 } }, { unit: 'mm' }).assumed;
    expect(door.find(({ path }) => path.endsWith('pitch.prefer'))).toMatchObject({ value: '218.3 mm' });
  });

  test('given ones stay as they are, however badly they grip', () => {
    const { staves, courses } = panelOf(
      { size: { width: 300, height: 300 }, stave: { count: 3 }, slat: { thickness: 2 } },
      { unit: 'mm' },
    );
    expect([staves.count, courses.thickness]).toEqual([3, 2]);
    const rows = panelOf({ size: { width: 24, height: 30 }, stave: { count: 3 }, weave: { rows: ['+-+', '-+-'] } });
    expect(rows.staves.count).toBe(3);
  });
});
