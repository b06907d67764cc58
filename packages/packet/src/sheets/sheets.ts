import { arrangeLayouts, type Drawing, finish, type Layout, type Sheet, type SheetMeta } from '@wattlewright/drafting';
import type { Settled } from '@wattlewright/model';

import { changeSheets } from './changes.ts';
import { clientSheets } from './client.ts';
import { coverSheet } from './cover.ts';
import { listSheets } from './lists.ts';
import { onPaper, type PacketLayout, type Page, pageFor } from './page.ts';
import { shopSheets } from './shop.ts';
import { fullSizePages } from './sticks.ts';
import { closingSheets, makingSheets } from './words.ts';

/**
 * Every sheet of `packet.pdf`, numbered, in the order in which a job is read, bought, made and checked: on the job's paper,
 * those on larger that could not be read on it, of which the cover says which and why.
 * @throws {JobError} what fits no paper, at `paper.sheets`
 */
export function packetSheets(settled: Settled): Sheet[] {
  return finish(layoutsOf(settled, pageFor(settled.job)), metaOf(settled));
}

function layoutsOf(settled: Settled, page: Page): Layout[] {
  const closing = onPaper(page, (on) => closingSheets(settled, on));
  const chapters: readonly Chapter[] = [
    ['For the client', clientSheets(settled, page)],
    ['Drawings', shopSheets(settled, page)],
    ['What the measured slats changed', onPaper(page, (on) => changeSheets(settled, on))],
    ['Parts, screws, shopping and cutting', listSheets(settled, page)],
    ['Making order', onPaper(page, (on) => makingSheets(settled, on))],
    ['Findings, assumptions and cautions; light and spacing', closing],
  ];
  const rest = chapters.flatMap(([, layouts]) => layouts);
  const contents = (first: number) => ({
    lines: [...contentsFrom(first, chapters), ...outgrown(rest, first, page.paper)],
    findings: first + rest.length - closing.length,
  });
  return [...onPaper(page, (on) => coverSheet(settled, on, contents)), ...rest];
}

type Chapter = readonly [name: string, layouts: readonly PacketLayout[]];

/** Chapters with the numbers of their sheets, the first of which is `first`; the weave chart, which goes along to the bench, also by itself. */
function contentsFrom(first: number, chapters: readonly Chapter[]): string[] {
  let next = first;
  return chapters.flatMap(([name, layouts]) => {
    if (layouts.length === 0) return [];
    const from = next;
    next += layouts.length;
    const charts = layouts.flatMap(({ drawings }, i) =>
      drawings.some(({ name: of }) => of.startsWith('weave-chart')) ? [from + i] : [],
    );
    // Charts that close a chapter are told apart from it.
    const last = charts.length > 0 && charts.at(-1) === next - 1 ? (charts[0] as number) - 1 : next - 1;
    return [
      ...(last < from ? [] : [`${name}: ${sheetsText([from, last])}`]),
      ...(charts.length > 0 ? [`Weave chart: ${sheetsText([charts[0] as number, charts.at(-1) as number])}`] : []),
    ];
  });
}

function sheetsText([from, to]: readonly [number, number]): string {
  return from === to ? `sheet ${from}` : `sheets ${from} to ${to}`;
}

/** Which sheets are on a larger paper than the job names, and what did not fit that; the first is numbered `first`. */
function outgrown(layouts: readonly PacketLayout[], first: number, named: string): string[] {
  const groups = new Map<string, { readonly numbers: number[]; readonly paper: string; readonly what: string }>();
  layouts.forEach(({ outgrew: what, frame: { paper } }, i) => {
    if (what === undefined) return;
    const group = groups.get(`${paper} ${what}`) ?? { numbers: [], paper, what };
    groups.set(`${paper} ${what}`, { ...group, numbers: [...group.numbers, first + i] });
  });
  return [...groups.values()].map(
    ({ numbers, paper, what }) =>
      `${numbers.length === 1 ? `Sheet ${numbers[0]} is` : `Sheets ${numbers.join(', ')} are`} on ${paper}: ${named} is too small for ${what}`,
  );
}

/**
 * One drawing on a sheet of its own; what is full size by its nature on as many pages as it takes.
 * @throws {JobError} for one that fits no paper, at `paper.sheets`
 */
export function sheetsFor(settled: Settled, drawing: Drawing): Sheet[] {
  if (/stick|template/.test(drawing.name)) return fullSizePages(drawing, settled.job);
  return finish(
    onPaper(pageFor(settled.job), (on) => arrangeLayouts([drawing], on)),
    metaOf(settled),
  );
}

/** What the title block of every sheet of a job says. */
function metaOf({ job }: Pick<Settled, 'job'>): SheetMeta {
  return {
    owner: job.shop ?? '',
    title: job.name,
    number: job.drawing,
    revision: job.revision,
    ...(job.date !== undefined && { date: job.date }),
    unit: job.display.unit === 'in' ? 'inches' : 'mm',
  };
}
