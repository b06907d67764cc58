import {
  type Block,
  type Box,
  compose,
  fit,
  fractions,
  type Item,
  type Layout,
  type Pane,
  paneBox,
  pictureMaker,
  printable,
  prosePages,
  runMaker,
} from '@wattlewright/drafting';
import {
  formatLength,
  layRuns,
  lettersCut,
  massOf,
  type Panel,
  partsToCut,
  planText,
  type Settled,
} from '@wattlewright/model';

import { weightText } from './amounts.ts';
import { makeOf } from './makes.ts';
import type { Page } from './page.ts';

/** What the cover says of the sheets after it. */
export interface Contents {
  /** A line for each chapter, with its sheets. */
  readonly lines: readonly string[];
  /** Number of the sheet on which the findings begin. */
  readonly findings: number;
}

/** Most pictures on a cover. */
const MOST_PICTURES = 4;

/**
 * The cover: the run, or a picture of each make of panel, the job at a glance, and where things stand.
 * @param contentsFrom names the chapters with their sheets, given the number of the first sheet after the cover
 */
export function coverSheet(settled: Settled, page: Page, contentsFrom: (first: number) => Contents): Layout[] {
  const on = page.upright;
  const wordsFrom = (top: number) => ({ left: 0, top, width: 1, height: 1 - top });
  const width = paneBox(on, wordsFrom(TOPS[0])).u1 - paneBox(on, wordsFrom(TOPS[0])).u0;
  const proseOf = (blocks: readonly Block[], box: Box, columns: number) =>
    prosePages({
      name: 'glance',
      title: '',
      alt: `${settled.job.name} at a glance.`,
      blocks,
      width,
      height: box.v1 - box.v0,
      columns,
      balanced: true,
    });
  const columns = Math.max(2, Math.round(width / COLUMN));
  const textBefore = (first: number, { top, stops }: Way) =>
    proseOf(glance(settled, contentsFrom(first), stops), paneBox(on, wordsFrom(top)), columns);
  // How many sheets the text takes does not depend on the numbers in it. Smaller pictures may save one, or let all stops stand.
  const sheetsFrom = (way: Way): number => Math.max(1, textBefore(2, way).length);
  const stops = settled.findings.filter(({ level }) => level === 'stop').length;
  const ways = [stops, Math.min(stops, FEW_STOPS)].flatMap((shown) => TOPS.map((top): Way => ({ top, stops: shown })));
  const way = ways.find((one) => sheetsFrom(one) === 1) ?? (ways.at(-TOPS.length) as Way);
  const words = wordsFrom(way.top);
  const { top } = way;
  const text = textBefore(sheetsFrom(way) + 1, way);
  const panes: Pane[] = [
    ...picturePanes(settled, { page, share: top - 0.04 }),
    ...text.slice(0, 1).map((item) => ({ item, ...words, align: 'top-left' as const })),
  ];
  const cover = compose(panes, on, { unit: page.unit, subject: 'Cover' });
  const rest = text.slice(1).map((item) =>
    compose([{ item, left: 0, top: 0, width: 1, height: 1, align: 'top-left' }], on, {
      unit: page.unit,
      subject: 'Cover, continued',
    }),
  );
  return [cover, ...rest];
}

/** Where the text begins, and how many stops are told. */
interface Way {
  readonly top: number;
  readonly stops: number;
}

/** Stops that are told even where they cost a sheet; common practice, no source. */
const FEW_STOPS = 4;

/** Where the text begins under the pictures, as a share of the room: the lowest that leaves it one sheet is taken. Common practice, no source. */
const TOPS = [0.6, 0.5, 0.42] as const;

/** Width of a column on the cover, mm; common practice, no source. */
const COLUMN = 95;

/** The pictures in their places; of the makes of panel alone where a run is too long for its place. */
function picturePanes(
  { job, panels, parts }: Settled,
  { page: { upright, unit }, share }: { readonly page: Page; readonly share: number },
): Pane[] {
  const runs = layRuns(job, panels);
  const inRun = new Set(runs.flatMap((run) => run.panels.map(({ name }) => name)));
  const panes = (shown: typeof runs, alone: readonly Panel[]): Pane[] => {
    const makes = alone.filter((panel, i) => alone.findIndex((other) => makeOf(other) === makeOf(panel)) === i);
    const items = [
      ...shown.map((run) => runMaker(run, { panels, parts })),
      ...makes.map((panel) => pictureMaker(panel, { parts })),
    ];
    return beside(items.slice(0, MOST_PICTURES), share);
  };
  const withRuns = panes(
    runs,
    panels.filter(({ name }) => !inRun.has(name)),
  );
  const isRoomy = withRuns.every((pane) => fit(pane.item, [paneBox(upright, pane)], unit) !== undefined);
  return isRoomy ? withRuns : panes([], panels);
}

/** Pictures in the upper part of the cover: one alone, more in two columns, the first of three over both. */
function beside(items: readonly Item[], height: number): Pane[] {
  const [left, top, width] = [0.04, 0.02, 0.92];
  if (items.length === 1) return items.map((item) => ({ item, left, top, width, height }));
  const rows = Math.ceil(items.length / 2);
  const wideFirst = items.length % 2 === 1 && items.length > 1;
  return items.map((item, i) => {
    const place = wideFirst && i > 0 ? i + 1 : i;
    return {
      item,
      left: left + (place % 2) * (width / 2),
      top: top + Math.floor(place / 2) * (height / rows),
      width: wideFirst && i === 0 ? width : width / 2,
      height: height / rows,
    };
  });
}

