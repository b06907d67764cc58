import type { Rest } from './bound.ts';
import { better } from './dive.ts';
import { boardOf, type Draft, greedy } from './greedy.ts';
import type { Nested } from './nested.ts';
import { yieldOf } from './pricing.ts';

/**
 * Sequential value correction: greedy drafts one after the other, each with the worth of a piece moved towards what it
 * truly cost in the draft before, so that awkward pieces are taken sooner. The best of `rounds` drafts. After Mukhacheva
 * and others, as told by Belov and Scheithauer, Operations Research Spektrum 29 (2007).
 */
export function correctedGreedy(nested: Nested, rest: Rest, worth: Float64Array, rounds: number): Draft {
  let now: Float64Array = Float64Array.from(worth);
  let best: Draft | undefined;
  for (let round = 0; round < rounds; round++) {
    const draft = greedy(nested, rest, now);
    best = best === undefined ? draft : better(nested, best, draft);
    now = corrected(nested, draft, now, worth);
  }
  return best ?? { takes: [], rest };
}

function corrected(nested: Nested, draft: Draft, worth: Float64Array, floor: Float64Array): Float64Array {
  const paid = new Float64Array(worth.length);
  const made = new Float64Array(worth.length);
  for (const { pattern, count } of draft.takes) {
    const yields = yieldOf(pattern, worth.length);
    const sum = yields.reduce((s, n, d) => s + n * (worth[d] as number), 0);
    if (sum <= 0) continue;
    const dear = (boardOf(nested, pattern)?.cost as number) / sum;
    yields.forEach((n, d) => {
      made[d] = (made[d] as number) + n * count;
      paid[d] = (paid[d] as number) + n * count * dear * (worth[d] as number);
    });
  }
  return worth.map((w, d) => {
    if ((made[d] as number) === 0) return w;
    return Math.max(0.5 * (floor[d] as number), 0.6 * w + (0.4 * (paid[d] as number)) / (made[d] as number));
  });
}

/**
 * Leaves out one kind of board after another, as long as the greedy draft without it is cheaper; at most `rounds`
 * drafts.
 */
export function withoutSome(nested: Nested, rest: Rest, worth: Float64Array, first: Draft, rounds: number): Draft {
  let best = first;
  let left = rest.left;
  for (let round = 0; round < rounds; ) {
    const used = new Map(best.takes.map(({ pattern }) => [`${pattern.room}|${pattern.board}`, pattern]));
    let found: { draft: Draft; left: Rest['left'] } | undefined;
    for (const { room, board } of used.values()) {
      if (round++ >= rounds) break;
      const without = left.map((boards, r) => (r === room ? boards.map((n, b) => (b === board ? 0 : n)) : boards));
      const draft = greedy(nested, { need: rest.need, left: without }, worth);
      if (better(nested, found?.draft ?? best, draft) === draft) found = { draft, left: without };
    }
    if (found === undefined) break;
    best = found.draft;
    left = found.left;
  }
  return best;
}
