import { describe, expect, test } from 'vitest';
import { check, type Part, partsOf, partsToCut, settle, solve } from '../../src/index.ts';
import { jobOf } from '../support.ts';

const size = { width: 44, height: 52 };

/** All parts of a job, and what of them is to be cut. */
function parted(panels: readonly object[], rest: object = {}) {
  const job = jobOf({}, { panels: panels.map((panel, i) => ({ name: `P${i}`, size, ...panel })), ...rest });
  const parts = partsOf(solve(job), job);
  return { parts, cut: partsToCut(parts) };
}

const of = (parts: readonly Part[], role: string) => parts.find((part) => part.role === role);
const toCut = (measured: object, rest: object = {}) =>
  parted([{ measured: { stack: 48.5, ...measured } }], rest).cut.map(({ role, count, spare }) => [role, count, spare]);

describe('partsToCut', () => {
  test('nothing is cut again where all was cut with the slats, stiles and staves over length', () => {
    expect(toCut({})).toEqual([]);
    expect(toCut({ broken: 2 })).toEqual([]);
  });

  test('what is not cut yet is cut, and no more', () => {
    expect(toCut({ uncut: ['stave', 'stile'] }).map(([role]) => role)).toEqual(['stile', 'stave']);
    expect(toCut({ uncut: ['rail'] })).toEqual([['rail', 2, 0]]);
    const stopped = parted([{ slat: { stop: '1/2' }, measured: { stack: 48.5, uncut: ['stop strip'] } }]);
    expect(stopped.cut.map(({ role }) => role)).toEqual(['stop']);
  });

  test('stiles and staves that the stack has outgrown are cut anew, over length or not', () => {
    const roles = (stack: number, long: number) =>
      toCut({ stack }, { saw: { long } }).flatMap(([role]) =>
        ['stile', 'stave'].includes(role as string) ? [role] : [],
      );
    // Planned 49 in: room over the slats comes on top of the stack.
    expect(roles(49.5, 1)).toEqual([]);
    expect(roles(49.5, 0)).toEqual(['stile', 'stave']);
    expect(roles(51, 1)).toEqual(['stile', 'stave']);
  });

  test('cover strips are cut anew only where they come out larger than they were cut', () => {
    const strips = (top: object) =>
      parted([{ top, measured: { stack: 48.5, thickness: '1/8' }, slat: { thickness: '1/8' } }]).cut.length;
    expect(strips({ cover: '1/2' })).toBe(0);
    // Thinner slats reach less far out, so the strips are thicker.
    const thinner = parted([{ slat: { thickness: '1/4' }, measured: { stack: 48.5, thickness: '3/16' } }]);
    expect(thinner.cut.map(({ role }) => role)).toEqual(['cover strip']);
  });

  test('parts of panels not measured are cut whole, beside those in hand', () => {
    const { parts, cut } = parted([{ measured: { stack: 48.5 } }, {}]);
    const rail = of(parts, 'rail');
    expect([rail?.count, rail?.inHand, of(cut, 'rail')?.count]).toEqual([4, 2, 2]);
    expect(of(cut, 'rail')?.where).toEqual([{ panel: 'P1', count: 2 }]);
    for (const { count, where } of cut) expect(where.reduce((sum, place) => sum + place.count, 0)).toBe(count);
    const plain = parted([{}]);
    expect(plain.cut).toBe(plain.parts);
  });
});

describe('partsOf, slats in hand', () => {
  const slats = (broken: number) => {
    const { parts, cut } = parted([{ measured: { stack: 48.5, broken } }]);
    const { count = 0, spare = 0, inHand = 0 } = of(parts, 'slat') ?? {};
    const now = of(cut, 'slat');
    return { count, spare, inHand, cut: now ? now.count + now.spare : 0 };
  };

  test('32 slats and 4 spares: spares go for the broken ones; once they are short the whole share is cut anew', () => {
    expect(slats(0)).toEqual({ count: 32, spare: 4, inHand: 36, cut: 0 });
    expect(slats(3)).toEqual({ count: 32, spare: 1, inHand: 33, cut: 0 });
    expect(slats(4)).toEqual({ count: 32, spare: 0, inHand: 32, cut: 0 });
    expect(slats(5)).toEqual({ count: 32, spare: 4, inHand: 31, cut: 1 + 4 });
    expect(slats(100)).toEqual({ count: 32, spare: 4, inHand: 0, cut: 36 });
  });

  test('broken slats of two lengths: the longest stand for them, so that what is cut serves either place', () => {
    const two = { weave: { pattern: 'two-over-one twill' } };
    const all = parted([{ ...two, measured: { stack: 48.5 } }]).parts.filter(({ role }) => role === 'slat');
    expect(all.length).toBeGreaterThan(1);
    const [longest] = [...all].sort((a, b) => b.length - a.length);
    const cut = parted([{ ...two, measured: { stack: 48.5, broken: (longest?.spare ?? 0) + 1 } }]).cut;
    expect(cut.map(({ letter }) => letter)).toEqual([longest?.letter]);
  });

  test('slats that are measured are as long as they were cut, or shorter', () => {
    const [thin, thick] = ['5/32', '1/4'].map((thickness) =>
      of(parted([{ measured: { stack: 48.5, thickness } }]).parts, 'slat'),
    );
    const planned = of(parted([{}]).parts, 'slat');
    for (const now of [thin, thick]) expect(now?.length).toBeLessThanOrEqual(planned?.length ?? 0);
  });
});

describe('settle, as measured', () => {
  const stock = [{ thickness: 1.5, width: 3.5, length: 96, price: 10 }];

  test('plans only what is left: nothing, or what the job says is not cut yet', async () => {
    const plan = async (more: object) =>
      (await settle(jobOf({ size, measured: { stack: 48.5, ...more } }, { stock }))).plan;
    const none = await plan({});
    expect([none.boards.length, none.status]).toEqual([0, 'optimal']);
    const some = JSON.stringify((await plan({ uncut: ['stile'] })).boards);
    expect([...some.matchAll(/"part":"(\w+)"/g)].map(([, letter]) => letter)).toEqual(['B', 'B']);
  });

  test('findings on sawing speak of nothing that is in hand', () => {
    const codes = (broken: number) =>
      check(jobOf({ size, measured: { stack: 48.5, broken } }, { stock })).map(({ code }) => code);
    expect(codes(0)).not.toContain('thin-rips');
    expect(codes(5)).toContain('thin-rips');
  });

  test('as many courses as the packet before had, whose slat height the plan chose', async () => {
    const free = { size: { width: 1000, height: 1200 }, stave: { count: 4 }, slat: { thickness: 5, height: 40 } };
    const boards = { unit: 'mm', stock: [{ thickness: 45, width: 145, length: 3000, price: 22 }] };
    const before = await settle(jobOf(free, boards));
    const planned = before.panels[0]?.courses;
    expect(planned?.count).not.toBe(solve(jobOf(free, boards))[0]?.courses.count);
    const stack = (planned?.count ?? 0) * (planned?.height ?? 0) + 3;
    const now = await settle(jobOf({ ...free, measured: { stack } }, boards));
    expect(now.panels[0]?.courses.count).toBe(planned?.count);
    expect([before.choices.length, now.choices.length]).toEqual([1, 0]);
  });
});
