import { type Mixture, mixture, type Rest } from './bound.ts';
import { boardOf, costOfTakes, type Draft, fitToNeed, greedy, isDone, repeats, type Take, takeOff } from './greedy.ts';
import type { Nested } from './nested.ts';
import { yieldOf } from './pricing.ts';

/**
 * Rounds a mixture down board pattern by board pattern, mixing anew for what is left after each step; `steps` bounds
 * the work, and the greedy rule makes whatever is then still needed.
 */
export function dive(nested: Nested, rest: Rest, first: Mixture, steps: number): Draft {
  const takes: Take[] = [];
  let now = rest;
  let mix = first;
  for (let step = 0; step < steps && !isDone(now); step++) {
    const whole = wholeBoards(now, mix);
    takes.push(...whole.takes);
    now = whole.rest;
    if (whole.takes.length === 0) {
      const take = roundOneUp(nested, now, mix);
      if (take === undefined) break;
      takes.push(take);
      now = takeOff(now, take.pattern, take.count);
    }
    if (isDone(now)) break;
    mix = mixture(nested, now, { known: mix.known, rounds: 25 });
  }
  const end = greedy(nested, now, first.worth);
  return { takes: [...takes, ...end.takes], rest: end.rest };
}

/** The whole boards of a mixture, and what is needed after them. */
export function wholeBoards(rest: Rest, mix: Mixture): Draft {
  const takes: Take[] = [];
  let now = rest;
  for (const { pattern, level } of mix.taken) {
    const count = Math.min(Math.floor(level + 1e-4), repeats(now, pattern));
    if (count < 1) continue;
    takes.push({ pattern, count });
    now = takeOff(now, pattern, count);
  }
  return { takes, rest: now };
}

/** The pattern of the mixture nearest to a whole board that still yields most of its board's worth. */
function roundOneUp(nested: Nested, rest: Rest, mix: Mixture): Take | undefined {
  let best: Take | undefined;
  let bestScore = 0;
  for (const { pattern, level } of mix.taken.slice(0, 12)) {
    if ((rest.left[pattern.room]?.[pattern.board] ?? 0) < 1) continue;
    const fitted = fitToNeed(nested, pattern, rest.need, mix.worth);
    const made = yieldOf(fitted, rest.need.length).reduce((sum, n, d) => sum + n * (mix.worth[d] as number), 0);
    const cost = boardOf(nested, pattern)?.cost as number;
    const score = (made + 1e-6) / (cost + 1e-3) - 1 + 0.2 * level + 2;
    if (made > 0 && score > bestScore) {
      bestScore = score;
      best = { pattern: fitted, count: 1 };
    }
  }
  return best;
}

/**
 * The better of two drafts, the first where they are equal: pieces left uncut come before cost, then wood opened, then
 * rips.
 */
export function better(nested: Nested, a: Draft, b: Draft): Draft {
  const marks = (d: Draft): number[] => [
    d.rest.need.reduce((sum, n) => sum + Math.max(0, n), 0),
    costOfTakes(nested, d.takes),
    Math.round(d.takes.reduce((sum, t) => sum + t.count * (boardOf(nested, t.pattern)?.volume ?? 0), 0)),
    d.takes.reduce((sum, t) => sum + t.count * ripsOf(nested, t), 0),
  ];
  const [x, y] = [marks(a), marks(b)];
  const first = x.findIndex((n, i) => n !== y[i]);
  return first >= 0 && (y[first] as number) < (x[first] as number) ? b : a;
}

function ripsOf(nested: Nested, { pattern }: Take): number {
  const patterns = nested.rooms[pattern.room]?.patterns;
  return pattern.segments.reduce((sum, s) => sum + (patterns?.[s.pattern]?.rips ?? 0), 0);
}
