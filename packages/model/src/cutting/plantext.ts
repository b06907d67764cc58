import { fineMarks, formatLength, type Marks } from '../length.ts';
import type { CutPlan, Shares } from './plan.ts';

/** How a plan is told: lengths in the job's unit, money in the job's currency. */
export interface PlanTextOptions {
  readonly display: Marks;
  /** Such as `USD`; empty where the job names none. */
  readonly currency: string;
}

/** An amount of money with two decimals: `118.00 USD`. */
export function moneyText(amount: number, currency: string): string {
  return `${amount.toFixed(2)} ${currency}`.trim();
}

/** One board foot, mm3: 144 cubic inches (PS 20). */
const BOARD_FOOT = 144 * 25.4 ** 3;

/** A volume of wood in words: board feet for inch work, else litres, or cubic metres from 100 litres. */
export function volumeText(volume: number, { unit }: Pick<Marks, 'unit'>): string {
  if (unit === 'in') return `${(volume / BOARD_FOOT).toFixed(1)} board feet`;
  return volume < 1e8 ? `${(volume / 1e6).toFixed(1)} litres` : `${(volume / 1e9).toFixed(3)} m³`;
}

const SHARE_NAMES = ['parts', 'dust', 'kept', 'waste'] as const;

/**
 * The four shares in whole percent that make exactly 100: each is rounded down, and what is missing goes to those with
 * the largest remainders.
 */
export function sharePercents(shares: Shares): Shares {
  const all = SHARE_NAMES.reduce((sum, name) => sum + shares[name], 0);
  if (all <= 0) return { parts: 0, dust: 0, kept: 0, waste: 0 };
  const exact = SHARE_NAMES.map((name) => ({ name, value: (shares[name] / all) * 100 }));
  const whole = exact.map(({ name, value }) => {
    const floor = Math.floor(value + 1e-9);
    return { name, whole: floor, rest: value - floor };
  });
  const missing = 100 - whole.reduce((sum, one) => sum + one.whole, 0);
  const up = new Set(
    [...whole]
      .sort((a, b) => b.rest - a.rest)
      .slice(0, missing)
      .map(({ name }) => name),
  );
  const percent = Object.fromEntries(whole.map((one) => [one.name, one.whole + (up.has(one.name) ? 1 : 0)]));
  return percent as unknown as Shares;
}

/** What the plan's bound is good for, in a sentence or two. */
export function boundText(plan: CutPlan, { display, currency }: PlanTextOptions): string {
  if (plan.status === 'impossible') return plan.refusal?.text ?? 'There is no plan.';
  if (plan.boards.length === 0) return 'Nothing is to be cut.';
  const told = (cost: number): string =>
    plan.costIs === 'price' ? moneyText(cost, currency) : volumeText(cost, display);
  if (plan.cost === 0) return 'All comes from the rack and nothing is to be bought: this is the best there is.';
  const least =
    plan.costIs === 'price'
      ? 'The least any plan could cost with this blade'
      : 'The least wood any plan could open with this blade';
  if (plan.status === 'optimal') return `${least} is ${told(plan.cost)}: this is the best there is.`;
  const basis = plan.boundKind === 'material' ? ', by the wood in the parts alone' : '';
  const near = plan.bound > 0 ? `, at most ${gapPercent(plan.gap)} more` : '';
  const is = plan.costIs === 'price' ? 'costs' : 'opens';
  return `${least} is ${told(plan.bound)}${basis}; this one ${is} ${told(plan.cost)}${near}.`;
}

/** How far a plan may be over the least, as print says it: tenths of a percent, rounded up so that it never promises too much. */
export function gapPercent(gap: number): string {
  return `${(Math.ceil(gap * 1000 - 1e-9) / 10).toFixed(1).replace(/\.0$/, '')} %`;
}

/** Which plans the bound speaks of. */
export const PLANS_JUDGED =
  'That speaks of every way to crosscut boards to lengths, rip lengths to strips and crosscut strips to parts.';

/** The four shares in one line: `parts 54 %, dust 24 %, leftovers to keep 0 %, waste 22 %`. */
export function sharesText(shares: Shares): string {
  const { parts, dust, kept, waste } = sharePercents(shares);
  return `parts ${parts} %, dust ${dust} %, leftovers to keep ${kept} %, waste ${waste} %`;
}

/** The plan in lines for a terminal; the first is a summary in one sentence. */
export function planText(plan: CutPlan, options: PlanTextOptions): string[] {
  if (plan.status === 'impossible') {
    const short = (plan.refusal?.short ?? []).map(({ part, count }) => `Short of ${part}: ${pieces(count)}.`);
    return [`This cannot be cut: ${boundText(plan, options)}`, ...short];
  }
  const { display, currency } = options;
  const fences = new Set(plan.fences.map(({ at }) => at)).size;
  const lines = plan.shopping.map(({ name, count, each, total }) =>
    each === undefined || total === undefined
      ? `Buy ${count} × ${name}`
      : `Buy ${count} × ${name} at ${each.toFixed(2)}: ${moneyText(total, currency)}`,
  );
  const side = (size: number): string => formatLength(size, fineMarks(display));
  const kept = plan.leftovers.map(
    ({ name, length, width, thickness, count }) =>
      `Keep ${count} × ${formatLength(length, display, { named: true })} of ${name}, ${side(thickness)} × ${side(width)}`,
  );
  return [
    summary(plan, options),
    boundText(plan, options),
    ...(plan.boards.length === 0 ? [] : [`Of the wood: ${sharesText(plan.shares)}.`]),
    `${counted(plan.rips, 'rip')} at ${counted(fences, 'fence distance')}, ${counted(plan.crosscuts, 'crosscut')}.`,
    ...lines,
    ...kept,
  ];
}

function summary(plan: CutPlan, { display, currency }: PlanTextOptions): string {
  const bought = plan.shopping.reduce((sum, { count }) => sum + count, 0);
  const racked = plan.boards.reduce((sum, { from, count }) => sum + (from === 'offcuts' ? count : 0), 0);
  const cost =
    plan.costIs === 'price' ? ` for ${moneyText(plan.cost, currency)}` : `, ${volumeText(plan.cost, display)}`;
  const from = [bought > 0 ? `${bought} to buy${cost}` : '', racked > 0 ? `${racked} from the rack` : ''].filter(
    (text) => text !== '',
  );
  return `Cut from ${counted(bought + racked, 'board')}${from.length > 0 ? `: ${from.join(', ')}` : ''}.`;
}

function counted(count: number, word: string): string {
  return `${count} ${word}${count === 1 ? '' : 's'}`;
}

function pieces(count: number): string {
  return counted(count, 'piece');
}
