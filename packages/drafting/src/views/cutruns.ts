import { ASCENT, DESCENT, TEXT } from '../layout/style.ts';
import { textWidth } from '../lettering.ts';
import type { Mark } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { line, polyline } from '../path.ts';

/** A stretch of a bar that is named under it, paper mm. */
export interface Run {
  readonly u0: number;
  readonly u1: number;
  readonly text: string;
  readonly of?: string;
}

/** Ink and how far down, or up, it reaches, paper mm. */
export interface RunInk {
  readonly marks: Mark[];
  readonly v1: number;
}

/** How names are set: below what they name unless `up`. */
interface RunOptions {
  readonly up?: boolean;
}

/** From one line of names to the next, mm. */
const LEVEL = 4.6;

/** Between neighbouring names, and from a name to a leader that passes it, mm. */
const CLEAR = 1.2;

interface Named {
  readonly run: Run;
  readonly at: number;
  readonly u0: number;
  readonly u1: number;
  readonly level: number;
}

/**
 * Names under stretches too short to hold them: a bracket under each, its name beneath on the first line where it has
 * room, with a leader down to it. Names stay between `low` and `high` as far as they are narrower than that. With `up` the
 * same above.
 */
export function namedRuns(
  runs: readonly Run[],
  v: number,
  [low, high]: readonly [number, number],
  { up = false }: RunOptions = {},
): RunInk {
  const away = up ? -1 : 1;
  const placed = placedNames(runs, low, high);
  const marks = placed.flatMap(({ run, at, u0, level }): Mark[] => {
    const down = v + away * (1.4 + level * LEVEL);
    const base = up ? down - DESCENT * TEXT : down + (ASCENT + 0.1) * TEXT;
    const of = run.of === undefined ? {} : { of: run.of };
    return [
      stroke(
        'dimension',
        polyline([
          [run.u0, v],
          [run.u0, v + away * 0.9],
          [run.u1, v + away * 0.9],
          [run.u1, v],
        ]),
      ),
      ...(level > 0 ? [stroke('dimension', line([at, v + away * 0.9], [at, down]))] : []),
      write('label', run.text, [u0, base], { height: TEXT, ...of }),
    ];
  });
  const levels = placed.reduce((most, { level }) => Math.max(most, level + 1), 0);
  const tall = 1.4 + (ASCENT + 0.1 + DESCENT) * TEXT + (levels - 1) * LEVEL;
  return { marks, v1: levels === 0 ? v : v + away * tall };
}

/** Names in places of their own: from one end, from the other, or, where leaders stand too close for both, across them. */
function placedNames(runs: readonly Run[], low: number, high: number): readonly Named[] {
  const backwards = [...runs].reverse();
  return (
    placedBy(runs, low, high, false) ?? placedBy(backwards, low, high, false) ?? placedBy(runs, low, high, true) ?? []
  );
}

/** `undefined` where some name finds no place; with `across` leaders may pass names, so that each finds one. */
function placedBy(runs: readonly Run[], low: number, high: number, across: boolean): Named[] | undefined {
  const placed: Named[] = [];
  for (const run of runs) {
    const next = place(run, placed, { low, high, across });
    if (next === undefined) return undefined;
    placed.push(next);
  }
  return placed;
}

function place(
  run: Run,
  placed: readonly Named[],
  { low, high, across }: { readonly low: number; readonly high: number; readonly across: boolean },
): Named | undefined {
  const width = textWidth(run.text, TEXT);
  const at = (run.u0 + run.u1) / 2;
  const clamp = (u: number): number => Math.max(low, Math.min(u, high - width));
  // Below the lowest name nothing changes any more.
  const lowest = placed.reduce((most, { level }) => Math.max(most, level + 1), 0);
  for (let level = 0; level <= lowest; level++)
    for (const u0 of [clamp(at - width / 2), clamp(at - 1), clamp(at - width + 1)]) {
      const u1 = u0 + width;
      const blocked = placed.some((other) => {
        if (other.level === level) return u0 < other.u1 + CLEAR && other.u0 < u1 + CLEAR;
        if (across) return false;
        if (other.level < level) return at > other.u0 - CLEAR && at < other.u1 + CLEAR;
        return other.at > u0 - CLEAR && other.at < u1 + CLEAR;
      });
      if (!blocked) return { run, at, u0, u1, level };
    }
  return undefined;
}
