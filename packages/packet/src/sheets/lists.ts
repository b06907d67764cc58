import {
  type BladeRow,
  cutSheets,
  type Drawing,
  fractions,
  type HardwareRow,
  partsTable,
  prosePages,
  sawWork,
  shoppingTable,
  yieldBar,
} from '@wattlewright/drafting';
import {
  amountText,
  fineMarks,
  formatLength,
  hardwareList,
  massOf,
  partsToCut,
  type Settled,
  shareText,
  withKerf,
} from '@wattlewright/model';
import { onPaper, type PacketLayout, type Page, sheetsOf, textRoom } from './page.ts';
import { screwTable } from './screws.ts';

/** Parts, what to buy, how to cut it, and what screws go where. */
export function listSheets(settled: Settled, page: Page): PacketLayout[] {
  const { parts, plan, panels, job } = settled;
  const { display, saw, stock, offcuts } = job;
  const mass = panels.reduce((sum, panel) => sum + massOf(panel).mass * panel.count, 0);
  const lists: readonly List[] = [
    ['Parts list', 'wide', (room) => partsTable(parts, { display, panels, mass, ...room })],
    ['Shopping list and yield', 'text', (room) => shopping(settled, room)],
    ['Cut sheets', 'text', (room) => cutSheets(plan, { parts, display, saw, ...room })],
    ['At the saw', 'text', (room) => sawWork(plan, { parts, display, saw, stock, offcuts, ...room })],
    ['Screws and pins', 'wide', (room) => screwTable(settled, room)],
  ];
  return lists.flatMap(([subject, lies, make]) =>
    onPaper(page, (on) => sheetsOf(make(textRoom(on[lies])), on[lies], on, subject)),
  );
}

/** One list: its subject, the way that it lies, and what it holds in a room. */
type List = readonly [subject: string, lies: 'wide' | 'text', make: (room: Room) => Drawing[]];

type Room = ReturnType<typeof textRoom>;

function shopping(settled: Settled, room: Room): Drawing[] {
  const { plan, job, choices } = settled;
  const { display, currency, stock, offcuts } = job;
  return [
    ...shoppingTable(plan, { display, currency, stock, offcuts, hardware: hardwareRows(settled), ...room }),
    ...(choices.length > 0
      ? prosePages({
          name: 'slat-heights',
          title: 'Height of the slats',
          alt: 'The slat heights that the cutting plan chose, and what that saves.',
          blocks: choices.map(({ text }) => ({ kind: 'paragraph', text: fractions(text) })),
          width: Math.min(room.width, 180),
          height: room.height,
        })
      : []),
    yieldBar(plan, { display, currency, width: Math.min(room.width, 180), blades: thinnerBlades(settled) }),
  ];
}

function hardwareRows({ job, panels }: Settled): HardwareRow[] {
  return hardwareList(job, panels).map((line) => ({
    item: [line.name, line.material].filter(Boolean).join(', '),
    count: fractions(amountText(line, job)),
    note: (line.kind === 'glue' ? [] : line.where)
      .map(({ panel, count }) => (panels.length > 1 ? `${panel}: ${shareText({ panel, count }, line, job)}` : ''))
      .filter(Boolean)
      .join(', '),
  }));
}

/** Kerfs of thinner blades that shops have, mm: 3/32 and 1/16 in, 2.4 and 1.8 mm; common practice, no source. */
const KERFS = { in: [(3 / 32) * 25.4, 25.4 / 16], mm: [2.4, 1.8] } as const;

/** The same parts planned for the job's own blade and for thinner ones, by the quick planner. */
function thinnerBlades({ job, panels, parts, plan }: Settled): BladeRow[] {
  const { saw, stock, offcuts, display } = job;
  if (plan.status === 'impossible') return [];
  const show = (kerf: number) => formatLength(kerf, fineMarks(display), { named: true, fractions: 'stacked' });
  const thinner = KERFS[display.unit].filter((kerf) => kerf < saw.ripKerf - 0.2);
  const others = thinner.map((kerf) => ({
    kerf: show(kerf),
    plan: withKerf({ parts: partsToCut(panels, parts), stock, offcuts, saw, limits: { effort: 1 } }, kerf),
  }));
  return [{ kerf: show(saw.ripKerf), plan }, ...others.filter((row) => row.plan.status !== 'impossible')];
}
