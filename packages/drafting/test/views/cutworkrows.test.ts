import type { CutTree } from '@wattlewright/model';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boardCuts } from '../../src/views/cutboard.ts';
import { countedRip, givesText } from '../../src/views/cutgives.ts';
import { cutSheets } from '../../src/views/cutsheets.ts';
import { sectionText } from '../../src/views/cutsize.ts';
import type { Rip, SectionBox } from '../../src/views/cutstages.ts';
import { ripSettings } from '../../src/views/cutsteps.ts';
import { workRows } from '../../src/views/cutworkrows.ts';
import { sawWork } from '../../src/views/sawwork.ts';
import { textsOf } from '../layout/faults.ts';
import { arbitraryPlanedPlans, arbitraryPlans, planOf, sawOf } from './arbitraryplan.ts';

/** A piece in its place, as text, so that pieces at hand can be looked up. */
const named = (place: string, { x, y, width, height }: SectionBox): string =>
  `${place}: ${[x, y, width, height].map((size) => Math.round(size * 1e4)).join(' ')}`;

/** What remains beyond the blade when its sawn face is planed. */
function remains({ axis, piece, blade }: Rip, planing: number): SectionBox {
  const [place, side] = axis === 'width' ? (['x', 'width'] as const) : (['y', 'height'] as const);
  const start = blade[place] + blade[side] + planing;
  return { ...piece, [place]: start, [side]: piece[place] + piece[side] - start };
}

describe('workRows', () => {
  it('told row by row, has every piece at hand when it is planed or ripped, and works each once', () => {
    let broken = 0;
    fc.assert(
      fc.property(arbitraryPlanedPlans, ({ plan, saw }) => {
        const boards = boardCuts(plan, saw);
        const hand = new Set<string>();
        boards.forEach(({ ripped }, b) => {
          ripped.forEach(({ box }, r) => void hand.add(named(`${b} ${r}`, box)));
        });
        const done = new Set<Rip>();
        const planed = new Set<unknown>();
        for (const { rips: all } of ripSettings(plan, boards)) {
          const rows = workRows(all, boards, (rip) => `${rip.axis} ${rip.offIs}`);
          broken += rows.slice(1).filter(({ blanks }) => blanks.length > 0).length;
          for (const { rips, blanks } of rows) {
            for (const { board, ripped, stage } of blanks) {
              expect(hand.delete(named(`${board} ${ripped}`, stage.from))).toBe(true);
              hand.add(named(`${board} ${ripped}`, stage.piece));
              planed.add(stage);
            }
            const left = [...rips];
            while (left.length > 0) {
              const next = left.findIndex(({ board, ripped, rip }) => hand.has(named(`${board} ${ripped}`, rip.piece)));
              expect(next).toBeGreaterThanOrEqual(0);
              for (const { board, ripped, rip } of left.splice(next, 1)) {
                hand.delete(named(`${board} ${ripped}`, rip.piece));
                hand.add(named(`${board} ${ripped}`, rip.off));
                hand.add(named(`${board} ${ripped}`, remains(rip, saw.planing)));
                done.add(rip);
              }
            }
          }
        }
        const lengths = boards.flatMap(({ ripped }) => ripped);
        expect(done.size).toBe(lengths.reduce((sum, { rips }) => sum + rips.length, 0));
        const wanting = lengths.flatMap(({ stages }) => stages.filter((stage) => stage.planed.length > 0));
        expect(planed.size).toBe(wanting.length);
      }),
      { seed: 20261126, numRuns: 100 },
    );
    // Else the plans never put the rule to the proof.
    expect(broken).toBeGreaterThan(0);
  });
});

