import type { Highs } from 'highs';

/** The general solver. */
export const load = async (): Promise<Highs> => {
  const { default: start } = await import('highs');
  return (start as unknown as () => Promise<Highs>)();
};

/** Boards of one cost, and every count of pieces that one of them can yield. */
export interface Kind {
  readonly cost: number;
  readonly ways: readonly (readonly number[])[];
  /** How many of these boards there are; no end of them unless told. */
  readonly most?: number;
}

/** The least cost of making the counts needed, by the general solver over every way of cutting every board. */
export async function leastCost(need: readonly number[], kinds: readonly Kind[]): Promise<number> {
  const highs = await load();
  const names: string[] = [];
  const costs: string[] = [];
  const rows = need.map(() => [] as string[]);
  kinds.forEach(({ cost, ways }, k) => {
    ways.forEach((way, i) => {
      const name = `x${k}_${i}`;
      names.push(name);
      costs.push(`${cost} ${name}`);
      way.forEach((n, p) => {
        if (n > 0) rows[p]?.push(`${n} ${name}`);
      });
    });
  });
  const text = [
    'Minimize',
    ` obj: ${costs.join(' + ')}`,
    'Subject To',
    ...rows.map((terms, p) => ` r${p}: ${terms.join(' + ')} >= ${need[p]}`),
    ...kinds.flatMap(({ ways, most }, k) =>
      most === undefined ? [] : [` b${k}: ${ways.map((_, i) => `x${k}_${i}`).join(' + ')} <= ${most}`],
    ),
    'Bounds',
    ...names.map((n) => ` 0 <= ${n} <= 100`),
    'General',
    ` ${names.join(' ')}`,
    'End',
  ].join('\n');
  return Math.round(highs.solve(text, { output_flag: false }).ObjectiveValue);
}

/** Every count of pieces, each no more than `most`, that one board of a room can yield. */
export function lengthWays(sizes: readonly number[], most: readonly number[], room: number): number[][] {
  const found: number[][] = [];
  const fill = (i: number, left: number, counts: number[]): void => {
    if (i === sizes.length) {
      found.push(counts);
      return;
    }
    for (let n = 0; n <= (most[i] ?? 0) && n * (sizes[i] ?? 0) <= left; n++) {
      fill(i + 1, left - n * (sizes[i] ?? 0), [...counts, n]);
    }
  };
  fill(0, room, []);
  return found;
}
