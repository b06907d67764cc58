import type { CutTree, Part, PlannedBoard } from '@wattlewright/model';
import { formatLength, partsOf, readJob, solve } from '@wattlewright/model';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pointsOf } from '../../src/ink.ts';
import { contains, crossesBox, grown, overlaps } from '../../src/layout/clearance.ts';
import { textBox } from '../../src/lettering.ts';
import type { Box, Drawing, Mark, PathMark } from '../../src/mark.ts';
import { pen, thick } from '../../src/pen.ts';
import { boardCuts } from '../../src/views/cutboard.ts';
import { cutSheets } from '../../src/views/cutsheets.ts';
import { ripSettings } from '../../src/views/cutsteps.ts';
import { NAMES } from '../../src/views/cutstrips.ts';
import { sawWork } from '../../src/views/sawwork.ts';
import { cutStops } from '../../src/views/sawworkstops.ts';
import { segmentsOf, textsOf } from '../layout/faults.ts';
import { arbitraryPlans, partsIn, planOf, sawOf } from './arbitraryplan.ts';

const JOB = JSON.stringify({ job: 'x', unit: 'mm', panels: [{ name: 'p', size: { width: 900, height: 900 } }] });
const display = { unit: 'mm', mark: 1 } as const;
const pages = [
  { width: 183, height: 204 },
  { width: 246, height: 138 },
  { width: 386, height: 218 },
];
const seeded = { seed: 20261124, numRuns: 60 };
const runs = fc.record({ made: arbitraryPlans, page: fc.constantFrom(...pages) });

const textsIn = (drawings: readonly Drawing[]): string[] =>
  drawings.flatMap(({ marks }) => textsOf(marks).map(({ text }) => text));

const boxOfPath = ({ path }: PathMark): Box => {
  const points = pointsOf(path);
  const [us, vs] = [points.map(([u]) => u), points.map(([, v]) => v)];
  return { u0: Math.min(...us), v0: Math.min(...vs), u1: Math.max(...us), v1: Math.max(...vs) };
};

/** Ends of all pieces on the way down to rips, walked without the view's own reader: a cut stands at each. */
function cutPlaces(tree: CutTree, start: number, length: number, kerf: number): number[] {
  if (tree === null || !('cut' in tree) || tree.cut === 'rip') return [];
  const rest = start + tree.at + kerf;
  return [
    ...cutPlaces(tree.a, start, tree.at, kerf),
    start + tree.at,
    ...cutPlaces(tree.b, rest, length - tree.at - kerf, kerf),
  ];
}

/** Pieces drawn in bars, counted as a reader would: each row by its count, the whole board once. */
function drawnParts(drawings: readonly Drawing[]): Map<string, number> {
  const found = new Map<string, number>();
  let lengths = 1;
  for (const { marks } of drawings) {
    const texts = textsOf(marks);
    const headings = texts
      .filter(({ text }) => text.startsWith('Strips from'))
      .map(({ text, at }) => ({ u: at[0], v: at[1], lengths: (text.match(/\d+/g) ?? []).length }));
    const rows = texts.filter(({ text }) => text === 'whole' || /^\d+ ×$/.test(text)).sort((a, b) => a.at[1] - b.at[1]);
    for (const row of rows) {
      const under = headings.filter(({ u, v }) => v < row.at[1] && Math.abs(u - row.at[0]) < 1e-6);
      const over = under.sort((a, b) => a.v - b.v).at(-1);
      // Strips of another length may stand beside.
      const beside = rows.filter(({ at }) => at[0] > row.at[0] && Math.abs(at[1] - row.at[1]) < 40);
      const end = Math.min(...beside.map(({ at }) => at[0]), Infinity);
      if (over) lengths = over.lengths;
      const times = row.text === 'whole' ? 1 : Number.parseInt(row.text, 10) * lengths;
      for (const mark of marks) {
        if (mark.kind !== 'path' || mark.role !== 'wood' || mark.of === undefined) continue;
        const { u0, v0, v1 } = boxOfPath(mark);
        if (u0 < row.at[0] + NAMES - 1e-6 || u0 > end || row.at[1] < v0 || row.at[1] > v1) continue;
        found.set(mark.of, (found.get(mark.of) ?? 0) + times);
      }
    }
  }
  return found;
}