describe('givesText', () => {
  it('has named every piece with its size that a later row starts with', () => {
    const display = { unit: 'mm', mark: 0.1 } as const;
    let later = 0;
    fc.assert(
      fc.property(fc.oneof(arbitraryPlans, arbitraryPlanedPlans), ({ plan, saw }) => {
        const boards = boardCuts(plan, saw);
        const settings = ripSettings(plan, boards);
        const numbers = new Map(settings.flatMap(({ number, rips }) => rips.map(({ rip }) => [rip, number] as const)));
        const numberOf = (rip: Rip): number => numbers.get(rip) as number;
        const ownOf = (board: number, ripped: number): readonly Rip[] => boards[board]?.ripped[ripped]?.rips ?? [];
        const named = new Map<Rip, string>();
        for (const { rips: all } of settings)
          for (const { rips } of workRows(all, boards, (rip) => `${rip.axis} ${rip.offIs}`)) {
            const row = rips.map(({ rip }) => rip);
            for (const { board, ripped, rip } of rips) {
              const own = ownOf(board, ripped);
              const first = rip.after === undefined ? undefined : (own[rip.after] as Rip);
              if (first === undefined || row.includes(first)) continue;
              later += 1;
              const stage = boards[board]?.ripped[ripped]?.stages.find(
                ({ rips: some }) => own[some[0] as number] === rip,
              );
              const { width, height } = stage?.from ?? rip.piece;
              expect(named.get(first)).toContain(`blank ${sectionText(width, height, display)}, ripped again at`);
            }
            for (const { board, ripped, rip } of rips) {
              const counted = countedRip(rip, { times: 1, rips: ownOf(board, ripped), row, numberOf });
              named.set(rip, givesText([counted], display).join(' '));
            }
          }
      }),
      { seed: 20261126, numRuns: 100 },
    );
    expect(later).toBeGreaterThan(10);
  });
});

describe('what is planed, as told', () => {
  const rip = (axis: 'width' | 'thickness', at: number, a: CutTree, b: CutTree): CutTree => ({
    cut: 'rip',
    axis,
    at,
    a,
    b,
  });
  const A: CutTree = { part: 'A' };
  // 100 wide, 30 off and 3 lost: 67. That is planed in bites to 65.5, to 64.5, and from 50 to 48.5; 30 off it again.
  const last = rip('width', 30, A, A);
  const tree = rip(
    'width',
    30,
    A,
    rip('width', 65.5, rip('width', 64.5, rip('thickness', 48.5, last, null), null), null),
  );
  const options = {
    parts: [],
    display: { unit: 'mm', mark: 1 },
    saw: { ...sawOf(3, 3, 0), shaving: 1.5 },
    width: 183,
    height: 204,
  } as const;
  const told = (drawings: ReturnType<typeof sawWork>): string =>
    drawings
      .flatMap(({ marks }) => textsOf(marks).map(({ text }) => text))
      .join(' ')
      .replaceAll(/\s+/g, ' ');
  const planned = (of: CutTree) =>
    planOf([
      {
        from: 'stock' as const,
        stock: 0,
        name: 'board',
        count: 2,
        length: 1000,
        width: 100,
        thickness: 50,
        tree: of,
      },
    ]);

  it('stands in one row for each piece between the rips of a setting that free it and want it', () => {
    const [work, sheets] = [told(sawWork(planned(tree), options)), told(cutSheets(planned(tree), options))];
    expect(work).toMatch(
      /1 fence 30 1 flat, 100 wide .*plane to 48\.5 × 64\.5 1 blank 50 × 67: face and edge 2 × blank 48\.5 × 64\.5 1 again, after planing fence 30 1 flat/,
    );
    expect(sheets).toMatch(
      /1 fence 30 flat, 100 wide .*plane to 48\.5 × 64\.5 blank 50 × 67: face and edge 1 × blank 48\.5 × 64\.5, then ripped at 1 1 again, after planing fence/,
    );
    for (const text of [work, sheets]) expect(text.match(/plane to/g)).toHaveLength(1);
  });

  it('stands after all rips where a strip is planed to size', () => {
    const strip = rip('width', 30, rip('thickness', 48.5, A, null), A);
    expect(told(cutSheets(planned(strip), options))).toMatch(/1 fence 30 .*plane to 30 × 48\.5 A 30 × 50: edge 1 × A/);
  });

  it('names the length that is planed, and a partner that stays for a later setting', () => {
    const half = (a: CutTree, b: CutTree): CutTree => ({ cut: 'cross', at: 500, a, b });
    const two = half(rip('width', 30, A, rip('width', 20, A, A)), rip('thickness', 48.5, last, null));
    const text = told(sawWork(planned(two), options));
    expect(text).toContain('plane to 48.5 × 100 1 (length 2) the length, 50 × 100: face');
    expect(text).toContain('2 × what remains, blank 50 × 67, ripped again at 2');
  });

  it.each([
    [7.5, 'thin: on a carrier board, or by hand plane or sander'],
    [8, undefined],
  ])('minds a strip planed to %d mm: %s', (at, note) => {
    const text = told(sawWork(planned(rip('width', 9, rip('width', at, A, null), A)), options));
    expect(text.includes('carrier')).toBe(note !== undefined);
    if (note) expect(text).toContain(note);
  });
});
