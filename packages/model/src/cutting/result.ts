import { fenceOrder } from './fenceorder.ts';
import type { Group } from './group.ts';
import type { BoundKind, CutPlan, PlannedBoard, Refusal, ShoppingLine } from './plan.ts';
import type { CuttingInput, Problem } from './problem.ts';
import { sidesOf } from './problem.ts';
import { fromTicks } from './ticks.ts';
import { tidied } from './tidy.ts';
import { plannedBoards } from './tree.ts';
import { leftoversOf, sharesOf, tally } from './walk.ts';

/** Money or mm3 that one unit of inner cost stands for. */
export function costUnit(problem: Problem): number {
  return problem.costIs === 'price' ? 1 / 100 : 1;
}

/** Puts the groups' plans together, walks them and says what they come to. */
export function finishPlan(problem: Problem, input: CuttingInput, groups: readonly Group[]): CutPlan {
  const { planing, shaving } = input.saw;
  const shop = { problem, planing: { planing, ...(shaving !== undefined && { shaving }) } };
  const boards = tidied(
    groups.flatMap((g) => plannedBoards(g.nested, g.draft.takes)),
    shop,
  );
  boards.sort((a, b) => (a.from === b.from ? a.stock - b.stock : a.from === 'offcuts' ? -1 : 1));
  const cost = boards.reduce((sum, b) => sum + b.count * innerCost(problem, b), 0);
  const bound = Math.min(
    cost,
    groups.reduce((sum, g) => sum + g.bound, 0),
  );
  const unit = costUnit(problem);
  const optimal = bound >= cost;
  const loss = {
    cross: fromTicks(problem.crossKerf),
    rip: fromTicks(problem.ripLoss),
    ...shop.planing,
  };
  const sum = tally(boards, loss);
  return {
    status: optimal ? 'optimal' : 'within',
    boards,
    cost: inHundredths(cost * unit),
    costIs: problem.costIs,
    bound: inHundredths(bound * unit),
    boundKind: worst(groups.map((g) => g.boundKind)),
    gap: optimal ? 0 : cost / bound - 1,
    shares: sharesOf(sum, planedOff(input, boards)),
    fences: fenceOrder(boards, loss),
    rips: sum.rips,
    crosscuts: sum.crosscuts,
    shopping: shoppingList(problem, input, boards),
    leftovers: leftoversOf(boards, loss),
  };
}

/** A plan that is no plan: nothing to cut, and why. */
export function refusedPlan(problem: Problem | undefined, refusal: Refusal): CutPlan {
  return {
    status: 'impossible',
    refusal,
    boards: [],
    cost: 0,
    costIs: problem?.costIs ?? 'wood',
    bound: 0,
    boundKind: 'linear',
    gap: 0,
    shares: { parts: 0, dust: 0, kept: 0, waste: 0 },
    fences: [],
    rips: 0,
    crosscuts: 0,
    shopping: [],
    leftovers: [],
  };
}

function innerCost(problem: Problem, board: PlannedBoard): number {
  const rack = board.from === 'offcuts';
  return problem.boards.find((b) => b.rack === rack && b.index === board.stock)?.cost ?? 0;
}

function worst(kinds: readonly BoundKind[]): BoundKind {
  const order: BoundKind[] = ['material', 'linear', 'complete'];
  return order.find((k) => kinds.includes(k)) ?? 'complete';
}

/** Wood that rough stock loses on its outer faces before the first cut, mm3. */
function planedOff(input: CuttingInput, boards: readonly PlannedBoard[]): number {
  return boards.reduce((sum, b) => {
    const s = input[b.from][b.stock] as CuttingInput['stock'][number];
    const left = sidesOf(s, input.saw);
    const off = s.thickness * s.width - fromTicks(left.thickness) * fromTicks(left.width);
    return sum + (s.surface === 'rough' ? off * b.length * b.count : 0);
  }, 0);
}

function shoppingList(problem: Problem, input: CuttingInput, boards: readonly PlannedBoard[]): ShoppingLine[] {
  return input.stock.flatMap((s, stock) => {
    const count = boards.reduce((sum, b) => (b.from === 'stock' && b.stock === stock ? sum + b.count : sum), 0);
    if (count === 0) return [];
    const inner = problem.boards.find((b) => !b.rack && b.index === stock)?.cost ?? 0;
    const each = problem.costIs === 'price' ? inHundredths(inner / 100) : undefined;
    return [
      {
        stock,
        name: s.name,
        length: s.length,
        count,
        each,
        total: each === undefined ? undefined : inHundredths(each * count),
      },
    ];
  });
}

/** Loses the noise of doubles from sums of hundredths. */
export function inHundredths(value: number): number {
  return Math.round(value * 100) / 100;
}
