import {
  type BladeRow,
  cutSheets,
  type Drawing,
  fractions,
  type HardwareRow,
  type Layout,
  lay,
  partsTable,
  prosePages,
  sawWork,
  shoppingTable,
  yieldBar,
} from '@wattlewright/drafting';
import {
  fineMarks,
  formatLength,
  hardwareList,
  massOf,
  partsToCut,
  type Settled,
  shareText,
  withKerf,
} from '@wattlewright/model';
import { buyText } from './amounts.ts';
import { weaveCharts } from './charts.ts';
import { onPaper, type PacketLayout, type Page, textRoom } from './page.ts';
import { screwTable } from './screws.ts';

/**
 * Parts, what screws go where, what to buy, how to cut it and how to weave it: one list after the other on as few sheets as
 * hold them, those that lie the same way sharing sheets.
 */
export function listSheets(settled: Settled, page: Page): PacketLayout[] {
  const { parts, plan, panels, job } = settled;
  const { display, saw, stock, offcuts } = job;
  const mass = panels.reduce((sum, panel) => sum + massOf(panel).mass * panel.count, 0);
  const toCut = partsToCut(parts);
  // Planned once, however often a sheet is laid out.
  const blades = thinnerBlades(settled);
  const lists: readonly List[] = [
    [
      'Parts list',
      'wide',
      (room) => partsTable(parts, { display, panels, mass, fromClear: allClear(settled), ...room }),
    ],
    ['Screws and pins', 'wide', (room) => screwTable(settled, room)],
    ['Shopping list', 'text', (room) => shopping(settled, room)],
    // Where all parts of measured panels are in hand, nothing is sawn from boards.
    ...(toCut.length > 0
      ? ([
          ['Cut sheets', 'text', (room) => cutSheets(plan, { parts: toCut, display, saw, ...room })],
          ['At the saw', 'text', (room) => sawWork(plan, { parts: toCut, display, saw, stock, offcuts, ...room })],
          ['Yield', 'text', (room) => yields(settled, blades, room)],
        ] satisfies List[])
      : []),
    ['Weave chart', 'text', (room) => weaveCharts(settled, room), (room) => weaveCharts(settled, room, true)],
  ];
  const allAlike = [lists.map(([subject, , ...make]): List => [subject, 'text', ...make])];
  // On large paper all of them lie wide, on small paper where that saves a sheet all lie upright.
  const ways =
    page.text === page.wide
      ? [allAlike]
      : [(['wide', 'text'] as const).map((lies) => lists.filter((list) => list[1] === lies)), allAlike];
  const [first, ...others] = ways.map((flows) => flows.flatMap((flow) => flowing(flow, page))) as [PacketLayout[]];
  return others.reduce((best: PacketLayout[], other: PacketLayout[]) => (saves(other, best) ? other : best), first);
}

/** Whether sheets are fewer than others, and none of them on larger paper. */
function saves(sheets: readonly PacketLayout[], others: readonly PacketLayout[]): boolean {
  return sheets.length < others.length && sheets.every(({ outgrew }) => outgrew === undefined);
}

/** One list: its subject, the way that it lies, what it holds in a room, and what it holds on sheets of its own where that differs. */
type List = readonly [
  subject: string,
  lies: 'wide' | 'text',
  make: (room: Room) => Drawing[],
  alone?: (room: Room) => Drawing[],
];

/** Lists that lie the same way, one after the other on the job's paper; each by itself where one of them wants a larger one. */
function flowing(lists: readonly List[], page: Page): PacketLayout[] {
  const on = (at: Page, some: readonly List[]): Layout[] => {
    const subjects = new Map<string, string>();
    const drawings = some.flatMap(([subject, lies, make]) =>
      make(textRoom(at[lies])).map((drawing) => {
        subjects.set(drawing.name, subject);
        return drawing;
      }),
    );
    const [first] = some;
    if (!first || drawings.length === 0) return [];
    return alone(lay(drawings, at[first[1]], at.unit), some, at).map((layout) => ({
      ...layout,
      subject: [...new Set(layout.drawings.map(({ name }) => subjects.get(name) ?? (some.at(-1)?.[0] as string)))].join(
        '; ',
      ),
    }));
  };
  const together = onPaper(page, (at) => on(at, lists));
  return together.some(({ outgrew }) => outgrew !== undefined)
    ? lists.flatMap((list) => onPaper(page, (at) => on(at, [list])))
    : together;
}

