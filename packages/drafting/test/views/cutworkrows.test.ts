import type { CutTree } from '@wattlewright/model';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boardCuts } from '../../src/views/cutboard.ts';
import { cutSheets } from '../../src/views/cutsheets.ts';
import type { Rip, SectionBox } from '../../src/views/cutstages.ts';
import { ripSettings } from '../../src/views/cutsteps.ts';
import { workRows } from '../../src/views/cutworkrows.ts';
import { sawWork } from '../../src/views/sawwork.ts';
import { textsOf } from '../layout/faults.ts';
import { arbitraryPlanedPlans, planOf, sawOf } from './arbitraryplan.ts';

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
      /1 fence 30 1 flat, 100 wide .*plane to 48\.5 × 64\.5 1 blank 50 × 67 2 planed 1 fence 30 1 flat/,
    );
    expect(sheets).toMatch(
      /1 fence 30 flat, 100 wide .*plane to 48\.5 × 64\.5 blank 50 × 67 1 before it is ripped at 1 1 fence/,
    );
    for (const text of [work, sheets]) expect(text.match(/plane to/g)).toHaveLength(1);
  });

  it('stands after all rips where a strip is planed to size', () => {
    const strip = rip('width', 30, rip('thickness', 48.5, A, null), A);
    expect(told(cutSheets(planned(strip), options))).toMatch(/1 fence 30 .*plane to 30 × 48\.5 A 30 × 50 1 to size/);
  });
});
