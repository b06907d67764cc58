import {
  type Block,
  type FigureRow,
  fractions,
  type Layout,
  prosePages,
  sightChart,
  spacingChart,
  tablePages,
} from '@wattlewright/drafting';
import {
  cautions,
  type Finding,
  findingSentences,
  formatLength,
  makingOrder,
  type Panel,
  type Settled,
  type StepFigure,
} from '@wattlewright/model';

import { type Page, sheetsOf, textRoom } from './page.ts';

/** Numbered steps with this job's own numbers, each caution before its cut. */
export function makingSheets({ job, panels, parts, plan }: Settled, page: Page): Layout[] {
  const blocks = makingOrder(job, { panels, parts, plan }).flatMap(
    ({ title, text, figures, cautions: before }): Block[] => [
      { kind: 'step', text: title },
      ...before.map((caution): Block => ({ kind: 'caution', text: caution })),
      ...text.map((more): Block => ({ kind: 'bullet', text: more })),
      ...(figures.length > 0 ? [{ kind: 'figures' as const, text: '', rows: figureRows(figures) }] : []),
    ],
  );
  return prose('making', 'Making order', 'The steps of making the panels, in order.', blocks, page);
}

/** What holds for all panels first, then what is each panel's own, under its name. */
function figureRows(figures: readonly StepFigure[]): FigureRow[] {
  const places = [...new Set(figures.map(({ where }) => where))].sort((a, b) => Number(a !== '') - Number(b !== ''));
  return places.flatMap((place) => [
    ...(place === '' ? [] : [[place, ''] as const]),
    ...figures.filter(({ where }) => where === place).map(({ what, value }) => [what, value] as const),
  ]);
}

/** Every finding with figure, limit, reason, source and what would mend it; with the charts of sight and spacing. */
export function findingSheets({ findings, panels }: Settled, page: Page): Layout[] {
  const blocks = findings.flatMap(findingBlocks);
  const none: Block[] = [
    { kind: 'paragraph', text: 'Nothing was found that the maker must know beyond these sheets.' },
  ];
  const charts = onePerMake(panels).flatMap((panel) => {
    return [sightChart(panel, CHART), spacingChart(panel, CHART)];
  });
  return [
    ...prose(
      'findings',
      'Findings',
      'What the design makes true and the maker must know.',
      blocks.length > 0 ? blocks : none,
      page,
    ),
    ...sheetsOf(charts, page.text, page, 'Light and spacing'),
  ];
}

/** Plot size of a chart, mm: two with their names stand over each other on the smallest sheet. */
const CHART = { width: 125, height: 60 } as const;

function findingBlocks(finding: Finding): Block[] {
  const { level, where, text } = finding;
  const head = `${level.toUpperCase()}, ${where}: ${text}`;
  return [
    { kind: level === 'note' ? 'bullet' : 'caution', text: head },
    { kind: 'paragraph', text: findingSentences(finding).join(' ') },
  ];
}

function onePerMake(panels: readonly Panel[]): Panel[] {
  const seen = new Set<string>();
  return panels.filter((panel) => {
    const key = JSON.stringify([panel.weave.rows, panel.staves.pitch, panel.courses.height, panel.courses.gap]);
    return !seen.has(key) && seen.add(key);
  });
}

/** What the measured slats changed, planned against now; nothing when nothing was measured. */
export function changeSheets({ panels, job }: Settled, page: Page): Layout[] {
  const room = textRoom(page.text);
  return panels.flatMap((panel) => {
    if (!panel.asBuilt) return [];
    const show = (length: number) =>
      formatLength(length, { ...job.display, mark: job.display.mark / 2 }, { fractions: 'stacked' });
    const pages = tablePages({
      name: 'changes',
      title: `What the measured slats changed (${job.display.unit})`,
      alt: `Planned and corrected sizes of ${panel.name}.`,
      columns: [
        { title: 'Size' },
        { title: 'Planned', align: 'right' },
        { title: 'Now', align: 'right' },
        { title: 'Change', align: 'right' },
      ],
      rows: panel.asBuilt.changes.map(({ what, planned, now }) => [
        what,
        show(planned),
        show(now),
        signed(now - planned, show),
      ]),
      ...room,
    });
    return sheetsOf(pages, page.text, page, `${panel.name}: what changed`);
  });
}

function signed(change: number, show: (length: number) => string): string {
  const text = show(Math.abs(change));
  return text === '0' ? '0' : `${change > 0 ? '+' : '−'}${text}`;
}

/** What was assumed, and what the program does not know. */
export function assumptionSheets({ job }: Settled, page: Page): Layout[] {
  const assumed = tablePages({
    name: 'assumed',
    title: 'Assumed, since the job does not say',
    alt: 'Every value that the job left open, what was taken and why.',
    columns: [{ title: 'In the job file', width: 52 }, { title: 'Taken', width: 46 }, { title: 'Why' }],
    rows: job.assumed.map(({ path, value, reason }) => [path, fractions(value), fractions(reason)]),
    ...textRoom(page.text),
  });
  const unknown = cautions(job).flatMap(({ title, lines }): Block[] => [
    { kind: 'heading', text: title },
    ...lines.map((text): Block => ({ kind: 'bullet', text })),
  ]);
  return [
    ...sheetsOf(assumed, page.text, page, 'Assumptions'),
    ...prose('cautions', 'Limits and cautions', 'Limits and the usual cautions.', unknown, page),
  ];
}

function prose(name: string, title: string, alt: string, blocks: readonly Block[], page: Page): Layout[] {
  const set = blocks.map(
    ({ kind, text, rows }): Block => ({
      kind,
      text: fractions(text),
      ...(rows && { rows: rows.map(([what, value]) => [fractions(what), fractions(value)] as const) }),
    }),
  );
  const together = name === 'making';
  const pages = prosePages({ name, title, alt, blocks: set, columns: page.columns, together, ...textRoom(page.text) });
  return sheetsOf(pages, page.text, page, title);
}
