import { describe, expect, test } from 'vitest';
import { assumedLines, makingOrder, partsOf, solve } from '../../src/index.ts';
import { jobOf } from '../support.ts';
import { place, said } from './steps.ts';

const size = { width: 44, height: 52 };

function stepsOf(measured: object | undefined, rest: object = {}) {
  const job = jobOf({ size, ...(measured && { measured: { stack: 48.5, ...measured } }) }, rest);
  const panels = solve(job);
  return makingOrder(job, { panels, parts: partsOf(panels, job) });
}

describe('makingOrder, as measured', () => {
  test('starts from what is in hand; what is done is not told again', () => {
    const steps = stepsOf({});
    expect(steps[0]?.title).toMatch(/all there/);
    expect(place(steps, /^Choose|^Rip|^Crosscut|measure the stack/)).toBe(-1);
    expect(place(steps, /Cut stiles/)).toBe(1);
    expect(said(steps[0] ?? never())).toMatch(/smoothed and measured already/);
    expect(steps.map(said).join(' ')).not.toMatch(/[Ff]irst smooth|press them together/i);
  });

  test('what is in hand and what is to be cut, part by part', () => {
    const first = said(stepsOf({ uncut: ['stile'], broken: 5 })[0] ?? never());
    expect(first).toMatch(/A, rail 2 in hand/);
    expect(first).toMatch(/B, stile cut 2, 49/);
    expect(first).toMatch(/C, stave 5 in hand/);
    expect(first).toMatch(/D, slat 31 in hand; cut 1 and 4 spare, /);
    expect(first).toMatch(/Rip the new slats/);
    expect(said(stepsOf({})[0] ?? never())).not.toMatch(/cut \d|Rip the new slats/);
  });

  test('stiles and staves in hand are trimmed, those not cut yet are cut dead', () => {
    const cut = (uncut: string[]) => {
      const steps = stepsOf({ uncut });
      return said(steps[place(steps, /Cut stiles/)] ?? never());
    };
    expect(cut([])).toMatch(/left over length: trim/);
    expect(cut(['stile', 'stave'])).not.toMatch(/left over length/);
  });

  test('cover strips in hand that come out smaller are brought to size', () => {
    const thick = stepsOf({ thickness: '7/32' });
    expect(said(thick[place(thick, /Cut stiles/)] ?? never())).toMatch(/[Pp]lane the cover strips.*E, cover strip 2, /);
    const same = stepsOf({ stack: 48 });
    expect(said(same[place(same, /Cut stiles/)] ?? never())).not.toMatch(/[Pp]lane the cover strips/);
  });

  test('a panel not measured beside one that is: sawn and measured alone', () => {
    const panels = [
      { name: 'done', size, measured: { stack: 48.5 } },
      { name: 'not yet', size: { width: 40, height: 52 } },
    ];
    const job = jobOf({}, { panels });
    const solved = solve(job);
    const steps = makingOrder(job, { panels: solved, parts: partsOf(solved, job) });
    const measure = said(steps[place(steps, /measure the stack/)] ?? never());
    expect(measure).toMatch(/Only for not yet: the slats of the others are smoothed and measured already/);
    const crosscut = steps[place(steps, /^Crosscut/)];
    expect(crosscut?.figures.filter(({ what }) => /^\w+, slat/.test(what)).length).toBe(1);
    expect(crosscut?.figures.find(({ what }) => /^\w+, rail/.test(what))?.value).toMatch(/^2,/);
  });

  test('stiles and staves are no longer assumed to be first cut long', () => {
    const lines = (measured: object) => assumedLines(jobOf({ size, ...measured })).map(({ what }) => what);
    expect(lines({})).toContain('Stiles and staves first cut long');
    expect(lines({ measured: { stack: 48.5 } })).not.toContain('Stiles and staves first cut long');
  });
});

function never(): never {
  throw new Error('missing');
}
