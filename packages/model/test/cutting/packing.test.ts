import type { Highs } from 'highs';
import { describe, expect, test } from 'vitest';
import { chances } from '../../src/cutting/chance.ts';
import { planCuts, planCutsQuick, type Stock } from '../../src/index.ts';
import { board, part, saw } from './jobs.ts';
import { sawUp } from './walker.ts';

/**
 * One-dimensional packing as boards of one length at price 1 and a saw without kerf. Instances are made by published
 * recipes: uniform and triplets by Falkenauer, Journal of Heuristics 2 (1996).
 */
describe('planCuts on one-dimensional sets made by their published recipes', () => {
  test.each([1, 2, 3])('uniform: 120 of 20 to 100 in 150, instance %i, needs no more than is proven', async (n) => {
    const chance = chances(1000 + n);
    const sizes = Array.from({ length: 120 }, () => 20 + Math.floor(chance() * 81));
    const plan = await planCuts(packing(150, sizes));
    sawUp(plan, packing(150, sizes));
    expect(plan.status).toBe('optimal');
    expect(plan.cost).toBe(await leastBins(150, sizes));
  });

  test.each([1, 2, 3])('triplets: 30 in 1000, instance %i, of which every bin can be filled: ten bins', async (n) => {
    const chance = chances(2000 + n);
    const sizes = Array.from({ length: 10 }, () => {
      const a = 380 + Math.floor(chance() * 111);
      const b = 250 + Math.floor(chance() * (Math.floor((1000 - a) / 2) - 249));
      return [a, b, 1000 - a - b];
    }).flat();
    const input = packing(1000, sizes);
    expect(planCutsQuick(input).bound).toBeLessThanOrEqual(10);
    const plan = await planCuts(input);
    sawUp(plan, input);
    expect(plan.cost).toBe(10);
  });
});

function packing(room: number, sizes: readonly number[]) {
  const counts = new Map<number, number>();
  for (const size of sizes) counts.set(size, (counts.get(size) ?? 0) + 1);
  const parts = [...counts].map(([size, count], i) => ({ ...part(`P${i}`, [1, 1, 1], count), length: size }));
  const stock: Stock[] = [{ ...board([1, 1, 1], 1), length: room }];
  return { parts, stock, offcuts: [], saw: saw({ ripKerf: 0, crossKerf: 0 }) };
}

/**
 * The fewest bins, by the general solver on the arc-flow model: places 0 to `room`, an item is an arc of its size, waste
 * an arc of 1. After Valerio de Carvalho, Annals of Operations Research 86 (1999).
 */
async function leastBins(room: number, sizes: readonly number[]): Promise<number> {
  const { default: start } = await import('highs');
  const highs = await (start as unknown as () => Promise<Highs>)();
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
  return Math.round(highs.solve(text.join('\n'), { output_flag: false }).ObjectiveValue);
}
