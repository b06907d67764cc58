import { describe, expect, test } from 'vitest';
import type { Subject } from '../../src/findings/rule.ts';
import { rules } from '../../src/findings/rules.ts';
import { findingSentences } from '../../src/index.ts';
import { type RuleCase, subjectOf } from './cases/case.ts';
import { fitCases, frameCases } from './cases/frame.ts';
import { gateCases, guardCases, placeCases } from './cases/uses.ts';
import { weaveCases } from './cases/weave.ts';
import { woodCases } from './cases/wood.ts';
import { cuttingCases, fasteningCases } from './cases/work.ts';

const cases: readonly RuleCase[] = [
  ...weaveCases,
  ...woodCases,
  ...frameCases,
  ...fitCases,
  ...guardCases,
  ...gateCases,
  ...placeCases,
  ...fasteningCases,
  ...cuttingCases,
];

function found(code: string, subject: Subject) {
  return rules.find((rule) => rule.code === code)?.judge(subject) ?? [];
}

describe('rules', () => {
  test('rules have one case each, with a code of its own in kebab case', () => {
    expect(cases.map(({ code }) => code)).toEqual(rules.map(({ code }) => code));
    expect(new Set(rules.map(({ code }) => code)).size).toBe(rules.length);
    for (const { code } of rules) expect(code).toMatch(/^[a-z]+(-[a-z]+)*$/);
  });

  test.each(cases)('$code speaks where it is meant to, in full', ({ code, trips }) => {
    const spoken = found(code, trips);
    expect(spoken.length).toBeGreaterThan(0);
    for (const { where, text, figure, limit, mend } of spoken) {
      for (const words of [where, text, figure, limit, mend]) expect(words).not.toBe('');
      expect(text).toMatch(/[.]$/);
      expect([text, figure, limit, mend].join()).not.toMatch(/NaN|undefined|Infinity/);
    }
  });

  test.each(cases)('$code is silent where all is well', ({ code, passes }) => {
    expect(found(code, passes)).toEqual([]);
  });

  test.each(cases)('$code at its limit: speaks is $atLimit', ({ code, limit, atLimit }) => {
    expect(found(code, limit).length > 0).toBe(atLimit);
  });

  test.each(rules)('$code gives its reason and source', ({ reason, source }) => {
    expect(reason.length).toBeGreaterThan(15);
    expect(source.length).toBeGreaterThan(5);
  });
});

describe('escape-window', () => {
  test.each([
    [{ bedroom: true, glass: 3 }, 'caution'],
    [{ bedroom: true }, 'caution'],
    [{ glass: 3 }, 'note'],
  ])('a screen with %j gets a %s', (screen, level) => {
    expect(found('escape-window', subjectOf({ screen })).map((each) => each.level)).toEqual([level]);
  });
});

describe('findingSentences', () => {
  test('figure, limit and reason, what to do, source: sentences with a capital and a full stop', () => {
    const [judged, mend, source] = findingSentences({
      figure: '3/16 in',
      limit: '1/4 in',
      reason: 'a thin strip binds',
      mend: 'rip it against a stop',
      source: 'Wood Handbook',
    });
    expect(judged).toBe('Yours 3/16 in. Limit 1/4 in: a thin strip binds.');
    expect(mend).toBe('Rip it against a stop.');
    expect(source).toBe('Source: Wood Handbook.');
  });

  test('what has no source does not say so twice', () => {
    const common = { figure: '1', limit: '2', reason: 'so', mend: 'do', source: 'common practice, no source' };
    expect(findingSentences(common)[2]).toBe('Common practice, no source.');
  });

  test.each(cases)('$code reads as sentences', ({ code, trips }) => {
    const rule = rules.find((each) => each.code === code);
    for (const judgement of found(code, trips))
      for (const text of findingSentences({ ...judgement, reason: rule?.reason ?? '', source: rule?.source ?? '' }))
        expect(text).toMatch(/^[^a-z\s].*[^.\s]\.$/s);
  });
});