/** Texts on texts, and texts on a heavy line or on a leader, named. */
function collisions(marks: readonly Mark[]): string[] {
  const texts = textsOf(marks).map((mark) => ({ text: mark.text, box: textBox(mark) }));
  const heavy = segmentsOf(marks.filter((mark) => mark.kind === 'path' && pen(mark.role).width >= thick));
  const leads = segmentsOf(marks.filter((mark) => mark.role === 'dimension'));
  return texts.flatMap(({ text, box }, i) => [
    ...texts.slice(i + 1).flatMap((other) => (overlaps(box, other.box) ? [`${text} on ${other.text}`] : [])),
    ...[...heavy, ...leads].flatMap((line) => (crossesBox(line, box) ? [`${text} on a line`] : [])),
  ]);
}

const one = (tree: CutTree, more: Partial<PlannedBoard> = {}): PlannedBoard => ({
  from: 'stock',
  stock: 0,
  name: '50 x 100',
  count: 1,
  length: 3000,
  width: 100,
  thickness: 50,
  tree,
  ...more,
});

describe('boardCuts', () => {
  it('finds kerf, planed faces and what remains: 100 wide, 5 off, 1 planed on either side of a blade of 3', () => {
    const tree: CutTree = { cut: 'rip', axis: 'width', at: 5, a: { part: 'A' }, b: { part: 'B' } };
    const [board] = boardCuts(planOf([one(tree)]), sawOf(3, 3, 1));
    const { rips, strips } = board?.ripped[0] ?? { rips: [], strips: [] };
    expect(rips[0]?.blade).toEqual({ x: 6, y: 0, width: 3, height: 50 });
    expect(strips.map(({ box }) => [box.x, box.width])).toEqual([
      [0, 5],
      [10, 90],
    ]);
  });

  it('refuses a strip that is ripped after its crosscut', () => {
    const again: CutTree = { cut: 'rip', axis: 'width', at: 5, a: { part: 'A' }, b: null };
    const strip: CutTree = { cut: 'cross', at: 500, a: again, b: null };
    const tree: CutTree = { cut: 'rip', axis: 'width', at: 40, a: strip, b: null };
    expect(() => boardCuts(planOf([one(tree)]), sawOf(3, 3, 0))).toThrow('invalid plan');
  });

  it('keeps every length of wood whole: stretches and kerfs add up to it', () => {
    fc.assert(
      fc.property(arbitraryPlans, ({ plan, saw }) => {
        for (const { cuts, ripped } of boardCuts(plan, saw))
          for (const { length, stretches, kerfs } of [
            cuts,
            ...ripped.flatMap(({ strips }) => strips.map((s) => s.cuts)),
          ]) {
            const sum = [...stretches.map((s) => s.length), ...kerfs.map(({ width }) => width)].reduce(
              (a, b) => a + b,
              0,
            );
            expect(sum).toBeCloseTo(length, 6);
          }
      }),
      seeded,
    );
  });
});

describe('cutStops', () => {
  it('counts every piece of every part once, cut by a stop or at length without', () => {
    fc.assert(
      fc.property(arbitraryPlans, ({ plan, saw }) => {
        const { boards, strips, whole, last } = cutStops(boardCuts(plan, saw));
        const found = new Map<string, number>();
        for (const { letter, count } of [...boards, ...strips].flatMap(({ kinds }) => kinds).concat(whole, last))
          if (letter !== undefined) found.set(letter, (found.get(letter) ?? 0) + count);
        const wanted = new Map<string, number>();
        for (const { tree, count } of plan.boards)
          for (const [letter, n] of partsIn(tree)) wanted.set(letter, (wanted.get(letter) ?? 0) + n * count);
        expect(new Map([...found].sort())).toEqual(new Map([...wanted].sort()));
      }),
      seeded,
    );
  });
});

