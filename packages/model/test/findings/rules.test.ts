import { describe, expect, test } from 'vitest';
import type { Subject } from '../../src/findings/rule.ts';
import { rules } from '../../src/findings/rules.ts';
import { codeText, unlikeLengths, unlikePercents } from '../../src/findings/words.ts';
import { findingSentences } from '../../src/index.ts';
import { LEAST_GRIP } from '../../src/weave/limits.ts';
import { changeBend, first, type RuleCase, subjectOf } from './cases/case.ts';
import { fitCases, frameCases } from './cases/frame.ts';
import { screwCases } from './cases/screws.ts';
import { cornerCases, gateCases, guardCases, placeCases } from './cases/uses.ts';
import { endCases, weaveCases } from './cases/weave.ts';
import { woodCases } from './cases/wood.ts';
import { cuttingCases, fasteningCases } from './cases/work.ts';

const cases: readonly RuleCase[] = [
  ...weaveCases,
  ...endCases,
  ...woodCases,
  ...frameCases,
  ...fitCases,
  ...guardCases,
  ...gateCases,
  ...placeCases,
  ...cornerCases,
  ...fasteningCases,
  ...screwCases,
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
    [{ bedroom: true, glass: 3 }, 'stop'],
    [{ bedroom: true }, 'stop'],
    [{ glass: 3 }, 'note'],
  ])('a screen with %j gets a %s', (screen, level) => {
    expect(found('escape-window', subjectOf({ screen })).map((each) => each.level)).toEqual([level]);
  });
});

describe('divider-tips', () => {
  test.each([
    [10, 'caution'],
    [70, 'note'],
  ])('feet %d in long get a %s, so that a divider on feet always has its verdict', (length, level) => {
    const divider = subjectOf({ use: 'divider', size: { width: 48, height: 60 }, divider: { feet: { length } } });
    expect(found('divider-tips', divider).map((each) => each.level)).toEqual([level]);
  });
});

describe('stave-not-woven', () => {
  test('names the staves that every slat passes on one side, and the side', () => {
    const rows = ['++-++--', '+--+-++', '-+-+-+-'];
    const [told] = found('stave-not-woven', subjectOf({ weave: { rows }, stave: { count: 7 } }));
    expect(told?.text).toBe('Staves 3 and 4, counted from the left, are not woven in.');
    expect(told?.judged('', '')).toBe('every slat passes in front of stave 4, every slat passes behind stave 3');
  });
});

describe('slats-in-wall', () => {
  test('names packers that clear the slats by 2 mm', () => {
    // Ends 20 mm behind the middle of a frame 38.1 mm deep, slats 4.8 mm: 20 + 2.4 - 19.05 = 3.3 mm, and 2 more.
    const ends = changeBend(subjectOf({}, { unit: 'in', mark: '1/16' }), () => ({ endOffsets: [-20, -20] }));
    const [told] = found('slats-in-wall', ends);
    expect(told?.level).toBe('stop');
    expect(told?.mend).toMatch(/packers 1\/4 in thick behind both stiles, which take screws No. 8 x 3 1\/2 in/);
  });
});

describe('little-grip', () => {
  test('says how many staves would do, and they do', () => {
    const wide = { size: { width: 96, height: 52 }, slat: { thickness: '3/16' } };
    const [told] = found('little-grip', subjectOf({ ...wide, stave: { count: 6 } }));
    const count = Number(/(\d+) staves, /.exec(told?.mend ?? '')?.[1]);
    expect(count).toBeGreaterThan(6);
    expect(found('little-grip', subjectOf({ ...wide, stave: { count } }))).toEqual([]);
    expect(found('little-grip', subjectOf({ ...wide, stave: { count: count - 1 } }))).toHaveLength(1);
  });
});

describe('little-grip', () => {
  const levelAt = (share: number) =>
    found(
      'little-grip',
      changeBend(subjectOf(), () => ({ staveForces: [0, share * LEAST_GRIP * first(subjectOf()).courses.height, 0] })),
    )[0]?.level;

  test.each([
    [1, undefined],
    [0.999, 'caution'],
    [0.5001, 'caution'],
    [0.4999, 'stop'],
    [0.1, 'stop'],
  ])('a share of %d of what is wanted is a %s', (share, level) => {
    expect(levelAt(share)).toBe(level);
  });
});

describe('corner-joints', () => {
  test('asks for nothing that no list holds: no plates, and another joint only before buying', () => {
    for (const panel of [{ use: 'gate', gate: { brace: { kind: 'strut' } } }, { use: 'guard' }]) {
      const [told] = found('corner-joints', subjectOf(panel));
      expect(`${told?.text} ${told?.judged('', '')} ${told?.mend}`).not.toMatch(/plate/);
      expect(told?.mend).toMatch(/plan nothing more .* before you buy$/);
    }
  });
});

