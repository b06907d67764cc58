import { fineMarks, formatLength } from '../length.ts';
import type { Part } from '../parts/part.ts';
import { serves } from './fit.ts';
import { canMake, type Nested } from './nested.ts';
import type { LeftOut, Refusal, RefusalReason } from './plan.ts';
import { type CuttingInput, type Demand, type Problem, wanted } from './problem.ts';
import type { Saw, Stock } from './stock.ts';
import { fromTicks } from './ticks.ts';

/** What bounds the work of planning. */
export interface Bounds {
  readonly maxPieces: number;
  readonly maxSizes: number;
}

/** The longest board that the whole numbers hold with room to spare, mm. */
const LONGEST = 30_000;

/** What is wrong with the figures themselves, before anything is planned. */
export function inputFault({ parts, stock, offcuts, saw }: CuttingInput, bounds: Bounds): Refusal | undefined {
  return sawFault(saw) ?? stockFault([...stock, ...offcuts]) ?? partsFault(parts, bounds);
}

function sawFault(saw: Saw): Refusal | undefined {
  for (const [name, size] of Object.entries(saw) as [string, number][]) {
    if (!(size >= 0 && size <= LONGEST)) return refuse('input', `saw: ${name} ${size}, must be 0 to ${LONGEST} mm`);
  }
  return undefined;
}

function stockFault(stock: readonly Stock[]): Refusal | undefined {
  for (const s of stock) {
    for (const name of ['thickness', 'width', 'length'] as const) {
      if (!(s[name] > 0 && s[name] <= LONGEST)) {
        return refuse('input', `stock ${s.name}: ${name} ${s[name]}, must be above 0 and at most ${LONGEST} mm`);
      }
    }
    if (!((s.trim ?? 0) >= 0)) return refuse('input', `stock ${s.name}: trim ${s.trim}, must not be negative`);
    if (!((s.price?.amount ?? 0) >= 0 && (s.price?.amount ?? 0) < 1e9)) {
      return refuse('input', `stock ${s.name}: price ${s.price?.amount}, must be 0 to 1e9`);
    }
    if (s.count !== undefined && !(Number.isInteger(s.count) && s.count >= 0)) {
      return refuse('input', `stock ${s.name}: count ${s.count}, must be a whole number, 0 or more`);
    }
  }
  return undefined;
}

function partsFault(parts: readonly Part[], bounds: Bounds): Refusal | undefined {
  let pieces = 0;
  const sizes = new Set<string>();
  for (const part of parts) {
    for (const name of ['thickness', 'width', 'length'] as const) {
      if (!(part[name] > 0 && part[name] <= LONGEST)) {
        return refuse('input', `${name} ${part[name]}, must be above 0 and at most ${LONGEST} mm`, part);
      }
    }
    if (!(part.over >= 0 && part.over <= LONGEST))
      return refuse('input', `over ${part.over}, must be 0 to ${LONGEST} mm`, part);
    for (const name of ['count', 'spare'] as const) {
      if (!(Number.isInteger(part[name]) && part[name] >= 0)) {
        return refuse('input', `${name} ${part[name]}, must be a whole number, 0 or more`, part);
      }
    }
    pieces += wanted(part);
    if (pieces > bounds.maxPieces) {
      return refuse('size', `${pieces} pieces with this part, more than the ${bounds.maxPieces} planned at once`, part);
    }
    sizes.add(`${part.thickness}|${part.width}|${part.length + part.over}|${part.wood}|${part.grade}`);
    if (sizes.size > bounds.maxSizes) {
      return refuse('size', `${sizes.size} different sizes, more than the ${bounds.maxSizes} planned at once`, part);
    }
  }
  return undefined;
}

/** The first part that no board can yield, and why: species, grade, section, length, smallest piece, in this order. */
export function misfit(problem: Problem): Refusal | undefined {
  const tests: [RefusalReason, (d: Demand) => string | undefined][] = [
    [
      'species',
      (d) =>
        problem.boards.some((b) => classOf(problem, b.class).wood === d.wood)
          ? undefined
          : `no stock of ${d.wood}: buy boards of it`,
    ],
    ['grade', (d) => (boardsFor(problem, d).length > 0 ? undefined : `no clear stock of ${d.wood}: buy clear boards`)],
    ['section', (d) => (fitting(problem, d).length > 0 ? undefined : noSection(problem, d))],
    [
      'length',
      (d) => {
        const longest = fitting(problem, d).reduce((l, b) => Math.max(l, b.room - problem.crossKerf), 0);
        if (d.length <= longest) return undefined;
        return `it is cut ${told(problem, d.length)} long, and the longest board that fits gives ${told(problem, longest)} between its trims: buy a longer board`;
      },
    ],
  ];
  for (const [reason, test] of tests) {
    for (const d of problem.demands) {
      const text = test(d);
      if (text !== undefined) return refuse(reason, text, d.parts[0]);
    }
  }
  return undefined;
}