describe('cutStops, of the last pieces', () => {
  it('tells those that no stop cut from those whose wood a stop cut', () => {
    const last: CutTree = { cut: 'cross', at: 1000, a: { part: 'A' }, b: { part: 'A', unstopped: true } };
    const plan = planOf([one(last)]);
    const saw = sawOf(3, 3, 0);
    const { whole, last: found } = cutStops(boardCuts(plan, saw));
    expect([whole, found]).toEqual([[], [{ letter: 'A', count: 1 }]]);
    const options = { parts: [], display, saw, width: 183, height: 204 };
    expect(textsIn(sawWork(plan, options)).join(' ')).toContain('last of its wood, no cut: 1 × A');
  });
});

describe('ripSettings', () => {
  it('makes every rip once, none before the rip that frees its piece', () => {
    fc.assert(
      fc.property(arbitraryPlans, ({ plan, saw }) => {
        const boards = boardCuts(plan, saw);
        const order = new Map(
          ripSettings(plan, boards).flatMap(({ number, rips }) => rips.map(({ rip }) => [rip, number] as const)),
        );
        const all = boards.flatMap(({ ripped }) => ripped.flatMap(({ rips }) => rips.map((rip) => ({ rip, rips }))));
        expect(order.size).toBe(all.length);
        for (const { rip, rips } of all)
          if (rip.after !== undefined)
            expect(order.get(rip)).toBeGreaterThanOrEqual(order.get(rips[rip.after] as never) as number);
      }),
      seeded,
    );
  });
});

