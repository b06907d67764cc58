import { type Drawing, fractions, tablePages } from '@wattlewright/drafting';
import { gluedStrips, type Panel, type ScrewRow, type Settled, screwSchedule } from '@wattlewright/model';
import { bitsText } from './bits.ts';

/** What a row of the table says of one panel. */
interface Entry {
  readonly joint: string;
  readonly name: string;
  readonly count: string;
  readonly drill: string;
  readonly where: string;
  readonly watch: string;
}

/** Screws and pins by joint: which, how many, what to drill, where, and what to watch; panels alike share a row. */
export function screwTable(
  { job, panels }: Settled,
  room: { readonly width: number; readonly height: number },
): Drawing[] {
  const screws = panels.flatMap((panel) =>
    screwSchedule(panel).map((row) => ({ panel, entry: screwEntry(row, panel) })),
  );
  const glued = panels.flatMap((panel) =>
    gluedStrips(panel).map(({ joint, where, why }) => ({
      panel,
      entry: { joint, name: 'glue alone', count: '', drill: '', where, watch: why },
    })),
  );
  const rows = new Map<string, { panel: string; entry: Entry }[]>();
  for (const { panel, entry } of [...screws, ...glued]) {
    const { joint, name, drill, where, watch } = entry;
    // Rows that differ in places and counts alone are one row.
    const key = [joint, name, drill, watch, startOf(where)].join('|');
    rows.set(key, [...(rows.get(key) ?? []), { panel: panel.name, entry }]);
  }
  if (rows.size === 0) return [];
  const many = panels.length > 1;
  return tablePages({
    name: 'screws',
    title: `Screws and pins by joint (sizes in ${job.display.unit === 'in' ? 'inches' : 'mm'})`,
    alt: 'Every joint with its screws or pins, what to drill, where they go and what to watch.',
    columns: [
      { title: 'Joint' },
      { title: 'Screw or pin' },
      { title: 'Each panel', align: 'right' },
      { title: 'Drill' },
      { title: 'Where' },
      { title: 'Watch' },
      ...(many ? [{ title: 'Panels' }] : []),
    ],
    rows: [...rows.values()].map((alike) => {
      const [{ joint, name, drill, watch }] = alike.map(({ entry }) => entry) as [Entry, ...Entry[]];
      const names = [...new Set(alike.map(({ panel }) => panel))];
      const cells = [joint, name, countsText(alike), drill, placesText(alike), watch].map(fractions);
      return many ? [...cells, names.length === panels.length ? 'all' : names.join(', ')] : cells;
    }),
    balance: true,
    ...room,
  });
}

function screwEntry(row: ScrewRow, panel: Panel): Entry {
  const { joint, name, material, count, where, remark = '' } = row;
  return {
    joint,
    name: `${name}, ${material}`,
    count: `${count}`,
    drill: bitsText(row, panel),
    where,
    watch: remark,
  };
}

/** A sentence of places up to its figures: `along the middle of the cap, from its left end: `. */
function startOf(where: string): string {
  const at = where.lastIndexOf(': ');
  return at < 0 ? where : where.slice(0, at + 2);
}

type Alike = readonly { readonly panel: string; readonly entry: Entry }[];

/** How many in each panel: one figure, or panel by panel. */
function countsText(alike: Alike): string {
  return byPanel(alike, ({ count }) => count, '\n');
}

/** The places: the sentence once, and its figures panel by panel where they differ. */
function placesText(alike: Alike): string {
  const start = startOf(alike[0]?.entry.where ?? '');
  const figures = byPanel(alike, ({ where }) => where.slice(start.length), '\n');
  return `${start}${figures.includes('\n') ? '\n' : ''}${figures}`;
}

function byPanel(alike: Alike, figureOf: (entry: Entry) => string, between: string): string {
  const found = new Map<string, string[]>();
  for (const { panel, entry } of alike) {
    const figure = figureOf(entry);
    found.set(figure, [...(found.get(figure) ?? []), panel]);
  }
  if (found.size === 1) return [...found.keys()].join('');
  return [...found].map(([figure, panels]) => `${panels.join(', ')}: ${figure}`).join(between);
}
