import type { CutPlan, Marks } from '@wattlewright/model';
import { moneyText, volumeText } from '@wattlewright/model';
import { tablePages } from '../layout/table.ts';
import { fractions } from '../lettering.ts';
import type { Drawing } from '../mark.ts';
import { lengthText } from './cutsize.ts';

/** Something to buy beside wood. */
export interface HardwareRow {
  readonly item: string;
  /** How many or how much, ready to read. */
  readonly count: string;
  readonly note?: string;
}

/** What `shoppingTable` needs to know. */
export interface ShoppingOptions {
  readonly display: Marks;
  /** Such as `USD`; empty where the job names none. */
  readonly currency: string;
  readonly hardware?: readonly HardwareRow[];
  /** Room on a page, paper mm. */
  readonly width: number;
  readonly height: number;
}

/**
 * What to buy and what goes back: boards with lengths, count, price and total; boards taken from the rack; hardware; the
 * leftovers to keep. A table that would be empty is left out.
 */
export function shoppingTable(plan: CutPlan, options: ShoppingOptions): Drawing[] {
  return [...boards(plan, options), ...rack(plan, options), ...hardware(options), ...leftovers(plan, options)];
}

function boards({ shopping, cost, costIs }: CutPlan, { display, currency, width, height }: ShoppingOptions): Drawing[] {
  if (shopping.length === 0) return [];
  const count = shopping.reduce((sum, line) => sum + line.count, 0);
  const money = currency === '' ? '' : ` ${currency}`;
  const priced = shopping.some(({ each }) => each !== undefined);
  return tablePages({
    name: 'shopping',
    title: 'Boards to buy',
    alt: `${count} boards to buy: ${shopping.map((line) => `${line.count} × ${line.name}`).join(', ')}.`,
    columns: [
      { title: 'Board' },
      { title: 'Length', align: 'right' },
      { title: 'Count', align: 'right' },
      ...(priced
        ? [
            { title: `Each${money}`, align: 'right' as const },
            { title: `Total${money}`, align: 'right' as const },
          ]
        : []),
    ],
    rows: shopping.map((line) => [
      line.name,
      lengthText(line.length, display),
      `${line.count}`,
      ...(priced ? [line.each?.toFixed(2) ?? '', line.total?.toFixed(2) ?? ''] : []),
    ]),
    foot: [
      costIs === 'price' ? 'All boards' : `All boards: ${volumeText(cost, display)}`,
      '',
      `${count}`,
      ...(priced ? ['', costIs === 'price' ? moneyText(cost, '') : ''] : []),
    ],
    width,
    height,
  });
}

function rack({ boards: all }: CutPlan, { display, width, height }: ShoppingOptions): Drawing[] {
  const found = new Map<number, { name: string; length: number; count: number }>();
  for (const { from, stock, name, length, count } of all) {
    if (from !== 'offcuts') continue;
    const entry = found.get(stock) ?? { name, length, count: 0 };
    entry.count += count;
    found.set(stock, entry);
  }
  if (found.size === 0) return [];
  const rows = [...found.values()];
  return tablePages({
    name: 'rack',
    title: 'From the rack',
    alt: `Offcuts that are used: ${rows.map(({ name, count }) => `${count} × ${name}`).join(', ')}.`,
    columns: [{ title: 'Offcut' }, { title: 'Length', align: 'right' }, { title: 'Count', align: 'right' }],
    rows: rows.map(({ name, length, count }) => [name, lengthText(length, display), `${count}`]),
    width,
    height,
  });
}

function hardware({ hardware: rows = [], width, height }: ShoppingOptions): Drawing[] {
  if (rows.length === 0) return [];
  const notes = rows.some(({ note }) => note !== undefined && note !== '');
  return tablePages({
    name: 'hardware',
    title: 'Hardware and finish',
    alt: `Hardware to buy: ${rows.map(({ item, count }) => `${count} ${item}`).join(', ')}.`,
    columns: [{ title: 'Item' }, { title: 'Buy', align: 'right' }, ...(notes ? [{ title: 'Note' }] : [])],
    rows: rows.map(({ item, count, note = '' }) => [item, count, ...(notes ? [note] : [])].map(fractions)),
    width,
    height,
  });
}

function leftovers({ leftovers: rows }: CutPlan, { display, width, height }: ShoppingOptions): Drawing[] {
  if (rows.length === 0) return [];
  return tablePages({
    name: 'leftovers',
    title: 'Leftovers to keep',
    alt: `Leftovers for the rack: ${rows.map(({ name, count }) => `${count} of ${name}`).join(', ')}.`,
    columns: [{ title: 'Off' }, { title: 'Length', align: 'right' }, { title: 'Count', align: 'right' }],
    rows: rows.map(({ name, length, count }) => [name, lengthText(length, display), `${count}`]),
    width,
    height,
  });
}