describe('cutSheets', () => {
  it('marks what the plan keeps of a strip, and no other end', () => {
    const strip = (rest: CutTree): CutTree => ({ cut: 'cross', at: 597, a: { part: 'A' }, b: rest });
    const drawn = (rest: CutTree): string[] =>
      textsIn(
        cutSheets(planOf([one({ cut: 'rip', axis: 'width', at: 40, a: strip(rest), b: null }, { length: 1000 })]), {
          parts: [],
          display,
          saw: sawOf(3, 3, 0),
          width: 183,
          height: 204,
        }),
      );
    expect(drawn({ left: 400 })).toContain('keep');
    expect(drawn({ left: 400 })).toContain('A + keep');
    expect(drawn(null)).not.toContain('keep');
  });

  // Blanks 9 by 50, each ripped again: the name has room only on end.
  it('names thin blanks in a row once, with how many, and tells what the bar and the square are', () => {
    const blank: CutTree = { cut: 'rip', axis: 'thickness', at: 20, a: { part: 'A' }, b: null };
    const row = (n: number): CutTree =>
      n === 0 ? null : { cut: 'rip', axis: 'width', at: 9, a: blank, b: row(n - 1) };
    const drawn = (n: number): string[] =>
      textsIn(cutSheets(planOf([one(row(n))]), { parts: [], display, saw: sawOf(3, 3, 0), width: 183, height: 204 }));
    expect(drawn(3).filter((text) => text.includes('rip at'))).toEqual(['3 × rip at 2']);
    expect(drawn(2).filter((text) => text.includes('rip at'))).toEqual(['rip at 2', 'rip at 2']);
    expect(drawn(2).join(' ')).toContain('Grey beside an end is the fence');
  });

  it.each(['rail', 'slat'])('asks for plug wood where rails are cut: %s', (name) => {
    const parts = partsOf(solve(readJob(JOB))).filter((part) => part.name === name);
    const told = textsIn(
      cutSheets(planOf([one({ part: 'A' })]), { parts, display, saw: sawOf(3, 3, 0), width: 183, height: 204 }),
    );
    expect(told.join(' ').includes('for plugs')).toBe(name === 'rail');
  });

  it('draws nothing for a plan without boards', () => {
    expect(cutSheets(planOf([]), { parts: [], display, saw: sawOf(3, 3, 0), width: 183, height: 204 })).toEqual([]);
  });

  it('writes distances from the squared end: trim 10, kerf 3, pieces of 1000 and 700', () => {
    const rest: CutTree = { cut: 'cross', at: 700, a: { part: 'B' }, b: { left: 1281 } };
    const tree: CutTree = { cut: 'cross', at: 10, a: null, b: { cut: 'cross', at: 1000, a: { part: 'A' }, b: rest } };
    const drawn = cutSheets(planOf([one(tree)]), { parts: [], display, saw: sawOf(3, 3, 0), width: 183, height: 204 });
    const under = textsOf(drawn[0]?.marks ?? [])
      .filter(({ anchor }) => anchor === 'end')
      .map(({ text }) => text);
    // 1000, then 1000 + 3 + 700 = 1703.
    expect(under.sort()).toEqual(['1000', '1703']);
  });

  it('draws every part as often as the plan cuts it', () => {
    fc.assert(
      fc.property(runs, ({ made: { plan, saw }, page }) => {
        for (const board of plan.boards) {
          const drawn = drawnParts(cutSheets(planOf([board]), { parts: [], display, saw, columns: 1, ...page }));
          expect(new Map([...drawn].sort())).toEqual(new Map([...partsIn(board.tree)].sort()));
        }
      }),
      { ...seeded, numRuns: 25 },
    );
  });

  it('stands every distance where the cut is, and no other than the cuts of the tree', () => {
    fc.assert(
      fc.property(arbitraryPlans, ({ plan, saw }) => {
        for (const board of plan.boards) {
          const tree = board.tree as Extract<CutTree, { cut: 'cross' }>;
          if (tree.b === null) continue;
          const datum = tree.at + saw.crossKerf;
          const [page] = cutSheets(planOf([board]), { parts: [], display, saw, width: 383, height: 400, columns: 1 });
          const places = cutPlaces(tree.b, 0, board.length - datum, saw.crossKerf);
          const whole = textsOf(page?.marks ?? []).find(({ text }) => text === 'whole');
          const over = Math.ceil(board.length / (383 - NAMES) - 1e-9);
          const edge = (whole?.at[1] ?? 0) + 0.4 + Math.max(6.5, board.width / over) / 2;
          const under = textsOf(page?.marks ?? []).filter(
            ({ anchor, at }) => anchor === 'end' && at[1] > edge && at[1] < edge + 4,
          );
          for (const { text, at } of under) {
            const place = (at[0] + 0.8 - NAMES) * over - datum;
            const near = places.find((one) => Math.abs(one - place) < 1e-6);
            expect(near).toBeDefined();
            expect(text).toBe(formatLength(near as number, display));
          }
          if (places.length > 0) expect(under.length).toBeGreaterThan(0);
        }
      }),
      { ...seeded, numRuns: 40 },
    );
  });

  it('has no text on a text, a heavy line or a leader, and stays on its page', () => {
    fc.assert(
      fc.property(runs, ({ made: { plan, saw }, page }) => {
        for (const { marks, bounds } of cutSheets(plan, { parts: [], display, saw, ...page })) {
          expect(collisions(marks)).toEqual([]);
          expect(bounds.v1).toBeLessThanOrEqual(page.height + 1e-6);
          for (const text of textsOf(marks)) expect(contains(grown(bounds, 0.5), textBox(text))).toBe(true);
        }
      }),
      seeded,
    );
  });
});

