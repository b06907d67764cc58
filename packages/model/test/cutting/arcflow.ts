import { load } from './judge.ts';
import type { Bins } from './packings.ts';

/**
 * The fewest bins, by the general solver on the arc-flow model: places 0 to `room`, an item is an arc of its size, waste
 * an arc of 1; `undefined` where it does not prove it in `seconds`. After Valerio de Carvalho, Annals of Operations
 * Research 86 (1999).
 */
export async function leastBins({ room, sizes }: Bins, seconds = 3600): Promise<number | undefined> {
  const highs = await load();
  const need = new Map<number, number>();
  for (const size of sizes) need.set(size, (need.get(size) ?? 0) + 1);
  const out: string[][] = Array.from({ length: room + 1 }, () => []);
  const into: string[][] = Array.from({ length: room + 1 }, () => []);
  const made = new Map<number, string[]>([...need.keys()].map((size) => [size, []]));
  const names: string[] = [];
  const arc = (name: string, from: number, to: number): void => {
    names.push(name);
    out[from]?.push(name);
    into[to]?.push(name);
  };
  // Larger items stand first in a bin, so places are reached in falling order of size.
  const reached = new Array<boolean>(room + 1).fill(false);
  reached[0] = true;
  for (const size of [...need.keys()].sort((a, b) => b - a)) {
    for (let from = 0; from + size <= room; from++) {
      if (!reached[from]) continue;
      reached[from + size] = true;
      arc(`x${from}_${size}`, from, from + size);
      made.get(size)?.push(`x${from}_${size}`);
    }
  }
  for (let from = 1; from < room; from++) arc(`w${from}`, from, from + 1);
  const rows = Array.from({ length: room - 1 }, (_, i) => {
    const terms = [...(into[i + 1] ?? []).map((x) => `+ ${x}`), ...(out[i + 1] ?? []).map((x) => `- ${x}`)];
    return ` p${i + 1}: ${terms.join(' ')} = 0`;
  });
  const needs = [...need].map(([size, n]) => ` n${size}: ${(made.get(size) ?? []).join(' + ')} >= ${n}`);
  const text = [
    'Minimize',
    ` obj: ${(out[0] ?? []).join(' + ')}`,
    'Subject To',
    ...rows,
    ...needs,
    'General',
    ` ${names.join(' ')}`,
    'End',
  ];
  const solved = highs.solve(text.join('\n'), { output_flag: false, time_limit: seconds });
  return solved.Status === 'Optimal' ? Math.round(solved.ObjectiveValue) : undefined;
}
