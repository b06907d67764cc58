import { chances } from '../../src/cutting/chance.ts';
import type { Lengthwise } from '../../src/cutting/fillings.ts';
import { lengthwise } from '../../src/cutting/lengthwise.ts';
import { openJob } from '../../src/cutting/quick.ts';
import type { CuttingInput, Stock } from '../../src/index.ts';
import { board, part, saw } from './jobs.ts';

/** One instance of one-dimensional packing: bins of a size, and the sizes to be packed. */
export interface Bins {
  readonly room: number;
  readonly sizes: readonly number[];
}

/** A published set, made anew by its recipe; `share` of its instances of every class, one at least. */
export interface PackingSet {
  readonly name: string;
  readonly source: string;
  readonly make: (share: number) => Bins[];
}

/** One-dimensional packing as boards of one length at price 1 and a saw without kerf; sizes in mm. */
export function packing({ room, sizes }: Bins): CuttingInput & { limits: { maxSizes: number } } {
  const counts = new Map<number, number>();
  for (const size of sizes) counts.set(size, (counts.get(size) ?? 0) + 1);
  const parts = [...counts].map(([size, count], i) => ({ ...part(`P${i}`, [1, 1, 1], count), length: size }));
  const stock: Stock[] = [{ ...board([1, 1, 1], 1), length: room }];
  return { parts, stock, offcuts: [], saw: saw({ ripKerf: 0, crossKerf: 0 }), limits: { maxSizes: 1000 } };
}

/** The same as the own core has it. */
export function lengthwiseOf(bins: Bins): Lengthwise {
  const input = packing(bins);
  const opened = openJob(input, input.limits);
  if ('refusal' in opened) throw new Error(opened.refusal.text);
  const [nested] = opened.nested;
  const job = nested && lengthwise(nested);
  if (job === undefined) throw new Error('not lengthwise');
  return job;
}

type Chance = () => number;

/** A whole number from one to another, each as likely. */
export const whole = (chance: Chance, from: number, to: number): number =>
  from + Math.floor(chance() * (to - from + 1));

const several = <T>(n: number, make: () => T): T[] => Array.from({ length: n }, make);

/** `n` sizes from `from` to `to`, each as likely. */
const even = (chance: Chance, n: number, from: number, to: number): number[] =>
  several(n, () => whole(chance, from, to));

function set(name: string, source: string, make: (chance: Chance, share: number) => Bins[]): PackingSet {
  return { name, source, make: (share) => make(chances(7919 + name.length), share) };
}

const FALKENAUER = 'Falkenauer, Journal of Heuristics 2 (1996)';
const SCHOLL = 'Scholl, Klein and Juergens, Computers and Operations Research 24 (1997)';

/** The sets whose recipes are published. Those of Waescher and Gau, and the hard28, were picked by hand: they have none. */
export const packingSets: readonly PackingSet[] = [
  set('uniform', FALKENAUER, (chance, share) =>
    [120, 250, 500, 1000].flatMap((n) =>
      several(Math.ceil(20 * share), () => ({ room: 150, sizes: even(chance, n, 20, 100) })),
    ),
  ),
  set('first', SCHOLL, (chance, share) =>
    [50, 100, 200, 500].flatMap((n) =>
      [100, 120, 150].flatMap((room) =>
        [1, 20, 30].flatMap((from) =>
          several(Math.ceil(20 * share), () => ({ room, sizes: even(chance, n, from, 100) })),
        ),
      ),
    ),
  ),
  set('second', SCHOLL, (chance, share) =>
    [50, 100, 200, 500].flatMap((n) =>
      [3, 5, 7, 9].flatMap((perBin) =>
        [0.2, 0.5, 0.9].flatMap((spread) =>
          several(Math.ceil(10 * share), () => {
            const [from, to] = [Math.ceil((1000 / perBin) * (1 - spread)), Math.floor((1000 / perBin) * (1 + spread))];
            return { room: 1000, sizes: even(chance, n, from, to) };
          }),
        ),
      ),
    ),
  ),
  set('narrow', 'Schwerin and Waescher, International Transactions in Operational Research 4 (1997)', (chance, share) =>
    [100, 120].flatMap((n) =>
      several(Math.ceil(100 * share), () => ({ room: 1000, sizes: even(chance, n, 150, 200) })),
    ),
  ),
  set('triplets', FALKENAUER, (chance, share) =>
    [60, 120, 249, 501].flatMap((n) =>
      several(Math.ceil(20 * share), () => ({ room: 1000, sizes: several(n / 3, () => triplet(chance)).flat() })),
    ),
  ),
];

/** Three sizes that fill a bin of 1000. */
export function triplet(chance: Chance): number[] {
  const a = whole(chance, 380, 490);
  const b = whole(chance, 250, Math.floor((1000 - a) / 2));
  return [a, b, 1000 - a - b];
}
