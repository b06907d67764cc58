import { describe, expect, test } from 'vitest';
import type { Subject } from '../../src/findings/rule.ts';
import { rules } from '../../src/findings/rules.ts';
import type { RuleCase } from './cases/case.ts';
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
