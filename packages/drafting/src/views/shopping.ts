import type { CutPlan, Marks, Part, Stock } from '@wattlewright/model';
import { moneyText, volumeText, woodInName } from '@wattlewright/model';
import { type TableColumn, tablePages } from '../layout/table.ts';
import { fractions } from '../lettering.ts';
import type { Drawing } from '../mark.ts';
import { lengthText, sectionText } from './cutsize.ts';
import { andText, leftOutTable, lettersLeftOut } from './leftout.ts';

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
  /** To name those that the boards do not give. */
  readonly parts?: readonly Part[];
  /** The boards and the rack that the plan was made from, to name wood, grade and section. */
  readonly stock?: readonly Stock[];
  readonly offcuts?: readonly Stock[];
  /** Room on a page, paper mm. */
  readonly width: number;
  readonly height: number;
}

/**
 * What to buy and what goes back: boards with lengths, count, price and total; boards taken from the rack; hardware; the
 * leftovers to keep. A table that would be empty is left out.
 */
export function shoppingTable(plan: CutPlan, options: ShoppingOptions): Drawing[] {
  const { parts = [], width, height } = options;
  return [
    ...boards(plan, options),
    ...leftOutTable(plan, parts, { width, height }),
    ...rack(plan, options),
    ...hardware(options),
    ...leftovers(plan, options),
  ];
}

function boards(plan: CutPlan, options: ShoppingOptions): Drawing[] {
  const { shopping, cost, costIs } = plan;
  const left = andText(lettersLeftOut(plan, options.parts ?? []));
  const without = left === '' ? '' : `, without wood for ${left}`;
  const { display, currency, stock, hardware: other = [], width, height } = options;
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
      ...kindColumns(stock),
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
      ...kindCells(stock, line.stock, display),
      lengthText(line.length, display),
      `${line.count}`,
      ...(priced ? [line.each?.toFixed(2) ?? '', line.total?.toFixed(2) ?? ''] : []),
    ]),
    foot: [
      costIs === 'price'
        ? `All boards${without}${other.length > 0 ? '; hardware is not priced' : ''}`
        : `All boards${without}: ${volumeText(cost, display)}`,
      ...kindColumns(stock).map(() => ''),
      '',
      `${count}`,
      ...(priced ? ['', costIs === 'price' ? moneyText(cost, '') : ''] : []),
    ],
    width,
    height,
  });
}

function rack({ boards: all }: CutPlan, { display, offcuts, width, height }: ShoppingOptions): Drawing[] {
  const found = new Map<number, { name: string; stock: number; length: number; count: number }>();
  for (const { from, stock, name, length, count } of all) {
    if (from !== 'offcuts') continue;
    const entry = found.get(stock) ?? { name, stock, length, count: 0 };
    entry.count += count;
    found.set(stock, entry);
  }
  if (found.size === 0) return [];
  const rows = [...found.values()];
  return tablePages({
    name: 'rack',
    title: 'From the rack',
    alt: `Offcuts that are used: ${rows.map(({ name, count }) => `${count} × ${name}`).join(', ')}.`,
    columns: [
      { title: 'Offcut' },
      ...kindColumns(offcuts),
      { title: 'Length', align: 'right' },
      { title: 'Count', align: 'right' },
    ],
    rows: rows.map(({ name, stock, length, count }) => [
      name,
      ...kindCells(offcuts, stock, display),
      lengthText(length, display),
      `${count}`,
    ]),
    width,
    height,
  });
}

function kindColumns(stock: readonly Stock[] | undefined): TableColumn[] {
  return stock === undefined ? [] : [{ title: 'Wood, grade' }, { title: 'Section' }];
}

/** Wood and grade, and the section as bought. */
function kindCells(stock: readonly Stock[] | undefined, index: number, display: Marks): string[] {
  const board = stock?.[index];
  if (stock === undefined) return [];
  if (board === undefined) return ['', ''];
  const { name, wood, grade, surface, thickness, width } = board;
  const says = woodInName(name);
  const odd = says !== undefined && !wood.toLowerCase().includes(says);
  const counted = odd ? `\ncounts as this; the name says ${says}:\nsettle which before buying` : '';
  return [`${wood}, ${grade}${counted}`, `${sectionText(thickness, width, display)} ${surface}`];
}

function hardware({ hardware: rows = [], width, height }: ShoppingOptions): Drawing[] {
  if (rows.length === 0) return [];
  const notes = rows.some(({ note }) => note !== undefined && note !== '');
  return tablePages({
    name: 'hardware',
    title: 'Hardware and finish',
    alt: `Hardware to buy: ${rows.map(({ item, count }) => `${count} ${item}`).join(', ')}.`,
    columns: [{ title: 'Item' }, { title: 'Buy', align: 'right' }, ...(notes ? [{ title: 'Note' }] : [])],
    balance: true,
    rows: rows.map(({ item, count, note = '' }) => [item, count, ...(notes ? [note] : [])].map(fractions)),
    width,
    height,
  });
}

/** What goes to the rack; nothing where nothing does. */
export function leftovers(
  { leftovers: rows }: Pick<CutPlan, 'leftovers'>,
  { display, width, height }: Pick<ShoppingOptions, 'display' | 'width' | 'height'>,
): Drawing[] {
  if (rows.length === 0) return [];
  return tablePages({
    name: 'leftovers',
    title: 'Leftovers to keep',
    alt: `Leftovers for the rack: ${rows.map(({ name, count }) => `${count} of ${name}`).join(', ')}.`,
    columns: [
      { title: 'Off' },
      { title: 'Section' },
      { title: 'Length', align: 'right' },
      { title: 'Count', align: 'right' },
    ],
    rows: rows.map(({ name, length, width: wide, thickness, count }) => [
      name,
      sectionText(wide, thickness, display),
      lengthText(length, display),
      `${count}`,
    ]),
    width,
    height,
  });
}
