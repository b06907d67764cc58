import { arrange, type Drawing, finish, type Layout, type Sheet, type SheetMeta } from '@wattlewright/drafting';
import type { Settled } from '@wattlewright/model';

import { clientSheets } from './client.ts';
import { coverSheet } from './cover.ts';
import { listSheets } from './lists.ts';
import { onPaper, type Page } from './page.ts';
import { chartSheets, shopSheets } from './shop.ts';
import { fullSizePages } from './sticks.ts';
import { assumptionSheets, changeSheets, findingSheets, makingSheets } from './words.ts';

/**
 * Every sheet of `packet.pdf`, numbered, in the order in which a job is read, bought, made and checked: on the job's paper,
 * or on larger where a view could not be read on it.
 */
export function packetSheets(settled: Settled): Sheet[] {
  return finish(
    onPaper(settled.job, (page) => layoutsOf(settled, page)),
    metaOf(settled),
  );
}

function layoutsOf(settled: Settled, page: Page): Layout[] {
  const chapters: readonly Chapter[] = [
    ['For the client', clientSheets(settled, page)],
    ['Drawings', shopSheets(settled, page)],
    ['What the measured slats changed', changeSheets(settled, page)],
    ['Parts, shopping and cutting', listSheets(settled, page)],
    ['Weave chart', chartSheets(settled, page)],
    ['Making order', makingSheets(settled, page)],
    ['Findings, light and spacing', findingSheets(settled, page)],
    ['Assumptions and cautions', assumptionSheets(settled, page)],
  ];
  const cover = coverSheet(settled, page, (first) => contentsFrom(first, chapters));
  return [...cover, ...chapters.flatMap(([, layouts]) => layouts)];
}

type Chapter = readonly [name: string, layouts: readonly Layout[]];

/** Chapters with the numbers of their sheets, the first of which is `first`. */
function contentsFrom(first: number, chapters: readonly Chapter[]): string[] {
  let next = first;
  return chapters.flatMap(([name, layouts]) => {
    if (layouts.length === 0) return [];
    const from = next;
    next += layouts.length;
    return [layouts.length === 1 ? `${name}: sheet ${from}` : `${name}: sheets ${from} to ${next - 1}`];
  });
}

/** One drawing on a sheet of its own; what is full size by its nature on as many pages as it takes. */
export function sheetsFor(settled: Settled, drawing: Drawing): Sheet[] {
  if (/stick|template/.test(drawing.name)) return fullSizePages(drawing, settled.job);
  const { unit } = settled.job.display;
  return arrange([drawing], { paper: 'fit', unit, meta: metaOf(settled) });
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