/** The sheets with the last list made anew for sheets of its own, where it has them and takes no more of them so. */
function alone(sheets: Layout[], lists: readonly List[], at: Page): Layout[] {
  const [, lies = 'text', make, makeAlone] = lists.at(-1) ?? [];
  if (!make || !makeAlone) return sheets;
  const names = new Set(make(textRoom(at[lies])).map(({ name }) => name));
  const from = sheets.findIndex(({ drawings }) => drawings.some(({ name }) => names.has(name)));
  const own = sheets.slice(from);
  if (from < 0 || own.some(({ drawings }) => drawings.some(({ name }) => !names.has(name)))) return sheets;
  const anew = lay(makeAlone(textRoom(at[lies])), at[lies], at.unit);
  return anew.length > own.length ? sheets : [...sheets.slice(0, from), ...anew];
}

type Room = ReturnType<typeof textRoom>;

function shopping(settled: Settled, room: Room): Drawing[] {
  const { plan, job, choices, parts } = settled;
  const { display, currency, stock, offcuts } = job;
  return [
    // What is kept is told after the cuts.
    ...shoppingTable(
      { ...plan, leftovers: [] },
      { display, currency, stock, offcuts, parts: partsToCut(parts), hardware: hardwareRows(settled), ...room },
    ),
    ...(choices.length > 0
      ? prosePages({
          name: 'slat-heights',
          title: 'Height of the slats',
          alt: 'The slat heights that the cutting plan chose, and what that saves.',
          blocks: choices.map(({ text }) => ({
            kind: 'paragraph',
            text: `${fractions(text)} This is done already: all sheets show these slats.`,
          })),
          width: Math.min(room.width, 180),
          height: room.height,
        })
      : []),
  ];
}

/** Whether every board of the plan is clear, so that parts that may have knots are cut from clear wood too. */
function allClear({ plan, job }: Settled): boolean {
  const { stock, offcuts } = job;
  return plan.boards.every(({ from, stock: at }) => (from === 'stock' ? stock : offcuts)[at]?.grade === 'clear');
}

/** What becomes of the wood bought: it stands after the cuts, where there is room. */
function yields({ plan, job }: Settled, blades: readonly BladeRow[], room: Room): Drawing[] {
  const { display, currency } = job;
  const bar = yieldBar(plan, { display, currency, width: Math.min(room.width, 180), blades, height: room.height });
  const kept = shoppingTable({ ...plan, status: 'within', boards: [], shopping: [] }, { display, currency, ...room });
  // In one with the bar, unless they are too many.
  return kept.some(({ title }) => bar.marks.some((mark) => mark.kind === 'text' && mark.text === title))
    ? [bar]
    : [bar, ...kept];
}

function hardwareRows({ job, panels }: Settled): HardwareRow[] {
  return hardwareList(job, panels).map((line) => ({
    item: [line.name, line.kind === 'screw' ? 'countersunk' : '', line.material].filter(Boolean).join(', '),
    count: fractions(buyText(line, job)),
    note: (line.kind === 'glue' ? [] : line.where)
      .map(({ panel, count }) => (panels.length > 1 ? `${panel}: ${shareText({ panel, count }, line, job)}` : ''))
      .filter(Boolean)
      .join(', '),
  }));
}

/** Kerfs of thinner blades that shops have, mm: 3/32 and 1/16 in, 2.4 and 1.8 mm; common practice, no source. */
const KERFS = { in: [(3 / 32) * 25.4, 25.4 / 16], mm: [2.4, 1.8] } as const;

/** The same parts planned for the job's own blade and for thinner ones, by the quick planner. */
function thinnerBlades({ job, parts, plan }: Settled): BladeRow[] {
  const { saw, stock, offcuts, display } = job;
  if (plan.status === 'impossible') return [];
  const show = (kerf: number) => formatLength(kerf, fineMarks(display), { named: true, fractions: 'stacked' });
  const thinner = KERFS[display.unit].filter((kerf) => kerf < saw.ripKerf - 0.2);
  const others = thinner.map((kerf) => ({
    kerf: show(kerf),
    plan: withKerf({ parts: partsToCut(parts), stock, offcuts, saw, limits: { effort: 1 } }, kerf),
  }));
  return [{ kerf: show(saw.ripKerf), plan }, ...others.filter((row) => row.plan.status !== 'impossible')];
}
