import { type Mixture, mixture, type Rest, roundUp, wholeRest } from './bound.ts';
import { correctedGreedy, withoutSome } from './correction.ts';
import { better, dive } from './dive.ts';
import { serves } from './fit.ts';
import { costOfTakes, type Draft, isDone } from './greedy.ts';
import { type Nested, nest, withPatterns } from './nested.ts';
import type { BoundKind } from './plan.ts';
import type { BoardClass, Problem } from './problem.ts';
import { betterPatterns, coarseLengths, relaxedBound } from './relaxed.ts';

/** Parts and boards that have nothing to do with the rest of the job, and the best plan for them so far. */
export interface Group {
  readonly nested: Nested;
  readonly rest: Rest;
  readonly mix: Mixture;
  readonly draft: Draft;
  /** Whether the draft makes every piece. */
  readonly done: boolean;
  readonly cost: number;
  readonly bound: number;
  readonly boundKind: BoundKind;
  /** True where it is proven that the boards there are cannot make every piece. */
  readonly hopeless: boolean;
}

/** Splits a problem into independent ones: no board of one can serve a part of another. */
function split(problem: Problem): Problem[] {
  const owner = problem.demands.map((_, i) => i);
  const find = (i: number): number => {
    let at = i;
    while (owner[at] !== at) at = owner[at] as number;
    return at;
  };
  const fits = (c: BoardClass, d: Problem['demands'][number]): boolean =>
    serves(c, d) && d.thickness <= c.thickness && d.width <= c.width;
  const first = problem.classes.map((c) => {
    const served = problem.demands.flatMap((d, i) => (fits(c, d) ? [i] : []));
    for (const i of served) owner[find(i)] = find(served[0] as number);
    return served[0];
  });
  const heads = [...new Set(owner.map((_, i) => find(i)))];
  return heads.map((head) => ({
    ...problem,
    demands: problem.demands.filter((_, i) => find(i) === head),
    boards: problem.boards.filter((b) => {
      const served = first[b.class];
      return served !== undefined && find(served) === head;
    }),
  }));
}

/** The own core's plan and bound for one group. */
export function planGroup(tables: Nested): Group {
  const rest = wholeRest(tables);
  const relaxed = tables.complete ? undefined : relaxedBound(tables, rest, 8);
  const coarse = tables.lengthsComplete ? undefined : coarseBound(tables.problem);
  const { nested, mix, cells } = mixed(relaxed === undefined ? tables : withPatterns(tables, relaxed.patterns), rest);
  const step = nested.problem.costStep;
  const linear = roundUp(nested.complete ? mix.bound : (relaxed?.bound ?? coarse ?? 0), step);
  const material = roundUp(materialBound(nested.problem), step);
  const bound = Math.max(linear, material);
  const boundKind = linear >= material ? 'linear' : 'material';
  const make = (draft: Draft): Group => ({
    nested,
    rest,
    mix,
    draft,
    done: isDone(draft.rest),
    cost: costOfTakes(nested, draft.takes),
    bound,
    boundKind,
    hopeless: false,
  });
  const drafts = Math.min(60, 5 + 2 * nested.problem.demands.length);
  const rounds = Math.max(1, Math.min(24, Math.floor(2e7 / (cells * drafts))));
  let group = make(correctedGreedy(nested, rest, mix.worth, rounds));
  const settled = (): boolean => group.done && group.cost <= bound;
  if (!settled())
    group = make(better(nested, group.draft, dive(nested, rest, mix, Math.min(40, Math.floor(4e6 / cells)))));
  if (!settled() && cells * drafts < 2e7) group = make(withoutSome(nested, rest, mix.worth, group.draft, 2 * rounds));
  return { ...group, hopeless: !group.done && mix.short > 0 && isHopeless(nested, rest) };
}

/** Rounds in which the worths of a mixture may bring further section patterns. */
const ROUNDS = 4;

/** The best mixture; where section patterns were cut short, with those that its worths ask for. */
function mixed(tables: Nested, rest: Rest): { nested: Nested; mix: Mixture; cells: number } {
  let nested = tables;
  let known: Mixture['known'] = [];
  for (let round = 0; ; round++) {
    // Every budget counts table cells filled, so that a job of thousands of odd lengths ends as well.
    const cells = cellsOf(nested);
    const mix = mixture(nested, rest, { known, rounds: Math.max(10, Math.min(400, Math.floor(2e8 / cells))) });
    const added = nested.complete || round === ROUNDS ? [] : betterPatterns(nested, mix.worth);
    if (added.every((list) => list.length === 0)) return { nested, mix, cells };
    nested = withPatterns(nested, added);
    known = mix.known;
  }
}

/** The bound of the problem on a grid of lengths, where its true lengths are too many to list. */
function coarseBound(problem: Problem): number | undefined {
  const coarse = coarseLengths(problem);
  const tables = coarse && nest(coarse);
  return tables && relaxedBound(tables, wholeRest(tables), 4)?.bound;
}

/** Table cells filled by one pricing, roughly. */
function cellsOf(nested: Nested): number {
  const kinds = nested.kinds.reduce((sum, k) => sum + k.at.length * k.items.length, 0);
  const rooms = nested.rooms.reduce(
    (sum, r) => sum + r.segments.length * r.patterns.length * r.kinds.length + r.at.length * 30,
    0,
  );
  return 1 + kinds + rooms;
}

/** With every board free, the mixture still cannot make all pieces: no plan can. */
function isHopeless(nested: Nested, rest: Rest): boolean {
  return nested.complete && mixture(nested, rest, { cost: () => 0 }).bound > 1e-3;
}

/** Volume of the parts at the least price per volume, cheapest boards first as far as they go. */
function materialBound(problem: Problem): number {
  let open = problem.demands.reduce((sum, d) => sum + d.need * d.length * d.width * d.thickness, 0);
  const boards = problem.boards
    .map((b) => {
      const c = problem.classes[b.class] as BoardClass;
      return { cost: b.cost, volume: c.width * c.thickness * b.length, most: b.most };
    })
    .sort((a, b) => a.cost / a.volume - b.cost / b.volume);
  let cost = 0;
  for (const b of boards) {
    const used = Math.min(b.most, open / b.volume);
    cost += used * b.cost;
    open -= used * b.volume;
    if (open <= 0) break;
  }
  return cost;
}

/** Tables of an independent part of the problem. */
export function nestGroups(problem: Problem): Nested[] {
  return split(problem).map(nest);
}