/** The first demand whose rips would all be of too short or too narrow a piece. */
export function ripFault(nested: Nested): Refusal | undefined {
  const { problem } = nested;
  const at = problem.demands.findIndex(
    (_, d) => !nested.rooms.some((room) => room.boards.some((_b, b) => canMake(nested, room, b, d))),
  );
  if (at < 0) return undefined;
  const d = problem.demands[at] as Demand;
  return refuse('minRip', brokenLimit(problem, d), d.parts[0]);
}

/** What is larger than every board, and what would do. */
function noSection(problem: Problem, d: Demand): string {
  const there = boardsFor(problem, d).map((b) => classOf(problem, b.class));
  const largest = there.reduce((a, b) => (b.thickness * b.width > a.thickness * a.width ? b : a));
  return `no ${d.wood} is ${section(problem, d)} or more; the largest is ${section(problem, largest)} when planed: buy thicker or wider boards`;
}

/** Which rule of the saw stands in the way, judged by the board that is nearest in size, and what would do. */
function brokenLimit(problem: Problem, d: Demand): string {
  const all = fitting(problem, d).map((b) => classOf(problem, b.class));
  const nearest = all.reduce((a, b) => (b.thickness * b.width < a.thickness * a.width ? b : a));
  const buy = `buy a board ${section(problem, d)} or no more than ${told(problem, Math.max(problem.shaving, 1))} over`;
  const longest = fitting(problem, d).reduce((l, b) => Math.max(l, b.room - problem.crossKerf), 0);
  if (longest < problem.shortestRip) {
    return `its boards are ${told(problem, longest)} long, and nothing shorter than ${told(problem, problem.shortestRip)} is ripped: ${buy}`;
  }
  if (nearest.thickness - d.thickness > problem.shaving && d.width > problem.deepestRip) {
    return `it needs a cut ${told(problem, d.width)} deep, and the saw cuts ${told(problem, problem.deepestRip)}: ${problem.shaving > 0 ? `buy a board ${told(problem, d.thickness)} thick, planed` : buy}, or rip from both faces`;
  }
  return `it would be ripped from a piece narrower than ${told(problem, problem.narrowestRip)}${Number.isFinite(problem.deepestRip) ? ` or deeper than ${told(problem, problem.deepestRip)}` : ''}: ${buy}`;
}

/** All parts together want more wood than there is; `open` is what the plan that makes the most leaves uncut. */
export function supplyFault(demands: readonly Demand[], open: readonly number[], proven: boolean): Refusal {
  const short = demands.flatMap((d, i) => {
    let rest = open[i] as number;
    return [...d.parts].reverse().flatMap((p) => {
      const count = Math.min(rest, p.need);
      rest -= count;
      return count > 0 ? [{ part: p.letter, count }] : [];
    });
  });
  const list = short.map(({ part, count }) => `${count} of ${part}`).join(', ');
  const told = proven
    ? 'the stock there is cannot make all parts'
    : 'no plan was found that makes all parts from the stock there is';
  const first = demands.find((_, i) => (open[i] as number) > 0)?.parts[0];
  return {
    reason: 'supply',
    ...(first && { part: first.letter }),
    text: list === '' ? told : `${told}; short in the fullest plan: ${list}`,
    short,
    proven,
  };
}

function refuse(reason: RefusalReason, text: string, part?: { letter: string; name: string }): Refusal {
  if (part === undefined) return { reason, text, proven: true };
  return { reason, part: part.letter, text: `part ${part.letter}, ${part.name}: ${text}`, proven: true };
}

/** A refusal of one part in two: what is in the way, and what to buy; the texts of this file end in the latter. */
export function whyAndBuy({ part = '', text }: Refusal): LeftOut {
  const said = text.replace(/^part [^:]*: /, '');
  const at = said.lastIndexOf(': buy ');
  return { part, why: at < 0 ? said : said.slice(0, at), buy: at < 0 ? 'more or other boards' : said.slice(at + 2) };
}

function classOf(problem: Problem, index: number): Problem['classes'][number] {
  return problem.classes[index] as Problem['classes'][number];
}

function boardsFor(problem: Problem, d: Demand): Problem['boards'] {
  return problem.boards.filter((b) => serves(classOf(problem, b.class), d));
}

function fitting(problem: Problem, d: Demand): Problem['boards'] {
  return boardsFor(problem, d).filter((b) => {
    const c = classOf(problem, b.class);
    return d.thickness <= c.thickness && d.width <= c.width;
  });
}

function section(problem: Problem, { thickness, width }: Pick<Demand, 'thickness' | 'width'>): string {
  return `${told(problem, thickness, false)} x ${told(problem, width)}`;
}

/** A length in the unit of the job, rounded once. */
function told({ display = { unit: 'mm', mark: 0.5 } }: Problem, ticks: number, named = true): string {
  return formatLength(fromTicks(ticks), fineMarks(display), { named });
}
