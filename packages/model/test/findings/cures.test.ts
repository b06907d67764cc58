import { describe, expect, test } from 'vitest';
import { curesText, keepsLimits, limitsOf } from '../../src/findings/cures.ts';
import { parseLength } from '../../src/index.ts';
import { panelOf } from '../support.ts';

const gate = {
  use: 'gate',
  size: { width: 750, height: 900 },
  stave: { count: 3 },
  slat: { thickness: 4, height: 40 },
};
const guard = {
  use: 'guard',
  size: { width: 1600, height: 1000 },
  stave: { count: 8 },
  slat: { thickness: 9, height: 70 },
  wood: 'white oak',
};

/** The sizes that a cure names, laid over those of the job. */
function cured(panel: Readonly<Record<string, unknown>>, cure: string) {
  const size = (text: string | undefined) => text && parseLength(text, 'mm');
  const count = Number(/(\d+) staves/.exec(cure)?.[1]);
  const thickness = size(/slats ([\d.]+ mm) thick/.exec(cure)?.[1]);
  const depth = size(/staves ([\d.]+ mm) deep/.exec(cure)?.[1]);
  const { stave, slat } = panel as { readonly stave: object; readonly slat: object };
  return {
    ...panel,
    stave: { ...stave, ...(count > 0 && { count }), ...(depth && { depth }) },
    slat: { ...slat, ...(thickness && { thickness }) },
  };
}

describe('curesText(panel)', () => {
  test.each([
    ['weak grip', gate],
    [
      'a panel whose one change breaks another limit',
      { ...gate, stave: { count: 5 }, slat: { thickness: 6, height: 40 } },
    ],
    ['a guard', guard],
  ])('of %s names only sizes that keep every limit when they are built', (_, job) => {
    const panel = panelOf(job, { unit: 'mm' });
    expect(keepsLimits(panel)).toBe(false);
    const text = curesText(panel);
    const cures = text
      .replace(/^.*: (?=\d|slats|staves)/, '')
      .split('; or ')
      .filter((cure) => /\d/.test(cure));
    expect(cures.length).toBeGreaterThan(0);
    for (const cure of cures) {
      const wood = / in ([a-zA-Z -]+) would$/.exec(cure)?.[1];
      const other = panelOf({ ...cured(job, cure), ...(wood && { wood }) }, { unit: 'mm' });
      expect(keepsLimits(other), cure).toBe(true);
    }
  });

  test('names woods in which the same sizes keep every limit, none that rots where the panel stands outdoors', () => {
    const job = { size: { width: 1600, height: 900 }, stave: { count: 6 }, slat: { thickness: 4, height: 40 } };
    const named = (where: string) =>
      / the same sizes in (.*?)(?: or (.*?))?(?:;|: that|$)/.exec(
        ` ${curesText(panelOf(job, { unit: 'mm', site: { where } }))}`,
      );
    for (const where of ['outdoors', 'indoors']) {
      const [, one, two] = named(where) ?? [];
      for (const wood of [one, two])
        if (wood) expect(keepsLimits(panelOf({ ...job, wood }, { unit: 'mm' })), wood).toBe(true);
    }
    expect(named('outdoors')?.[2]).toBe('white oak');
    expect(named('indoors')?.[2]).toMatch(/^Douglas-fir/);
  });

  test('of slats that are cut and measured names neither thickness nor wood', () => {
    const text = curesText(panelOf({ ...gate, measured: { stack: 820 } }, { unit: 'mm' }));
    expect(text).not.toMatch(/slats \d|same sizes/);
  });

  test('keeps to the range of pitch that the job gives', () => {
    const pitch = { from: 300, to: 360 };
    const text = curesText(panelOf({ ...gate, stave: { pitch } }, { unit: 'mm' }));
    expect(text).not.toMatch(/\d staves/);
    expect(curesText(panelOf(gate, { unit: 'mm' }))).toMatch(/4 staves, 218.3 mm apart/);
  });

  test('limitsOf(panel) names those that bear on it', () => {
    expect(limitsOf(panelOf(gate, { unit: 'mm' }))).toBe('bend and grip');
    expect(limitsOf(panelOf(guard, { unit: 'mm', site: { wind: { speed: 40, exposure: 'C' } } }))).toBe(
      'bend, grip, wind and load',
    );
  });
});
