import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type CutTree, type CuttingInput, type Part, planCutsQuick, type Stock, withKerf } from '../../src/index.ts';
import { board, part, saw } from './jobs.ts';
import { sawUp } from './walker.ts';

const seed = { seed: 20261124, numRuns: 40 };

const sixteenths = (from: number, to: number): fc.Arbitrary<number> =>
  fc.integer({ min: from * 16, max: to * 16 }).map((n) => n / 16);

const sections = [
  [1.5, 2.5],
  [5 / 8, 5 / 8],
  [3 / 16, 1.5],
  [3 / 16, 1.375],
] as const;

const parts: fc.Arbitrary<Part[]> = fc
  .array(
    fc.record({
      section: fc.constantFrom(...sections),
      length: sixteenths(12, 70),
      count: fc.integer({ min: 1, max: 12 }),
      clear: fc.boolean(),
      over: fc.constantFrom(0, 1),
    }),
    { minLength: 1, maxLength: 5 },
  )
  .map((list) =>
    list.map(({ section: [t, w], length, count, clear, over }, i) =>
      part(String.fromCharCode(65 + i), [t, w, length], count, { grade: clear ? 'clear' : 'knotty', over }),
    ),
  );

const stock: Stock[] = [
  board([1.5, 3.5, 96], 11.5, { grade: 'clear' }),
  board([1.5, 3.5, 144], 17.95, { grade: 'clear' }),
  board([1.5, 3.5, 96], 5.95),
  board([1.5, 5.5, 96], 8.8),
];

const jobs: fc.Arbitrary<CuttingInput> = fc
  .record({
    parts,
    kerf: fc.constantFrom(0, 1 / 16, 1 / 8),
    trimHead: fc.constantFrom(0, 1 / 4),
    trimTail: fc.constantFrom(0, 1 / 2),
    planing: fc.constantFrom(0, 1 / 64),
    narrowestRip: fc.constantFrom(0, 1 / 2),
    shortestRip: fc.constantFrom(0, 18),
    deepest: fc.constantFrom(2.5, 3, 6),
    shaving: fc.constantFrom(0, 1 / 16),
    rack: fc.boolean(),
    rough: fc.boolean(),
  })
  .map(({ parts, kerf, rack, rough, ...rest }) => ({
    parts,
    stock: rough
      ? stock.map((s) => ({ ...s, thickness: s.thickness + 5, width: s.width + 5, surface: 'rough' as const }))
      : stock,
    offcuts: rack
      ? [board([1.5, 3.5, 50], 0, { count: 2, trim: 0 }), board([0.75, 5.5, 40], 0, { grade: 'clear' })]
      : [],
    saw: saw({ ripKerf: kerf, crossKerf: kerf, ...rest }),
  }));

/** Whether a rip leaves nothing but waste between fence and blade. */
function ripsWaste(tree: CutTree): boolean {
  if (tree === null || !('cut' in tree)) return false;
  return (tree.cut === 'rip' && tree.a === null) || ripsWaste(tree.a) || ripsWaste(tree.b);
}

describe('planCutsQuick over arbitrary jobs', () => {
  test('planCutsQuick makes every piece once from boards that hold their cuts, bound at most cost, shares making 1', () => {
    fc.assert(
      fc.property(jobs, (job) => {
        const plan = planCutsQuick(job);
        expect(plan.refusal).toBeUndefined();
        sawUp(plan, job);
        expect(plan.bound).toBeLessThanOrEqual(plan.cost);
        const { parts, dust, kept, waste } = plan.shares;
        expect(parts + dust + kept + waste).toBeCloseTo(1, 9);
        const fenced = plan.fences.reduce((sum, f) => sum + f.rips, 0);
        expect(fenced).toBe(plan.rips);
        if (job.saw.narrowestRip === 0) for (const { tree } of plan.boards) expect(ripsWaste(tree)).toBe(false);
      }),
      seed,
    );
  });

  test('planCutsQuick never bounds above a cost that is known to do: parts sawn out of known boards', () => {
    const sawn = fc.array(
      fc.record({ b: fc.integer({ min: 0, max: 3 }), at: sixteenths(10, 40), strip: fc.constantFrom(1.375, 1.5, 2.5) }),
      { minLength: 1, maxLength: 8 },
    );
    fc.assert(
      fc.property(sawn, (boards) => {
        const made: Part[] = [];
        let cost = 0;
        boards.forEach(({ b, at, strip }, i) => {
          const from = stock[b] as Stock;
          cost += from.price?.amount ?? 0;
          const grade = from.grade;
          const rest = from.length / 25.4 - at - 1 / 8;
          made.push(part(`a${i}`, [1.5, strip, at], 1, { grade }));
          made.push(part(`b${i}`, [1.5, strip, rest], 1, { grade }));
          made.push(part(`c${i}`, [1.5, from.width / 25.4 - strip - 1 / 8, rest], 1, { grade }));
        });
        const plan = planCutsQuick({ parts: made, stock, offcuts: [], saw: saw() });
        expect(plan.bound).toBeLessThanOrEqual(cost + 1e-6);
      }),
      seed,
    );
  });

  test('planCutsQuick gives the same plan whatever the order of the parts', () => {
    fc.assert(
      fc.property(jobs, (job) => {
        const turned = planCutsQuick({ ...job, parts: [...job.parts].reverse() });
        expect(turned).toEqual(planCutsQuick(job));
      }),
      { ...seed, numRuns: 20 },
    );
  });

  test('planCutsQuick gives the same cost and bound when every size is in another unit', () => {
    const scaled = (n: number): number => n / 12.7; // inches taken for double millimetres: still on the grid
    fc.assert(
      fc.property(jobs, (job) => {
        const size = <S extends Stock>(s: S): S => ({
          ...s,
          thickness: scaled(s.thickness),
          width: scaled(s.width),
          length: scaled(s.length),
          ...(s.trim !== undefined && { trim: scaled(s.trim) }),
        });
        const small = {
          parts: job.parts.map((p) => ({
            ...p,
            thickness: scaled(p.thickness),
            width: scaled(p.width),
            length: scaled(p.length),
            over: scaled(p.over),
          })),
          stock: job.stock.map(size),
          offcuts: job.offcuts.map(size),
          saw: Object.fromEntries(Object.entries(job.saw).map(([k, v]) => [k, scaled(v)])) as unknown as typeof job.saw,
        };
        const [a, b] = [planCutsQuick(job), planCutsQuick(small)];
        expect([b.cost, b.bound, b.boards.length]).toEqual([a.cost, a.bound, a.boards.length]);
      }),
      { ...seed, numRuns: 20 },
    );
  });

  test('planCutsQuick bounds no higher with more stock, and no lower with a wider kerf', () => {
    fc.assert(
      fc.property(jobs, (job) => {
        const plan = planCutsQuick(job);
        const more = planCutsQuick({ ...job, stock: [...job.stock, board([1.5, 5.5, 144], 13.6)] });
        expect(more.bound).toBeLessThanOrEqual(plan.cost + 1e-9);
        const wider = withKerf(job, (job.saw.ripKerf || 1) + 1);
        expect(plan.bound).toBeLessThanOrEqual(wider.cost + 1e-9);
      }),
      { ...seed, numRuns: 20 },
    );
  });
});