describe('sawWork', () => {
  const strip = (at: number): CutTree => ({ cut: 'rip', axis: 'width', at, a: { part: 'A' }, b: { part: 'A' } });
  const work = (tree: CutTree, planing = 0): string =>
    textsIn(
      sawWork(planOf([one(tree, { count: 12 })]), {
        parts: [],
        display,
        saw: sawOf(3, 3, planing),
        width: 183,
        height: 204,
      }),
    )
      .join(' ')
      .replaceAll(/\s+/g, ' ');

  it('counts the rips of all boards alike, and sets the fence off by what is planed', () => {
    expect(work(strip(43))).toContain('1 fence 43 1 flat, 100 wide 50 12 12 × A 43 × 50 12 × what remains, A 50 × 54');
    expect(work(strip(43), 0.5)).toContain('1 fence 43.5 1');
  });

  it.each([
    [9, true],
    [10, false],
  ])('sets a stop for a strip of %d mm, and warns of it: %s', (at, thin) => {
    expect(work(strip(at)).includes('Thin strips at setting 1')).toBe(thin);
    expect(work(strip(at))).toContain(`1 ${thin ? 'thin-rip stop' : 'fence'} ${at} 1`);
  });

  // 50 thick: 20 off, 3 lost, 27 remain 100 deep; 20 off that leaves 4. A piece 27 wide and 100 deep stands.
  it('judges how a piece lies by the piece before the cut, and names a shaving and a blank', () => {
    const through = (at: number, a: CutTree, b: CutTree): CutTree => ({ cut: 'rip', axis: 'thickness', at, a, b });
    const two = through(20, { part: 'A' }, through(20, { part: 'A' }, { part: 'B' }));
    expect(work(two)).toContain(
      'on edge, 50 and 27 wide 100 24 24 × A 20 × 100 12 × what remains, B 4 × 100 tall: high fence',
    );
    expect(work(two)).toContain('At setting 1 a tall piece stands on a narrow edge');
    expect(work(through(48, { part: 'A' }, null))).toContain(
      '12 × A 48 × 100 only trims the edge: less than a blade comes off',
    );
    const blank: CutTree = { cut: 'rip', axis: 'width', at: 60, a: through(20, { part: 'A' }, null), b: null };
    const told = work(blank);
    expect(told).toContain('1 fence 60 1 flat, 100 wide 50 12 12 × blank 50 × 60, ripped again at 2');
    expect(told).toContain('2 fence 20 1 on edge, 50 wide 60 12 12 × A 20 × 60');
  });

  // One 20 off the thickness of a blank 30 wide, one 20 off the width of a blank 30 thick: alike on the saw.
  it('tells rips in one row that give the same piece, whichever way it lay in the board', () => {
    const by = (axis: 'width' | 'thickness', at: number, a: CutTree, b: CutTree): CutTree => ({
      cut: 'rip',
      axis,
      at,
      a,
      b,
    });
    const [tall, wide] = [by('thickness', 20, { part: 'A' }, null), by('width', 20, { part: 'A' }, null)];
    expect(work(by('width', 30, tall, by('thickness', 30, wide, null)))).toMatch(/fence 20 .* 30 24 24 × A 20 × 30/);
  });

  // 40 thick, 1.5 off: no rip and no setting; then a strip 5 thick lies flat against the fence.
  it('planes what a plane takes, before the rip that wants it, and warns of a thin strip that lies flat', () => {
    const through = (at: number, a: CutTree, b: CutTree): CutTree => ({ cut: 'rip', axis: 'thickness', at, a, b });
    const planed = through(38.5, strip(43), null);
    const saw = { ...sawOf(3, 3, 0), shaving: 1.5 };
    const told = (tree: CutTree, thickness: number): string =>
      textsIn(sawWork(planOf([one(tree, { thickness })]), { parts: [], display, saw, width: 183, height: 204 }))
        .join(' ')
        .replaceAll(/\s+/g, ' ');
    expect(told(planed, 40)).toContain(
      'plane to 38.5 × 100 1 the length, 40 × 100: face 1 × the length, 38.5 × 100 1 fence 43',
    );
    expect(told(strip(43), 5)).toContain('At setting 1 a thin strip lies flat');
    expect(told(strip(43), 40)).not.toContain('lies flat');
  });

  // 100 wide, 45 thick: 46 remain beyond 51 and 3, planed to 44.5; the same way on, so it is not turned on edge.
  it('does not turn on edge what is ripped the same way on once it is planed', () => {
    const planed: CutTree = { cut: 'rip', axis: 'width', at: 44.5, a: strip(12), b: null };
    const tree: CutTree = { cut: 'rip', axis: 'width', at: 51, a: { part: 'A' }, b: planed };
    const options = { parts: [], display, saw: { ...sawOf(3, 3, 0), shaving: 1.5 }, width: 183, height: 204 };
    const made = planOf([one(tree, { thickness: 45 })]);
    for (const sheets of [sawWork(made, options), cutSheets(made, options)]) {
      const told = textsIn(sheets).join(' ').replaceAll(/\s+/g, ' ');
      expect(told).toContain('as it lay before, 44.5 wide');
      expect(told).not.toContain('on edge');
    }
  });

  // A blank 50 thick: strips 5 wide by the stop, then one 12 by the fence.
  it('draws fence and stop as the first setting of a blank has them, and tells of another and of where it comes from', () => {
    const row: CutTree = { cut: 'rip', axis: 'width', at: 5, a: { part: 'A' }, b: strip(12) };
    const tree: CutTree = { cut: 'rip', axis: 'width', at: 60, a: row, b: null };
    const told = textsIn(
      cutSheets(planOf([one(tree)]), { parts: [], display, saw: sawOf(3, 3, 0), width: 183, height: 204 }),
    );
    expect(told).toContain('thin-rip stop');
    expect(told.some((text) => /^from \d+.*at \d+ fence left$/.test(text))).toBe(true);
    expect(told.join(' ')).not.toContain('see the table');
  });

  it('carries the last thin strips past the blade on a scrap: 20 wide, 9 off, 3 lost, 8 remain', () => {
    const narrow: CutTree = { cut: 'rip', axis: 'width', at: 20, a: strip(9), b: null };
    expect(work(narrow)).toContain('At setting 2 every rip leaves no more than 8 mm at the fence.');
    expect(work(narrow)).toContain('every rip here: tape to a scrap');
    expect(work(strip(9))).not.toContain('tape');
    // 32 wide: 9 off, 20 remain; 9 off, 8 remain.
    const two: CutTree = { cut: 'rip', axis: 'width', at: 9, a: { part: 'A' }, b: strip(9) };
    const told = work({ cut: 'rip', axis: 'width', at: 32, a: two, b: null });
    expect(told).toContain('At setting 2 the last rip of a piece leaves no more than 8 mm at the fence.');
    expect(told).toContain('last rip of each piece: tape to a scrap');
  });

  it('warns of a sliver that the plan names, and of a tall piece half as high again as wide', () => {
    const loose: CutTree = { cut: 'rip', axis: 'width', at: 43, a: { part: 'A' }, b: null, sliver: 0.8 };
    expect(work(loose)).toContain('a sliver of 0.8 falls loose: stand aside');
    const half = (width: number): CutTree => ({ cut: 'rip', axis: 'width', at: width, a: strip(20), b: null });
    expect(work(half(33))).toContain('tall: high fence');
    expect(work(half(34))).not.toContain('tall: high fence');
  });

  it('tells the blade that the plan is made for, the trim with its blade, and what is cut long', () => {
    const tree: CutTree = { cut: 'cross', at: 10, a: null, b: { part: 'A' } };
    const [stile] = partsOf(solve(readJob(JOB)), { long: 25 }).filter(({ over }) => over > 0);
    const told = textsIn(
      sawWork(planOf([one(tree)]), { parts: [stile as Part], display, saw: sawOf(3, 2, 0), width: 183, height: 204 }),
    )
      .join(' ')
      .replaceAll(/\s+/g, ' ');
    expect(told).toContain('blades 3 mm thick to rip and 2 mm to crosscut');
    expect(told).toContain('Square the left end of the boards of pattern 1 (1 board): 10 mm and a blade go.');
    expect(told).toContain('25 mm longer than finished');
  });

  it('gives the reason where there is no plan', () => {
    const refusal = { reason: 'length', part: 'A', text: 'A is longer than any board.', proven: true } as const;
    const plan = planOf([], { status: 'impossible', refusal });
    const texts = textsIn(sawWork(plan, { parts: [], display, saw: sawOf(3, 3, 0), width: 183, height: 204 }));
    expect(texts).toContain('A is longer than any board.');
  });
});
