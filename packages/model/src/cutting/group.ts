import { type Mixture, mixture, type Rest, roundUp, wholeRest } from './bound.ts';
import { chances } from './chance.ts';
import { correctedGreedy, withoutSome } from './correction.ts';
import { better, dive } from './dive.ts';
import { missingOf } from './fillmix.ts';
import { serves } from './fit.ts';
import { costOfTakes, type Draft, isDone } from './greedy.ts';
import { draftOf, lengthwise, mixtureOf } from './lengthwise.ts';
import { type BoardRoom, type Nested, nest, withPatterns } from './nested.ts';
import { boundPacking, type Packing, searchPacking } from './packing.ts';
import type { BoundKind } from './plan.ts';
import type { Board, BoardClass, Problem } from './problem.ts';
import { betterPatterns, coarseLengths, relaxedBound } from './relaxed.ts';
import { type Held, holdWhole, renew } from './renew.ts';

/** Parts and boards that have nothing to do with the rest of the job, and the least that any plan for them costs. */
export interface Bounded {
  readonly nested: Nested;
  readonly rest: Rest;
  readonly mix: Mixture;
  /** Table cells filled by one pricing, roughly: every budget counts them. */
  readonly cells: number;
  readonly bound: number;
  readonly boundKind: BoundKind;
  /** What is known of it where its boards are only crosscut. */
  readonly packing?: Packing;
}

/** The same with the best plan so far. */
export interface Group extends Bounded {
  /** The whole boards of the mixture, in the order of the draft's first takes; what they leave is open. */
  readonly held: Held;
  readonly draft: Draft;
  /** Whether the draft makes every piece. */
  readonly done: boolean;
  readonly cost: number;
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

/** The least that any plan of one group costs, as the own core knows. */
export function boundGroup(tables: Nested): Bounded {
  const rest = wholeRest(tables);
  const packing = packingOf(tables);
  if (packing !== undefined) {
    const mix = mixtureOf(tables, packing);
    return { nested: tables, rest, mix, cells: cellsOf(tables), bound: packing.bound, boundKind: 'linear', packing };
  }
  const relaxed = tables.complete ? undefined : relaxedBound(tables, rest, 8);
  const coarse = tables.lengthsComplete ? undefined : coarseBound(tables.problem);
  const { nested, mix, cells } = mixed(relaxed === undefined ? tables : withPatterns(tables, relaxed.patterns), rest);
  const step = nested.problem.costStep;
  const linear = roundUp(nested.complete ? mix.bound : (relaxed?.bound ?? coarse ?? 0), step);
  const material = roundUp(materialBound(nested.problem), step);
  const boundKind = linear >= material ? 'linear' : 'material';
  return { nested, rest, mix, cells, bound: Math.max(linear, material), boundKind };
}

/** The bound of boards that are only crosscut; `undefined` for others, and where there may be too few of them. */
function packingOf(tables: Nested): Packing | undefined {
  const job = lengthwise(tables);
  const packing = job && boundPacking(job);
  return packing?.mix !== undefined && missingOf(packing.mix) > 0 ? undefined : packing;
}

/** The own core's plan for one group. */
export function planGroup(bounded: Bounded): Group {
  const { nested, rest, mix, packing } = bounded;
  if (packing !== undefined) {
    const packed = withPacking({ ...bounded, held: { takes: [], rest, mix } }, searchPacking(packing));
    if (packed !== undefined) return packed;
  }
  const group = planHeld(bounded, holdWhole(nested, rest, mix));
  return { ...group, hopeless: !group.done && mix.short > 0 && isHopeless(nested, rest) };
}

/** A group with the plan and bound of a packing; `undefined` where that has no plan. */
export function withPacking(group: Bounded & { readonly held: Held }, packing: Packing): Group | undefined {
  const draft = packing.plan && draftOf(group.nested, group.rest, packing.plan);
  const bound = Math.max(group.bound, packing.bound);
  return draft && withDraft({ ...group, bound, packing }, draft);
}

/** A plan that holds the whole boards of a mixture, so that what is open stays small however many panels there are. */
function planHeld(bounded: Bounded, held: Held): Group {
  const { nested, cells, mix } = bounded;
  const openBound = roundUp(held.mix.bound, nested.problem.costStep);
  const boards = 5 + 2 * held.mix.taken.length;
  const rounds = Math.max(1, Math.min(24, Math.floor(2e7 / (cells * boards))));
  const { worth } = mix;
  let open = correctedGreedy(nested, held.rest, worth, rounds);
  const settled = (): boolean => isDone(open.rest) && costOfTakes(nested, open.takes) <= openBound;
  if (!settled()) open = better(nested, open, dive(nested, held.rest, held.mix, Math.min(40, Math.floor(4e6 / cells))));
  if (!settled() && cells * boards < 2e7) open = withoutSome(nested, held.rest, worth, open, 2 * rounds);
  const renewals = Math.min(MOST_RENEWALS, Math.floor(RENEWED / cells));
  if (!settled()) open = renew(nested, held.rest, open, { worth, bound: openBound, rounds: renewals });
  return withDraft({ ...bounded, held }, { takes: [...held.takes, ...open.takes], rest: open.rest });
}

/** How far costs are shifted for another start, as a share. */
const SHIFT = 0.01;

/**
 * The best of further plans, each from the mixture at costs shifted a little, so that other whole boards are held. Their
 * bound stays that of the true costs.
 */
export function restart(group: Group, starts: number, stopped = () => false): Group {
  const { nested, rest, mix, bound } = group;
  const chance = chances(2);
  let best = group;
  for (let n = 0; n < starts && !(best.done && best.cost <= bound) && !stopped(); n++) {
    const shifts = new Map(nested.problem.boards.map((board) => [board, 1 + SHIFT * (2 * chance() - 1)]));
    const cost = ({ boards }: BoardRoom, b: number): number =>
      (boards[b]?.cost ?? 0) * (shifts.get(boards[b] as Board) ?? 1);
    const shifted = mixture(nested, rest, { cost, known: mix.known, rounds: 25 });
    const whole = holdWhole(nested, rest, shifted);
    // The mixture for what is open again at true costs.
    const held = { ...whole, mix: mixture(nested, whole.rest, { known: whole.mix.known, rounds: 25 }) };
    const next = planHeld(group, held);
    if (better(nested, best.draft, next.draft) === next.draft) best = next;
  }
  return best;
}

/** A group with another draft. */
export function withDraft(group: Bounded & { readonly held: Held }, draft: Draft): Group {
  const cost = costOfTakes(group.nested, draft.takes);
  return { ...group, draft, done: isDone(draft.rest), cost, hopeless: false };
}

/** Table cells filled over all rounds of renewal of a first draft, roughly. */
const RENEWED = 1e6;
const MOST_RENEWALS = 40;

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
    (sum, r) => sum + r.ways.reduce((n, list) => n + (1 + list.length) * r.kinds.length, 0) + r.at.length * 30,
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
