/** What one piece of work took, ms, over many rounds. */
export interface Timing {
  readonly name: string;
  readonly least: number;
  readonly median: number;
  /** Tenth and ninetieth of a hundred. */
  readonly low: number;
  readonly high: number;
  readonly rounds: number;
}

/** Work to time; what it gives is used up, so that it cannot be left out. */
export interface Work {
  readonly name: string;
  readonly run: () => unknown;
}

/** Warm-up rounds that count for nothing. */
const WARM = 3;

/** Sums up whatever the work gives, so that no compiler may leave it undone; printed at the end. */
let used = 0;

/** How much has been used up, for the last line of the report. */
export function usedUp(): number {
  return used;
}

async function once({ run }: Work): Promise<number> {
  const start = performance.now();
  const result = await run();
  const took = performance.now() - start;
  used += sizeOf(result);
  return took;
}

function sizeOf(result: unknown): number {
  if (typeof result === 'number') return result;
  if (typeof result === 'string' || ArrayBuffer.isView(result)) return (result as { length: number }).length;
  return Array.isArray(result) ? result.length : 1;
}

/**
 * Times several pieces of work against each other: warm-up first, then round by round each once in turn, so that whatever
 * slows the machine slows all of them. Rubbish is collected between rounds where the runtime lets us.
 */
export async function race(works: readonly Work[], rounds: number): Promise<Timing[]> {
  for (let i = 0; i < WARM; i++) for (const work of works) await once(work);
  const times = works.map((): number[] => []);
  for (let i = 0; i < rounds; i++) {
    globalThis.gc?.();
    for (const [j, work] of works.entries()) times[j]?.push(await once(work));
  }
  return works.map(({ name }, j) => {
    const sorted = (times[j] ?? []).sort((a, b) => a - b);
    const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
    return { name, least: at(0), low: at(0.1), median: at(0.5), high: at(0.9), rounds };
  });
}