function glance(settled: Settled, { lines, findings: at }: Contents, told: number): Block[] {
  const { panels, job, findings } = settled;
  const counts = (['stop', 'caution', 'note'] as const).map((level) => ({
    level,
    n: findings.filter((finding) => finding.level === level).length,
  }));
  const stops = findings.filter(({ level }) => level === 'stop');
  const measured = panels.filter(({ asBuilt }) => asBuilt).map(({ name }) => name);
  const contents = [
    ...lines,
    'Full-size sticks and templates: sticks.pdf. Print at actual size, measure the check bar first.',
  ];
  const blocks: Block[] = [
    { kind: 'heading', text: job.name },
    ...clientLines(job.client),
    ...panels.slice(0, 6).map((panel): Block => ({ kind: 'bullet', text: panelLine(panel) })),
    ...(panels.length > 6 ? [{ kind: 'bullet' as const, text: `and ${panels.length - 6} more panels` }] : []),
    ...(measured.length > 0
      ? [{ kind: 'paragraph' as const, text: `As measured: the sizes follow the slats of ${measured.join(', ')}.` }]
      : []),
    { kind: 'heading', text: 'Before you cut' },
    {
      kind: 'paragraph',
      text: `${counts.map(({ level, n }) => `${n} ${level}${n === 1 ? '' : 's'}`).join(', ')}: sheet ${at}.`,
      keep: stops.length > 0,
    },
    // Together under their heading.
    ...stops.slice(0, told).map(
      ({ where, text }, i): Block => ({
        kind: 'stop',
        text: `STOP, ${where}: ${text} Sheet ${at}.`,
        keep: i < stops.length - 1,
      }),
    ),
    ...(stops.length > told ? [{ kind: 'stop' as const, text: `STOP ${stops.length - told} more: sheet ${at}.` }] : []),
    ...woodLines(settled),
    ...(job.notes.length > 0 ? [{ kind: 'heading' as const, text: 'Notes' }] : []),
    ...job.notes.slice(0, NOTES_ON_COVER).map((text): Block => ({ kind: 'paragraph', text: `“${text}”` })),
    ...(job.notes.length > NOTES_ON_COVER
      ? [
          {
            kind: 'paragraph' as const,
            text: `${job.notes.length - NOTES_ON_COVER} more ${job.notes.length === NOTES_ON_COVER + 1 ? 'note' : 'notes'}: after the findings, sheet ${at} on.`,
          },
        ]
      : []),
    { kind: 'heading', text: 'In this packet', keep: true },
    ...contents.map((text, i): Block => ({ kind: 'bullet', text, keep: i < contents.length - 1 })),
  ];
  return blocks.map((block) => ({ ...block, text: fractions(block.text) }));
}

/** Notes of the job that stand on the cover; the others stand after the findings. */
export const NOTES_ON_COVER = 3;

/** What the wood costs; where some parts cannot be cut, of the others. Nothing where no board is planned: a stop says why. */
function woodLines({ plan, parts, job }: Settled): Block[] {
  const isPart = plan.status === 'impossible';
  if (isPart && plan.boards.length === 0) return [];
  const summary = planText({ ...plan, status: isPart ? 'within' : plan.status }, job)[0] ?? '';
  const cut = lettersCut(plan);
  const missing = partsToCut(parts)
    .filter(({ letter }) => !cut.has(letter))
    .map(({ letter }) => letter);
  const without = isPart ? ` Without ${missing.join(', ')}: see the stops.` : '';
  return [
    { kind: 'heading', text: plan.costIs === 'price' ? 'Wood and cost' : 'Wood' },
    { kind: 'paragraph', text: `${summary}${without}` },
  ];
}

/** Whom it is for. A sign that the lettering lacks is left out, and that is said. */
function clientLines(client: string | undefined): Block[] {
  if (!client) return [];
  const signs = printable(client).replaced.filter((one) => /^\p{S}/u.test(one));
  if (signs.length === 0) return [{ kind: 'paragraph', text: `For ${client}.` }];
  const name = signs.reduce((text, sign) => text.replace(sign, ' '), client).replace(/\s+/gu, ' ');
  const many =
    signs.length === 1
      ? 'A sign in this name that cannot be printed is'
      : 'Signs in this name that cannot be printed are';
  return [{ kind: 'paragraph', text: `For ${name.trim()}. (${many} left out.)` }];
}

function panelLine(panel: Panel): string {
  const { display, outside, courses, staves, count } = panel;
  const show = (length: number) => formatLength(length, display, { fractions: 'stacked' });
  const size = `${show(outside.width)} × ${show(outside.height)} ${display.unit}`;
  return `${panel.name}${count > 1 ? ` (${count})` : ''}: ${size}, ${courses.count} courses, ${staves.count} staves, ${weightText(massOf(panel).mass, display.unit)}`;
}
