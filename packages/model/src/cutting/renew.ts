import { type Mixture, mixture, type Rest } from './bound.ts';
import { chances } from './chance.ts';
import { correctedGreedy } from './correction.ts';
import { better, wholeBoards } from './dive.ts';
import { boardOf, costOfTakes, type Draft, isDone, type Take, takeOff } from './greedy.ts';
import type { Nested } from './nested.ts';
import { yieldOf } from './pricing.ts';

/** Boards that are settled, and what is then still needed. */
export interface Held {
  readonly takes: readonly Take[];
  readonly rest: Rest;
  /** The mixture for what is still needed. */
  readonly mix: Mixture;
}

/**
 * Settles the whole boards of a mixture, mixing anew until less than a whole board of every pattern is left: few boards
 * stay open however many panels there are.
 */
export function holdWhole(nested: Nested, rest: Rest, first: Mixture): Held {
  const takes: Take[] = [];
  let [now, mix] = [rest, first];
  for (;;) {
    const whole = wholeBoards(now, mix);
    takes.push(...whole.takes);
    now = whole.rest;
    if (whole.takes.length === 0 || isDone(now)) return { takes, rest: now, mix };
    mix = mixture(nested, now, { known: mix.known, rounds: 25 });
  }
}

/** What a draft is measured by and how long it is worked on. */
export interface Renewal {
  readonly worth: Float64Array;
  /** Nothing costs less: work ends when the draft costs no more. */
  readonly bound: number;
  readonly rounds: number;
  /** Asked each round; work ends when it says so. */
  readonly stopped?: () => boolean;
}

/** Boards taken apart at once, at most. */
const MOST_APART = 10;

/** Drafts for the boards taken apart. */
const DRAFTS = 3;

/**
 * Takes a few boards of a draft apart, the poorly used ones rather than others, and cuts their pieces anew, over and
 * over; keeps what costs no more. Chance comes from a fixed seed, so the same draft is renewed the same way. After
 * Shaw's large neighbourhoods, Principles and Practice of Constraint Programming 1998.
 */
export function renew(nested: Nested, rest: Rest, first: Draft, renewal: Renewal): Draft {
  if (!isDone(first.rest)) return first;
  const { worth, bound, rounds, stopped = () => false } = renewal;
  const chance = chances(1);
  let boards = single(first.takes);
  let best = first;
  let cost = costOfTakes(nested, boards);
  for (let round = 0; round < rounds && cost > bound && boards.length > 1 && !stopped(); round++) {
    const size = 2 + Math.floor(chance() * Math.min(MOST_APART - 1, boards.length - 1));
    const apart = poorest(nested, boards, { worth, size, chance });
    const kept = boards.filter((_, i) => !apart.has(i));
    const was = costOfTakes(nested, boards) - costOfTakes(nested, kept);
    const open = kept.reduce((now, take) => takeOff(now, take.pattern, 1), rest);
    const shifted = worth.map((w) => w * (0.8 + 0.4 * chance()));
    const draft = correctedGreedy(nested, open, shifted, DRAFTS);
    const now = costOfTakes(nested, draft.takes);
    if (!isDone(draft.rest) || now > was) continue;
    boards = [...kept, ...single(draft.takes)];
    cost += now - was;
    best = better(nested, best, { takes: boards, rest: draft.rest });
  }
  return best;
}

/** Indices of the boards that yield least worth for their cost, with some chance in it. */
function poorest(
  nested: Nested,
  boards: readonly Take[],
  of: { readonly worth: Float64Array; readonly size: number; readonly chance: () => number },
): Set<number> {
  const scores = boards.map(({ pattern }, i) => {
    const made = yieldOf(pattern, of.worth.length).reduce((sum, n, d) => sum + n * (of.worth[d] as number), 0);
    return { i, score: made / ((boardOf(nested, pattern)?.cost as number) + 1) + 0.5 * of.chance() };
  });
  scores.sort((a, b) => a.score - b.score || a.i - b.i);
  return new Set(scores.slice(0, of.size).map(({ i }) => i));
}

/** Board by board. */
function single(takes: readonly Take[]): Take[] {
  return takes.flatMap(({ pattern, count }) => Array.from({ length: count }, () => ({ pattern, count: 1 })));
}