describe('screw-past-glass', () => {
  test('names a block with which a screw holds and ends clear of the glass, and it does', () => {
    const at = (standoff: number | string) => subjectOf({ screen: { mounting: 'blocks', standoff, glass: 3 } });
    const [told] = found('screw-past-glass', at('1 1/2'));
    expect(told?.mend).toMatch(/^blocks 1 in thick, which take a screw No. 8 x 3 1\/2 in: its tip stays 1 in short/);
    expect(found('screw-past-glass', at(1))).toEqual([]);
    for (const standoff of ['1 1/2', 1]) expect(found('screw-reach', at(standoff))).toEqual([]);
  });

  test('where no thinner block does, names none', () => {
    const [told] = found('screw-past-glass', subjectOf({ screen: { mounting: 'blocks', standoff: 1, glass: 1 } }));
    expect(told?.mend).toMatch(/^a shallower frame/);
  });
});

describe('plan-impossible', () => {
  const refused = (letters: readonly string[]) => {
    const subject = subjectOf();
    const named = letters.map((letter) => `part ${letter}, thing: no board`).join('; ');
    const refusal = { reason: 'section', part: letters[0], text: named, proven: true };
    const plan = { status: 'impossible', refusal, boards: [] } as unknown as NonNullable<Subject['plan']>;
    return found('plan-impossible', { ...subject, plan })[0];
  };

  test('names every part that is left out, with its size and why', () => {
    expect(refused(['A', 'C'])?.text).toBe('Parts A (rail) and C (stave) cannot be cut from the boards of the job.');
    expect(refused(['A', 'C'])?.where).toBe('parts A, C');
    expect(refused(['A', 'B', 'D'])?.text).toMatch(/^Parts A \(rail\), B \(stile\) and D \(slat\) cannot/);
    expect(refused(['B'])?.text).toBe('Part B (stile) cannot be cut from the boards of the job.');
    expect(refused(['A', 'C'])?.judged('', '')).toMatch(
      /^A is .* C is .* Part A, thing: no board. Part C, thing: no board./,
    );
  });
});

describe('slat-strength-weaving', () => {
  const pushed = 1 + 0.1875 / 1.375;
  test.each([
    [0.7549, 0],
    [0.7551, 1],
  ])('speaks when the share, %d, no longer rounds to 75 percent', (share, times) => {
    const bent = changeBend(subjectOf(), () => ({ use: share / pushed }));
    expect(found('slat-strength-weaving', bent)).toHaveLength(times);
  });
});

describe('unlike', () => {
  test.each([
    [0.7504, 0.75, ['75.04 %', '75 %']],
    [0.66, 0.55, ['66 %', '55 %']],
    [0.75, 0.75, ['75 %', '75 %']],
  ])('unlikePercents(%d, %d) is %j', (figure, limit, texts) => {
    expect(unlikePercents(figure, limit)).toEqual(texts);
  });

  test('unlikeLengths goes on until the two differ in print', () => {
    expect(unlikeLengths(7.08, 7.1, { unit: 'mm', mark: 1 })).toEqual(['7.08 mm', '7.10 mm']);
    expect(unlikeLengths(7, 8, { unit: 'mm', mark: 1 })).toEqual(['7 mm', '8 mm']);
  });
});

describe('codeText', () => {
  test('a figure of a code keeps its inches beside the millimetres', () => {
    expect(codeText(101.6, { unit: 'mm', mark: 1 })).toBe('102 mm (4 in)');
    expect(codeText(101.6, { unit: 'in', mark: 1.5875 })).toBe('4 in');
  });
});

describe('findingSentences', () => {
  const finding = {
    figure: '3/16 in',
    limit: '3/8 in',
    judged: 'the thinnest is 3/16 in; keep to 3/8 in',
    reason: 'a thin strip binds',
    mend: 'rip it against a stop',
    source: 'Wood Handbook (from memory)',
  };

  test('figure and limit, reason, what to do, source: sentences with a capital and a full stop', () => {
    expect(findingSentences(finding)).toEqual([
      'The thinnest is 3/16 in; keep to 3/8 in.',
      'A thin strip binds.',
      'Rip it against a stop.',
      'Source: Wood Handbook (not checked against the printed page).',
    ]);
  });

  test('what has no source does not say so twice', () => {
    expect(findingSentences({ ...finding, source: 'common practice, no source' }).at(-1)).toBe(
      'Common practice, no source.',
    );
  });

  test.each(cases)('$code reads as sentences, without words of the job file', ({ code, trips }) => {
    const rule = rules.find((each) => each.code === code);
    for (const { judged, ...judgement } of found(code, trips)) {
      const words = { reason: rule?.reason ?? '', source: rule?.source ?? '', ...judgement };
      for (const text of findingSentences({ ...words, judged: judged(judgement.figure, judgement.limit) })) {
        expect(text).toMatch(/^[^a-z\s].*[^.\s]\.$/s);
        expect(text).not.toMatch(
          /\b(?:gate|guard|screen|site|stave|top|panels?)(?:\[\d+\])?\.[a-z]|\bYours\b|one over|slack/,
        );
      }
    }
  });
});
